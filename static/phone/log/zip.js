// One ZIP file, written and read stored, that is without compression, so that nothing
// is ever inflated (APPNOTE.TXT 6.3, the published description of the format).
// Reading trusts no figure before another one confirms it; every refusal is a sentence.

import { crc32 } from "./crc.js";
import { END, LISTED, LOCAL, MARKS, header, lengthOf, values } from "./headers.js";

/** @typedef {import("./headers.js").Values} Values */
/** @typedef {Uint8Array<ArrayBuffer>} Bytes */
/** @typedef {{name: string, bytes: Bytes}} Piece A file that goes in. */
/** @typedef {{size: number, bytes: () => Promise<Bytes>}} Stored A file that lies in. */
/** @typedef {{name: string, says: Values}} Listed */

const STORED = 0;
const LOCKED = 1;
const UTF8 = 0x800;
const NEEDS = 10;
// The first day that ZIP can write: the same files give the same bytes.
const DAY = 0x21;

const FULL_2 = 0xffff;
const FULL_4 = 0xffffffff;
const MOST_EXTRA = 0xffff;
/** A file's part of the directory is mostly 82 bytes. */
const MOST_LISTED = 512;
const SHOWN = 60;

/** What both headers of a file must agree on. */
const TWICE = ["flags", "method", "crc", "packed", "size", "nameLength"];

const DAMAGED =
  "This ZIP file is damaged: its directory does not describe it. " +
  "Choose another copy of it.";
const LARGE = "This ZIP file is of the kind for more than 4 GB, which cannot be read here.";
const GONE = "The file can no longer be read: choose it again.";

/** Why something is not read as a ZIP file; the message is a sentence to show. */
export class ZipError extends Error {
  name = "ZipError";
}

/**
 * The pieces as one ZIP file. Each goes into a Blob as it comes, which a browser may
 * keep on the disk, so that no more than one is held here.
 * @param {Iterable<Piece> | AsyncIterable<Piece>} pieces
 */
export async function zip(pieces) {
  /** @type {BlobPart[]} */
  const files = [];
  const directory = [];
  let at = 0;
  for await (const { name, bytes } of pieces) {
    const named = new TextEncoder().encode(name);
    const says = described(named, bytes);
    files.push(header(LOCAL, { ...says, mark: MARKS.local }), named, new Blob([bytes]));
    directory.push(header(LISTED, { ...says, mark: MARKS.listed, at }), named);
    at += lengthOf(LOCAL) + named.length + bytes.length;
  }
  const count = directory.length / 2;
  const length = directory.reduce((sum, part) => sum + part.length, 0);
  if (count >= FULL_2 || at + length >= FULL_4) {
    throw new ZipError("One ZIP file holds fewer than 65535 files and 4 GB.");
  }
  const end = { mark: MARKS.end, onDisk: count, count, length, at };
  return new Blob([...files, ...directory, header(END, end)], {
    type: "application/zip",
  });
}

/** @param {Uint8Array} named @param {Bytes} bytes */
function described(named, bytes) {
  const size = bytes.length;
  const about = { needs: NEEDS, flags: UTF8, method: STORED, day: DAY };
  return { ...about, crc: crc32(bytes), packed: size, size, nameLength: named.length };
}

/**
 * The files of a ZIP by name; each one's bytes are read, and checked, when asked for.
 * @param {Blob} blob
 * @param {(name: string) => number | undefined} roomFor The most bytes that a file of
 *   this name may have; undefined for a name that has no business here.
 * @returns {Promise<Map<string, Stored>>}
 */
export async function unzip(blob, roomFor) {
  const end = await ending(blob);
  const directory = await bytesOf(blob, end.at, end.at + end.length);
  const files = listed(directory, end.count);
  for (const file of files) check(file, roomFor(file.name));
  const names = new Set(files.map(({ name }) => name));
  if (names.size < files.length) {
    throw new ZipError("This ZIP file holds two files of one name.");
  }
  return new Map(places(files, end.at).map((place) => [place.name, stored(blob, place)]));
}

/** The header that ends the file, if all it says agrees. @param {Blob} blob */
async function ending(blob) {
  const last = blob.size - lengthOf(END);
  if (last < 0) throw new ZipError("This file is too short to be a ZIP file.");
  const end = values(END, await bytesOf(blob, last, blob.size), 0);
  if (end.mark !== MARKS.end || end.commentLength !== 0) {
    throw new ZipError("This is no ZIP file, or its end is missing.");
  }
  if (end.count === FULL_2 || end.length === FULL_4 || end.at === FULL_4) {
    throw new ZipError(LARGE);
  }
  if (end.disk !== 0 || end.firstDisk !== 0 || end.onDisk !== end.count) {
    throw new ZipError("This is one of several parts of a ZIP file.");
  }
  const isWhole = end.at + end.length === last;
  if (!isWhole || end.length > end.count * MOST_LISTED) throw new ZipError(DAMAGED);
  return end;
}

