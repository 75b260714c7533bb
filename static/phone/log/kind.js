/**
 * What a file is, told by its first bytes and never by its name, and what to say of one
 * that is no photo the browser can read. Pure.
 */

import { isJpeg } from "./exif.js";

/** @typedef {"jpeg" | "png" | "webp" | "avif" | "heic" | "raw" | "none"} Kind */

/** As many bytes of the beginning as `kindOf` needs. */
export const HEAD = 12;

const PNG = "\x89PNG\r\n\x1a\n";
const AVIF = ["avif", "avis"];
const HEIC = ["heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1"];
/** A raw photo is a TIFF file, in either order of bytes. */
const TIFF = ["II*\0", "MM\0*"];

const AS_JPEG =
  "Take it again with JPEG chosen in the camera's settings " +
  '(often called "most compatible"), or save a copy of it as JPEG in the gallery.';

/** @type {ReadonlyMap<Kind, string>} */
const UNREADABLE = new Map([
  ["heic", `This is a HEIC photo, which this browser cannot read. ${AS_JPEG}`],
  ["avif", `This is an AVIF photo, which this browser cannot read. ${AS_JPEG}`],
  ["raw", `This is a raw photo, which browsers cannot read. ${AS_JPEG}`],
  ["none", "This file is not a photo. Choose a JPEG, PNG or WebP picture."],
]);
const DAMAGED =
  "This browser cannot read the photo; it may be damaged. " +
  "Choose it again, or take it anew.";

/** @param {Uint8Array} head the file's first bytes @returns {Kind} */
export function kindOf(head) {
  if (isJpeg(head)) return "jpeg";
  const text = String.fromCharCode(...head.subarray(0, HEAD));
  if (text.startsWith(PNG)) return "png";
  if (text.startsWith("RIFF") && text.slice(8) === "WEBP") return "webp";
  if (TIFF.includes(text.slice(0, 4))) return "raw";
  return text.slice(4, 8) === "ftyp" ? brandOf(text.slice(8)) : "none";
}

/** @param {string} brand @returns {Kind} */
function brandOf(brand) {
  if (AVIF.includes(brand)) return "avif";
  return HEIC.includes(brand) ? "heic" : "none";
}

/** Whether it is worth asking the browser to read it. @param {Kind} kind */
export function mayBeRead(kind) {
  return kind !== "none" && kind !== "raw";
}

/** What to say when it cannot be read. @param {Kind} kind */
export function unreadable(kind) {
  return UNREADABLE.get(kind) ?? DAMAGED;
}
