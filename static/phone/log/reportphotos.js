/** The photos of a report: bare JPEG files as addresses that need no other file. Pure. */

import { capital } from "../engine/words.js";
import { PhotoError, examine, stripped } from "./exif.js";
import { named } from "./reporthead.js";
import { line, node, section } from "./reportnodes.js";

/** @typedef {import("./entries.js").Photo} Photo */
/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./reportnodes.js").Node} Node */
/**
 * A photo to show; `number` is its place among the entry's own, from 1 on.
 * @typedef {object} Shown
 * @property {number} number
 * @property {string | null} clue
 * @property {string} source
 * @property {number} width
 * @property {number} height
 */
/** @typedef {(bytes: Uint8Array<ArrayBuffer>) => string} Source gives an image's address */

/** So many bytes are written at a time: whole groups of three, or padding came between. */
const PIECE = 3 * 4096;

/**
 * The entry's photos in its own order, and a sentence for each that is left out.
 * @param {Entry} entry
 * @param {readonly Photo[]} photos
 * @param {Source} source
 */
export function pictured({ photos: notes }, photos, source) {
  /** @type {Shown[]} */
  const shown = [];
  /** @type {string[]} */
  const left = [];
  const there = new Map(photos.map((photo) => [photo.id, photo.bytes]));
  for (const [place, { id, clue }] of notes.entries()) {
    const number = place + 1;
    const bare = bareOf(there.get(id));
    if (typeof bare === "string") left.push(`Photo ${number} is left out: ${bare}`);
    else {
      const { width, height } = examine(bare);
      shown.push({ number, clue, source: source(bare), width, height });
    }
  }
  return { shown, left };
}

/**
 * The picture without anything that says where or with what it was taken; else why it
 * cannot be shown. Kept photos are bare already, and this makes sure of it.
 * @param {ArrayBuffer | undefined} bytes
 */
function bareOf(bytes) {
  if (!bytes) return "it is not on this phone.";
  try {
    return stripped(new Uint8Array(bytes));
  } catch (error) {
    if (error instanceof PhotoError) return "it is damaged.";
    throw error;
  }
}

/**
 * The photos that stand beside no reading, and what became of those left out.
 * @param {import("./report.js").Told} told
 * @param {ReturnType<typeof pictured>} pictures
 * @param {readonly string[]} beside clues whose photos stand beside their readings
 */
export function otherPhotos(told, { shown, left }, beside) {
  const rest = shown.filter(({ clue }) => clue === null || !beside.includes(clue));
  const figures = rest.map((photo) => {
    const { number, clue } = photo;
    const about = told.guide.clues.find(({ id }) => id === clue);
    const caption = about ? capital(about.name) : `Photo ${number}`;
    return figureOf(photo, `Photo ${number} of ${named(told)}`, caption);
  });
  const photos = figures.length ? node("div", { class: "photos" }, figures) : null;
  return section("Photos", "more", photos, left.map(line));
}

/**
 * The photo with a word on what it shows.
 * @param {Pick<Shown, "source" | "width" | "height">} photo
 * @param {string} alt @param {string} [caption]
 */
export function figureOf({ source, width, height }, alt, caption) {
  const image = node("img", { src: source, alt, width, height });
  return node("figure", { class: "photo" }, image, caption && node("figcaption", {}, caption));
}

/** The photo within the page itself (RFC 2397). @param {Uint8Array} bytes */
export const withinPage = (bytes) => `data:image/jpeg;base64,${base64(bytes)}`;

/** @param {Uint8Array} bytes */
function base64(bytes) {
  let text = "";
  for (let at = 0; at < bytes.length; at += PIECE) {
    text += btoa(String.fromCharCode(...bytes.subarray(at, at + PIECE)));
  }
  return text;
}
