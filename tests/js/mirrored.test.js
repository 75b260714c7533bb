import assert from "node:assert/strict";
import { test } from "node:test";

import { copiesIn } from "../../static/phone/log/copies.js";
import { logIn } from "../../static/phone/log/entries.js";
import { mirrored } from "../../static/phone/log/mirrored.js";
import { databaseIn } from "../../static/phone/database.js";
import { fakeCaches } from "./fake-caches.js";
import { fakeIndexedDB } from "./fake-indexeddb.js";
import { id, json, photos, withPhotos } from "./kept.js";

const LATER = "2026-11-25T11:00:00.000Z";
const BASE = "https://example.test/app/";
const [one, two] = [withPhotos({}, 1, 2), withPhotos({ id: id(2), title: "Reel" }, 3)];

/** A page of the app on these; another one is another call with the same caches. */
function page({ caches = fakeCaches(), idb = fakeIndexedDB() } = {}) {
  const log = logIn(databaseIn(() => idb));
  return { caches, idb, log: mirrored(log, copiesIn(() => caches, BASE)) };
}

/** The same phone after its browser has lost the database. */
const lost = ({ caches }) => page({ caches });

const byId = (rows) => [...rows].sort((a, b) => (a.id < b.id ? -1 : 1));

test("finds that the browser lost come back with their photos", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  await before.log.saveEntry(two.entry, two.photos);

  const { log } = lost(before);
  assert.deepEqual(byId(await log.loadEntries()), [one.entry, two.entry]);
  assert.deepEqual(byId(await log.loadPhotos(id(1))), one.photos);
  assert.equal(log.restored(), 2);
  assert.equal(log.trouble(), "");
});

test("what came back lies in the database again", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  const after = lost(before);
  await after.log.loadEntries();

  const { log } = page({ idb: after.idb, caches: fakeCaches() });
  assert.deepEqual(await log.loadEntries(), [one.entry]);
  assert.equal(log.restored(), 0);
});

test("the last change is what comes back", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  const changed = { ...one.entry, title: "Another", changed: LATER };
  await before.log.changeEntry(id(1), () => changed);

  assert.deepEqual(await lost(before).log.loadEntries(), [changed]);
});

test("a change that the database lost comes back", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  await before.log.saveEntry({ ...one.entry, title: "Another", changed: LATER });
  // As it was before the last write.
  const after = page({ caches: before.caches });
  await logIn(databaseIn(() => after.idb)).saveEntry(one.entry, one.photos);

  const [row] = await after.log.loadEntries();
  assert.equal(row.title, "Another");
});

test("a deleted find stays deleted", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  await before.log.deleteEntry(id(1));

  assert.deepEqual(await lost(before).log.loadEntries(), []);
  assert.equal(before.caches.files().size, 0);
});

test("a find kept before there were copies gets one", async () => {
  const { idb, caches } = page();
  await logIn(databaseIn(() => idb)).saveEntry(one.entry, one.photos);
  await page({ idb, caches }).log.loadEntries();

  const { log } = lost({ caches });
  assert.deepEqual(await log.loadEntries(), [one.entry]);
  assert.deepEqual(byId(await log.loadPhotos(id(1))), one.photos);
});

test("a photo that was taken out leaves no copy", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  const [note] = one.entry.photos;
  await before.log.changeEntry(id(1), () => ({ ...one.entry, photos: [note], changed: LATER }));
  await page(before).log.loadEntries();

  const names = [...before.caches.files().keys()];
  assert.equal(names.filter((name) => name.includes("/photo/")).length, 1);
  assert.equal(names.filter((name) => name.includes("/find/")).length, 1);
});

test("a torn copy spoils no other", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  await before.log.saveEntry(two.entry, two.photos);
  const files = before.caches.files();
  const torn = [...files.keys()].find((name) => name.includes(`find/${id(1)}`));
  files.set(torn, files.get(torn).slice(0, 20));

  assert.deepEqual(await lost(before).log.loadEntries(), [two.entry]);
});

test("a find comes back without the photo whose copy is torn", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  const files = before.caches.files();
  const torn = [...files.keys()].find((name) => name.endsWith(one.photos[0].id));
  files.set(torn, new ArrayBuffer(1));

  const [row] = await lost(before).log.loadEntries();
  assert.deepEqual(row.photos, one.entry.photos.slice(1));
});

test("a copy that this version cannot read stays where it is", async () => {
  const before = page();
  const copies = copiesIn(() => before.caches, BASE);
  await copies.keep(json({ format: 2 }), []);

  assert.deepEqual(await lost(before).log.loadEntries(), []);
  assert.equal(before.caches.files().size, 1);
});

test("settings come back when they are asked for", async () => {
  const before = page();
  await before.log.saveSetting("wants", [{ id: 1 }]);

  const { log } = lost(before);
  assert.deepEqual(await log.loadSetting("wants"), [{ id: 1 }]);
  assert.equal(await log.loadSetting("prices"), null);
});

test("a setting that was taken back stays so, whatever its copy says", async () => {
  const { log, caches } = page();
  await log.saveSetting("sizing", { name: "pad" });
  const idb = fakeIndexedDB();
  await logIn(databaseIn(() => idb)).saveSetting("sizing", null);

  assert.equal(await page({ caches, idb }).log.loadSetting("sizing"), null);
});

for (const [what, caches] of [
  ["no cache storage", undefined],
  ["a forbidden one", { open: async () => Promise.reject(new DOMException("", "SecurityError")) }],
  ["a full one", fakeCaches({ full: true })],
]) {
  test(`with ${what} the log works and says that it has no copy`, async () => {
    const log = mirrored(logIn(databaseIn(() => fakeIndexedDB())), copiesIn(() => caches, BASE));
    await log.saveEntry(one.entry, one.photos);

    assert.deepEqual(await log.loadEntries(), [one.entry]);
    assert.match(log.trouble(), /^No second copy of the finds can be kept here/);
  });
}

test("what is no fault of the storage is not hushed up", async () => {
  const broken = { open: async () => Promise.reject(new RangeError("a mistake")) };
  const log = mirrored(logIn(databaseIn(() => fakeIndexedDB())), copiesIn(() => broken, BASE));

  await assert.rejects(log.saveEntry(one.entry, one.photos), /a mistake/);
});

test("finds that cannot be brought back are told, and their copies stay", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  const after = lost(before);
  // The reading goes well, the writing does not.
  after.idb.faults.commit.push("", "QuotaExceededError");

  assert.deepEqual(await after.log.loadEntries(), []);
  assert.match(after.log.trouble(), /could not be brought back yet\. The storage of this phone is full/);
  assert.equal(before.caches.files().size, 3);
});

test("photos of another find are never taken for one's own", async () => {
  const before = page();
  await before.log.saveEntry(one.entry, one.photos);
  await before.log.saveEntry(two.entry, two.photos);

  assert.deepEqual(byId(await lost(before).log.loadPhotos(id(2))), []);
  const { log } = lost(before);
  await log.loadEntries();
  assert.deepEqual(await log.loadPhotos(id(2)), photos(two.entry, ...two.entry.photos.map((p) => p.id)));
});
