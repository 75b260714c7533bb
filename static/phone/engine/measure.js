/**
 * Measure clues: a size as made, less what polishing and use took away.
 *
 * Model page: "measure", and "What to look at next" for the cut at the deciles.
 */

import { measured } from "./find.js";
import { applies, blend, gathered, halves } from "./likelihood.js";
import { erfc, erfcx, phi, round9, sum } from "./special.js";

/** @import { Cell } from "./cells.js" */
/** @import { Reading } from "./find.js" */
/** @import { Clue, Measure, Size } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Vector } from "./special.js" */

export const STEPS = 120;
export const CUTS = 10;

/**
 * Cells by class: one class a size, and a last one where the guide is silent.
 *
 * `which` is the class of each cell, `rows` the probability of each of the equal
 * steps of the range, class by class. The sources of a replaced part are the classes
 * as they are when the member is not known, and a last one that shows anything.
 * @typedef {object} MeasureTable
 * @property {"measure"} name
 * @property {Measure} measure
 * @property {number} misread
 * @property {readonly number[]} which
 * @property {Vector} sources
 * @property {readonly Vector[]} rows
 */

/**
 * The table for a set member (null: not known).
 * @param {Clue} clue
 * @param {Measure} kind
 * @param {readonly Cell[]} cells
 * @param {string | null} member
 * @returns {Generator<void, MeasureTable, void>}
 */
export function* measure_table(clue, kind, cells, member) {
  const share = Array(kind.sizes.length + 1).fill(0);
  for (const cell of cells) {
    share[_class(kind, cell, null)] += cell.spread;
  }
  const rows = [];
  for (const size of kind.sizes) {
    rows.push(_steps(kind, size, clue.misread));
    yield;
  }
  rows.push(Array(STEPS).fill(1 / STEPS));
  return Object.freeze({
    name: "measure",
    measure: kind,
    misread: clue.misread,
    which: cells.map((cell) => _class(kind, cell, member)),
    sources: halves(share),
    rows,
  });
}

/**
 * The same table for another set member: only the classes of the cells differ.
 * @param {MeasureTable} table
 * @param {readonly Cell[]} cells
 * @param {string | null} member
 * @returns {MeasureTable}
 */
export function measure_for(table, cells, member) {
  const which = cells.map((cell) => _class(table.measure, cell, member));
  return Object.freeze({ ...table, which });
}

/**
 * Likelihood (a density, per unit) of a size that was measured.
 *
 * Its standard error is normal, so it joins the spread in quadrature.
 * @param {MeasureTable} table
 * @param {Reading} reading
 */
export function measure_likelihood(table, reading) {
  const { measure: kind, misread: m } = table;
  const { value: x, error } = measured(reading);
  const out = _any(x, error, kind);
  const by_class = kind.sizes.map(
    ({ mean, sd }) =>
      (1 - m) * density(x, mean, _joined(sd, error), kind.wear) + m * out,
  );
  by_class.push(out);
  return _likelihood(table, by_class, out);
}

/**
 * Likelihoods of the readings to expect, cut at their predictive deciles.
 *
 * `original` is the probability of each cell with the part original, `replaced`
 * of the part being replaced, `outside` of none of these, and `whole` of each
 * source with the part replaced on the whole set.
 * @param {MeasureTable} table
 * @param {Vector} original
 * @param {number} replaced
 * @param {number} outside
 * @param {Vector} whole
 */
export function measure_outcomes(table, original, replaced, outside, whole = []) {
  const { which, sources } = table;
  const mass = gathered(which, sources, original, replaced, outside, whole);
  // The silent class shows anything, as the last source and what is outside do.
  const rows = [...table.rows, table.rows[table.rows.length - 1]];
  /** @type {Likelihood[]} */
  const outcomes = [];
  let start = 0;
  let run = 0;
  for (let i = 0; i < STEPS; i++) {
    for (let k = 0; k < mass.length; k++) {
      run += mass[k] * rows[k][i];
    }
    if (round9(run) >= (outcomes.length + 1) / CUTS || i + 1 === STEPS) {
      const by_class = table.rows.map((row) => sum(row, start, i + 1));
      outcomes.push(_likelihood(table, by_class, (i + 1 - start) / STEPS));
      start = i + 1;
    }
  }
  return outcomes;
}

/**
 * Normal(mean, sd) minus an exponential of mean `wear`, at `x`.
 * @param {number} x
 * @param {number} mean
 * @param {number} sd
 * @param {number} wear
 */
export function density(x, mean, sd, wear) {
  const z = (x - mean) / sd;
  if (wear === 0) {
    return Math.exp((-z * z) / 2) / (sd * Math.sqrt(2 * Math.PI));
  }
  const rate = 1 / wear;
  const u = (rate * sd + z) / Math.sqrt(2);
  if (u >= 0) {
    return (rate / 2) * Math.exp((-z * z) / 2) * erfcx(u);
  }
  return (
    (rate / 2) * Math.exp((rate * (rate * sd * sd + 2 * (x - mean))) / 2) * erfc(u)
  );
}

/**
 * Density at `x` where any size of the range is as likely, seen with the error.
 * @param {number} x
 * @param {number} error
 * @param {Measure} kind
 */
function _any(x, error, kind) {
  const width = kind.high - kind.low;
  if (error === 0) {
    return 1 / width;
  }
  return (phi((kind.high - x) / error) - phi((kind.low - x) / error)) / width;
}

/**
 * The spread of a size together with the error that it is measured with.
 * @param {number} sd
 * @param {number} error
 */
function _joined(sd, error) {
  return Math.sqrt(sd * sd + error * error);
}

/**
 * The first size that covers the cell, or the silent class.
 * @param {Measure} kind
 * @param {Cell} cell
 * @param {string | null} member
 */
function _class(kind, cell, member) {
  for (const [k, size] of kind.sizes.entries()) {
    const covered = size.years[0] <= cell.year && cell.year <= size.years[1];
    if (covered && applies(size.members, size.excluded, member)) {
      return k;
    }
  }
  return kind.sizes.length;
}

/**
 * Probability of each step of the range; what lies beyond counts at its ends.
 * @param {Measure} kind
 * @param {Size} size
 * @param {number} m
 * @returns {Vector}
 */
function _steps(kind, size, m) {
  const width = (kind.high - kind.low) / STEPS;
  const edges = [0];
  for (let i = 1; i < STEPS; i++) {
    edges.push(_below(kind.low + i * width, kind, size));
  }
  edges.push(1);
  return edges.slice(1).map((edge, i) => (1 - m) * (edge - edges[i]) + m / STEPS);
}

/**
 * Probability of a size below `x`: the normal's, and the part worn down past it,
 * which is `wear` times the density.
 * @param {number} x
 * @param {Measure} kind
 * @param {Size} size
 */
function _below(x, kind, size) {
  const worn = kind.wear * density(x, size.mean, size.sd, kind.wear);
  return phi((x - size.mean) / size.sd) + worn;
}

/**
 * @param {MeasureTable} table
 * @param {Vector} by_class
 * @param {number} out
 * @returns {Likelihood}
 */
function _likelihood(table, by_class, out) {
  const orig = table.which.map((k) => by_class[k]);
  const by_source = [...by_class, out];
  return Object.freeze({ orig, rep: blend(table.sources, by_source), out, by_source });
}
