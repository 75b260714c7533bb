/**
 * What to look at next on a set: every clue on every item, for what it tells of all.
 *
 * Model page: "What to look at next". A clue is weighed with its part on the item as made
 * or replaced there, with the item a stray, and with the part replaced on the whole set.
 */

import { best_first, left, prospect, with_rest } from "./gain.js";
import { blend } from "./likelihood.js";
import { outcomes, tables_for } from "./prepare.js";
import { by_year } from "./sets.js";
import { sum } from "./special.js";
import { as_stray, by_part } from "./standing.js";

/** @import { Item } from "./find.js" */
/** @import { Prospect, Rows } from "./gain.js" */
/** @import { States } from "./one.js" */
/** @import { ClueTable, Tables } from "./prepare.js" */
/** @import { SetPosterior } from "./sets.js" */
/** @import { Vector } from "./special.js" */
/** @import { Standing } from "./standing.js" */

/**
 * What is known of one item's part; all are probabilities given the readings.
 *
 * Where the item is no stray: `original` of each cell with the part original,
 * `replaced` of each model year with the part replaced, `outside` of none of these.
 * Where it is one: `strays` by world, for each model year of the set and outside, what
 * goes with `parts`, which is what the item itself says. `whole` is for each model
 * year and outside that of the part replaced on the whole set. `expected` is what
 * outcomes are foreseen from.
 * @typedef {object} _View
 * @property {Vector} original
 * @property {Vector} replaced
 * @property {number} outside
 * @property {readonly States[]} parts
 * @property {readonly Vector[]} strays
 * @property {Vector} whole
 * @property {[Vector, number, number]} expected
 */

/**
 * Every clue on every item that can still be looked at, best first; limits as for
 * one object.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {SetPosterior} posterior
 * @param {{claimed: number | null, away: boolean, without: readonly string[],
 *   photos: boolean}} limits
 * @returns {Prospect[]}
 */
export function set_prospects(
  tables,
  items,
  posterior,
  { claimed, away, without, photos },
) {
  /** @type {Map<Standing, _View[]>} */
  const views = new Map();
  /** @type {Map<_View, Map<ClueTable, Prospect>>} */
  const known = new Map();
  const found = [];
  for (const [i, item] of items.entries()) {
    // Items that share one record, and tables, have the same prospects.
    const own = posterior.standing[i];
    views.set(own, views.get(own) ?? _views(tables, posterior, i));
    for (const k of left(tables, item, { away, without, photos })) {
      const view = /** @type {_View[]} */ (views.get(own))[tables.part_of[k]];
      const table = tables_for(tables, item.member)[k];
      const by_table = known.get(view) ?? new Map();
      known.set(view, by_table);
      let one = by_table.get(table);
      if (one === undefined) {
        const rows = _rows(tables, posterior, view, k, item.member);
        one = prospect(tables, k, i, rows, claimed);
        by_table.set(table, one);
      }
      found.push(Object.freeze({ ...one, item: i }));
    }
  }
  return best_first(found);
}

/**
 * The parts of the item at place `i`.
 * @param {Tables} tables
 * @param {SetPosterior} posterior
 * @param {number} i
 */
function _views(tables, posterior, i) {
  const parts = by_part(tables, posterior.standing[i]);
  return parts.map((by_world, p) => _view(tables, posterior, by_world, i, p));
}

/**
 * Part `p` of the item at place `i`, from what it says in each world.
 * @param {Tables} tables
 * @param {SetPosterior} posterior
 * @param {readonly States[]} parts
 * @param {number} i
 * @param {number} p
 * @returns {_View}
 */
function _view(tables, posterior, parts, i, p) {
  const stray = posterior.standing[i].stray;
  const nothing = tables.prior.slice().fill(0);
  let [original, replaced, whole] = [nothing, nothing, nothing];
  for (const [w, world] of tables.worlds.entries()) {
    if (world.whole[p]) {
      whole = _plus(whole, posterior.worlds[w], 1);
    }
  }
  const others = posterior.others[i].filter((_, w) => !tables.worlds[w].whole[p]);
  for (const [w, [made, later]] of parts.entries()) {
    original = _plus(original, _times(others[w], made), 1 - stray);
    replaced = _plus(replaced, _times(others[w], later), 1 - stray);
  }
  const strays = others.map((rest) =>
    _with_outside(tables, rest).map((x) => stray * x),
  );
  const last = nothing.length - 1;
  return {
    original: original.slice(0, last),
    replaced: by_year(tables, replaced),
    outside: original[last] + replaced[last],
    parts,
    strays,
    whole: _with_outside(tables, whole),
    expected: expected(tables, original, replaced, parts, strays),
  };
}

/**
 * Cells with the part original, the part replaced, none of these; strays too.
 * @param {Tables} tables
 * @param {Vector} original
 * @param {Vector} replaced
 * @param {readonly States[]} parts
 * @param {readonly Vector[]} strays
 * @returns {[Vector, number, number]}
 */
export function expected(tables, original, replaced, parts, strays) {
  for (const [w, [made, later]] of parts.entries()) {
    const share = sum(strays[w]);
    original = _plus(original, _times(tables.prior, made), share);
    replaced = _plus(replaced, _times(tables.prior, later), share);
  }
  const last = original.length - 1;
  return [
    original.slice(0, last),
    sum(replaced, 0, last),
    original[last] + replaced[last],
  ];
}

/**
 * Joint probability of every outcome of a clue with every model year of the set;
 * what the outcomes leave over is one more.
 * @param {Tables} tables
 * @param {SetPosterior} posterior
 * @param {_View} view
 * @param {number} k
 * @param {string | null} member
 * @returns {Rows}
 */
function _rows(tables, posterior, view, k, member) {
  const table = tables_for(tables, member)[k];
  const { sources } = posterior.common.get(k) ?? table;
  const whole = sum(view.whole);
  const found = outcomes(
    table,
    ...view.expected,
    sources.map((q) => whole * q),
  );
  const strayed = as_stray(tables, view.parts, found);
  const rows = found.map(({ orig, rep, out, by_source }, a) => {
    const row = view.replaced.map((later, y) => {
      const [start, stop] = tables.stretches[y];
      let total = rep * later;
      for (let c = start; c < stop; c++) {
        total += orig[c] * view.original[c];
      }
      return total;
    });
    row.push(out * view.outside);
    const replaced = blend(sources, by_source);
    for (let y = 0; y < row.length; y++) {
      row[y] += view.whole[y] * replaced;
      for (let w = 0; w < view.strays.length; w++) {
        row[y] += view.strays[w][y] * strayed[a][w];
      }
    }
    return row;
  });
  return with_rest(rows, [...posterior.years, posterior.outside]);
}

/**
 * @param {Tables} tables
 * @param {Vector} cells
 * @returns {Vector}
 */
function _with_outside(tables, cells) {
  return [...by_year(tables, cells), cells[cells.length - 1]];
}

/**
 * @param {Vector} a
 * @param {Vector} b
 */
function _times(a, b) {
  const product = a.slice();
  for (let i = 0; i < product.length; i++) {
    product[i] *= b[i];
  }
  return product;
}

/**
 * @param {Vector} a
 * @param {Vector} b
 * @param {number} share
 */
function _plus(a, b, share) {
  const total = a.slice();
  for (let i = 0; i < total.length; i++) {
    total[i] += share * b[i];
  }
  return total;
}
