/**
 * Whether a value has the form that `described.js` describes: the twin of Python's
 * `givenfit`, which says the same of the same values. Pure.
 */

import { drawn } from "./drawing.js";
import { HALF, quote, told } from "./told.js";

/** @typedef {import("./told.js").Finding} Finding */
/** @typedef {import("./told.js").Path} Path */

const IDS = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const DAYS = /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/;
const CURRENCIES = /^[A-Z]{3}$/;
const SEEN = /[^\x00-\x20]/;

/**
 * All that is wrong with the form of a value.
 * @param {any} value @param {any} shape @param {Path} [path]
 * @returns {Generator<Finding, void>}
 */
export function* misfits(value, shape, path = []) {
  if (Object.hasOwn(HOLDS, shape.is)) yield* HOLDS[shape.is](value, shape, path);
  else if (!FITS[shape.is](value, shape)) yield told(path, "not-that", { value: quote(value) });
}

/** @param {any} value @param {any} shape @param {Path} path */
function* maybe(value, shape, path) {
  if (value !== null) yield* misfits(value, shape.of, path);
}

/** @param {any} value @param {any} shape @param {Path} path */
function* record(value, shape, path) {
  if (!isTable(value)) {
    yield told(path, "not-that", { value: quote(value) });
    return;
  }
  const known = shape.fields.map((/** @type {[string, any]} */ [name]) => name);
  const others = Object.keys(value).filter((key) => !known.includes(key));
  for (const key of others.sort()) yield told([...path, key], "unknown-key");
  for (const [name, each] of shape.fields) {
    if (Object.hasOwn(value, name)) yield* misfits(value[name], each, [...path, name]);
    else yield told([...path, name], "missing");
  }
}

/** @param {any} value @param {any} shape @param {Path} path */
function* kinds(value, shape, path) {
  const own = isTable(value) && Object.hasOwn(value, shape.by) ? value[shape.by] : null;
  const name = isTable(value) ? own : value;
  const found = shape.of.find((/** @type {[string, any]} */ [kind]) => kind === name);
  if (found) yield* misfits(value, found[1], path);
  else yield told(path, "unread-kind", { value: quote(name) });
}

/** @param {any} value @param {any} shape @param {Path} path */
function* list(value, shape, path) {
  if (!Array.isArray(value)) {
    yield told(path, "not-that", { value: quote(value) });
    return;
  }
  const count = value.length;
  if (count < shape.least) yield told(path, "too-few", { count });
  if (count > shape.most) {
    yield told(path, "too-many", { count, most: shape.most });
    return;
  }
  const wrong = value.flatMap((each, i) => [...misfits(each, shape.of, [...path, i])]);
  yield* wrong;
  if (shape.once && !wrong.length) yield* twice(value, path);
}

/** @param {any[]} value @param {Path} path */
function* twice(value, path) {
  const known = new Set();
  for (const [i, each] of value.entries()) {
    const name = Array.isArray(each) ? each[0] : each;
    if (known.has(name)) yield told([...path, i], "listed-twice", { value: quote(name) });
    known.add(name);
  }
}

/** @param {any} value @param {any} shape @param {Path} path */
function* row(value, shape, path) {
  if (!Array.isArray(value) || value.length !== shape.of.length) {
    yield told(path, "not-that", { value: quote(value) });
    return;
  }
  const wrong = value.flatMap((each, i) => [...misfits(each, shape.of[i], [...path, i])]);
  yield* wrong;
  if (!shape.rises || wrong.length || value[0] <= value[1]) return;
  yield told(path, "backwards", { value: quote(`${value[0]} to ${value[1]}`) });
}

/** @type {Record<string, (value: any, shape: any, path: Path) => Iterable<Finding>>} */
const HOLDS = { maybe, record, kinds, list, row, drawing: (value, _, path) => drawn(value, path) };

/** @type {Record<string, (value: any, shape: any) => boolean>} */
const FITS = {
  text: (value, { least, most }) =>
    typeof value === "string" && isShort(value, most) && !HALF.test(value) && (!least || SEEN.test(value)),
  id: (value, { most }) => isNamed(IDS, value) && isShort(value, most),
  day: (value) => isNamed(DAYS, value) && isDay(value),
  currency: (value) => isNamed(CURRENCIES, value),
  word: (value, { of }) => of.includes(value),
  truth: (value) => typeof value === "boolean",
  number: isNumber,
  whole: (value, shape) => isNumber(value, shape) && Number.isInteger(value),
};

/** @param {any} value @param {{least: number, most: number}} limits */
function isNumber(value, { least, most }) {
  return typeof value === "number" && least <= value && value <= most;
}

/** A text is counted in characters, of which some are two units here. @param {string} text @param {number} most */
const isShort = (text, most) => text.length <= 2 * most && [...text].length <= most;

/** @param {RegExp} pattern @param {any} value */
const isNamed = (pattern, value) => typeof value === "string" && pattern.test(value);

/** Whether the calendar has the day; Python's begins with the year 1. @param {string} text */
function isDay(text) {
  const moment = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().startsWith(text) && text >= "0001";
}

/** @param {any} value */
const isTable = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
