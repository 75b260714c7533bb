/**
 * What is refused in a guide that was given: where, under which code, in which words. The
 * words are Python's. Pure.
 */

import { REFUSALS } from "./described.js";

/** @typedef {readonly (string | number)[]} Path */
/**
 * Where something is wrong, under which code, and how that is said.
 * @typedef {readonly [path: Path, code: string, wrong: string]} Finding
 */

const MOST_QUOTED = 40;
const LARGE = 1e15;
/** Below it Python writes a number with an exponent. */
const SMALL = 1e-4;
/** Half of a character can be written in JSON, and nowhere else. */
export const HALF = /\p{Surrogate}/u;
const BARE = /^[A-Za-z0-9_-]{1,40}$/;
/** What Python shows as its number: it could not be seen, or not in one line. */
const UNSEEN = /[\p{C}\p{Zl}\p{Zp}\p{Zs}]/u;
/** @type {Record<string, string>} */
const SHORT = { "\\": "\\\\", "\n": "\\n", "\r": "\\r", "\t": "\\t", " ": " " };

/**
 * A refusal at a place, with its words filled in.
 * @param {Path} path @param {string} code @param {Record<string, string | number>} [words]
 * @returns {Finding}
 */
export function told(path, code, words = {}) {
  const wrong = /** @type {Record<string, string>} */ (REFUSALS)[code];
  return [path, code, wrong.replace(/\{(\w+)\}/g, (_, name) => String(words[name]))];
}

/** A path as a sentence shows it; places count from one. @param {Path} path */
export function place(path) {
  let words = "";
  for (const key of path) {
    if (typeof key === "number") words += `[${key + 1}]`;
    else words += (words ? "." : "") + (BARE.test(key) ? key : quote(key));
  }
  return words;
}

/** A value as a sentence shows it: text in quotes, on one line, never long. @param {unknown} value */
export function quote(value) {
  if (value === null || value === undefined) return "nothing";
  if (typeof value === "string") return quoted([...value]);
  if (typeof value === "number") return Math.abs(value) > LARGE ? "a number far too large" : figure(value);
  if (typeof value === "boolean") return String(value);
  return Array.isArray(value) ? "a list" : "a table";
}

/** A number as Python writes it. @param {number} value */
function figure(value) {
  if (value === 0 || Math.abs(value) >= SMALL) return String(value === 0 ? 0 : value);
  return value.toExponential().replace(/e-(\d)$/, "e-0$1");
}

/** A number that a sentence states, without an exponent. @param {number} value */
export function plain(value) {
  return value.toFixed(6).replace(/\.?0+$/, "");
}

/** @param {string[]} signs */
function quoted(signs) {
  const shown = signs.length <= MOST_QUOTED ? signs : [...signs.slice(0, MOST_QUOTED - 3), "..."];
  const mark = shown.includes("'") && !shown.includes('"') ? '"' : "'";
  return mark + shown.map((sign) => (sign === mark ? `\\${sign}` : escaped(sign))).join("") + mark;
}

/** @param {string} sign */
function escaped(sign) {
  if (sign in SHORT) return SHORT[sign];
  if (!UNSEEN.test(sign)) return sign;
  const code = /** @type {number} */ (sign.codePointAt(0));
  const hex = (/** @type {number} */ wide) => code.toString(16).padStart(wide, "0");
  if (code < 0x100) return `\\x${hex(2)}`;
  return code < 0x10000 ? `\\u${hex(4)}` : `\\U${hex(8)}`;
}
