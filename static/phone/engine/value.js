/**
 * What a find is worth: how probable each amount is, exactly, and what to expect.
 *
 * Model page: "The offer". A scene is a world with all that the readings leave open in
 * it; one object has a single scene, in which no part was replaced on a whole set.
 */

import { often_apart } from "./members.js";
import { states, told } from "./one.js";
import { round9 } from "./special.js";
import { unshared } from "./standing.js";
import { RARE, added, beyond, trees, within } from "./worth.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Item } from "./find.js" */
/** @import { Posterior, States } from "./one.js" */
/** @import { World } from "./parts.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { SetPosterior } from "./sets.js" */
/** @import { Vector } from "./special.js" */
/** @import { Standing } from "./standing.js" */
/** @import { Sheet, Taken } from "./worth.js" */

/**
 * What the find may be worth in hundredths, least first, with probabilities.
 * @typedef {readonly (readonly [number, number])[]} Amounts
 */

/**
 * The probability of a stray, and what is said of each part, original and replaced.
 * @typedef {readonly [number, readonly (readonly [number, number])[]]} _Said
 */

/**
 * A world: the probability of each cell in it (and outside), by item what is said
 * of each part and the probability of a stray, and whether a stray takes off anything.
 * @typedef {object} Scene
 * @property {World} world
 * @property {Vector} cells
 * @property {readonly (readonly States[])[]} own
 * @property {readonly Vector[]} strays
 * @property {readonly boolean[]} matters
 */

/**
 * Every scene that the readings leave.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @returns {Scene[]}
 */
export function scenes(tables, items, posterior) {
  if ("original" in posterior) {
    return [_alone(tables, items[0], posterior)];
  }
  const matters = items.map(({ member }) => !often_apart(tables.guide, String(member)));
  return tables.worlds.map((_, w) => _together(tables, posterior, w, matters));
}

/**
 * How probable it is that the find is worth each amount.
 *
 * Within a cell of a scene the items are independent of each other, so that what
 * comes off in all is a sum; cells that say the same are added up once.
 * @param {Tables} tables
 * @param {Sheet} sheet
 * @param {readonly Scene[]} scenes
 * @returns {Amounts}
 */
export function amounts(tables, sheet, scenes) {
  /** @type {Map<number, number>} */
  const found = new Map();
  for (const scene of scenes) {
    for (const [y, [start, stop]] of _places(tables).entries()) {
      for (const [share, said] of _runs(scene, start, stop)) {
        const several = said.map((x, i) => _taken(scene, sheet, y, i, x));
        for (const [loss, p] of added(several, sheet.step[y], share)) {
          const left = sheet.whole[y] - loss;
          found.set(left, (found.get(left) ?? 0) + p);
        }
      }
    }
  }
  const sorted = [...found].sort(([a], [b]) => a - b);
  const total = sorted.reduce((all, [, p]) => all + p, 0);
  return sorted.map(([left, p]) => [left, p / total]);
}

/**
 * The least amount that is not exceeded with at least this probability.
 * @param {Amounts} amounts
 * @param {number} share
 */
export function quantile(amounts, share) {
  let run = 0;
  for (const [amount, p] of amounts) {
    run += p;
    if (round9(run) >= share) {
      return amount;
    }
  }
  return amounts[amounts.length - 1][0];
}

/**
 * What is expected to come off the item at place `i`, by cell.
 * @param {Scene} scene
 * @param {Sheet} sheet
 * @param {Tables} tables
 * @param {number} i
 * @returns {Vector}
 */
export function off(scene, sheet, tables, i) {
  const made = off_made(scene, sheet, tables, scene.own[i]);
  const stray = scene.matters[i] ? by_cell(tables, sheet.stray) : made.map(() => 0);
  return made.map((x, c) => {
    const q = scene.strays[i][c];
    return (1 - q) * x + q * stray[c];
  });
}

/**
 * What is expected to come off an item that is no stray, by cell, if this is said
 * of its parts: what they take off one by one, less what is more than all of it.
 * @param {Scene} scene
 * @param {Sheet} sheet
 * @param {Tables} tables
 * @param {readonly States[]} own
 * @returns {number[]}
 */
export function off_made(scene, sheet, tables, own) {
  const total = _beyond(scene, sheet, tables, own).map((x) => -x);
  const joint = states(scene.world.forest, own);
  for (const [p, [original, replaced]] of joint.entries()) {
    const amount = by_cell(
      tables,
      sheet.parts.map((parts) => parts[p]),
    );
    for (let c = 0; c < total.length; c++) {
      if (scene.world.whole[p]) {
        total[c] += amount[c];
      } else if (replaced[c] > 0) {
        total[c] += amount[c] * (replaced[c] / (original[c] + replaced[c]));
      }
    }
  }
  return total;
}

/**
 * What stands by model year, and last for outside, written to every cell.
 * @param {Tables} tables
 * @param {readonly number[]} by_place
 * @returns {number[]}
 */
export function by_cell(tables, by_place) {
  const found = tables.prior.slice().fill(by_place[by_place.length - 1]);
  for (const [y, [start, stop]] of tables.stretches.entries()) {
    found.fill(by_place[y], start, stop);
  }
  return found;
}

