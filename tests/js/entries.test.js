import assert from "node:assert/strict";
import { test } from "node:test";

import { databaseIn } from "../../static/phone/database.js";
import { log as ours, logIn } from "../../static/phone/log/entries.js";
import { entry, MOST } from "../../static/phone/log/record.js";
import { settled } from "./fake-indexeddb.js";
import { freshLog, id, json, notes, NOW, photos, rowsIn, withPhotos } from "./kept.js";

const STILL = "What is shown is not lost yet; keep this page open";
const FULL = {
  name: "StoreError",
  message:
    "The storage of this phone is full, so the last change to the log is not kept. " +
    `${STILL} and make room.`,
};
const refused = (message) => ({ name: "StoreError", message });
const [one, two] = [withPhotos({}, 1, 2), withPhotos({ id: id(2), title: "Reel" }, 3)];

const save = (log, ...batch) => log.saveEntries(batch);
const ids = (rows) => rows.map(({ id }) => id);

/** What lies in the database, by ids. */
const lying = async (idb) => ({
  entries: ids(await rowsIn(idb, "entries")),
  photos: ids(await rowsIn(idb, "photos")),
});

test("an entry comes back with its photos", async () => {
  const { log } = freshLog();
  await log.saveEntry(one.entry, one.photos);
  await log.saveEntry(two.entry, two.photos);

  assert.deepEqual(await log.loadEntries(), [one.entry, two.entry]);
  assert.deepEqual(await log.loadPhotos(one.entry.id), one.photos);
});

test("an entry is kept in one strict transaction", async () => {
  const { idb, log } = freshLog();
  await log.saveEntry(one.entry, one.photos);

  assert.deepEqual(idb.log.durability, ["strict"]);
});

for (const fault of ["QuotaExceededError", "throw"]) {
  test(`a phone full at the second photo (${fault}) keeps nothing`, async () => {
    const { idb, log } = freshLog();
    await log.saveEntry(two.entry, two.photos);
    idb.faults.put.push(null, null, fault);

    await assert.rejects(log.saveEntry(one.entry, one.photos), FULL);
    assert.deepEqual(await lying(idb), { entries: [id(2)], photos: [id(1003)] });
  });
}

test("a phone full at the commit keeps nothing", async () => {
  const { idb, log } = freshLog();
  idb.faults.commit.push("QuotaExceededError");

  await assert.rejects(log.saveEntry(one.entry, one.photos), FULL);
  assert.deepEqual(await lying(idb), { entries: [], photos: [] });
});

test("a commit that breaks off is tried again", async () => {
  const { idb, log } = freshLog();
  idb.faults.commit.push("quiet");
  await log.saveEntry(one.entry, one.photos);

  assert.deepEqual(await lying(idb), { entries: [id(1)], photos: [id(1001), id(1002)] });
});

test("a commit that breaks off twice is said", async () => {
  const { idb, log } = freshLog();
  idb.faults.commit.push("quiet", "AbortError");

  await assert.rejects(log.saveEntry(one.entry, one.photos), /broke off twice/);
  assert.deepEqual(await lying(idb), { entries: [], photos: [] });
});

test("a connection lost while the app slept is opened again", async () => {
  const { idb, log } = freshLog();
  await log.saveEntry(one.entry, one.photos);
  idb.collapse({ say: false });
  await log.saveEntry(two.entry, two.photos);

  assert.deepEqual((await lying(idb)).entries, [id(1), id(2)]);
});

test("a photo that is missing is refused", async () => {
  const { idb, log } = freshLog();
  const why = "A photo of this find is missing, so nothing was kept.";

  await assert.rejects(log.saveEntry(one.entry, one.photos.slice(1)), refused(why));
  assert.deepEqual(await lying(idb), { entries: [], photos: [] });
});

test("a photo of another find is not taken over", async () => {
  const { idb, log } = freshLog();
  await log.saveEntry(one.entry, one.photos);
  const thief = withPhotos({ id: id(2) }, 1);
  const why = "A photo belongs to another find already, so nothing was kept.";

  await assert.rejects(log.saveEntry(thief.entry, thief.photos), refused(why));
  assert.deepEqual((await lying(idb)).entries, [id(1)]);
});

