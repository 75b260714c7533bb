/**
 * Code clues: stamped or printed strings of fixed-width fields, ? for unreadable.
 *
 * Model page: "code". Strings are spread before they are counted, since a character
 * may be more than one of the units that JavaScript's strings count in.
 */

import { blend, halves } from "./likelihood.js";

/** @import { Cell } from "./cells.js" */
/** @import { Clue, Code, Field } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Vector } from "./special.js" */

export const LOOK_ALIKES = Object.freeze([
  "0OQDC",
  "1IL7T",
  "2Z",
  "5S",
  "6G",
  "8B3",
  "UVY",
  "MNWH",
  "4A",
  "9GQ",
  "EF",
  "PR",
  "KX",
]);
export const LOOK_ALIKE = 5;
export const UNREADABLE = "?";

/**
 * What each field should read in each cell, field by field (null: not said),
 * and the likelihoods of the clean readings.
 *
 * The sources of a replaced part are the cells, and a last one that shows anything.
 * @typedef {object} CodeTable
 * @property {"code"} name
 * @property {Code} code
 * @property {number} misread
 * @property {Vector} sources
 * @property {readonly (readonly (string | null)[])[]} expected
 * @property {readonly Likelihood[]} clean
 */

/**
 * The table of a code clue.
 * @param {Clue} clue
 * @param {Code} kind
 * @param {readonly Cell[]} cells
 * @returns {CodeTable}
 */
export function code_table(clue, kind, cells) {
  const expected = kind.fields.map((field) =>
    cells.map((cell) => _expected(field, cell)),
  );
  const sources = halves(cells.map((cell) => cell.spread));
  /** @type {CodeTable} */
  const bare = {
    name: "code",
    code: kind,
    misread: clue.misread,
    sources,
    expected,
    clean: [],
  };
  const clean = _clean(bare).map((reading) => code_likelihood(bare, reading));
  return Object.freeze({ ...bare, clean });
}

/**
 * Likelihood of a reading of the code's full length.
 * @param {CodeTable} table
 * @param {string} reading
 * @returns {Likelihood}
 */
export function code_likelihood(table, reading) {
  const characters = [...reading];
  const orig = Array(table.sources.length - 1).fill(1);
  let out = 1;
  let start = 0;
  for (const [f, field] of table.code.fields.entries()) {
    const text = characters.slice(start, start + field.width);
    start += field.width;
    const uniform = _uniform(field, text);
    out *= uniform;
    const expected = table.expected[f];
    /** @type {Map<string | null, number>} */
    const by_text = new Map();
    for (let c = 0; c < orig.length; c++) {
      const right = expected[c];
      let share = by_text.get(right);
      if (share === undefined) {
        share = _field(field, text, right, uniform, table.misread);
        by_text.set(right, share);
      }
      orig[c] *= share;
    }
  }
  const by_source = [...orig, out];
  return Object.freeze({ orig, rep: blend(table.sources, by_source), out, by_source });
}

/**
 * What the field should read in the cell; null where nothing is said.
 * @param {Field} field
 * @param {Cell} cell
 * @returns {string | null}
 */
function _expected(field, cell) {
  const year = Math.floor(cell.t / 12);
  switch (field.means) {
    case "month":
      return [...field.alphabet][cell.t % 12];
    case "year":
      return String(year).slice(-field.width);
    case "year-letter":
      return new Map(field.codes).get(year) ?? null;
    case "model-year":
      return new Map(field.codes).get(cell.year) ?? null;
  }
  return null;
}

/**
 * The distinct readings without a mistake, in the order of the cells.
 *
 * Fields that say nothing about the date stay unread. A cell on which a dating
 * field is silent has no clean reading: the readings must not overlap.
 * @param {CodeTable} table
 */
function _clean(table) {
  const dating = table.expected.map((row) => row.some((right) => right !== null));
  /** @type {Set<string>} */
  const readings = new Set();
  for (let c = 0; c < table.sources.length - 1; c++) {
    const row = table.expected.map((expected) => expected[c]);
    if (row.every((right, f) => right || !dating[f])) {
      const fields = table.code.fields;
      const texts = row.map((right, f) => right || UNREADABLE.repeat(fields[f].width));
      readings.add(texts.join(""));
    }
  }
  return [...readings];
}

/**
 * Probability of what was read if every character were drawn by lot.
 * @param {Field} field
 * @param {string[]} text
 */
function _uniform(field, text) {
  const size = [...field.alphabet].length;
  let share = 1;
  for (const a of text) {
    if (a !== UNREADABLE) {
      share /= size;
    }
  }
  return share;
}

/**
 * Likelihood of one field where it should read `right`.
 * @param {Field} field
 * @param {string[]} text
 * @param {string | null} right
 * @param {number} uniform
 * @param {number} m
 */
function _field(field, text, right, uniform, m) {
  if (right === null) {
    return uniform;
  }
  let exact = 1;
  for (const [i, o] of [...right].entries()) {
    exact *= _character(field.alphabet, text[i], o, m);
  }
  return (1 - field.odd) * exact + field.odd * uniform;
}

/**
 * Probability of reading `a` where `o` stands.
 * @param {string} alphabet
 * @param {string} a
 * @param {string} o
 * @param {number} m
 */
function _character(alphabet, a, o, m) {
  if (a === UNREADABLE) {
    return 1;
  }
  if (a === o) {
    return 1 - m;
  }
  const alike = _alike(o);
  let total = 0;
  for (const b of alphabet) {
    if (b !== o) {
      total += alike.includes(b) ? LOOK_ALIKE : 1;
    }
  }
  return (m * (alike.includes(a) ? LOOK_ALIKE : 1)) / total;
}

/**
 * The characters that are easily taken for `o`, with itself.
 * @param {string} o
 */
function _alike(o) {
  return LOOK_ALIKES.filter((group) => group.includes(o)).join("");
}
