import assert from "node:assert/strict";
import { test } from "node:test";

import { newId } from "../../static/phone/log/book.js";
import { entry } from "../../static/phone/log/record.js";
import { settled } from "./fake-indexeddb.js";
import { bookOn, freshLog, id, json, notes, NOW, photos, rowsIn, withPhotos } from "./kept.js";

const [one, two] = [withPhotos({}, 1, 2), withPhotos({ id: id(2), title: "Reel" }, 3)];
const LATER = "2026-11-25T10:00:01.000Z";

/** A book on a log of its own. */
function setUp() {
  const { idb, log } = freshLog();
  return { idb, log, book: bookOn(log) };
}

/** Two pages of the app on one log; what one posts, the other hears. */
function twoPages() {
  const { idb, log } = freshLog();
  const ends = [{}, {}];
  ends.forEach((end, i) => {
    end.postMessage = (data) => setImmediate(() => ends[1 - i].onmessage?.({ data }));
  });
  const pages = ends.map((end) => bookOn(log, () => end));
  return { idb, pages };
}

const ids = async (book) => (await book.list()).entries.map(({ id }) => id);

test("an added find is listed, with its photos", async () => {
  const { book } = setUp();
  await book.add(one.entry, one.photos);

  assert.deepEqual((await book.list()).entries, [one.entry]);
  assert.deepEqual(await book.photosOf(one.entry), one.photos);
});

test("photos come in the find's own order", async () => {
  const { book } = setUp();
  await book.add(one.entry, one.photos);
  const turned = await book.change(id(1), { photos: one.entry.photos.toReversed() });

  assert.deepEqual(await book.photosOf(turned), one.photos.toReversed());
});

for (const [what, act] of [
  ["added", (book) => book.add(two.entry, two.photos)],
  ["changed", (book) => book.change(id(1), { title: "?" })],
  ["judged again", (book) => book.judgeAgain(id(1), desk)],
  ["removed", (book) => book.remove(id(1))],
]) {
  test(`what could not be ${what} is not shown`, async () => {
    const { idb, book } = setUp();
    await book.add(one.entry, one.photos);
    await book.list();
    idb.faults.commit.push("QuotaExceededError");

    await assert.rejects(act(book), /storage of this phone is full/);
    assert.deepEqual((await book.list()).entries, [one.entry]);
  });

  test(`what is ${what} lies on the disk before it is shown`, async () => {
    const { idb, book } = setUp();
    await book.add(one.entry, one.photos);
    await book.list();
    const acted = act(book);
    assert.deepEqual((await book.list()).entries, [one.entry]);
    await acted;

    assert.deepEqual((await book.list()).entries, await rowsIn(idb, "entries"));
    assert.notDeepEqual((await book.list()).entries, [one.entry]);
  });
}

const desk = {
  guide: { id: "kittiwake", updated: "2026-11-30" },
  stamp: "d4",
  find: json().find,
  verdict: { say: "?", model_years: [[1958, 1]], leading: 1958, outside: 0, range: null, flags: [] },
};

test("a change keeps the rest and its time", async () => {
  const { book } = setUp();
  await book.add(one.entry, one.photos);
  const after = await book.change(id(1), { paid: 70 });

  assert.deepEqual(after, { ...one.entry, paid: 70, changed: LATER });
  assert.deepEqual((await book.list()).entries, [after]);
});

test("a photo is added to a find", async () => {
  const { book } = setUp();
  await book.add(one.entry, one.photos);
  const added = notes(id(1009));
  const photo = photos(one.entry, id(1009));
  const after = await book.change(id(1), { photos: [...one.entry.photos, ...added] }, photo);

  assert.deepEqual(await book.photosOf(after), [...one.photos, ...photo]);
});