test("two of one batch cannot share a photo", async () => {
  const { idb, log } = freshLog();

  await assert.rejects(save(log, one, withPhotos({ id: id(2) }, 1)), /another find/);
  assert.deepEqual(await lying(idb), { entries: [], photos: [] });
});

for (const [what, wrong] of [
  ["a Blob", { bytes: new Blob(["abc"]) }],
  ["an array of bytes", { bytes: new Uint8Array(3) }],
  ["fewer bytes than named", { bytes: new ArrayBuffer(2) }],
  ["another type", { type: "image/png" }],
  ["another entry's photo", { entry: id(9) }],
  ["a photo that is not named", { id: id(9) }],
]) {
  test(`${what} is no photo`, async () => {
    const { idb, log } = freshLog();
    const [first, second] = one.photos;
    const why = "A photo is not the one that its find names, so nothing was kept.";
    const wrongs = [first, second, { ...second, ...wrong }];

    await assert.rejects(log.saveEntry(one.entry, wrongs), refused(why));
    assert.deepEqual(await lying(idb), { entries: [], photos: [] });
  });
}

test("only the known fields of a photo are kept", async () => {
  const { idb, log } = freshLog();
  const more = two.photos.map((photo) => ({ ...photo, gps: "secret" }));
  await log.saveEntry(two.entry, more);

  assert.deepEqual(await rowsIn(idb, "photos"), two.photos);
});

test("a deleted entry takes its photos along", async () => {
  const { idb, log } = freshLog();
  await save(log, one, two);
  await log.deleteEntry(id(1));

  assert.deepEqual(await lying(idb), { entries: [id(2)], photos: [id(1003)] });
});

test("a deletion that fails deletes nothing", async () => {
  const { idb, log } = freshLog();
  await save(log, one);
  idb.faults.delete.push(null, "DataError");

  await assert.rejects(log.deleteEntry(id(1)), /DataError/);
  assert.deepEqual(await lying(idb), { entries: [id(1)], photos: [id(1001), id(1002)] });
});

test("a batch comes wholly or not at all", async () => {
  const { idb, log } = freshLog();
  idb.faults.put.push(null, null, null, null, "QuotaExceededError");

  await assert.rejects(save(log, one, two), FULL);
  assert.deepEqual(await lying(idb), { entries: [], photos: [] });
  await save(log, one, two);
  assert.deepEqual((await lying(idb)).entries, [id(1), id(2)]);
});

test("a batch is one transaction", async () => {
  const { idb, log } = freshLog();
  await save(log, one, two);

  assert.equal(idb.log.durability.length, 1);
});

test("photos no longer named are dropped", async () => {
  const { idb, log } = freshLog();
  await save(log, one);
  const fewer = entry({ ...one.entry, photos: one.entry.photos.slice(1) });
  await log.saveEntry(fewer);

  assert.deepEqual((await lying(idb)).photos, [id(1002)]);
});

test("photos that lie there need not come again", async () => {
  const { idb, log } = freshLog();
  await save(log, one);
  const all = notes(id(1001), id(1002), id(1009));
  const more = entry({ ...one.entry, photos: all });
  await log.saveEntry(more, photos(more, id(1009)));

  assert.deepEqual((await lying(idb)).photos, [id(1001), id(1002), id(1009)]);
});

test("two pages that change one entry both count", async () => {
  const { log } = freshLog();
  await save(log, one);
  await Promise.all([
    log.changeEntry(id(1), (kept) => ({ ...kept, title: "Kittiwake" })),
    log.changeEntry(id(1), (kept) => ({ ...kept, note: "A chip." })),
  ]);

  const [{ title, note }] = await log.loadEntries();
  assert.deepEqual([title, note], ["Kittiwake", "A chip."]);
});

test("a change that throws changes nothing", async () => {
  const { idb, log } = freshLog();
  await save(log, one);
  const broken = log.changeEntry(id(1), () => {
    throw new TypeError("not a word");
  });

  await assert.rejects(broken, { name: "TypeError", message: "not a word" });
  assert.deepEqual(await rowsIn(idb, "entries"), [one.entry]);
});

