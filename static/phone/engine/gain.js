/**
 * What to look at next: expected information, the seconds it takes, and when to stop.
 *
 * Model page: "What to look at next".
 */

import { outcomes, tables_for } from "./prepare.js";
import { largest, round9, sum } from "./special.js";

/** @import { Item } from "./find.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

/** Bits below which a clue is not worth looking at. */
export const WORTHWHILE = 0.02;

/**
 * Joint probability of each outcome (row) with each model year and outside.
 * @typedef {readonly Vector[]} Rows
 */

/**
 * The clue at place `k` of the guide on the item at place `item` of the find, and
 * what reading it is expected to tell.
 * @typedef {object} Prospect
 * @property {number} k
 * @property {number} item
 * @property {number} bits
 * @property {number} bits_per_second
 * @property {Rows} rows
 */

/**
 * Every clue that can still be looked at, best first.
 *
 * `claimed` is the place of a claimed model year, which is then what the clues are
 * to tell; `away` leaves out what must be held in the hand, `without` the clues
 * that need one of these tools, `photos` what no photo can show.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {{claimed: number | null, away: boolean, without: readonly string[],
 *   photos?: boolean}} limits
 */
export function prospects(
  tables,
  item,
  posterior,
  { claimed, away, without, photos = false },
) {
  const found = left(tables, item, { away, without, photos }).map((k) =>
    prospect(tables, k, 0, _rows(tables, item, posterior, k), claimed),
  );
  return best_first(found);
}

/**
 * The clues that can still be looked at, in guide order; limits as above.
 * @param {Tables} tables
 * @param {Item} item
 * @param {{away: boolean, without: readonly string[], photos: boolean}} limits
 * @returns {number[]}
 */
export function left(tables, item, { away, without, photos }) {
  const answered = item.readings.map(([clue]) => clue);
  return tables.guide.clues.flatMap((clue, k) =>
    !answered.includes(clue.id) &&
    !item.gone.includes(clue.part) &&
    (clue.seen_from === "away" || !away) &&
    !without.includes(clue.needs) &&
    (clue.photo || !photos)
      ? [k]
      : [],
  );
}

/**
 * A clue with what its outcomes tell of the model year, or of a claimed one.
 * @param {Tables} tables
 * @param {number} k
 * @param {number} item
 * @param {Rows} rows
 * @param {number | null} claimed
 * @returns {Prospect}
 */
export function prospect(tables, k, item, rows, claimed) {
  const clue = tables.guide.clues[k];
  const aim =
    claimed === null ? rows : rows.map((row) => _for_and_against(row, claimed));
  const bits = (1 - clue.unreadable) * gain(aim);
  return Object.freeze({ k, item, bits, bits_per_second: bits / clue.seconds, rows });
}

/**
 * Prospects by the square of what they tell, divided by the seconds; ties stay as
 * they stand.
 *
 * Tan and Schlimmer (1990), in Mitchell (1997), section 3.7.5: by the bits alone, a
 * second, many quick looks that tell little would go before one that tells much.
 * @param {readonly Prospect[]} found
 */
export function best_first(found) {
  /** @param {Prospect} each */
  const pull = (each) => round9(each.bits * each.bits_per_second);
  return [...found].sort((a, b) => pull(b) - pull(a));
}

/**
 * The prospects by what they tell of the model year, best first.
 * @param {Tables} tables
 * @param {readonly Prospect[]} found
 */
export function whatever_is_claimed(tables, found) {
  const in_order = [...found].sort((a, b) => a.item - b.item || a.k - b.k);
  return best_first(
    in_order.map(({ k, item, rows }) => prospect(tables, k, item, rows, null)),
  );
}

/**
 * The rows, and what they leave over of the columns as one row more.
 * @param {Rows} rows
 * @param {Vector} whole
 * @returns {Rows}
 */
export function with_rest(rows, whole) {
  const rest = [...whole];
  for (const row of rows) {
    for (let y = 0; y < rest.length; y++) {
      rest[y] -= row[y];
    }
  }
  return [...rows, rest.map((p) => Math.max(p, 0))];
}

/**
 * The prospect that best tells the model years at two places apart, if any can.
 * @param {Tables} tables
 * @param {readonly Prospect[]} found
 * @param {number} i
 * @param {number} j
 */
export function separator(tables, found, i, j) {
  const able = found.filter((each) => separates(tables, each, i, j));
  return largest(able, (each) => round9(_apart(tables, each, i, j))) ?? null;
}

/**
 * Whether a prospect can tell the model years at two places apart at all, however
 * unlikely the one of them is.
 * @param {Tables} tables
 * @param {Prospect} prospect
 * @param {number} i
 * @param {number} j
 */
export function separates(tables, prospect, i, j) {
  return round9(_apart(tables, prospect, i, j)) >= WORTHWHILE;
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
  return with_rest(rows, [...posterior.years, posterior.outside]);
}

/**
 * @param {Vector} row
 * @param {number} claimed
 */
function _for_and_against(row, claimed) {
  return [row[claimed], sum(row, 0, claimed) + sum(row, claimed + 1)];
}

/**
 * Bits of the question "year `i` or year `j`?", as if both were equally likely.
 * @param {Tables} tables
 * @param {Prospect} prospect
 * @param {number} i
 * @param {number} j
 */
function _apart(tables, prospect, i, j) {
  const [a, b] = [i, j].map((y) => sum(prospect.rows.map((row) => row[y])));
  if (a === 0 || b === 0) {
    return 0;
  }
  const readable = 1 - tables.guide.clues[prospect.k].unreadable;
  return readable * gain(prospect.rows.map((row) => [row[i] / a, row[j] / b]));
}
