/**
 * Whether to look again before buying: the value of knowing all, and of one reading.
 *
 * Model page: "The offer". The decision is to buy at the price asked or not; what is
 * known is worth what it adds to the better of the two (Raiffa, Decision Analysis, 1968).
 */

import { left } from "./gain.js";
import { blend } from "./likelihood.js";
import { outcomes, tables_for } from "./prepare.js";
import { expected } from "./setgain.js";
import { dot, sum } from "./special.js";
import { as_stray, by_part } from "./standing.js";
import { by_cell, off, off_made } from "./value.js";
import { RARE } from "./worth.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Item } from "./find.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Posterior, States } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { SetPosterior } from "./sets.js" */
/** @import { Vector } from "./special.js" */
/** @import { Amounts, Scene } from "./value.js" */
/** @import { Sheet } from "./worth.js" */

/**
 * What is left of a worth: `keep` of it, less the `price`; both in hundredths.
 * @typedef {object} Bargain
 * @property {number} keep
 * @property {number} price
 */

/**
 * The clue at place `k` of the guide on the item at place `item`, and what one
 * reading of it is worth to the decision, in hundredths.
 * @typedef {object} Trial
 * @property {number} k
 * @property {number} item
 * @property {number} worth
 */

/**
 * Weights that go with what an item may show of one part: by cell with the part
 * original, with it replaced, outside, by world with the item a stray, and with the
 * part replaced on the whole set.
 * @typedef {object} _Mass
 * @property {Vector} original
 * @property {number} replaced
 * @property {number} outside
 * @property {Vector} strays
 * @property {number} whole
 */

/**
 * One part of one item: how probable each state is, the same times what the find
 * is then worth, and what outcomes are foreseen from.
 * @typedef {object} _Part
 * @property {_Mass} chance
 * @property {_Mass} worth
 * @property {readonly States[]} parts
 * @property {[Vector, number, number]} foreseen
 */

/**
 * What the better decision leaves, where the find's `worth` goes with a `chance`.
 * @param {Bargain} bargain
 * @param {number} chance
 * @param {number} worth
 */
export function best(bargain, chance, worth) {
  return Math.max(bargain.keep * worth - bargain.price * chance, 0);
}

/**
 * What it is worth to know exactly what the find is worth.
 * @param {Amounts} amounts
 * @param {Bargain} bargain
 */
export function perfect(amounts, bargain) {
  let mean = 0;
  let knowing = 0;
  for (const [amount, p] of amounts) {
    mean += amount * p;
    knowing += best(bargain, p, amount * p);
  }
  return Math.max(knowing - best(bargain, 1, mean), 0);
}

/**
 * Every clue that can still be looked at on every item, in their order.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @param {{sheet: Sheet, scenes: readonly Scene[], bargain: Bargain, away: boolean,
 *   without: readonly string[], photos: boolean}} by
 * @returns {Trial[]}
 */
export function trials(
  tables,
  items,
  posterior,
  { sheet, scenes, bargain, away, without, photos },
) {
  const kept = _kept(tables, sheet, scenes);
  const found = [];
  for (const [i, item] of items.entries()) {
    /** @type {Map<number, _Part>} */
    const known = new Map();
    for (const k of left(tables, item, { away, without, photos })) {
      const p = tables.part_of[k];
      const part =
        known.get(p) ??
        ("original" in posterior
          ? _one(tables, posterior, sheet, scenes[0], p)
          : _member(tables, posterior, sheet, scenes, kept, i, p));
      known.set(p, part);
      const pairs = _pairs(tables, posterior, part, k, item.member);
      let chance = 0;
      let worth = 0;
      let after = 0;
      for (const [q, own] of pairs) {
        chance += q;
        worth += own;
        after += best(bargain, q, own);
      }
      const before = best(bargain, chance, worth);
      const readable = 1 - tables.guide.clues[k].unreadable;
      const gained = readable * Math.max(after - before, 0);
      found.push(Object.freeze({ k, item: i, worth: gained }));
    }
  }
  return found;
}

/**
 * By scene what the find is expected to be worth in each cell, and by item what is
 * expected to come off it.
 * @param {Tables} tables
 * @param {Sheet} sheet
 * @param {readonly Scene[]} scenes
 * @returns {[Vector, Vector[]][]}
 */
function _kept(tables, sheet, scenes) {
  const whole = by_cell(tables, sheet.whole);
  return scenes.map((scene) => {
    const offs = scene.own.map((_, i) => off(scene, sheet, tables, i));
    return [offs.reduce(_less, whole), offs];
  });
}

/**
 * Part `p` of one object.
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @param {Sheet} sheet
 * @param {Scene} scene
 * @param {number} p
 * @returns {_Part}
 */
function _one(tables, posterior, sheet, scene, p) {
  const [made, later] = [posterior.original[p], posterior.replaced[p]];
  const whole = by_cell(tables, sheet.whole);
  const [if_made, if_later] = _struck(scene.own[0], p).map((own) =>
    _less(whole, off_made(scene, sheet, tables, own)),
  );
  const last = made.length - 1;
  const chance = {
    original: made.slice(0, last),
    replaced: sum(later, 0, last),
    outside: posterior.outside,
    strays: [],
    whole: 0,
  };
  const worth = {
    original: _times(made, if_made).slice(0, last),
    replaced: dot(later.slice(0, last), if_later),
    outside: made[last] * if_made[last] + later[last] * if_later[last],
    strays: [],
    whole: 0,
  };
  const { original, replaced, outside } = chance;
  return { chance, worth, parts: [], foreseen: [original, replaced, outside] };
}