test("a wrong change is refused in a sentence", async () => {
  const { book } = setUp();
  await book.add(one.entry, one.photos);

  await assert.rejects(book.change(id(1), { currency: "euro" }), {
    name: "RecordError",
    message: 'The currency cannot be "euro": three capital letters are needed, as "EUR".',
  });
  assert.deepEqual((await book.list()).entries, [one.entry]);
});

test("a find judged again has today's verdict", async () => {
  const { book } = setUp();
  await book.add(one.entry, one.photos);
  const { verdict, judged } = await book.judgeAgain(id(1), desk);

  assert.deepEqual([verdict.leading, judged], [1958, LATER]);
});

test("a removed find is gone with its photos", async () => {
  const { idb, book } = setUp();
  await book.add(one.entry, one.photos);
  await book.remove(id(1));

  assert.deepEqual(await ids(book), []);
  assert.deepEqual(await rowsIn(idb, "photos"), []);
});

test("what cannot be read is told and stays", async () => {
  const { idb, log, book } = setUp();
  const newer = { ...json({ id: id(3) }), format: 2 };
  const broken = { ...json({ id: id(4) }), title: 7 };
  for (const each of [newer, broken, one.entry]) await log.saveEntry({ ...each, photos: [] });

  const { entries, refused } = await book.list();
  assert.deepEqual(entries.map(({ id }) => id), [id(1)]);
  assert.equal(refused.length, 2);
  assert.match(refused.join(), /newer version of the app.*The title cannot be 7/);
  assert.equal((await rowsIn(idb, "entries")).length, 3);
});

test("the log is read once", async () => {
  const { idb, book } = setUp();
  await Promise.all([book.list(), book.list()]);
  idb.faults.transaction.push("ConstraintError");

  assert.deepEqual(await ids(book), []);
  assert.equal(idb.faults.transaction.length, 1);
});

test("a log that could not be read is read again", async () => {
  const { idb, book } = setUp();
  await book.add(one.entry, one.photos);
  idb.faults.transaction.push("ConstraintError");

  await assert.rejects(book.list(), /ConstraintError/);
  assert.deepEqual(await ids(book), [id(1)]);
});

test("a find is added even if the rest cannot be read", async () => {
  const { idb, book } = setUp();
  idb.faults.transaction.push("ConstraintError");
  const listed = book.list();
  const added = book.add(one.entry, one.photos);

  await assert.rejects(listed, /ConstraintError/);
  await added;
  assert.deepEqual(await ids(book), [id(1)]);
});

test("a find is added even while the rest breaks off", async () => {
  const { idb, book } = setUp();
  idb.faults.commit.push("quiet", null, "quiet");
  const listed = book.list();
  const added = book.add(one.entry, one.photos);

  await assert.rejects(listed, /broke off twice/);
  await added;
  assert.deepEqual(await ids(book), [id(1)]);
});

test("another page hears of every change", async () => {
  const { pages } = twoPages();
  const [here, there] = pages;
  let heard = 0;
  there.onOthers(() => (heard += 1));
  assert.deepEqual(await ids(there), []);
  await here.add(one.entry, one.photos);
  await settled();

  assert.deepEqual(await ids(there), [id(1)]);
  await here.change(id(1), { title: "Kittiwake" });
  await settled();
  assert.equal((await there.list()).entries[0].title, "Kittiwake");
  await here.remove(id(1));
  await settled();
  assert.deepEqual(await ids(there), []);
  assert.equal(heard, 3);
});

test("two pages that change one find both count", async () => {
  const { idb, pages } = twoPages();
  const [here, there] = pages;
  await here.add(one.entry, one.photos);
  await Promise.all([here.list(), there.list()]);
  await Promise.all([here.change(id(1), { title: "A" }), there.change(id(1), { note: "B" })]);

  const [{ title, note }] = await rowsIn(idb, "entries");
  assert.deepEqual([title, note], ["A", "B"]);
});

