/** A measure: a number with its unit, a ruler that shows where it lies, a hint. */

import { figure } from "../engine/words.js";
import { piece, set, slot } from "./dom.js";
import { picture } from "./picture.js";
import { drawRuler } from "./ruler.js";

/** @typedef {import("../engine/guide.js").Measure} Measure */
/** @typedef {import("../engine/guide.js").Clue} Clue */

/** Millimetres in a unit of length. */
const LENGTHS = { mm: 1, cm: 10, in: 25.4 };
/** What the edge of a sheet of paper can carry, in millimetres. */
const SHEET = 250;
const ON_PAPER =
  "No tool at hand? Mark the size on the edge of a piece of paper and lay that along a ruler later.";
const ON_STRING =
  "No tool at hand? Mark the length on a string with a knot and measure that later.";
/** A guide that tells how to do without a tool knows better. */
const SAID = /\bwithout\b/i;

/**
 * The field for a measure, with what was typed and what is wrong with it.
 * @param {Clue} clue
 * @param {Measure} kind the clue's own
 * @param {string} typed
 * @param {string} wrong
 */
export function drawMeasure(clue, kind, typed, wrong) {
  const { unit, low, high } = kind;
  const made = piece("measure", {
    picture: clue.picture ? picture(clue.picture) : null,
    label: `The size in ${unit}`,
    unit,
    range: `${figure(low)} to ${figure(high)} ${unit}`,
    wrong,
    ruler: drawRuler(kind, parse(typed, unit)),
    without: without(clue.where, kind),
  });
  set(slot(made, "input"), { value: typed, "aria-invalid": wrong ? "true" : null });
  return made;
}

/** How to do without a tool, where that can be said. @param {string} where @param {Measure} kind */
function without(where, { unit, high }) {
  const length = LENGTHS[/** @type {keyof LENGTHS} */ (unit)];
  if (!length || SAID.test(where)) return null;
  return high * length <= SHEET ? ON_PAPER : ON_STRING;
}

/**
 * The number that was typed, comma or point, with its unit or without; null if it is none.
 * @param {string} typed
 * @param {string} unit
 */
export function parse(typed, unit) {
  const text = typed.trim().replace(",", ".").replace(new RegExp(`\\s*${unit}$`), "");
  return /^\d+(\.\d*)?$|^\.\d+$/.test(text) ? Number(text) : null;
}

/**
 * What is wrong with the typed measure, in a sentence; nothing if it will do.
 * @param {Measure} kind
 * @param {string} typed
 */
export function unfit(kind, typed) {
  const { unit, low, high } = kind;
  const size = parse(typed, unit);
  const range = `${figure(low)} to ${figure(high)} ${unit}`;
  if (!typed.trim()) return `Type the size in ${unit}, or choose “Can’t tell”.`;
  if (size === null) return `Type a size from ${range}, for example ${example(low, high)}.`;
  if (size >= low && size <= high) return "";
  return `${figure(size)} ${unit} is outside ${range}. Look again, or check the unit.`;
}

/** @param {number} low @param {number} high */
function example(low, high) {
  return figure(Math.round(low + high) / 2);
}

/**
 * Moves the ruler's mark while the size is being typed, and takes back what was wrong.
 * @param {HTMLElement} root
 * @param {Measure} kind
 * @param {string} typed
 */
export function moveMark(root, kind, typed) {
  root.querySelector("[data-ruler]")?.replaceChildren(drawRuler(kind, parse(typed, kind.unit)));
  root.querySelector("#size")?.removeAttribute("aria-invalid");
  root.querySelector("#size-wrong")?.replaceChildren();
}
