/**
 * Specimens drawn from a guide's own model: what nobody can see, and what is read.
 *
 * Model page: "Clues: how likely a reading is", taken the other way round.
 */

import { spelled } from "./codespecimen.js";
import { among, exponential, normal, pick } from "./lot.js";
import { tables_for } from "./prepare.js";
import { round9, sum } from "./special.js";

/** @import { Reading } from "./find.js" */
/** @import { Measure } from "./guide.js" */
/** @import { Draw } from "./lot.js" */
/** @import { MeasureTable } from "./measure.js" */
/** @import { NumberTable } from "./number.js" */
/** @import { Forest } from "./parts.js" */
/** @import { ClueTable, Tables } from "./prepare.js" */

// A size is read as fine as about a hundredth of what the clue takes.
export const FINE = 100;

/**
 * An object of the guide: the place of its cell and which parts are replaced,
 * which nobody can see, and what is read of each clue, null where it cannot be told.
 * @typedef {object} Specimen
 * @property {number} cell
 * @property {readonly boolean[]} replaced
 * @property {string | null} member
 * @property {readonly (readonly [string, Reading])[]} readings
 */

/**
 * A specimen of the model year at place `y`, or of any as often as they are.
 * @param {Tables} tables
 * @param {Draw} draw
 * @param {{y: number | null, member: string | null}} by
 * @returns {Specimen}
 */
export function specimen(tables, draw, { y, member }) {
  const cell = _cell(tables, draw, y);
  const replaced = _replaced(tables.forest, draw);
  /** @type {[string, Reading][]} */
  const readings = [];
  for (const [k, table] of tables_for(tables, member).entries()) {
    const clue = tables.guide.clues[k];
    const hidden = draw() < clue.unreadable;
    const reading = shows(table, draw, cell, replaced[tables.part_of[k]]);
    readings.push([clue.id, hidden ? null : reading]);
  }
  return Object.freeze({ cell, replaced, member, readings });
}

/**
 * What somebody reads of one clue, mistakes included.
 * @param {ClueTable} table
 * @param {Draw} draw
 * @param {number} cell
 * @param {boolean} replaced
 * @returns {Reading}
 */
export function shows(table, draw, cell, replaced) {
  switch (table.name) {
    case "choice": {
      const weights = table.likelihoods.map((x) => (replaced ? x.rep : x.orig[cell]));
      return table.ids[pick(draw, weights)];
    }
    case "measure":
      return _size(table, draw, cell, replaced);
    case "code":
      return spelled(table, draw, replaced ? pick(draw, table.sources) : cell);
    case "number":
      return _number(table, draw, cell, replaced);
  }
}

/**
 * A cell by lot, never outside.
 * @param {Tables} tables
 * @param {Draw} draw
 * @param {number | null} y
 */
function _cell(tables, draw, y) {
  if (y === null) {
    return pick(draw, tables.prior.slice(0, -1));
  }
  const [start, stop] = tables.stretches[y];
  return start + among(draw, stop - start);
}

/**
 * Which parts are replaced, on an object by itself.
 * @param {Forest} forest
 * @param {Draw} draw
 */
function _replaced(forest, draw) {
  /** @type {boolean[]} */
  const found = forest.order.map(() => false);
  for (const p of forest.order) {
    const parent = forest.parent[p];
    const after = parent !== null && found[parent];
    found[p] = draw() < forest.rates[p][after ? 1 : 0];
  }
  return found;
}

/**
 * A size as it was made, less the wear; or any of the range.
 * @param {MeasureTable} table
 * @param {Draw} draw
 * @param {number} cell
 * @param {boolean} replaced
 */
function _size(table, draw, cell, replaced) {
  const kind = table.measure;
  const k = replaced ? pick(draw, table.sources) : table.which[cell];
  if (k >= kind.sizes.length || draw() < table.misread) {
    return _as_read(kind, kind.low + draw() * (kind.high - kind.low));
  }
  const worn = kind.wear > 0 ? kind.wear * exponential(draw) : 0;
  const made = kind.sizes[k].mean + kind.sizes[k].sd * normal(draw);
  return _as_read(kind, made - worn);
}

/**
 * A size within the range, as fine as it would be read.
 * @param {Measure} kind
 * @param {number} x
 */
function _as_read(kind, x) {
  const within = Math.min(Math.max(x, kind.low), kind.high);
  const step = 10 ** Math.floor(Math.log10((kind.high - kind.low) / FINE));
  return round9(Math.floor(within / step + 0.5) * step);
}

/**
 * A number of the year in which it was given, or any; null where none was.
 * @param {NumberTable} table
 * @param {Draw} draw
 * @param {number} cell
 * @param {boolean} replaced
 */
function _number(table, draw, cell, replaced) {
  const kind = table.number;
  const k = replaced ? pick(draw, table.sources) : table.which[cell];
  if (k === table.rows.length || draw() < table.misread) {
    return kind.first[0][1] + among(draw, sum(table.counts));
  }
  const row = table.rows[k];
  // What is left over are years that the table does not know.
  const i = pick(draw, [...row, Math.max(1 - sum(row), 0)]);
  if (i === row.length) {
    return null;
  }
  return kind.first[i][1] + among(draw, table.counts[i]);
}
