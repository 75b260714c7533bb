/**
 * A set: members that were made together, but for strays and what was replaced on all.
 *
 * Model page: "A set". A world is one choice of parts that were replaced on the whole set;
 * sums over cells and worlds are exact.
 */

import { HUGE, LOG_HUGE, TINY, aligned, multiplied, products, sum } from "./special.js";
import { stand } from "./standing.js";

/** @import { Item } from "./find.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { World } from "./parts.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Scaled, Vector } from "./special.js" */
/** @import { Standing } from "./standing.js" */

/**
 * A clue as all members show it, if its part was replaced on the whole set.
 *
 * `sources` is how probable each source then is, `weight` how probable the readings
 * are (one entry), and `without` the same by item, had that item never been seen.
 * @typedef {object} Common
 * @property {Vector} sources
 * @property {Scaled} weight
 * @property {readonly Scaled[]} without
 */

/**
 * Everything that the readings say of a set.
 *
 * `cells`, `years`, `outside` and `log_evidence` are as for one object; `stray` is by
 * item, `whole_set` by part. `without` is by item the probability of each model year,
 * and last of outside, had that item never been seen.
 *
 * `worlds` has the probability of each cell in each world. `others` is by item and
 * world what all the rest says of each cell: times what the item says, it is `worlds`.
 * @typedef {object} SetPosterior
 * @property {Vector} cells
 * @property {Vector} years
 * @property {number} outside
 * @property {number} log_evidence
 * @property {Vector} stray
 * @property {Vector} whole_set
 * @property {readonly Vector[]} without
 * @property {readonly Vector[]} worlds
 * @property {readonly Vector[][]} others
 * @property {readonly Standing[]} standing
 * @property {ReadonlyMap<number, Common>} common
 */

/**
 * A world: the weight of each cell, and by item that of all the rest, with what
 * the item shows of parts replaced on the whole set and without it.
 * @typedef {object} _Weighed
 * @property {Scaled} whole
 * @property {Scaled[]} others
 * @property {Scaled[]} without
 */

/**
 * Probability of each cell, stray and whole-set replacement given all readings.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @returns {SetPosterior}
 */
export function weigh_set(tables, items) {
  const standing = stand(tables, items);
  const common = _common(tables, standing);
  const weighed = tables.worlds.map((world, w) =>
    _world(tables, world, w, standing, common),
  );
  const [weights, least] = aligned(weighed.map((each) => each.whole));
  const total = weights.reduce((all, vector) => all + sum(vector), 0);
  const worlds = weights.map((vector) => vector.map((x) => x / total));
  const others = items.map((_, i) =>
    weighed.map((each, w) => _paired(each.others[i], worlds[w], least, total)),
  );
  const cells = _added(worlds);
  return Object.freeze({
    cells,
    years: by_year(tables, cells),
    outside: cells[cells.length - 1],
    log_evidence: Math.log(total) - least * LOG_HUGE,
    stray: standing.map((one, i) => _stray(one, others[i])),
    whole_set: _whole_set(tables, worlds),
    without: items.map((_, i) =>
      _without(
        tables,
        weighed.map((each) => each.without[i]),
      ),
    ),
    worlds,
    others,
    standing,
    common,
  });
}

/**
 * The cells added up to model years.
 * @param {Tables} tables
 * @param {Vector} cells
 * @returns {Vector}
 */
export function by_year(tables, cells) {
  return tables.stretches.map(([start, stop]) => sum(cells, start, stop));
}

/**
 * How probable it is that an item is a stray.
 * @param {Standing} one
 * @param {readonly Vector[]} others
 */
function _stray(one, others) {
  return one.stray * one.means.reduce((all, mean, w) => all + mean * sum(others[w]), 0);
}

/**
 * How probable it is of each part that it was replaced on the whole set.
 * @param {Tables} tables
 * @param {readonly Vector[]} worlds
 * @returns {Vector}
 */
function _whole_set(tables, worlds) {
  const shares = worlds.map((vector) => sum(vector));
  return tables.guide.parts.map((_, p) =>
    sum(shares.filter((_, w) => tables.worlds[w].whole[p])),
  );
}

/**
 * The clues that were read on parts that can be replaced on the whole set.
 * @param {Tables} tables
 * @param {readonly Standing[]} standing
 * @returns {Map<number, Common>}
 */
