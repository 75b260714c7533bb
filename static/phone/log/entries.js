/**
 * The log in the database: entries, their photos, and settings. An entry and its photos
 * come and go together; a photo lies there as bytes, never as a Blob, which some
 * browsers lose.
 */

import { asked, BY_ENTRY, DRAFTS, ENTRIES, here, PHOTOS, SETTINGS } from "../database.js";
import { spoken, StoreError } from "../storeerror.js";
import { FORMAT, MOST } from "./entry.js";

/** @typedef {import("./entry.js").Entry} Entry */
/**
 * @typedef {object} Photo
 * @property {string} id
 * @property {string} entry
 * @property {"image/jpeg"} type
 * @property {ArrayBuffer} bytes
 */
/**
 * An entry with photos of its own, new ones at least; the others lie there already.
 * @typedef {{entry: Entry, photos: readonly Photo[]}} Kept
 */
/**
 * The photo that the camera was opened for.
 * @typedef {object} Awaited
 * @property {string} entry
 * @property {string | null} clue
 * @property {string} since
 */

const TYPE = "image/jpeg";
/** The setting that says which photo is awaited. */
const AWAITED = "awaited";
const WHOLE = [ENTRIES, PHOTOS, SETTINGS];
const WORDS = {
  lost: "the last change to the log",
  still: "What is shown is not lost yet; keep this page open",
};

export const log = logIn(here);

/**
 * The log in a database; every failure is a sentence to show.
 * @param {import("../database.js").Database} database
 */
export function logIn(database) {
  const within = spoken(database, WORDS);

  /**
   * Keeps all of these or, if anything fails, none. Photos that their entries no longer
   * name are dropped.
   * @param {readonly Kept[]} batch
   */
  const saveEntries = (batch) =>
    within("readwrite", WHOLE, async (stores) => {
      for (const kept of batch) await put(stores, kept);
      await assertRoom(stores[0]);
    });

  return {
    saveEntries,

    /** @param {Entry} entry @param {readonly Photo[]} [photos] */
    saveEntry: (entry, photos = []) => saveEntries([{ entry, photos }]),

    /**
     * The entry as it was changed, read and written in one go: what another page changed
     * meanwhile stays. The change may be made twice, to the same end.
     * @param {string} id
     * @param {(kept: unknown) => Entry} change
     * @param {readonly Photo[]} [photos] the new ones
     * @returns {Promise<Entry>}
     */
    changeEntry: (id, change, photos = []) =>
      within("readwrite", WHOLE, async (stores) => {
        const kept = await asked(stores[0].get(id));
        if (!kept) throw new StoreError("This find is no longer in the log.");
        const entry = change(kept);
        await put(stores, { entry, photos });
        return entry;
      }),

    /** @param {string} id */
    deleteEntry: (id) =>
      within("readwrite", WHOLE, async (stores) => {
        const [entries, photos] = stores;
        entries.delete(id);
        for (const photo of await photosOf(photos, id)) photos.delete(photo);
        await forgetAwaited(stores, id);
      }),

    /** All entries, readable or not, without their photos. @returns {Promise<unknown[]>} */
    loadEntries: () =>
      within("readonly", [ENTRIES], ([entries]) => asked(entries.getAll())),

    /** The photos of an entry, in no order. @param {string} id @returns {Promise<Photo[]>} */
    loadPhotos: (id) =>
      within("readonly", [PHOTOS], ([photos]) => asked(photos.index(BY_ENTRY).getAll(id))),

    /**
     * Keeps which photo is awaited, and the session if one lies open: a phone that is
     * short of memory ends the page while its camera is open.
     * @param {import("../session.js").Draft | null} draft
     * @param {Awaited} awaited
     */
    saveAwaited: (draft, awaited) =>
      within("readwrite", [DRAFTS, SETTINGS], async ([drafts, settings]) => {
        if (draft) drafts.put(draft);
        await asked(settings.put({ key: AWAITED, value: awaited }));
      }),

    /** The photo that never came, if there is one. @returns {Promise<Awaited | null>} */
    loadAwaited: () =>
      within("readonly", [SETTINGS], async ([s]) => (await valueOf(s, AWAITED)) ?? null),

    dropAwaited: () =>
      within("readwrite", [SETTINGS], ([settings]) => asked(settings.delete(AWAITED))),

    /** Undefined if it was never set. @param {string} key @returns {Promise<any>} */
    loadSetting: (key) =>
      within("readonly", [SETTINGS], ([settings]) => valueOf(settings, key)),

    /** @param {string} key @param {unknown} value plain data @returns {Promise<unknown>} */
    saveSetting: (key, value) =>
      within("readwrite", [SETTINGS], ([settings]) => asked(settings.put({ key, value }))),
  };
}

