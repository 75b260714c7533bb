/**
 * From the file that the camera or the gallery hands over to the bytes that are kept: a
 * fresh JPEG, upright and small, drawn anew so that nothing is left of where and with
 * what it was taken. The file itself is never kept.
 */

import { MOST } from "./entry.js";
import { PhotoError, examine } from "./exif.js";
import { HEAD, kindOf, mayBeRead, unreadable } from "./kind.js";
import { redrawn } from "./redraw.js";

/** @typedef {{width: number, height: number}} Size */
/** @typedef {{bytes: ArrayBuffer, width: number, height: number}} Photo */

/** What file inputs ask for; most phones that have HEIC convert it then. */
export const ACCEPT = "image/jpeg,image/png,image/webp";

const EDGE = 1600;
const THUMB_EDGE = 240;
const MEGABYTES = 30;
/** Four bytes each: half a gigabyte while it is decoded, once. */
const MEGAPIXELS = 120;

const CHOOSE_AGAIN = "Open it once in the gallery, then choose it again.";
const EMPTY =
  `The photo is empty: it may not have been loaded to this phone yet. ${CHOOSE_AGAIN}`;
const WITHHELD = `The phone did not hand the photo over. ${CHOOSE_AGAIN}`;

/** How many photos may still be added. @param {readonly unknown[]} photos */
export function roomLeft(photos) {
  return Math.max(0, MOST.photos - photos.length);
}

/**
 * The size whose longer edge is at most `edge`; nothing is made larger.
 * @param {Size} size @returns {Size}
 */
export function fitted({ width, height }, edge = EDGE) {
  const scale = Math.min(1, edge / Math.max(width, height));
  return {
    width: Math.max(1, Math.round(width * scale)),
    height: Math.max(1, Math.round(height * scale)),
  };
}

/** The size of a photo's thumbnail. @param {Size} size */
export function thumbSize(size) {
  return fitted(size, THUMB_EDGE);
}

/**
 * What to keep of a file; a PhotoError says why it cannot be, and what to do.
 * @param {Blob} file @returns {Promise<Photo>}
 */
export function takePhoto(file) {
  return inTurn(async () =>
    redrawn(file, await checkedKind(file), (size) => fitted(checkedSize(size))),
  );
}

/**
 * The small picture of a photo, for lists.
 * @param {ArrayBuffer} bytes of a photo that is kept @returns {Promise<Photo>}
 */
export function makeThumb(bytes) {
  const photo = new Blob([bytes], { type: "image/jpeg" });
  return inTurn(() => redrawn(photo, "jpeg", thumbSize));
}

/** Settles when the photo before is done: two at once might not fit the memory. */
let turn = Promise.resolve();

/** @template T @param {() => Promise<T>} work */
function inTurn(work) {
  const done = turn.then(work);
  const over = () => undefined;
  // Whoever asked for the work hears of its error.
  turn = done.then(over, over);
  return done;
}

/** What the file is, once it is one that may be decoded. @param {Blob} file */
async function checkedKind(file) {
  if (file.size === 0) throw new PhotoError(EMPTY);
  checkMost(file.size / 1e6, MEGABYTES, "megabytes");
  const kind = kindOf(await bytesOf(file.slice(0, HEAD)));
  if (!mayBeRead(kind)) throw new PhotoError(unreadable(kind));
  // Browsers draw half a JPEG without a word, so it is looked through first.
  if (kind === "jpeg") checkedSize(examine(await bytesOf(file)));
  return kind;
}

/** @param {Blob} blob */
async function bytesOf(blob) {
  try {
    return new Uint8Array(await blob.arrayBuffer());
  } catch (cause) {
    throw new PhotoError(WITHHELD, { cause });
  }
}

/** The size, if it is one to decode. @param {Size} size */
function checkedSize(size) {
  checkMost((size.width * size.height) / 1e6, MEGAPIXELS, "megapixels");
  return size;
}

/** @param {number} found @param {number} most @param {string} unit */
function checkMost(found, most, unit) {
  if (found <= most) return;
  throw new PhotoError(
    `The photo has ${Math.ceil(found)} ${unit}; the app takes up to ${most}. ` +
      "Choose a smaller size in the camera's settings and take it again.",
  );
}
