/** A code on a keypad of its own alphabet, field by field. */

import { element, piece, set, slot } from "./dom.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../engine/guide.js").Field} Field */

export const UNREADABLE = "?";
/** Up to so many keys stand five in a row. */
const FEW = 10;

/**
 * The keypad of a code, with what was typed so far.
 * @param {readonly Field[]} fields
 * @param {string} typed
 * @param {string} wrong
 */
export function drawKeypad(fields, typed, wrong) {
  const now = fieldAt(fields, typed.length);
  const made = piece("keypad", {
    spoken: spoken(fields, typed),
    fields: stamped(fields, typed),
    now: now ? prompt(now, fields, typed.length) : "That is the whole code.",
    keys: now ? [...now.alphabet].map((letter) => key(letter, letter)) : null,
    ways: ways(now, typed),
    wrong,
  });
  if (!now) return made;
  const keys = set(slot(made, "keys"), { "aria-label": `Keys for the ${now.name}` });
  keys.classList.toggle("keypad__keys--few", now.alphabet.length <= FEW);
  return made;
}

/**
 * What a key makes of the typed text: a character of the field, unreadable, or back.
 * @param {readonly Field[]} fields
 * @param {string} typed
 * @param {string} key
 */
export function press(fields, typed, key) {
  if (key === "back") return typed.slice(0, -1);
  const known = fieldAt(fields, typed.length)?.alphabet;
  if (!known) return typed;
  // A keyboard types small letters where the stamp has large ones.
  const meant = [key, key.toUpperCase()].find((each) => (UNREADABLE + known).includes(each));
  return typed + (meant ?? "");
}

/**
 * What is wrong with the typed code; nothing if it is whole.
 * @param {readonly Field[]} fields
 * @param {string} typed
 */
export function incomplete(fields, typed) {
  const missing = width(fields) - typed.length;
  if (missing <= 0) return "";
  const many = missing === 1 ? "1 place is" : `${missing} places are`;
  return `${many} still empty. Use “Unreadable” for what cannot be read.`;
}

/** @param {readonly Field[]} fields */
function width(fields) {
  return fields.reduce((sum, field) => sum + field.width, 0);
}

/** The field that the next character belongs to. @param {readonly Field[]} fields @param {number} place */
function fieldAt(fields, place) {
  let end = 0;
  return fields.find((field) => (end += field.width) > place) ?? null;
}

/** @param {Field} now @param {readonly Field[]} fields @param {number} place */
function prompt(now, fields, place) {
  const before = fields.slice(0, fields.indexOf(now));
  const at = place - width(before) + 1;
  return now.width === 1
    ? `Now the ${now.name}`
    : `Now the ${now.name}, ${at}\u00a0of\u00a0${now.width}`;
}

/** @param {readonly Field[]} fields @param {string} typed */
function spoken(fields, typed) {
  let at = 0;
  const parts = fields.map((field) => {
    const read = typed.slice(at, (at += field.width));
    const words = [...read].map((letter) => (letter === UNREADABLE ? "unreadable" : letter));
    return `${field.name} ${words.join(" ") || "empty"}`;
  });
  return `Typed so far: ${parts.join(", ")}.`;
}

/** @param {readonly Field[]} fields @param {string} typed */
function stamped(fields, typed) {
  let at = 0;
  return fields.map((field) => {
    const cells = Array.from({ length: field.width }, () => cell(typed, at++));
    return piece("field", { name: field.name, cells });
  });
}

/** @param {string} typed @param {number} at */
function cell(typed, at) {
  const letter = typed[at] ?? "";
  const made = element("span", "cell", letter);
  made.classList.toggle("cell--now", at === typed.length);
  made.classList.toggle("cell--lost", letter === UNREADABLE);
  return made;
}

/** @param {Field | null} now @param {string} typed */
function ways(now, typed) {
  const lost = set(key("Unreadable", UNREADABLE), { disabled: !now });
  const back = set(key("One back", "back"), { disabled: !typed });
  for (const wide of [lost, back]) wide.classList.add("key--wide");
  return [lost, back];
}

/** @param {string} label @param {string} value */
function key(label, value) {
  const made = set(element("button", "key", label), { type: "button" });
  Object.assign(made.dataset, { act: "key", key: value });
  return made;
}