/** @param {IDBObjectStore[]} stores @param {Kept} kept */
async function put(stores, { entry, photos: given }) {
  const [entries, photos] = stores;
  const wanted = entry.photos.map(({ id }) => id);
  const there = await photosOf(photos, entry.id);
  assertNotNewer(await asked(entries.get(entry.id)));
  given.forEach((photo) => assertFits(photo, entry));
  await assertAllThere(photos, { wanted, there, given: given.map(({ id }) => id) });
  entries.put(entry);
  for (const { id, bytes } of given) photos.put({ id, entry: entry.id, type: TYPE, bytes });
  for (const id of there) if (!wanted.includes(id)) photos.delete(id);
  if (given.length) await forgetAwaited(stores, entry.id);
}

/** What this version cannot read it never writes over. @param {any} kept */
function assertNotNewer(kept) {
  if (!(kept?.format > FORMAT)) return;
  throw new StoreError(
    "This find lies in the log already, written by a newer version of the app, and is " +
      "left as it is: update when online.",
  );
}

/** Whether a photo is what its entry says of it. @param {Photo} photo @param {Entry} entry */
function assertFits({ id, entry: owner, type, bytes }, entry) {
  const note = entry.photos.find((each) => each.id === id);
  const isIts = owner === entry.id && type === TYPE && bytes instanceof ArrayBuffer;
  if (isIts && note?.bytes === bytes.byteLength) return;
  throw new StoreError("A photo is not the one that its find names, so nothing was kept.");
}

/**
 * Every photo is given or there already, and none is taken from another entry.
 * @param {IDBObjectStore} photos
 * @param {{wanted: string[], there: string[], given: string[]}} ids
 */
async function assertAllThere(photos, { wanted, there, given }) {
  if (!wanted.every((id) => given.includes(id) || there.includes(id)))
    throw new StoreError("A photo of this find is missing, so nothing was kept.");
  for (const id of given.filter((id) => !there.includes(id))) {
    if (await asked(photos.count(id)))
      throw new StoreError("A photo belongs to another find already, so nothing was kept.");
  }
}

/** @param {IDBObjectStore} entries */
async function assertRoom(entries) {
  if ((await asked(entries.count())) <= MOST.entries) return;
  throw new StoreError(
    `The log holds ${MOST.entries} finds at most, so nothing was kept. ` +
      "Export it, and delete what you no longer need here.",
  );
}

/** Ids of an entry's photos. @param {IDBObjectStore} photos @param {string} id */
async function photosOf(photos, id) {
  const keys = await asked(photos.index(BY_ENTRY).getAllKeys(id));
  return /** @type {string[]} */ (keys);
}

/** The photo came, or its entry is gone. @param {IDBObjectStore[]} stores @param {string} id */
async function forgetAwaited([, , settings], id) {
  const awaited = await valueOf(settings, AWAITED);
  if (awaited?.entry === id) settings.delete(AWAITED);
}

/** @param {IDBObjectStore} settings @param {string} key */
async function valueOf(settings, key) {
  return (await asked(settings.get(key)))?.value;
}