/**
 * Part `p` of the item at place `i` of a set.
 * @param {Tables} tables
 * @param {SetPosterior} posterior
 * @param {Sheet} sheet
 * @param {readonly Scene[]} scenes
 * @param {readonly [Vector, Vector[]][]} kept
 * @param {number} i
 * @param {number} p
 * @returns {_Part}
 */
function _member(tables, posterior, sheet, scenes, kept, i, p) {
  const one = posterior.standing[i];
  const parts = by_part(tables, one)[p];
  const nothing = tables.prior.map(() => 0);
  /** @type {Vector[]} */
  const chances = [nothing, nothing];
  /** @type {Vector[]} */
  const worths = [nothing, nothing];
  /** @type {number[]} */
  const strays = [];
  const strayed = [];
  let whole = 0;
  let whole_worth = 0;
  for (const [w, scene] of scenes.entries()) {
    const [total, offs] = kept[w];
    if (scene.world.whole[p]) {
      whole += sum(scene.cells);
      whole_worth += dot(scene.cells, total);
      continue;
    }
    const rest = posterior.others[i][w];
    const others = _plus(total, offs[i], 1);
    const stray = scene.matters[i] ? by_cell(tables, sheet.stray) : nothing;
    const states = parts[strays.length];
    strays.push(one.stray * sum(rest));
    strayed.push(one.stray * dot(rest, _less(others, stray)));
    for (const [s, said] of states.entries()) {
      const share = _times(rest, said);
      chances[s] = _plus(chances[s], share, 1 - one.stray);
      if (sum(scene.cells) >= RARE) {
        const own = _struck(scene.own[i], p)[s];
        const left = _less(others, off_made(scene, sheet, tables, own));
        worths[s] = _plus(worths[s], _times(share, left), 1 - one.stray);
      }
    }
  }
  const shares = strays.map((x) => [x]);
  return {
    chance: _mass(chances, strays, whole),
    worth: _mass(worths, strayed, whole_worth),
    parts,
    foreseen: expected(tables, chances[0], chances[1], parts, shares),
  };
}

/**
 * How probable every outcome of a clue is, and the same times what the find is then
 * worth; what the outcomes leave over is one more.
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @param {_Part} part
 * @param {number} k
 * @param {string | null} member
 * @returns {[number, number][]}
 */
function _pairs(tables, posterior, part, k, member) {
  const table = tables_for(tables, member)[k];
  const common = "common" in posterior ? posterior.common.get(k) : undefined;
  const { sources } = common ?? table;
  const whole = sources.map((q) => part.chance.whole * q);
  const found = outcomes(table, ...part.foreseen, whole);
  const means = as_stray(tables, part.parts, found);
  const pairs = found.map(
    (a, j) =>
      /** @type {[number, number]} */ ([
        _shown(part.chance, a, means[j], sources),
        _shown(part.worth, a, means[j], sources),
      ]),
  );
  let chance = _all(part.chance, tables, part.parts);
  let worth = _all(part.worth, tables, part.parts);
  for (const [q, own] of pairs) {
    chance -= q;
    worth -= own;
  }
  return [...pairs, [Math.max(chance, 0), Math.max(worth, 0)]];
}

/**
 * Weight of an outcome; `means` is how likely strays show it, by world.
 * @param {_Mass} mass
 * @param {Likelihood} a
 * @param {Vector} means
 * @param {Vector} sources
 */
function _shown(mass, a, means, sources) {
  let shown = dot(a.orig, mass.original) + a.rep * mass.replaced + a.out * mass.outside;
  if (mass.whole > 0) {
    shown += mass.whole * blend(sources, a.by_source);
  }
  return shown + dot(mass.strays, means);
}

/**
 * Weight of anything that may be read.
 * @param {_Mass} mass
 * @param {Tables} tables
 * @param {readonly States[]} parts
 */
function _all(mass, tables, parts) {
  let strays = 0;
  for (const [w, [made, later]] of parts.entries()) {
    strays += mass.strays[w] * (dot(tables.prior, made) + dot(tables.prior, later));
  }
  return sum(mass.original) + mass.replaced + mass.outside + mass.whole + strays;
}

/**
 * @param {readonly Vector[]} states
 * @param {Vector} strays
 * @param {number} whole
 * @returns {_Mass}
 */
function _mass(states, strays, whole) {
  const [made, later] = states;
  const last = made.length - 1;
  return {
    original: made.slice(0, last),
    replaced: sum(later, 0, last),
    outside: made[last] + later[last],
    strays,
    whole,
  };
}

/**
 * What is said of the parts if part `p` is original, and if it is replaced.
 * @param {readonly States[]} own
 * @param {number} p
 * @returns {[States[], States[]]}
 */
function _struck(own, p) {
  const [made, later] = own[p];
  const never = made.map(() => 0);
  const [before, after] = [own.slice(0, p), own.slice(p + 1)];
  return [
    [...before, [made, never], ...after],
    [...before, [never, later], ...after],
  ];
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
 */
function _less(a, b) {
  return _plus(a, b, -1);
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
