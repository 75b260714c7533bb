// A file that may hold finds, opened and judged find by find. Whoever wrote it is not
// trusted: what comes out is built anew, and all else is refused in a sentence.

import { APP, FINDS, FORMAT, fault, photoName, roomFor } from "./archive.js";
import { MOST, entry as entryOf } from "./entry.js";
import { RecordError } from "./fields.js";
import { TransferError, parsed } from "./json.js";
import { owned } from "./owned.js";
import { isTable, unwritten } from "./written.js";
import { ZipError, bytesOf, unzip } from "./zip.js";

/** @typedef {import("./entries.js").Photo} Photo */
/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./entry.js").PhotoNote} PhotoNote */
/** @typedef {import("./zip.js").Stored} Stored */
/** @typedef {Map<string, Stored> | null} Files Null where there is JSON alone. */
/**
 * An entry that a file brings; `place` is where in it, from one.
 * @typedef {object} Incoming
 * @property {number} place
 * @property {Entry} entry
 * @property {readonly string[]} held The ids of the photos that the file brings with it.
 * @property {() => Promise<Photo[]>} photos Reads those that are held, checked once more.
 */
/**
 * An entry that cannot be taken; `why` is a sentence.
 * @typedef {{place: number, name: string, why: string}} Refused
 */
/** @typedef {import("./owned.js").OwnedRead} OwnedRead */
/** @typedef {{incoming: Incoming[], refused: Refused[], own: OwnedRead}} Opened */

/** Every ZIP file begins with the letters PK. */
const ZIP = [0x50, 0x4b];
const SHOWN = 60;
/** A batch is on the disk wholly or not at all, and is held in memory until it is. */
const BATCH = 100;
const BATCH_BYTES = 5_000_000;
/** @type {Photo["type"]} */
const TYPE = "image/jpeg";
/** What a find, or a photo of it, is refused with; anything else is a mistake of ours. */
const TOLD = [TransferError, ZipError, RecordError];

/**
 * The entries of a file, each with a way to its photos, and those that are refused; and
 * what comes beside them.
 * @param {Blob & {name?: string}} file
 * @returns {Promise<Opened>}
 */
export async function opened(file) {
  assertSize(file, MOST.file);
  const files = (await isZip(file)) ? await unzip(file, roomFor) : null;
  const { finds: tables, own } = exportIn(parsed(textOf(await findsOf(file, files))));
  const first = await each(tables.map(placed), async (table) => entryOf(unwritten(table)));
  const entries = first.taken.map(({ value }) => value);
  const twice = {
    ids: repeated(entries.map(({ id }) => id)),
    photos: repeated(entries.flatMap(photoIds)),
  };
  const second = await each(first.taken, async (entry, place) => {
    assertOnce(entry, twice);
    return brought(entry, place, files);
  });
  const refused = [...first.refused, ...second.refused];
  return {
    incoming: second.taken.map(({ value }) => value),
    refused: refused.map(({ place, why }) => {
      return { place, name: nameOf(tables[place - 1]), why };
    }),
    own: owned(own),
  };
}

/** @template T @param {T} value @param {number} i */
const placed = (value, i) => ({ value, place: i + 1 });

/**
 * What becomes of each value, one after the other; or why it is refused.
 * @template T, U
 * @param {readonly {value: T, place: number}[]} values
 * @param {(value: T, place: number) => Promise<U>} become
 */
async function each(values, become) {
  /** @type {{value: U, place: number}[]} */
  const taken = [];
  /** @type {{place: number, why: string}[]} */
  const refused = [];
  for (const { value, place } of values) {
    try {
      taken.push({ value: await become(value, place), place });
    } catch (error) {
      const told = TOLD.find((kind) => error instanceof kind);
      if (!told) throw error;
      refused.push({ place, why: /** @type {Error} */ (error).message });
    }
  }
  return { taken, refused };
}

/** @param {Blob} file @param {number} most */
function assertSize({ size }, most) {
  if (size === 0) throw new TransferError("This file is empty.");
  if (size > most) {
    throw new TransferError(
      `This file has ${Math.ceil(size / 1e6)} megabytes; at most ${most / 1e6} can be read.`,
    );
  }
}

/** @param {Blob & {name?: string}} file */
async function isZip(file) {
  if (file.name?.toLowerCase().endsWith(".zip")) return true;
  const head = await bytesOf(file, 0, Math.min(ZIP.length, file.size));
  return ZIP.every((byte, i) => head[i] === byte);
}

