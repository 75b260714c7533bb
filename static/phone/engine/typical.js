/**
 * What objects show: the reading of a clue to expect in some cells, and its words.
 *
 * Model page: "A claim", for a cited clue that was not read.
 */

import { UNREADABLE } from "./code.js";
import { largest, round9, sum } from "./special.js";
import { figure } from "./words.js";

/** @import { ChoiceTable } from "./choice.js" */
/** @import { CodeTable } from "./code.js" */
/** @import { Reading } from "./find.js" */
/** @import { Clue } from "./guide.js" */
/** @import { MeasureTable } from "./measure.js" */
/** @import { ClueTable, Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

/** A field of a code is read if more than this share of the objects shows the same. */
export const MOST = 0.5;

/**
 * The reading to expect in the cells from `start` up to `stop`; null where the
 * guide does not say.
 * @param {Tables} tables
 * @param {ClueTable} table
 * @param {number} start
 * @param {number} stop
 * @returns {Reading}
 */
export function typical(tables, table, start, stop) {
  const spread = tables.cells.slice(start, stop).map((cell) => cell.spread);
  switch (table.name) {
    case "choice":
      return _option(table, spread, start);
    case "measure":
      return _size(table, spread, start);
    case "code":
      return _code(table, spread, start);
  }
}

/**
 * How often the cells from `start` up to `stop` show, as made, a reading that is
 * as likely as `orig` in each.
 * @param {Tables} tables
 * @param {Vector} orig
 * @param {number} start
 * @param {number} stop
 */
export function common(tables, orig, start, stop) {
  const spread = tables.cells.slice(start, stop).map((cell) => cell.spread);
  return _shown(orig, spread, start) / sum(spread);
}

/**
 * A reading that is not null in words: the option's label, the size, the code.
 * @param {Clue} clue
 * @param {Reading | undefined} reading
 */
export function shown(clue, reading) {
  const kind = clue.kind;
  switch (kind.name) {
    case "choice":
      return String(kind.options.find((o) => o.id === reading)?.label);
    case "measure":
      return `${figure(Number(reading))} ${kind.unit}`;
    case "code":
      return String(reading);
  }
}

/**
 * The likeliest option; null if all are as likely.
 * @param {ChoiceTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _option(table, spread, start) {
  const shares = table.likelihoods.map(({ orig }) =>
    round9(_shown(orig, spread, start)),
  );
  const most = Math.max(...shares);
  return most === Math.min(...shares) ? null : table.ids[shares.indexOf(most)];
}

/**
 * The size of most cells less the usual wear, as people write it down.
 * @param {MeasureTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _size(table, spread, start) {
  const kind = table.measure;
  const [c] = _prevailing(table.which, spread, start);
  const k = table.which[c];
  if (k === kind.sizes.length) {
    return null;
  }
  const size = Math.floor(100 * (kind.sizes[k].mean - kind.wear) + 0.5) / 100;
  return Math.min(Math.max(size, kind.low), kind.high);
}

/**
 * What most cells have in each field; unread where they differ too much.
 * @param {CodeTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _code(table, spread, start) {
  let reading = "";
  for (const [f, field] of table.code.fields.entries()) {
    const expected = table.expected[f];
    const [c, weight] = _prevailing(expected, spread, start);
    const same = round9(weight / sum(spread)) > MOST;
    reading += (same ? expected[c] : null) || UNREADABLE.repeat(field.width);
  }
  return [...reading].every((a) => a === UNREADABLE) ? null : reading;
}

/**
 * The first cell with the value that weighs most, and that weight.
 * @param {readonly unknown[]} values
 * @param {Vector} spread
 * @param {number} start
 * @returns {[number, number]}
 */
function _prevailing(values, spread, start) {
  /** @type {Map<unknown, number>} */
  const weights = new Map();
  for (const [i, w] of spread.entries()) {
    const value = values[start + i];
    weights.set(value, (weights.get(value) ?? 0) + w);
  }
  const [best, weight] = largest([...weights], ([, w]) => round9(w));
  return [values.indexOf(best, start), weight];
}

/**
 * @param {Vector} orig
 * @param {Vector} spread
 * @param {number} start
 */
function _shown(orig, spread, start) {
  let total = 0;
  for (let i = 0; i < spread.length; i++) {
    total += spread[i] * orig[start + i];
  }
  return total;
}
