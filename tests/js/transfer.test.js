import assert from "node:assert/strict";
import { test } from "node:test";

import {
  exported,
  lots,
  merged,
  opened,
  taking,
  TransferError,
} from "../../static/phone/log/transfer.js";
import { unzip } from "../../static/phone/log/zip.js";
import { bookOn, freshLog, id, json } from "./kept.js";
import { jpeg, photosFrom, pictured } from "./pictured.js";
import { entry as entryOf } from "../../static/phone/log/record.js";

const LATE = "2026-11-26T10:00:00.000Z";
const set = {
  guide: "kittiwake",
  items: ["6", "W"].map((member) => ({ member, readings: [["pad", 6.5]], gone: ["grip"] })),
  claim: null,
};

const entries = (kept) => kept.map(({ entry }) => entry);
const sorted = (kept) => [...kept].sort((one, other) => (one.id < other.id ? -1 : 1));
const fileOf = async (kept) => (await exported(entries(kept), photosFrom(kept))).file;
/** What finds.json in an export says. */
async function findsIn(file) {
  const bytes = await (await unzip(file, () => 1e9)).get("finds.json").bytes();
  return JSON.parse(new TextDecoder().decode(bytes));
}
const jsonFile = (finds, more = {}) =>
  new Blob([JSON.stringify({ format: 1, app: "fieldid", finds, ...more })]);

/** A book with these finds in it, on a database of its own. */
async function filled(kept) {
  const book = bookOn(freshLog().log);
  for (const { entry, photos } of kept) await book.add(entry, photos);
  return book;
}

/** All finds of a book with all their photos. */
async function whole(book) {
  const { entries: found } = await book.list();
  return Promise.all(
    sorted(found).map(async (entry) => ({ entry, photos: await book.photosOf(entry) })),
  );
}

test("an exported log comes back byte for byte", async () => {
  const kept = [
    pictured(1, [11, 12, 13]),
    pictured(2, [], { note: 'line\n"quoted", ä, 🏌' }),
    pictured(3, [14], { find: set }),
  ];
  const before = await filled(kept);
  const { entries: list } = await before.list();
  const { file, left } = await exported(list, before.photosOf);
  const after = await filled([]);

  await after.takeIn(taking(merged([], await opened(file))));

  assert.deepEqual(left, []);
  assert.deepEqual(await whole(after), kept);
  assert.deepEqual(await whole(before), kept);
});

test("an import keeps what is newer here", async () => {
  const book = await filled([pictured(1, [11], { title: "mine", changed: LATE })]);
  const file = await fileOf([pictured(1, [12]), pictured(2, [13])]);

  await book.takeIn(taking(merged((await book.list()).entries, await opened(file))));

  const [one, two] = await whole(book);
  assert.deepEqual([one.entry.title, one.photos[0].id], ["mine", id(11)]);
  assert.deepEqual(two, pictured(2, [13]));
});

test("a newer find brings its photos, old ones go", async () => {
  const newer = pictured(1, [12, 13], { changed: LATE });
  const book = await filled([pictured(1, [11, 12])]);

  const file = await opened(await fileOf([newer]));
  await book.takeIn(taking(merged((await book.list()).entries, file)));

  assert.deepEqual(await whole(book), [newer]);
});

test("an export twice is the same file", async () => {
  const kept = [pictured(1, [11]), pictured(2)];
  const [one, other] = await Promise.all([fileOf(kept), fileOf(kept)]);

  assert.deepEqual(await one.arrayBuffer(), await other.arrayBuffer());
});

test("a find in a file is as the rules have it", async () => {
  const { find } = (await findsIn(await fileOf([pictured(1)]))).finds[0];

  assert.deepEqual(find, {
    format: 1,
    guide: "kittiwake",
    items: [
      {
        readings: { rings: "green", pad: 6.25, face: { value: 91.5, error: 0.4 }, code: null },
        gone: ["grip"],
      },
    ],
    claim: { model_year: 1952, cites: ["rings"] },
  });
});

test("an export of nothing can be opened", async () => {
  assert.deepEqual(await opened(await fileOf([])), {
    incoming: [],
    refused: [],
    own: { prices: [], wants: [], refused: [] },
  });
});

test("photos that could not come back are named", async () => {
  const kept = [pictured(1, [11, 12, 13, 14])];
  const [good, cut, other] = kept[0].photos;
  const there = [
    good,
    { ...cut, bytes: cut.bytes.slice(1) },
    { ...other, bytes: new Uint8Array(other.bytes.byteLength).buffer },
  ];

  const { file, left } = await exported(entries(kept), async () => there);

  const name = kept[0].entry.title;
  assert.deepEqual(left, [
    `Photo 2 of "${name}" is left out. It has 126 bytes, and the find says 127.`,
    `Photo 3 of "${name}" is left out. It is no JPEG picture, or damaged.`,
    `Photo 4 of "${name}" is left out. It is not on this phone.`,
  ]);
  const { incoming, refused } = await opened(file);
  assert.deepEqual(refused, []);
  assert.deepEqual(incoming[0].entry.photos.map((note) => note.id), [id(11)]);
});

