/**
 * Cells, the (model year, build month) pairs, and their prior.
 *
 * Model page: "Hypotheses: cells".
 */

/** @import { Guide } from "./guide.js" */

/**
 * Model year `year`, built in month `t`; `spread` is its share of the inside.
 * @typedef {object} Cell
 * @property {number} year
 * @property {number} t
 * @property {number} spread
 */

/**
 * All cells, model year by model year; their spreads sum to one.
 * @param {Guide} guide
 * @returns {Cell[]}
 */
export function cells(guide) {
  const volume = guide.years.reduce((total, y) => total + y.volume, 0);
  const found = [];
  for (const y of guide.years) {
    for (let t = y.opens; t <= y.closes; t++) {
      const spread = y.volume / volume / (y.closes - y.opens + 1);
      found.push(Object.freeze({ year: y.year, t, spread }));
    }
  }
  return found;
}

/**
 * Where each model year's cells begin and end (one past the last).
 * @param {Guide} guide
 * @returns {[number, number][]}
 */
export function stretches(guide) {
  /** @type {[number, number][]} */
  const ends = [];
  let stop = 0;
  for (const y of guide.years) {
    const start = stop;
    stop += y.closes - y.opens + 1;
    ends.push([start, stop]);
  }
  return ends;
}
