/** A measure: a number with its unit, a ruler that shows where it lies, a hint. */

import { figure } from "../engine/words.js";
import { piece, set, slot } from "./dom.js";
import { picture } from "./picture.js";
import { drawRuler } from "./ruler.js";

/** What to do without tools, for units that a strip of paper can carry. */
const WITHOUT = {
  mm: "No tool at hand? Mark the size on the edge of a piece of paper and lay it along any ruler. A millimetre either way is better than no reading.",
  in: "No tool at hand? Mark the size on the edge of a piece of paper and lay it along any ruler.",
  cm: "No tape at hand? Mark the length with a thumb on a stick or a string and measure that later.",
};

/** A guide that tells how to do without a tool knows better. */
const SAID = /\bwithout\b/i;

/**
 * The field for a measure, with what was typed and what is wrong with it.
 * @param {any} clue
 * @param {string} typed
 * @param {string} wrong
 */
export function drawMeasure(clue, typed, wrong) {
  const { unit, low, high } = clue.kind;
  const without = SAID.test(clue.where) ? null : WITHOUT[/** @type {keyof WITHOUT} */ (unit)];
  const made = piece("measure", {
    picture: clue.picture ? picture(clue.picture) : null,
    label: `The size in ${unit}`,
    unit,
    range: `${figure(low)} to ${figure(high)} ${unit}`,
    wrong,
    ruler: drawRuler(clue.kind, parse(typed)),
    without: without ?? null,
  });
  set(slot(made, "input"), { value: typed, "aria-invalid": wrong ? "true" : null });
  return made;
}

/**
 * The number that was typed, comma or point; null if it is none.
 * @param {string} typed
 */
export function parse(typed) {
  const text = typed.trim().replace(",", ".");
  return /^\d+(\.\d*)?$|^\.\d+$/.test(text) ? Number(text) : null;
}

/**
 * What is wrong with the typed measure, in a sentence; nothing if it will do.
 * @param {any} kind
 * @param {string} typed
 */
export function unfit(kind, typed) {
  const { unit, low, high } = kind;
  const size = parse(typed);
  if (!typed.trim()) return `Type the size in ${unit}, or choose “Can’t tell”.`;
  if (size === null) return `“${typed.trim()}” is not a number. Type it like ${example(low, high)}.`;
  if (size >= low && size <= high) return "";
  return `${figure(size)} ${unit} is outside ${figure(low)} to ${figure(high)} ${unit}. Look again, or check the unit.`;
}

/** @param {number} low @param {number} high */
function example(low, high) {
  return figure(Math.round(low + high) / 2);
}

/**
 * Moves the ruler's mark while the size is being typed.
 * @param {HTMLElement} root
 * @param {any} kind
 * @param {string} typed
 */
export function moveMark(root, kind, typed) {
  root.querySelector("[data-ruler]")?.replaceChildren(drawRuler(kind, parse(typed)));
}
