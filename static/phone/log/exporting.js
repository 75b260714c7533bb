// Entries and their photos to files that can be kept elsewhere and taken in again.

import { FINDS, fault, findsText, photoName } from "./archive.js";
import { MOST } from "./entry.js";
import { MOST_VALUES, TransferError, extent } from "./json.js";
import { NOTHING, isNothing } from "./owned.js";
import { writtenEntry } from "./written.js";
import { zip } from "./zip.js";

/** @typedef {import("./entries.js").Photo} Photo */
/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./owned.js").Owned} Owned */

/** In a ZIP the headers and names of a photo take fewer bytes. */
const HEADERS = 256;

/**
 * What one file takes in beside what a person owns: bytes of JSON, bytes in all, values
 * of JSON, finds.
 * @param {Owned} own
 */
function roomBeside(own) {
  const text = findsText([], own);
  const { length: around } = new TextEncoder().encode(text);
  return [
    MOST.json - around,
    MOST.file - around - 2 * HEADERS,
    MOST_VALUES - extent(text).values,
    MOST.entries,
  ];
}

/**
 * The entries in lots that fit in a file each, in their order. Each file is whole in
 * itself; together they are the log. What a person owns besides goes with the first.
 * @param {readonly Entry[]} entries @param {Owned} [own] @returns {Entry[][]}
 */
export function lots(entries, own = NOTHING) {
  /** @type {Entry[][]} */
  const made = isNothing(own) ? [] : [[]];
  let room = isNothing(own) ? [0, 0, 0, 0] : roomBeside(own);
  const whole = roomBeside(NOTHING);
  for (const entry of entries) {
    const needed = need(entry);
    if (room.some((left, i) => left < needed[i])) {
      made.push([]);
      room = whole;
    }
    made[made.length - 1].push(entry);
    room = room.map((left, i) => left - needed[i]);
  }
  return made;
}

/** What an entry takes of each kind of room. @param {Entry} entry */
function need(entry) {
  const text = JSON.stringify(writtenEntry(entry));
  // The comma and the new line that part it from the next.
  const json = new TextEncoder().encode(text).length + 2;
  const photos = entry.photos.reduce((sum, { bytes }) => sum + bytes + HEADERS, 0);
  return [json, json + photos, extent(text).values + 1, 1];
}

/**
 * One lot as a ZIP file, and a sentence for each photo that is left out because no file
 * with it could be taken in again. No more than one find's photos are held at a time.
 * @param {readonly Entry[]} lot
 * @param {(entry: Entry) => Promise<readonly Photo[]>} photosOf
 * @param {Owned} [own]
 * @returns {Promise<{file: Blob, left: string[]}>}
 */
export async function exported(lot, photosOf, own = NOTHING) {
  if (lots(lot, own).length > 1) {
    throw new TransferError("These finds are more than one file can hold.");
  }
  if (roomBeside(own).some((left) => left < 0)) {
    throw new TransferError("Your own prices and wants are more than one file can hold.");
  }
  /** @type {string[]} */
  const left = [];
  /** @type {string[]} */
  const finds = [];

  async function* pieces() {
    for (const entry of lot) {
      const there = new Map((await photosOf(entry)).map(({ id, bytes }) => [id, bytes]));
      const photos = [];
      for (const [i, note] of entry.photos.entries()) {
        const bytes = new Uint8Array(there.get(note.id) ?? []);
        const why = there.has(note.id) ? fault(bytes, note) : "It is not on this phone.";
        if (why) left.push(`Photo ${i + 1} of ${named(entry)} is left out. ${why}`);
        else {
          photos.push(note);
          yield { name: photoName(note.id), bytes };
        }
      }
      finds.push(JSON.stringify(writtenEntry({ ...entry, photos })));
    }
    // Last, for only now is it known which photos are there.
    yield { name: FINDS, bytes: new TextEncoder().encode(findsText(finds, own)) };
  }

  return { file: await zip(pieces()), left };
}

/** @param {Entry} entry */
const named = ({ title, guide }) => `"${title || guide}"`;
