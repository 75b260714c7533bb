/** Names that must be used once, and names that must exist. Pure. */

import { quote, told } from "./told.js";

/** @typedef {import("./told.js").Path} Path */

/**
 * The refusal of names that were used before.
 * @param {readonly any[]} tables @param {Path} path @param {string} [key]
 */
export function* twice(tables, path, key = "id") {
  const used = new Set();
  for (const [i, { [key]: name }] of tables.entries()) {
    if (used.has(name)) yield told([...path, i, key], "id-twice", { value: quote(name) });
    used.add(name);
  }
}

/**
 * The refusal of a name that is not known, where any is.
 * @param {string} name @param {readonly string[]} known @param {string} what @param {Path} path
 */
export function* unknown(name, known, what, path) {
  if (!known.length || known.includes(name)) return;
  yield told(path, "unknown-name", { value: quote(name), what });
}
