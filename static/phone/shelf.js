/** The guides of this bundle: fetched, unpacked and prepared once each. */

import { breath, paced } from "./breath.js";
import { preparing, unpack } from "./engine/index.js";

/** @typedef {import("./engine/guide.js").Picture} Picture */
/** @typedef {import("./engine/guide.js").Guide & {scene: Picture, own: readonly Own[], given?: boolean}} Guide with its drawing; `given` if it came from a file */
/** @typedef {readonly [clue: string, option: string, member: string | null, drawn: Picture]} Own An option as an object bears it, or one member alone. */
/** @typedef {import("./engine/prepare.js").Tables} Tables */

/**
 * A guide before it is opened.
 * @typedef {object} Card
 * @property {string} id
 * @property {string} title
 * @property {number} since
 * @property {number} until
 * @property {boolean} anything
 * @property {boolean} invented
 */
/**
 * @typedef {object} Opened
 * @property {Guide} guide
 * @property {Tables} tables
 * @property {string} stamp changes when anything in the guide changes
 */

/** A guide that cannot be opened; the message is a sentence to show. */
export class ShelfError extends Error {
  name = "ShelfError";
}

/** @type {Map<string, Promise<Opened>>} */
const shelf = new Map();
/** Texts of the guides that came from files. @type {Map<string, string>} */
const given = new Map();

/** Puts a guide from a file on the shelf, or with null takes it off. @param {string} id @param {string | null} text */
export function shelve(id, text) {
  shelf.delete(id);
  if (text === null) given.delete(id);
  else given.set(id, text);
}

/** The text of one of this bundle's own guides. @param {string} id */
export const ownText = (id) => fetched(`guides/${id}.json`, "This guide is");

/**
 * The guide, ready to be judged with.
 * @param {string} id
 * @returns {Promise<Opened>}
 */
export function opened(id) {
  const known = shelf.get(id);
  if (known) return known;
  const opening = open(id);
  shelf.set(id, opening);
  // A failure is not kept: with signal again the next attempt may do.
  opening.catch(() => shelf.delete(id));
  return opening;
}

/**
 * A file of this bundle, as text.
 * @param {string} path
 * @param {string} name what it is, in the sentence that says it is missing
 */
export async function fetched(path, name) {
  const response = await fetch(new URL(`../${path}`, import.meta.url)).catch(() => null);
  if (response?.ok) return response.text();
  throw new ShelfError(
    `${name} not on this phone yet and could not be fetched. ` +
      "Try again when there is signal; everything else still works.",
  );
}

/** @param {string} id @returns {Promise<Opened>} */
async function open(id) {
  const brought = given.get(id);
  const text = brought ?? (await ownText(id));
  try {
    const guide = /** @type {Guide} */ (unpack({ ...JSON.parse(text), given: brought !== undefined }));
    const tables = await paced(preparing(guide));
    await breath();
    return { guide, tables, stamp: fingerprint(text) };
  } catch (error) {
    const { message } = /** @type {Error} */ (error);
    throw new ShelfError(`${sentence(message)} Other guides and your drafts are not touched.`);
  }
}

/** @param {string} text */
function sentence(text) {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** FNV-1a in 32 bits: it only has to notice a change. @param {string} text */
function fingerprint(text) {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}