test("finds alone come without photos", async () => {
  const { finds } = await findsIn(await fileOf([pictured(1, [11])]));

  const { incoming, refused } = await opened(jsonFile(finds));

  assert.deepEqual(refused, []);
  assert.deepEqual(incoming[0].entry, pictured(1, [11]).entry);
  assert.deepEqual(incoming[0].held, []);
  assert.deepEqual(await incoming[0].photos(), []);
});

test("a bad find costs itself only", async () => {
  const { finds } = await findsIn(await fileOf([pictured(1), pictured(2), pictured(3)]));
  finds[1].asked = "dear";

  const { incoming, refused } = await opened(jsonFile(finds));

  assert.deepEqual(incoming.map(({ place }) => place), [1, 3]);
  assert.deepEqual(refused, [
    {
      place: 2,
      name: "Irons from the fair",
      why: 'The price asked cannot be "dear": a number is needed.',
    },
  ]);
});

test("unknown keys do not get in", async () => {
  const { finds } = await findsIn(await fileOf([pictured(1)]));
  const { incoming } = await opened(jsonFile([{ ...finds[0], script: "x" }], { more: 1 }));

  assert.deepEqual(incoming[0].entry, pictured(1).entry);
});

test("brackets in a note are no nesting", async () => {
  const kept = [pictured(1, [], { note: `"${"[".repeat(50)}\\` })];

  assert.deepEqual((await opened(await fileOf(kept))).incoming[0].entry, kept[0].entry);
});

test("a file that changes after the dry run is refused", async () => {
  const bytes = new Uint8Array(await (await fileOf([pictured(1, [11])])).arrayBuffer());
  const plan = merged([], await opened(changing(bytes)));
  const book = await filled([]);
  bytes[Buffer.from(bytes).indexOf(jpeg(11))] = 0;

  await assert.rejects(book.takeIn(taking(plan)), { name: "ZipError", message: /damaged/ });
  assert.deepEqual(await whole(book), []);
});

/** A file whose bytes are those of the moment at which they are read. */
const changing = (bytes) => ({
  size: bytes.length,
  slice: (from, to) => new Blob([bytes.slice(from, to)]),
});

test("the log is taken in by batches", async () => {
  const kept = Array.from({ length: 250 }, (_, i) => pictured(i + 1));
  const sizes = [];
  for await (const batch of taking(merged([], await opened(await fileOf(kept))))) {
    sizes.push(batch.length);
  }

  assert.deepEqual(sizes, [100, 100, 50]);
});

test("a batch holds few megabytes", async () => {
  const length = 2_000_000;
  const kept = [1, 2, 3, 4].map((number) => {
    const bytes = jpeg(number, { length }).buffer;
    const note = { id: id(number), clue: null, width: 40, height: 30, bytes: bytes.byteLength };
    const entry = entryOf(json({ id: id(number), photos: [note] }));
    return { entry, photos: [{ id: id(number), entry: id(number), type: "image/jpeg", bytes }] };
  });
  const sizes = [];
  for await (const batch of taking(merged([], await opened(await fileOf(kept))))) {
    sizes.push(batch.length);
  }

  assert.deepEqual(sizes, [3, 1]);
});

const note = (number) => ({ id: id(number), clue: null, width: 1, height: 1, bytes: 5e6 });
const heavy = (number) => entryOf(json({ id: id(number), photos: [note(number)] }));

test("a large log is exported in lots", () => {
  const log = Array.from({ length: 100 }, (_, i) => heavy(i));
  const made = lots(log);

  assert.deepEqual(made.map(({ length }) => length), [39, 39, 22]);
  assert.deepEqual(made.flat(), log);
  assert.deepEqual(lots([]), []);
});

test("a lot that is full can be opened again", async () => {
  const log = Array.from({ length: 5000 }, (_, i) =>
    entryOf(json({ id: id(i), note: "\u0001€".repeat(150) })),
  );
  const [lot] = lots(log);

  const { file } = await exported(lot, async () => []);

  const { length } = await (await unzip(file, () => 1e9)).get("finds.json").bytes();
  assert.ok(length > 9_980_000 && length <= 10_000_000, `${length}`);
  assert.equal((await opened(file)).incoming.length, lot.length);
});

test("many small photos need room for their names", () => {
  const log = Array.from({ length: 5000 }, (_, i) => {
    const photos = Array.from({ length: 6 }, (_, k) => ({ ...note(6 * i + k), bytes: 6350 }));
    return entryOf(json({ id: id(i), photos }));
  });

  assert.equal(lots(log).length, 2);
  assert.equal(lots(log.slice(0, 4800)).length, 1);
});

test("more than one lot is not one file", async () => {
  const log = Array.from({ length: 41 }, (_, i) => heavy(i));

  await assert.rejects(exported(log, async () => []), TransferError);
});

for (const text of ["Only words.", '{"format":1,"app":"fieldid","finds":[']) {
  test(`${text.slice(0, 9)} is told in plain words to be no file of finds`, async () => {
    await assert.rejects(opened(new Blob([text])), {
      name: "TransferError",
      message: "This is no file of finds, or a part of it is missing. “File of all finds” makes one.",
    });
  });
}
