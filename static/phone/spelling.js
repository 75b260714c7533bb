/**
 * A code while it is typed: what it may be, what may stand next, what is missing.
 *
 * Pure. A code that was laid out in several ways is followed in all of them that what
 * was typed still fits; ? stands for a character that cannot be read and fits anywhere.
 */

import { UNREADABLE } from "./engine/code.js";
import { layouts } from "./engine/guide.js";
import { fits } from "./engine/layout.js";
import { listed } from "./engine/words.js";

/** @typedef {import("./engine/guide.js").Field} Field */
/** @typedef {Pick<import("./engine/guide.js").Code, "fields" | "layouts">} Code */
/** @typedef {readonly {name: string, width: number}[]} Row Fields one beside the other. */

export const BACK = "back";

/**
 * How the places stand: a row for each way to divide them. Where fields of one shape have
 * several names, it is one or the other.
 * @param {Code} code @param {string} typed @returns {Row[]}
 */
export function rows(code, typed) {
  const found = open(code, typed);
  return distinct(found.map(shape)).map((each) => {
    const [first, ...others] = found.filter((fields) => shape(fields) === each);
    return first.map(({ name, width }, f) => ({
      name: either([name, ...others.map((fields) => fields[f].name)]),
      width,
    }));
  });
}

/**
 * The characters that may stand next, in the order in which one looks for them; none
 * where the code is whole.
 * @param {Code} code @param {string} typed
 */
export function keys(code, typed) {
  return distinct(next(code, typed).flatMap(({ alphabet }) => [...alphabet])).sort();
}

/**
 * What comes next, by name and place.
 * @param {Code} code @param {string} typed
 */
export function prompt(code, typed) {
  const fields = next(code, typed);
  if (!fields.length) return "That is the whole code.";
  const places = distinct(fields.map(({ at, width }) => `${at}\u00a0of\u00a0${width}`));
  const name = either(fields.map((field) => `the ${field.name}`));
  const told = places.length === 1 && fields[0].width > 1 ? `${name}, ${places}` : name;
  return isWhole(code, typed) ? `It may end here. If there is more: ${told}` : `Now ${told}`;
}

/**
 * What a key makes of the typed text: a character that may stand there, unreadable, or
 * one back.
 * @param {Code} code @param {string} typed @param {string} key
 */
export function press(code, typed, key) {
  if (key === BACK) return [...typed].slice(0, -1).join("");
  const known = keys(code, typed);
  if (!known.length) return typed;
  // A keyboard types small letters where the stamp has large ones.
  const meant = [key, key.toUpperCase()].find((a) => a === UNREADABLE || known.includes(a));
  return typed + (meant ?? "");
}

/**
 * What is missing of the typed code, in a sentence; nothing if it is whole.
 * @param {Code} code @param {string} typed
 */
export function missing(code, typed) {
  if (isWhole(code, typed)) return "";
  if (!typed) return "Type the code, with “Unreadable” for what cannot be read.";
  const found = open(code, typed);
  const least = Math.min(...found.map((fields) => left(fields, typed)));
  const nearest = found.filter((fields) => left(fields, typed) === least);
  const names = nearest.map((fields) => {
    const empty = fields.filter((_, f) => left(fields.slice(0, f + 1), typed) > 0);
    return `the ${listed(empty.map(({ name }) => name))}`;
  });
  return `Still missing: ${either(names)}. Use “Unreadable” for what cannot be read.`;
}

/**
 * The code as it is shown: its fields apart where there are several layouts and only one
 * way to divide it.
 * @param {Code} code @param {string} reading
 */
export function apart(code, reading) {
  const whole = rows(code, reading).filter((row) => left(row, reading) === 0);
  if (!code.layouts.length || whole.length !== 1) return reading;
  return divided(whole[0], reading)
    .map((part) => part.join(""))
    .join(" ");
}

/** The characters of each field of a row. @param {Row} row @param {string} typed */
export function divided(row, typed) {
  const characters = [...typed];
  let end = 0;
  return row.map(({ width }) => characters.slice(end, (end += width)));
}

/**
 * The fields of each layout that the text is, or may become.
 * @param {Code} code @param {string} typed
 */
function open(code, typed) {
  return layouts(code)
    .map(({ fields }) => fields)
    .filter((fields) => {
      const rest = left(fields, typed);
      return rest >= 0 && fits(typed + UNREADABLE.repeat(rest), fields, UNREADABLE);
    });
}

/** Whether the text is a whole code, though there may be a longer one. @param {Code} code @param {string} typed */
const isWhole = (code, typed) =>
  open(code, typed).some((fields) => left(fields, typed) === 0);

/** How many characters are missing; fewer than none where there are too many. @param {Row} fields @param {string} typed */
function left(fields, typed) {
  return fields.reduce((sum, { width }) => sum + width, 0) - [...typed].length;
}

/**
 * The fields that the next character may belong to, with its place in each.
 * @param {Code} code @param {string} typed
 */
function next(code, typed) {
  return open(code, typed).flatMap((fields) => {
    const f = fields.findIndex((_, f) => left(fields.slice(0, f + 1), typed) > 0);
    if (f < 0) return [];
    return { ...fields[f], at: 1 - left(fields.slice(0, f), typed) };
  });
}

/** @param {readonly Field[]} fields */
const shape = (fields) => fields.map(({ width }) => width).join();

/** @param {readonly string[]} names */
const either = (names) => distinct(names).join(" or ");

/** @param {readonly string[]} things */
const distinct = (things) => [...new Set(things)];