/** @param {Blob} file @param {Files} files */
async function findsOf(file, files) {
  if (!files) {
    assertSize(file, MOST.json);
    return bytesOf(file, 0, file.size);
  }
  const stored = files.get(FINDS);
  if (!stored) throw new TransferError(`This ZIP file holds no ${FINDS}, so it has no finds.`);
  return stored.bytes();
}

/** @param {Uint8Array} bytes */
function textOf(bytes) {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (cause) {
    throw new TransferError("This file is no text, so it has no finds.", { cause });
  }
}

/**
 * The finds of an export, and what comes beside them.
 * @param {unknown} json
 * @returns {{finds: unknown[], own: unknown}}
 */
function exportIn(json) {
  const { app, format, finds, own } = isTable(json) ? json : {};
  if (app === APP && typeof format === "number" && format > FORMAT) {
    throw new TransferError(
      `This file was written by a newer version of ${APP} ` +
        `(format ${format}; this one reads ${FORMAT}): update when online.`,
    );
  }
  if (app !== APP || format !== FORMAT || !Array.isArray(finds)) {
    throw new TransferError(`This file holds no log that ${APP} exported.`);
  }
  if (finds.length > MOST.entries) {
    throw new TransferError(
      `This file holds ${finds.length} finds; at most ${MOST.entries} can be read.`,
    );
  }
  return { finds, own };
}

/** The ids that are there more than once. @param {readonly string[]} ids */
function repeated(ids) {
  const seen = new Set();
  const twice = new Set();
  for (const id of ids) (seen.has(id) ? twice : seen).add(id);
  return twice;
}

/** @param {Entry} entry */
const photoIds = ({ photos }) => photos.map(({ id }) => id);

/**
 * Refuses all that share an id: which of them is right cannot be known.
 * @param {Entry} entry @param {{ids: Set<string>, photos: Set<string>}} twice
 */
function assertOnce(entry, twice) {
  if (twice.ids.has(entry.id)) {
    throw new TransferError("Another find in this file has the same id.");
  }
  if (photoIds(entry).some((id) => twice.photos.has(id))) {
    throw new TransferError("A photo of another find in this file has the same id.");
  }
}

/**
 * The entry, once all its photos are seen to be good; they are read again when asked for.
 * @param {Entry} entry @param {number} place @param {Files} files
 * @returns {Promise<Incoming>}
 */
async function brought(entry, place, files) {
  const held = files ? entry.photos : [];
  for (const note of held) await photo(note, entry, files);
  return {
    place,
    entry,
    held: held.map(({ id }) => id),
    async photos() {
      const read = [];
      for (const note of held) read.push(await photo(note, entry, files));
      return read;
    },
  };
}

/**
 * A photo, if it is all that its entry says of it.
 * @param {PhotoNote} note @param {Entry} entry @param {Files} files
 * @returns {Promise<Photo>}
 */
async function photo(note, entry, files) {
  const number = entry.photos.indexOf(note) + 1;
  const stored = files?.get(photoName(note.id));
  if (!stored) throw new TransferError(`Photo ${number} is missing in this file.`);
  const bytes = await stored.bytes();
  const why = fault(bytes, note);
  if (why) throw new TransferError(`Photo ${number} cannot be taken. ${why}`);
  return { id: note.id, entry: entry.id, type: TYPE, bytes: bytes.buffer };
}

/**
 * What a plan takes, in batches for the log, each with the photos that it needs.
 * @param {import("./merge.js").Plan} plan
 * @returns {AsyncGenerator<import("./entries.js").Kept[], void>}
 */
export async function* taking({ added, changed }) {
  /** @type {import("./entries.js").Kept[]} */
  let batch = [];
  let bytes = 0;
  for (const { entry, photos } of [...added, ...changed]) {
    const kept = { entry, photos: await photos() };
    batch.push(kept);
    bytes += kept.photos.reduce((sum, photo) => sum + photo.bytes.byteLength, 0);
    if (batch.length >= BATCH || bytes >= BATCH_BYTES) {
      yield batch;
      [batch, bytes] = [[], 0];
    }
  }
  if (batch.length) yield batch;
}

/** What a person may know a refused find by. @param {unknown} table */
function nameOf(table) {
  const { title, guide } = isTable(table) ? table : {};
  const name = [title, guide].find((text) => typeof text === "string" && text !== "");
  return String(name ?? "").slice(0, SHOWN);
}