test("an entry that is gone cannot be changed", async () => {
  const { idb, log } = freshLog();
  const change = log.changeEntry(id(1), () => one.entry, one.photos);

  await assert.rejects(change, refused("This find is no longer in the log."));
  assert.deepEqual(await lying(idb), { entries: [], photos: [] });
});

test("an entry of a newer version is not written over", async () => {
  const { idb, log } = freshLog();
  const newer = { ...json(), format: 2, anything: true };
  await log.saveEntry(newer);

  await assert.rejects(save(log, one), /newer version of the app, and is left as it is/);
  assert.deepEqual(await rowsIn(idb, "entries"), [newer]);
});

test("the log ends at its limit", async () => {
  const { idb, log } = freshLog();
  const full = Array.from({ length: MOST.entries }, (_, i) => ({
    entry: { ...one.entry, id: id(i), photos: [] },
    photos: [],
  }));
  await log.saveEntries(full);

  const more = log.saveEntry({ ...one.entry, id: id(9999), photos: [] });
  await assert.rejects(more, /holds 5000 finds at most, so nothing was kept/);
  assert.equal((await rowsIn(idb, "entries")).length, MOST.entries);
  await log.saveEntry({ ...full[0].entry, title: "Changed" });
});

test("a setting comes back, others were never set", async () => {
  const { log } = freshLog();
  await log.saveSetting("wants", [{ guide: "kittiwake", most: 80 }]);

  assert.deepEqual(await log.loadSetting("wants"), [{ guide: "kittiwake", most: 80 }]);
  assert.equal(await log.loadSetting("prices/kittiwake"), undefined);
});

const draft = { format: 2, guide: "kittiwake", stamp: "a", session: { gone: [] } };
const awaited = { entry: id(1), clue: "rings", since: NOW };

test("the draft lies there with the awaited photo", async () => {
  const { idb, log } = freshLog();
  await log.saveAwaited(draft, awaited);

  assert.deepEqual(idb.log.durability, ["strict"]);
  assert.deepEqual(await rowsIn(idb, "drafts"), [draft]);
  assert.deepEqual(await log.loadAwaited(), awaited);
});

test("a photo is awaited where no draft lies open", async () => {
  const { idb, log } = freshLog();
  await log.saveAwaited(draft, { ...awaited, entry: id(2) });
  await log.saveAwaited(null, awaited);

  assert.deepEqual(await rowsIn(idb, "drafts"), [draft], "another draft stays");
  assert.deepEqual(await log.loadAwaited(), awaited);
});

test("a photo that came is no longer awaited", async () => {
  const { log } = freshLog();
  await save(log, { entry: { ...one.entry, photos: [] }, photos: [] });
  await log.saveAwaited(draft, awaited);
  await log.saveEntry(two.entry, two.photos);
  assert.deepEqual(await log.loadAwaited(), awaited, "it was another find's photo");
  await log.changeEntry(id(1), () => one.entry, one.photos);

  assert.equal(await log.loadAwaited(), null);
});

test("nothing is awaited for what is deleted", async () => {
  const { log } = freshLog();
  await save(log, one);
  await log.saveAwaited(draft, awaited);
  await log.deleteEntry(id(1));

  assert.equal(await log.loadAwaited(), null);
});

test("a photo that never comes can be dropped", async () => {
  const { log } = freshLog();
  await log.saveAwaited(draft, awaited);
  await log.dropAwaited();

  assert.equal(await log.loadAwaited(), null);
});

test("a blocked upgrade is said", async () => {
  const { idb, log } = freshLog();
  idb.open("fieldid", 1);
  await settled();

  await assert.rejects(
    save(log, one),
    /another page of this app holds an older storage open: close that page/,
  );
});

test("a newer app's log can be read, not written", async () => {
  const { idb, log } = freshLog();
  await save(log, one);
  const newer = idb.open("fieldid", 99);
  await settled();
  newer.result.close();
  const again = logIn(databaseIn(() => idb));

  assert.deepEqual(await again.loadEntries(), [one.entry]);
  assert.deepEqual(await again.loadPhotos(id(1)), one.photos);
  await assert.rejects(again.saveEntry(two.entry, two.photos), /written by a newer version/);
});

test("this very page has no log", async () => {
  // Node has no IndexedDB, so the app's own log says so.
  await assert.rejects(ours.loadEntries(), /this browser has no storage for pages/);
});
