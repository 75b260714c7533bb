/** A code as somebody reads it off a specimen: its date, its layout, its characters. */

import { character } from "./code.js";
import { staying } from "./later.js";
import { among, exponential, pick } from "./lot.js";
import { sum } from "./special.js";

/** @import { CodeTable } from "./code.js" */
/** @import { Field } from "./guide.js" */
/** @import { LayoutTable, Texts } from "./layout.js" */
/** @import { Draw } from "./lot.js" */

/**
 * What is read where the code is of the cell at place `source`; of the last source
 * anything. null where no code was given yet.
 * @param {CodeTable} table
 * @param {Draw} draw
 * @param {number} source
 */
export function spelled(table, draw, source) {
  if (source >= table.which.length) {
    return _anything(table, draw);
  }
  let date = table.which[source];
  if (table.code.means === "not-before") {
    if (draw() < table.misread) {
      return _anything(table, draw);
    }
    date -= _late(table.code.lag, draw);
  }
  const weights = date >= 0 ? table.weights.map((row) => row[date]) : [];
  if (sum(weights) === 0) {
    return null;
  }
  const layout = table.layouts[pick(draw, weights)];
  return _laid_out(layout, draw, date, table.misread);
}

/**
 * How many months a mark is older than what it is on.
 * @param {number} lag
 * @param {Draw} draw
 */
function _late(lag, draw) {
  const fade = -Math.log(staying(12 * lag));
  return Math.floor(exponential(draw) / fade);
}

/**
 * @param {CodeTable} table
 * @param {Draw} draw
 */
function _anything(table, draw) {
  const layout = table.layouts[among(draw, table.layouts.length)];
  return layout.fields.map((field) => _by_lot(field, draw)).join("");
}

/**
 * A reading of the layout, which may not have been in use at the date.
 * @param {LayoutTable} layout
 * @param {Draw} draw
 * @param {number} date
 * @param {number} m
 */
function _laid_out(layout, draw, date, m) {
  const row = layout.rows[layout.which[date]];
  if (row.length === 0) {
    return layout.fields.map((field) => _by_lot(field, draw)).join("");
  }
  const [, places] = row[pick(draw, row.map(([share]) => share))];
  return layout.fields
    .map((field, f) => _field(field, layout.texts[f][places[f]], draw, m))
    .join("");
}

/**
 * One field as it is read where it should read any of `right`.
 * @param {Field} field
 * @param {Texts} right
 * @param {Draw} draw
 * @param {number} m
 */
function _field(field, right, draw, m) {
  if (right === null || draw() < field.odd) {
    return _by_lot(field, draw);
  }
  const meant = right[among(draw, right.length)];
  const alphabet = [...field.alphabet];
  return [...meant].map((o) => _character(alphabet, o, draw, m)).join("");
}

/**
 * @param {readonly string[]} alphabet
 * @param {string} o
 * @param {Draw} draw
 * @param {number} m
 */
function _character(alphabet, o, draw, m) {
  return alphabet[pick(draw, alphabet.map((a) => character(alphabet, a, o, m)))];
}

/**
 * @param {Field} field
 * @param {Draw} draw
 */
function _by_lot(field, draw) {
  const alphabet = [...field.alphabet];
  return Array.from({ length: field.width }, () => alphabet[among(draw, alphabet.length)]).join("");
}
