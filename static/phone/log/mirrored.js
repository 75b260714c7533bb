/**
 * The log with its second copy: what is kept is copied before it counts as kept, and what
 * the database has lost comes back when it is read.
 *
 * Chromium was seen to begin with an empty database after it had been killed while
 * writing, about once in two hundred kills. The copy takes the photos' room once more; a
 * file system of the page's own would take as much, and fewer browsers have one.
 */

import { entry as readable } from "./record.js";

/** @typedef {import("./copies.js").Copies} Copies */
/** @typedef {import("./entries.js").Kept} Kept */
/** @typedef {import("./entries.js").Photo} Photo */
/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {typeof import("./entries.js").log} Log */
/** @typedef {Log & {restored: () => number, trouble: () => string}} Mirrored */

const TYPE = "image/jpeg";

/**
 * The log, copied.
 * @param {Log} stored
 * @param {Copies} copies
 * @returns {Mirrored}
 */
export function mirrored(stored, copies) {
  let restored = 0;
  let trouble = "";
  /** Whether what lies in both was held against each other. @type {Promise<void> | null} */
  let checked = null;

  /** @param {readonly Kept[]} batch */
  async function saveEntries(batch) {
    await stored.saveEntries(batch);
    for (const { entry, photos } of batch) await copies.keep(entry, photos);
  }

  /** Brings back what the database lost, and copies what has no copy. @param {unknown[]} rows */
  async function check(rows) {
    const { entries } = await copies.all();
    const there = new Map(rows.map((row) => [idOf(row), row]));
    for (const [id, { changed, photos }] of entries) {
      const newest = changed[0] ?? "";
      const row = there.get(id);
      if (newest > changedOf(row)) restored += await restore(id, newest);
      const named = known(row)?.photos.map((note) => note.id) ?? photos;
      const idle = photos.filter((photo) => !named.includes(photo));
      if (changed.length > 1 || idle.length) await copies.drop(id, changed.slice(1), idle);
    }
    for (const [id, row] of there) {
      if (!entries.get(id)?.changed.includes(changedOf(row))) await copy(row);
    }
  }

  /** How many finds this brings back, one or none. @param {string} id @param {string} changed */
  async function restore(id, changed) {
    const entry = known(await copies.entry(id, changed));
    if (!entry) return 0;
    const photos = [];
    for (const note of entry.photos) {
      const bytes = await copies.photo(id, note.id);
      if (bytes?.byteLength === note.bytes) photos.push(photo(id, note.id, bytes));
    }
    const kept = photos.map((each) => each.id);
    const whole = { ...entry, photos: entry.photos.filter((note) => kept.includes(note.id)) };
    return stored.saveEntries([{ entry: whole, photos }]).then(() => 1, unsaved);
  }

  /** The log can be read all the same, and the copy stays. @param {Error} error */
  function unsaved(error) {
    if (error.name !== "StoreError") throw error;
    trouble = `The browser has lost finds, and they could not be brought back yet. ${error.message}`;
    return 0;
  }

  /** @param {unknown} row */
  async function copy(row) {
    const entry = known(row);
    if (entry) await copies.keep(entry, await stored.loadPhotos(entry.id));
  }

  return {
    ...stored,
    saveEntries,
    saveEntry: (entry, photos = []) => saveEntries([{ entry, photos }]),

    async changeEntry(id, change, photos = []) {
      let before = "";
      const entry = await stored.changeEntry(
        id,
        (kept) => {
          before = changedOf(kept);
          return change(kept);
        },
        photos,
      );
      await copies.keep(entry, photos);
      if (before !== entry.changed) await copies.drop(id, [before], []);
      return entry;
    },

    async deleteEntry(id) {
      // The copy first: were it left, the find would come back.
      const found = (await copies.all()).entries.get(id);
      if (found) await copies.drop(id, found.changed, found.photos);
      await stored.deleteEntry(id);
    },

    async loadEntries() {
      const rows = await stored.loadEntries();
      checked ??= check(rows);
      await checked;
      return restored > 0 ? stored.loadEntries() : rows;
    },

    async saveSetting(key, value) {
      await stored.saveSetting(key, value);
      await copies.keepSetting(key, value);
    },

    /** Null if it was never set. @param {string} key */
    async loadSetting(key) {
      const value = await stored.loadSetting(key);
      if (value !== undefined) return value;
      const copied = (await copies.setting(key)) ?? null;
      if (copied !== null) await stored.saveSetting(key, copied);
      return copied;
    },

    /** How many finds came back from their copies. */
    restored: () => restored,

    /** Why there are no copies, or why not all came back; empty if all is well. */
    trouble: () => trouble || copies.trouble(),
  };
}

/** @param {unknown} row @returns {string} */
const idOf = (row) => String(/** @type {any} */ (row)?.id ?? "");

/** @param {unknown} row @returns {string} */
const changedOf = (row) => String(/** @type {any} */ (row)?.changed ?? "");

/** @param {string} entry @param {string} id @param {ArrayBuffer} bytes @returns {Photo} */
const photo = (entry, id, bytes) => ({ id, entry, type: TYPE, bytes });

/** The entry, or null for one that this version cannot read: it stays where it is. @param {unknown} row @returns {Entry | null} */
function known(row) {
  try {
    return readable(row);
  } catch (error) {
    if (/** @type {Error} */ (error).name !== "RecordError") throw error;
    return null;
  }
}