test("an import comes batch by batch", async () => {
  const { idb, book } = setUp();
  await book.list();
  await book.takeIn([[one], [two]]);

  assert.deepEqual(await ids(book), [id(1), id(2)]);
  assert.equal(idb.log.durability.length, 2);
});

test("an import that fails keeps whole batches", async () => {
  const { idb, book } = setUp();
  await book.list();
  idb.faults.put.push(null, null, null, null, "QuotaExceededError");

  await assert.rejects(book.takeIn([[one], [two]]), /storage of this phone is full/);
  assert.deepEqual(await ids(book), [id(1)]);
  assert.equal((await rowsIn(idb, "photos")).length, 2);
});

test("an import replaces what has the same id", async () => {
  const { idb, book } = setUp();
  await book.add(one.entry, one.photos);
  const other = withPhotos({ title: "From the file" }, 2, 7);
  await book.takeIn([[{ entry: other.entry, photos: other.photos }]]);

  assert.deepEqual((await book.list()).entries, [other.entry]);
  assert.deepEqual(
    (await rowsIn(idb, "photos")).map(({ id }) => id),
    [id(1002), id(1007)],
  );
});

test("the draft is kept before the camera opens", async () => {
  const { idb, book } = setUp();
  const draft = { format: 2, guide: "kittiwake", stamp: "a", session: {} };
  await book.add(entry(json()));
  await book.beforeCamera(draft, { entry: id(1), clue: "rings" });

  assert.deepEqual(await rowsIn(idb, "drafts"), [draft]);
  assert.deepEqual(await book.awaited(), { entry: id(1), clue: "rings", since: LATER });
  await book.change(id(1), { photos: one.entry.photos }, one.photos);
  assert.equal(await book.awaited(), null);
});

test("a camera opens where nothing lies open", async () => {
  const { idb, book } = setUp();
  await book.beforeCamera(null, { entry: id(1), clue: null });

  assert.deepEqual(await rowsIn(idb, "drafts"), []);
  assert.deepEqual(await book.awaited(), { entry: id(1), clue: null, since: LATER });
});

test("a camera closed without a photo is forgotten", async () => {
  const { book } = setUp();
  const draft = { format: 2, guide: "kittiwake", stamp: "a", session: {} };
  await book.beforeCamera(draft, { entry: id(1), clue: null });
  await book.awaitNoMore();

  assert.equal(await book.awaited(), null);
});

test("a camera does not open on a full phone", async () => {
  const { idb, book } = setUp();
  idb.faults.put.push(null, "QuotaExceededError");
  const draft = { format: 2, guide: "kittiwake", stamp: "a", session: {} };

  await assert.rejects(book.beforeCamera(draft, { entry: id(1), clue: null }), /full/);
  assert.deepEqual(await rowsIn(idb, "drafts"), []);
});

test("settings are kept by key", async () => {
  const { book } = setUp();
  await book.set("prices/kittiwake", [[1957, 80]]);

  assert.deepEqual(await book.setting("prices/kittiwake"), [[1957, 80]]);
});

test("only an export ends the reminders", async () => {
  const { book } = setUp();
  const ten = Array.from({ length: 10 }, (_, i) => entry(json({ id: id(i) })));
  for (const each of ten) await book.add(each);

  assert.match(await book.reminder(true), /^10 finds are in no file yet/);
  await book.dismiss();
  assert.equal(await book.reminder(true), "");
  assert.equal(await book.setting("exported"), null);
  await book.exported("2026-11-25T10:00:00.500Z");
  assert.equal(await book.reminder(true), "");
  await book.change(id(1), { note: "New" });
  assert.equal(await book.reminder(true), "", "one find can wait");
});

test("new ids are random UUIDs", () => {
  const made = new Set(Array.from({ length: 100 }, () => newId()));

  assert.equal(made.size, 100);
  for (const each of made)
    assert.match(each, /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  assert.equal(newId((bytes) => bytes.fill(0xff)), "ffffffff-ffff-4fff-bfff-ffffffffffff");
});
