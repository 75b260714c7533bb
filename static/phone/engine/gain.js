/**
 * What to look at next: expected information, per second, and when to stop.
 *
 * Model page: "What to look at next".
 */

import { ranked } from "./one.js";
import { outcomes, tables_for } from "./prepare.js";
import { largest, pairs, round9, sum } from "./special.js";
import { figure } from "./words.js";

/** @import { Item, Next } from "./find.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

/** Bits below which a clue is not worth looking at. */
export const WORTHWHILE = 0.02;
/** How many of the most probable model years a reason is sought among. */
export const RIVALS = 4;

/**
 * Joint probability of each outcome (row) with each model year and outside.
 * @typedef {readonly Vector[]} Rows
 */

/**
 * The clue at place `k` of the guide, and what reading it is expected to tell.
 * @typedef {object} Prospect
 * @property {number} k
 * @property {number} bits
 * @property {number} bits_per_second
 * @property {Rows} rows
 */

/**
 * Every clue that can still be looked at, best first.
 *
 * `claimed` is the place of a claimed model year, which is then what the clues are
 * to tell; `away` leaves out what must be held in the hand, `without` the clues
 * that need one of these tools.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {{claimed: number | null, away: boolean, without: readonly string[]}} limits
 * @returns {Prospect[]}
 */
export function prospects(tables, item, posterior, { claimed, away, without }) {
  const answered = item.readings.map(([clue]) => clue);
  /** @type {Prospect[]} */
  const found = [];
  for (const [k, clue] of tables.guide.clues.entries()) {
    if (answered.includes(clue.id) || item.gone.includes(clue.part)) {
      continue;
    }
    if ((away && clue.seen_from !== "away") || without.includes(clue.needs)) {
      continue;
    }
    const rows = _rows(tables, item, posterior, k);
    const aim =
      claimed === null ? rows : rows.map((row) => _for_and_against(row, claimed));
    const bits = (1 - clue.unreadable) * gain(aim);
    found.push(Object.freeze({ k, bits, bits_per_second: bits / clue.seconds, rows }));
  }
  return found.sort((a, b) => round9(b.bits_per_second) - round9(a.bits_per_second));
}

/**
 * A prospect with its reason in words.
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @param {Prospect} prospect
 * @returns {Next}
 */
export function advice(tables, posterior, prospect) {
  const clue = tables.guide.clues[prospect.k];
  const effort = `${figure(clue.seconds)} seconds; ${clue.needs || "no tools"}`;
  let reason;
  if (prospect.bits < WORTHWHILE) {
    reason = "tells next to nothing now";
  } else {
    const rivals = ranked(posterior).slice(0, RIVALS);
    const [i, j] = largest(pairs(rivals.sort((a, b) => a - b)), (pair) =>
      round9(between(prospect.rows, ...pair)),
    ) ?? [0, 0];
    const years = tables.guide.years;
    reason = `splits ${years[i].year} from ${years[j].year} best`;
    if (i === j) {
      reason = `tells ${years[i].year} from anything else`;
    }
  }
  return Object.freeze({
    clue: clue.id,
    bits: prospect.bits,
    bits_per_second: prospect.bits_per_second,
    say: `${reason}; ${effort}`,
  });
}

/**
 * The prospect that best tells the model years at two places apart, if any can.
 * @param {Tables} tables
 * @param {readonly Prospect[]} found
 * @param {number} i
 * @param {number} j
 */
export function separator(tables, found, i, j) {
  const best = largest(found, (prospect) => round9(_weighed(tables, prospect, i, j)));
  if (best === undefined || _weighed(tables, best, i, j) < WORTHWHILE) {
    return null;
  }
  return best;
}

/**
 * Bits of the question "year `i` or year `j`?", weighed by how likely it is to
 * be one of the two.
 * @param {Rows} rows
 * @param {number} i
 * @param {number} j
 */
export function between(rows, i, j) {
  const two = rows.map((row) => [row[i], row[j]]);
  return two.reduce((total, [a, b]) => total + (a + b), 0) * gain(two);
}

/**
 * Expected fall of the entropy of the columns, in bits, from learning the row.
 *
 * Mitchell, Machine Learning (1997), section 3.4.1.
 * @param {Rows} rows
 */
export function gain(rows) {
  const columns = Array(rows[0].length).fill(0);
  let total = 0;
  let expected = 0;
  for (const row of rows) {
    let share = 0;
    for (let i = 0; i < row.length; i++) {
      share += row[i];
      columns[i] += row[i];
    }
    total += share;
    expected += share * entropy(row);
  }
  return total === 0 ? 0 : entropy(columns) - expected / total;
}

/**
 * Entropy in bits of weights that need not sum to one.
 * @param {Vector} weights
 */
export function entropy(weights) {
  let total = 0;
  let spent = 0;
  for (let i = 0; i < weights.length; i++) {
    const w = weights[i];
    if (w > 0) {
      total += w;
      spent += w * Math.log2(w);
    }
  }
  return total === 0 ? 0 : Math.log2(total) - spent / total;
}

/**
 * Joint probability of every outcome of a clue with every model year; what the
 * outcomes leave over is one more.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {number} k
 * @returns {Rows}
 */
function _rows(tables, item, posterior, k) {
  const p = tables.part_of[k];
  const original = posterior.original[p];
  const replaced = posterior.replaced[p];
  const by_year = tables.stretches.map(([start, stop]) => sum(replaced, start, stop));
  const found = outcomes(
    tables_for(tables, item.member)[k],
    original,
    sum(by_year),
    posterior.outside,
  );
  const left = [...posterior.years, posterior.outside];
  const rows = found.map(({ orig, rep, out }) => {
    const row = by_year.map((later, y) => {
      const [start, stop] = tables.stretches[y];
      let total = rep * later;
      for (let i = start; i < stop; i++) {
        total += orig[i] * original[i];
      }
      return total;
    });
    row.push(out * posterior.outside);
    return row;
  });
  for (const row of rows) {
    for (let y = 0; y < left.length; y++) {
      left[y] -= row[y];
    }
  }
  rows.push(left.map((p) => Math.max(p, 0)));
  return rows;
}

/**
 * @param {Vector} row
 * @param {number} claimed
 */
function _for_and_against(row, claimed) {
  return [row[claimed], sum(row, 0, claimed) + sum(row, claimed + 1)];
}

/**
 * @param {Tables} tables
 * @param {Prospect} prospect
 * @param {number} i
 * @param {number} j
 */
function _weighed(tables, prospect, i, j) {
  const readable = 1 - tables.guide.clues[prospect.k].unreadable;
  return readable * gain(prospect.rows.map((row) => [row[i], row[j]]));
}
