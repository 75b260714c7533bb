/**
 * One item of a set taken for itself: what it says of each cell in each world.
 *
 * Model page: "A set". A world is one choice of parts that were replaced on the whole set.
 *
 * What was worked out is kept as long as the item is: after an answer, only the item
 * that it is about is worked out anew.
 */

import { fit, read, states, told } from "./one.js";
import { tables_for } from "./prepare.js";
import { dot } from "./special.js";

/** @import { Item } from "./find.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { States } from "./one.js" */
/** @import { World } from "./parts.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Scaled, Vector } from "./special.js" */

/**
 * One item taken for itself: its readings, how often its like is a stray, what it
 * says of each part, and in each world of each cell.
 *
 * `fits` is `F` by world, `means` is `S`, lifted as often.
 * @typedef {object} Standing
 * @property {ReadonlyMap<number, Likelihood>} found
 * @property {number} stray
 * @property {readonly States[]} own
 * @property {readonly Scaled[]} fits
 * @property {readonly number[]} means
 */

/** @type {WeakMap<Tables, WeakMap<Item, Standing>>} */
const _stood = new WeakMap();
/** @type {WeakMap<Standing, States[][]>} */
const _parted = new WeakMap();
/** @type {WeakMap<readonly States[], WeakMap<readonly Likelihood[], Vector[]>>} */
const _strayed = new WeakMap();

/**
 * What each item says by itself; items that say the same share one record.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @returns {Standing[]}
 */
export function stand(tables, items) {
  const known = _stood.get(tables) ?? new WeakMap();
  _stood.set(tables, known);
  /** @type {Map<string, Standing>} */
  const same = new Map();
  return items.map((item) => {
    const key = _key(tables, item);
    const one = known.get(item) ?? same.get(key) ?? _stand(tables, item);
    known.set(item, one);
    same.set(key, one);
    return one;
  });
}

/**
 * `F` by part, world and the part's state, for the worlds in which the part was
 * not replaced on the whole set.
 * @param {Tables} tables
 * @param {Standing} one
 * @returns {States[][]}
 */
export function by_part(tables, one) {
  let parts = _parted.get(one);
  if (parts === undefined) {
    const worlds = tables.worlds.map((world) =>
      states(world.forest, unshared(world, one.own)),
    );
    parts = one.own.map((_, p) =>
      worlds.filter((_, w) => !tables.worlds[w].whole[p]).map((by) => by[p]),
    );
    _parted.set(one, parts);
  }
  return parts;
}

/**
 * `S` for each outcome of a clue, if that is read too, by world; `parts` is what
 * the item says of the clue's part, by world.
 * @param {Tables} tables
 * @param {readonly States[]} parts
 * @param {readonly Likelihood[]} outcomes
 * @returns {Vector[]}
 */
export function as_stray(tables, parts, outcomes) {
  const known = _strayed.get(parts) ?? new WeakMap();
  _strayed.set(parts, known);
  let means = known.get(outcomes);
  if (means === undefined) {
    const prior = tables.prior;
    const last = prior.length - 1;
    const by_world = parts.map(([made, later]) => {
      const own = prior.slice(0, last);
      let replaced = 0;
      for (let c = 0; c < last; c++) {
        own[c] *= made[c];
        replaced += prior[c] * later[c];
      }
      const outside = prior[last] * (made[last] + later[last]);
      return outcomes.map((a) => dot(a.orig, own) + a.rep * replaced + a.out * outside);
    });
    means = outcomes.map((_, a) => by_world.map((mean) => mean[a]));
    known.set(outcomes, means);
  }
  return means;
}

/**
 * How often this member comes from another set.
 * @param {Tables} tables
 * @param {string | null} member
 */
export function stray_share(tables, member) {
  const members = tables.guide.members;
  if (members === null) {
    return 0;
  }
  return new Map(members.stray_for).get(member ?? "") ?? members.stray;
}

/**
 * What makes an item say what it says: its member only through its tables.
 * @param {Tables} tables
 * @param {Item} item
 */
function _key(tables, item) {
  const readings = new Map(item.readings);
  const told = [];
  for (const [k, clue] of tables.guide.clues.entries()) {
    const reading = readings.get(clue.id) ?? null;
    if (reading !== null) {
      const table = tables_for(tables, item.member)[k];
      const first = tables.clues.findIndex((rows) => rows[k] === table);
      told.push([k, first, reading]);
    }
  }
  const gone = tables.guide.parts.filter((part) => item.gone.includes(part.id));
  const ids = gone.map((part) => part.id);
  return JSON.stringify([stray_share(tables, item.member), ids, told]);
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Standing}
 */
function _stand(tables, item) {
  const [own, counts] = told(tables, item);
  const fits = tables.worlds.map((world) => _fit(world, own, counts));
  return Object.freeze({
    found: read(tables, item),
    stray: stray_share(tables, item.member),
    own,
    fits,
    means: fits.map(([vector]) => dot(vector, tables.prior)),
  });
}

/**
 * `F` in one world.
 * @param {World} world
 * @param {readonly States[]} own
 * @param {readonly number[]} counts
 * @returns {Scaled}
 */
function _fit(world, own, counts) {
  const [vector, count] = fit(world.forest, unshared(world, own));
  const lifted = counts.reduce(
    (total, more, p) => (world.whole[p] ? total : total + more),
    count,
  );
  return [vector, lifted];
}

/**
 * What is said of each part, of those replaced on the whole set nothing.
 * @param {World} world
 * @param {readonly States[]} own
 * @returns {States[]}
 */
export function unshared(world, own) {
  const ones = own[0][0].slice().fill(1);
  return own.map((said, p) => (world.whole[p] ? [ones, ones] : said));
}