/** What the directory lists. @param {Bytes} directory @param {number} count */
function listed(directory, count) {
  const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
  /** @type {Listed[]} */
  const files = [];
  let at = 0;
  for (let i = 0; i < count; i += 1) {
    const named = at + lengthOf(LISTED);
    if (named > directory.length) throw new ZipError(DAMAGED);
    const says = values(LISTED, directory, at);
    at = named + says.nameLength + says.extraLength + says.commentLength;
    if (says.mark !== MARKS.listed || at > directory.length) throw new ZipError(DAMAGED);
    const name = decoder.decode(directory.subarray(named, named + says.nameLength));
    files.push({ name, says });
  }
  if (at !== directory.length) throw new ZipError(DAMAGED);
  return files;
}

/** Refuses what is not simply stored here. @param {Listed} file @param {number} [room] */
function check({ name, says }, room) {
  if (room === undefined) {
    throw new ZipError(`This ZIP file holds ${shown(name)}, which does not belong in it.`);
  }
  if (says.flags & LOCKED) {
    throw new ZipError("This ZIP file is locked with a password: unlock it first.");
  }
  if ([says.packed, says.size, says.at].includes(FULL_4)) throw new ZipError(LARGE);
  if (says.method !== STORED || (says.flags & ~UTF8) !== 0) {
    throw new ZipError(
      "This ZIP file is compressed. Choose the file as it was exported, or pack it " +
        "again without compression.",
    );
  }
  if (says.packed !== says.size || says.disk !== 0) throw new ZipError(DAMAGED);
  if (says.size > room) {
    throw new ZipError(`In this ZIP file ${name} is too large: at most ${room} bytes.`);
  }
}

/**
 * Where each file begins and ends; together they leave no gap and share no byte.
 * @param {Listed[]} files @param {number} directoryAt
 */
function places(files, directoryAt) {
  const sorted = [...files].sort((one, other) => one.says.at - other.says.at);
  if ((sorted[0]?.says.at ?? directoryAt) !== 0) throw new ZipError(DAMAGED);
  return sorted.map((file, i) => {
    const { at: from, nameLength, size } = file.says;
    const to = sorted[i + 1]?.says.at ?? directoryAt;
    const over = to - from - (lengthOf(LOCAL) + nameLength + size);
    if (over < 0) throw new ZipError("In this ZIP file two files lie over each other.");
    if (over > MOST_EXTRA) throw new ZipError(DAMAGED);
    return { ...file, from, to };
  });
}

/** @param {Blob} blob @param {Listed & {from: number, to: number}} place */
function stored(blob, { name, says, from, to }) {
  return {
    size: says.size,
    async bytes() {
      const whole = await bytesOf(blob, from, to);
      const own = values(LOCAL, whole, 0);
      const start = lengthOf(LOCAL) + own.nameLength + own.extraLength;
      const ownName = whole.subarray(lengthOf(LOCAL), lengthOf(LOCAL) + own.nameLength);
      const agrees =
        own.mark === MARKS.local &&
        TWICE.every((field) => own[field] === says[field]) &&
        start + says.size === whole.length &&
        new TextDecoder("utf-8", { ignoreBOM: true }).decode(ownName) === name;
      if (!agrees) throw new ZipError(`This ZIP file says two things about ${name}.`);
      const bytes = whole.slice(start);
      if (crc32(bytes) !== says.crc) {
        throw new ZipError(`In this ZIP file ${name} is damaged: its check sum differs.`);
      }
      return bytes;
    },
  };
}

/**
 * The bytes of a piece of a file, which may have been moved away since it was chosen.
 * @param {Blob} blob @param {number} from @param {number} to @returns {Promise<Bytes>}
 */
export async function bytesOf(blob, from, to) {
  const bytes = await blob.slice(from, to).arrayBuffer().catch((cause) => {
    throw new ZipError(GONE, { cause });
  });
  if (bytes.byteLength !== to - from) throw new ZipError(GONE);
  return new Uint8Array(bytes);
}

/** A name as a sentence can show it, whatever it holds. @param {string} name */
function shown(name) {
  const seen = name.replace(/[\p{C}\s]+/gu, " ");
  return `"${seen.length > SHOWN ? `${seen.slice(0, SHOWN)}...` : seen}"`;
}