function _common(tables, standing) {
  const common = new Map();
  for (const [k, p] of tables.part_of.entries()) {
    if (
      tables.worlds.some((world) => world.whole[p]) &&
      standing.some((one) => one.found.has(k))
    ) {
      const found = standing.map((one) => one.found.get(k) ?? null);
      common.set(k, _shared(tables.clues[0][k].sources, found));
    }
  }
  return common;
}

/**
 * A clue with its likelihood by item (null: not read).
 * @param {Vector} sources
 * @param {readonly (Likelihood | null)[]} found
 * @returns {Common}
 */
function _shared(sources, found) {
  const [[vector, count], others] = products(
    sources,
    found.flatMap((reading) => (reading ? [reading.by_source] : [])),
  );
  const total = sum(vector);
  /** @type {Scaled} */
  const weight = [[total], count];
  const rest = others.map(
    ([other, more]) => /** @type {Scaled} */ ([[sum(other)], more]),
  );
  return Object.freeze({
    // No source fits them all if nothing is ever misread; then nothing comes of it.
    sources: vector.map((x) => x / (total || 1)),
    weight,
    without: found.map((reading) => (reading && rest.shift()) ?? weight),
  });
}

/**
 * All weights in the world at place `w`.
 * @param {Tables} tables
 * @param {World} world
 * @param {number} w
 * @param {readonly Standing[]} standing
 * @param {ReadonlyMap<number, Common>} common
 * @returns {_Weighed}
 */
function _world(tables, world, w, standing, common) {
  const counts = standing.map((one) => one.fits[w][1]);
  const lifted = sum(counts);
  const [whole, others] = products(
    tables.prior,
    standing.map((one) =>
      one.fits[w][0].map((x) => (1 - one.stray) * x + one.stray * one.means[w]),
    ),
  );
  const shown = [...common].flatMap(([k, on]) =>
    world.whole[tables.part_of[k]] ? [on] : [],
  );
  const given = _given(
    world,
    shown.map((on) => on.weight),
  );
  return {
    whole: _weighted(whole, given, lifted),
    others: others.map((rest) => _weighted(rest, given, lifted)),
    without: others.map((rest, i) => {
      const unseen = _given(
        world,
        shown.map((on) => on.without[i]),
      );
      return _weighted(rest, unseen, lifted - counts[i]);
    }),
  };
}

/**
 * `G`: the world's prior times what its parts show on the whole set.
 * @param {World} world
 * @param {readonly Scaled[]} weights
 * @returns {Scaled}
 */
function _given(world, weights) {
  return weights.reduce(multiplied, /** @type {Scaled} */ ([[world.prior], 0]));
}

/**
 * The vector times a number, with what its factors had been lifted before.
 * @param {Scaled} vector
 * @param {Scaled} given
 * @param {number} lifted
 * @returns {Scaled}
 */
function _weighted(vector, given, lifted) {
  const [[number], count] = given;
  return multiplied(vector, [vector[0].slice().fill(number), count + lifted]);
}

/**
 * What all the rest says, scaled so that it goes with what the item says.
 * @param {Scaled} rest
 * @param {Vector} world
 * @param {number} least
 * @param {number} total
 * @returns {Vector}
 */
function _paired(rest, world, least, total) {
  const [vector, count] = rest;
  if (sum(world) === 0) {
    return vector.slice().fill(0);
  }
  const lift = count >= least ? TINY ** (count - least) : HUGE ** (least - count);
  return vector.map((x) => (x * lift) / total);
}

/**
 * Model years and outside from the weights by world.
 * @param {Tables} tables
 * @param {readonly Scaled[]} weights
 * @returns {Vector}
 */
function _without(tables, weights) {
  const [vectors] = aligned(weights);
  const cells = _added(vectors);
  const total = sum(cells);
  return [...by_year(tables, cells), cells[cells.length - 1]].map((x) => x / total);
}

/**
 * @param {readonly Vector[]} vectors
 * @returns {Vector}
 */
function _added(vectors) {
  const total = vectors[0].slice();
  for (const vector of vectors.slice(1)) {
    for (let i = 0; i < total.length; i++) {
      total[i] += vector[i];
    }
  }
  return total;
}
