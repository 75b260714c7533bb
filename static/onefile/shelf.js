/** In place of phone/shelf.js: the guides that lie in the page, unpacked and prepared once each. */

import { prepare, unpack } from "../phone/engine/index.js";

/** @typedef {import("../phone/shelf.js").Opened} Opened */
/** @typedef {import("../phone/shelf.js").Guide} Guide */

/** A guide that cannot be opened; the message is a sentence to show. */
export class ShelfError extends Error {
  name = "ShelfError";
}

/** @type {Map<string, Opened>} */
const shelf = new Map();

/**
 * The guide, ready to be judged with.
 * @param {string} id
 * @returns {Promise<Opened>}
 */
export async function opened(id) {
  const known = shelf.get(id) ?? open(id);
  shelf.set(id, known);
  return known;
}

/** @param {string} id @returns {Opened} */
function open(id) {
  const held = document.querySelector(`[data-packed="${CSS.escape(id)}"]`);
  if (!held) throw new ShelfError("This guide is not in this file.");
  const guide = /** @type {Guide} */ (unpack(JSON.parse(held.textContent ?? "")));
  // The stamp tells a kept find from a changed guide, and nothing is kept here.
  return { guide, tables: prepare(guide), stamp: "" };
}
