/** What a drawing in a guide that was given may consist of: our own drawings' parts alone. Pure. */

import { DRAWING } from "./described.js";
import { HALF, quote, told } from "./told.js";

/** @typedef {import("./told.js").Finding} Finding */
/** @typedef {import("./told.js").Path} Path */

/** @type {Map<string, string[]>} */
const ELEMENTS = new Map(/** @type {any} */ (DRAWING.elements));
/** @type {Map<string, RegExp>} */
const VALUES = new Map(DRAWING.values.map(([name, pattern]) => [name, RegExp(`^(?:${pattern})$`)]));

/**
 * The first thing that a drawing may not be.
 * @param {any} value @param {Path} path
 * @returns {Generator<Finding, void>}
 */
export function* drawn(value, path) {
  const found = node(value, { path, deep: 1, count: [0] });
  if (found) yield found;
  else if (value[0] !== "svg") yield told(path, "drawing-element", { value: quote(Array.isArray(value) ? value[0] : value) });
}

/**
 * @param {any} value
 * @param {{path: Path, deep: number, count: number[]}} at
 * @returns {Finding | null}
 */
function node(value, { path, deep, count }) {
  count[0] += 1;
  const { deep: deepest, most, long } = DRAWING;
  if (deep > deepest || count[0] > most) return told(path, "drawing-large", { most, deep: deepest });
  if (typeof value === "string" && value.length <= long && !HALF.test(value)) return null;
  if (!isNode(value)) return told(path, "drawing-element", { value: quote(value) });
  const [tag, attributes, children] = value;
  const known = ELEMENTS.get(tag);
  if (!known || (tag === "svg" && deep > 1)) return told(path, "drawing-element", { value: quote(tag) });
  for (const pair of attributes) {
    const wrong = attribute(path, { tag, known, pair });
    if (wrong) return wrong;
  }
  for (const child of children) {
    const wrong = node(child, { path, deep: deep + 1, count });
    if (wrong) return wrong;
  }
  return null;
}

/** @param {any} value */
function isNode(value) {
  if (!Array.isArray(value) || value.length !== 3) return false;
  const [tag, attributes, children] = value;
  return typeof tag === "string" && Array.isArray(attributes) && Array.isArray(children);
}

/** @param {Path} path @param {{tag: string, known: string[], pair: any}} given */
function attribute(path, { tag, known, pair }) {
  const isPair = Array.isArray(pair) && pair.length === 2;
  if (!isPair || !known.includes(pair[0])) {
    return told(path, "drawing-attribute", { value: quote(isPair ? pair[0] : pair), tag: quote(tag) });
  }
  const [name, value] = pair;
  const isShort = typeof value === "string" && value.length <= DRAWING.long;
  if (isShort && VALUES.get(name)?.test(value)) return null;
  return told(path, "drawing-value", { value: quote(value), name: quote(name) });
}