/**
 * The cells of each model year, and the one for outside.
 * @param {Tables} tables
 * @returns {(readonly [number, number])[]}
 */
function _places(tables) {
  const outside = tables.cells.length;
  return [...tables.stretches, [outside, outside + 1]];
}

/**
 * By how much the parts of an item are expected to take off more than it counts
 * for, by cell; cells that say the same as the one before are worked out with it.
 * @param {Scene} scene
 * @param {Sheet} sheet
 * @param {Tables} tables
 * @param {readonly States[]} own
 * @returns {number[]}
 */
function _beyond(scene, sheet, tables, own) {
  const found = tables.prior.map(() => 0);
  for (const [y, [start, stop]] of _places(tables).entries()) {
    if (sheet.parts[y].reduce((all, x) => all + x, 0) <= sheet.portion[y]) {
      continue;
    }
    /** @type {[number, number][]} */
    let before = [];
    let more = 0;
    for (let c = start; c < stop; c++) {
      if (scene.cells[c] >= RARE) {
        const parts = _ratios(own, c);
        if (!_alike(parts, before)) {
          const several = trees(scene.world, parts, sheet.parts[y]);
          [before, more] = [parts, beyond(several, sheet.portion[y])];
        }
        found[c] = more;
      }
    }
  }
  return found;
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @returns {Scene}
 */
function _alone(tables, item, posterior) {
  const [own] = told(tables, item);
  const world = { whole: own.map(() => false), prior: 1, forest: tables.forest };
  const never = tables.prior.map(() => 0);
  return Object.freeze({
    world,
    cells: posterior.cells,
    own: [own],
    strays: [never],
    matters: [false],
  });
}

/**
 * The scene of the world at place `w`.
 * @param {Tables} tables
 * @param {SetPosterior} posterior
 * @param {number} w
 * @param {readonly boolean[]} matters
 * @returns {Scene}
 */
function _together(tables, posterior, w, matters) {
  const world = tables.worlds[w];
  return Object.freeze({
    world,
    cells: posterior.worlds[w],
    own: posterior.standing.map((one) => unshared(world, one.own)),
    strays: posterior.standing.map((one) => _strays(one, w)),
    matters,
  });
}

/**
 * Probability in each cell that the item is a stray, in the world at place `w`.
 * @param {Standing} one
 * @param {number} w
 * @returns {Vector}
 */
function _strays(one, w) {
  const stray = one.stray * one.means[w];
  return one.fits[w][0].map((x) => {
    const total = (1 - one.stray) * x + stray;
    return total > 0 ? stray / total : 0;
  });
}

/**
 * Stretches of the cells from `start` up to `stop` in which the same is said of
 * every item: the probability of each stretch, and what is said by item.
 * @param {Scene} scene
 * @param {number} start
 * @param {number} stop
 */
function _runs(scene, start, stop) {
  /** @type {[number, _Said[]][]} */
  const runs = [];
  for (let c = start; c < stop; c++) {
    let share = scene.cells[c];
    if (share >= RARE) {
      const said = scene.own.map((_, i) => _said(scene, i, c));
      if (runs.length > 0 && _same(runs[runs.length - 1][1], said)) {
        share += runs[runs.length - 1][0];
        runs.pop();
      }
      runs.push([share, said]);
    }
  }
  return runs;
}

/**
 * What is said of the item at place `i` in a cell.
 * @param {Scene} scene
 * @param {number} i
 * @param {number} c
 * @returns {_Said}
 */
function _said(scene, i, c) {
  return [scene.strays[i][c], _ratios(scene.own[i], c)];
}

/**
 * What is said of each part in a cell: only the ratio counts, and products of
 * ratios stay in sight.
 * @param {readonly States[]} own
 * @param {number} c
 * @returns {[number, number][]}
 */
function _ratios(own, c) {
  return own.map(([original, replaced]) => {
    const most = Math.max(original[c], replaced[c]) || 1;
    return [original[c] / most, replaced[c] / most];
  });
}

/**
 * What may come off the item at place `i` in the model year at place `y`.
 * @param {Scene} scene
 * @param {Sheet} sheet
 * @param {number} y
 * @param {number} i
 * @param {_Said} said
 * @returns {Taken}
 */
function _taken(scene, sheet, y, i, said) {
  const [share, parts] = said;
  const stray = scene.matters[i] ? sheet.stray[y] : 0;
  const several = trees(scene.world, parts, sheet.parts[y]);
  return { stray, share, trees: within(several, sheet.portion[y]) };
}

/**
 * Whether the same is said of every item.
 * @param {readonly _Said[]} some
 * @param {readonly _Said[]} others
 */
function _same(some, others) {
  return some.every(([share, parts], i) => {
    const [other, rest] = others[i];
    return share === other && _alike(parts, rest);
  });
}

/**
 * Whether the same is said of every part.
 * @param {readonly (readonly [number, number])[]} some
 * @param {readonly (readonly [number, number])[]} others
 */
function _alike(some, others) {
  return (
    some.length === others.length &&
    some.every(([a, b], p) => a === others[p][0] && b === others[p][1])
  );
}
