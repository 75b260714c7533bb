// What a file of finds looks like: a ZIP with finds.json and a JPEG file a photo, or
// finds.json alone. Pure; transfer.js is the way in.

import { MOST } from "./entry.js";
import { PhotoError, examine } from "./exif.js";
import { NOTHING, ownedText } from "./owned.js";

/** @typedef {import("./entry.js").PhotoNote} PhotoNote */

export const FORMAT = 1;
export const APP = "fieldid";
export const FINDS = "finds.json";
const PHOTO = /^photos\/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\.jpg$/;

/** The name of a photo in a ZIP. @param {string} id */
export const photoName = (id) => `photos/${id}.jpg`;

/**
 * The most bytes that a file of this name may have in a ZIP, if it may be there at all.
 * @param {string} name
 */
export function roomFor(name) {
  if (name === FINDS) return MOST.json;
  return PHOTO.test(name) ? MOST.photo : undefined;
}

/**
 * finds.json: a find a line, so that two files can be compared; behind them what the
 * person's own prices and wants are.
 * @param {readonly string[]} finds each as JSON
 * @param {import("./owned.js").Owned} [own]
 */
export const findsText = (finds, own = NOTHING) =>
  `{"format":${FORMAT},"app":"${APP}","finds":[\n${finds.join(",\n")}\n]${ownedText(own)}}\n`;

/**
 * What is wrong with a photo, in a sentence; empty if it is the bare JPEG that its find
 * lists.
 * @param {Uint8Array} bytes @param {PhotoNote} note
 */
export function fault(bytes, { width, height, bytes: count }) {
  if (bytes.length !== count) {
    return `It has ${bytes.length} bytes, and the find says ${count}.`;
  }
  const jpeg = examined(bytes);
  if (!jpeg) return "It is no JPEG picture, or damaged.";
  if (jpeg.width !== width || jpeg.height !== height) {
    const size = `${jpeg.width} by ${jpeg.height} pixels`;
    return `It has ${size}, and the find says ${width} by ${height}.`;
  }
  return jpeg.bare ? "" : "It holds more than a picture, perhaps where it was taken.";
}

/** @param {Uint8Array} bytes */
function examined(bytes) {
  try {
    return examine(bytes);
  } catch (error) {
    if (error instanceof PhotoError) return null;
    throw error;
  }
}
