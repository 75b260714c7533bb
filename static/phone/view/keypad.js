/** A code on a keypad of its own alphabet, field by field, in all layouts that fit. */

import { UNREADABLE } from "../engine/code.js";
import { BACK, divided, keys, prompt, rows } from "../spelling.js";
import { element, piece } from "./dom.js";

/** @typedef {import("../spelling.js").Code} Code */
/** @typedef {import("../spelling.js").Row} Row */

/** Up to so many keys stand five in a row. */
const FEW = 10;
/** More keys than letters are smaller. */
const MANY = 26;

/**
 * The keypad of a code, with what was typed so far.
 * @param {Code} code
 * @param {string} typed
 * @returns {import("./pad.js").Pad}
 */
export function codePad(code, typed) {
  const known = keys(code, typed);
  const shown = rows(code, typed);
  const now = prompt(code, typed);
  /** @type {readonly [string, string]} */
  const back = ["One back", BACK];
  return {
    spoken: `${spoken(shown, typed)} ${now}`,
    stamp: shown.flatMap((row, i) => [
      ...(i ? [element("span", "keypad__or", "or")] : []),
      stamped(row, typed, shown.length > 1),
    ]),
    now,
    label: "Keys",
    shape: known.length > MANY ? "many" : known.length > FEW ? "some" : "few",
    keys: known.map((a) => [a, a]),
    ways: known.length ? [["Unreadable", UNREADABLE], back] : [back],
  };
}

/** What was typed, by field where there is one way to divide it. @param {readonly Row[]} shown @param {string} typed */
function spoken([row, ...others], typed) {
  if (others.length) return `Typed so far: ${letters([...typed])}.`;
  const parts = divided(row, typed).map((part, f) => `${row[f].name} ${letters(part)}`);
  return `Typed so far: ${parts.join(", ")}.`;
}

/** @param {readonly string[]} part */
function letters(part) {
  return part.map((a) => (a === UNREADABLE ? "unreadable" : a)).join(" ") || "empty";
}

/** @param {Row} row @param {string} typed @param {boolean} small */
function stamped(row, typed, small) {
  const characters = [...typed];
  let at = 0;
  const fields = row.map(({ name, width }) => {
    const isNow = at <= characters.length && characters.length < at + width;
    const cells = Array.from({ length: width }, () => cell(characters, at++));
    const made = piece("field", { name, cells });
    made.classList.toggle("field--now", isNow);
    return made;
  });
  const made = element("div", "keypad__fields", ...fields);
  made.classList.toggle("keypad__fields--small", small);
  return made;
}

/** @param {readonly string[]} characters @param {number} at */
function cell(characters, at) {
  const letter = characters[at] ?? "";
  const made = element("span", "cell", letter);
  made.classList.toggle("cell--now", at === characters.length);
  made.classList.toggle("cell--lost", letter === UNREADABLE);
  return made;
}
