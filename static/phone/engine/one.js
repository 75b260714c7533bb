/**
 * One object: what its readings say of cells and parts, parts summed out.
 *
 * Model page: "One object". Every vector has one entry a cell and a last one for
 * outside, where a reading's likelihood does not depend on the part.
 *
 * Every verdict passes here some ten times. A vector is made by copying one and
 * looping over the copy: callbacks and typed arrays take two to four times as long.
 */

import { likelihood, tables_for } from "./prepare.js";
import { LOG_HUGE, rescale, round9, sum } from "./special.js";

/** @import { Item } from "./find.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Forest } from "./parts.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Scaled, Vector } from "./special.js" */

/**
 * Something said of a part's two states: original, replaced.
 * @typedef {Vector[]} States
 */

/**
 * Everything that the readings say of one object.
 *
 * `original[p]` and `replaced[p]` are the probabilities of each cell (and outside)
 * with part `p` in that state; `cells` is their sum, the same for every part.
 * @typedef {object} Posterior
 * @property {readonly Vector[]} original
 * @property {readonly Vector[]} replaced
 * @property {Vector} cells
 * @property {Vector} years
 * @property {number} outside
 * @property {number} log_evidence
 */

/**
 * Probability of each cell and part state given the item's readings.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Posterior}
 */
export function weigh(tables, item) {
  const forest = tables.forest;
  const [own, counts] = told(tables, item);
  const [below, messages, more] = _collect(forest, own);
  const [whole, last] = _evidence(forest, messages, tables.prior, null);
  const total = sum(whole);
  const posterior = _over(whole, total);
  const joint = _spread(forest, own, below, messages, tables.prior, posterior, 1);
  return Object.freeze({
    original: joint.map(([original]) => original),
    replaced: joint.map(([, replaced]) => replaced),
    cells: posterior,
    years: tables.stretches.map(([start, stop]) => sum(posterior, start, stop)),
    outside: posterior[posterior.length - 1],
    log_evidence: Math.log(total) - (sum(counts) + more + last) * LOG_HUGE,
  });
}

/**
 * Likelihood of each cell (and outside), parts summed out.
 * @param {Forest} forest
 * @param {readonly States[]} own
 * @returns {Scaled}
 */
export function fit(forest, own) {
  const [, messages, more] = _collect(forest, own);
  const [whole, last] = _evidence(forest, messages, _filled(own[0][0], 1), null);
  return [whole, more + last];
}

/**
 * The same, lifted as often, by each part's state.
 * @param {Forest} forest
 * @param {readonly States[]} own
 * @returns {States[]}
 */
export function states(forest, own) {
  const [below, messages] = _collect(forest, own);
  const ones = _filled(own[0][0], 1);
  const [whole] = _evidence(forest, messages, ones, null);
  return _spread(forest, own, below, messages, ones, whole, sum(whole));
}

/**
 * What the readings on each part say, and how often that was scaled up.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {[States[], number[]]}
 */
export function told(tables, item) {
  const found = read(tables, item);
  /** @type {States[]} */
  const own = [];
  const counts = [];
  const ones = _filled(tables.prior, 1);
  /** @type {Likelihood[][]} */
  const shown = tables.guide.parts.map(() => []);
  for (const [k, reading] of found) {
    shown[tables.part_of[k]].push(reading);
  }
  for (const [p, part] of tables.guide.parts.entries()) {
    const [said, scaled] = shown[p].length ? _shown(shown[p], ones) : [[ones, ones], 0];
    const gone = item.gone.includes(part.id);
    own.push(gone ? [_filled(ones, 0), said[1]] : said);
    counts.push(scaled);
  }
  return [own, counts];
}

/**
 * The likelihood of every reading that says something, in clue order.
 *
 * A clue that was not read, or could not be told, is not there.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Map<number, Likelihood>}
 */
export function read(tables, item) {
  const readings = new Map(item.readings);
  const rows = tables_for(tables, item.member);
  const found = new Map();
  for (const [k, clue] of tables.guide.clues.entries()) {
    const reading = readings.get(clue.id) ?? null;
    if (reading !== null) {
      found.set(k, likelihood(rows[k], reading));
    }
  }
  return found;
}

/**
 * Places of the model years, the most probable first.
 * @param {Vector} years
 */
export function ranked(years) {
  const sizes = years.map(round9);
  return [...sizes.keys()].sort((i, j) => sizes[j] - sizes[i]);
}

/**
 * What some readings say of their part, and how often that was scaled up.
 * @param {readonly Likelihood[]} shown
 * @param {Vector} ones
 * @returns {[States, number]}
 */
function _shown(shown, ones) {
  const [first, ...rest] = shown;
  // Of a replaced part each reading is as likely in any cell.
  let [[later, original], scaled] = rescale([[first.rep, first.out], first.orig]);
  for (const { orig, rep, out } of rest) {
    const [vectors, count] = rescale([
      [later[0] * rep, later[1] * out],
      _times(original, orig),
    ]);
    [later, original] = vectors;
    scaled += count;
  }
  const [rep, out] = later;
  const whole = ones.slice();
  const replaced = ones.slice();
  for (let i = 0; i < original.length; i++) {
    whole[i] = original[i];
    replaced[i] = rep;
  }
  whole[original.length] = out;
  replaced[original.length] = out;
  return [[whole, replaced], scaled];
}

/**
 * Whether nothing is said of a part: one vector of ones stands for both states.
 * @param {States} states
 */
function _is_silent(states) {
  return states[0] === states[1];
}

/**
 * From the followers up: each part with all that follows it, and what it tells
 * its parent, by the parent's state.
 * @param {Forest} forest
 * @param {readonly States[]} own
 * @returns {[States[], States[], number]}
 */
function _collect(forest, own) {
  const below = [...own];
  const messages = [...own];
  let scaled = 0;
  for (const p of [...forest.order].reverse()) {
    if (_is_silent(below[p])) {
      continue;
    }
    const parent = forest.parent[p];
    const [first, second] = forest.rates[p];
    const told = _blend(below[p], 1 - first, first);
    if (parent === null) {
      // Nothing that it follows can be replaced.
      messages[p] = [told, []];
      continue;
    }
    messages[p] = [told, _blend(below[p], 1 - second, second)];
    const [states, count] = rescale(_both(below[parent], messages[p]));
    below[parent] = states;
    scaled += count;
  }
  return [below, messages, scaled];
}

/**
 * From the roots down: weight of each cell with each state of each part, for every
 * part in all `whole`, which adds up to `total`.
 * @param {Forest} forest
 * @param {readonly States[]} own
 * @param {States[]} below
 * @param {States[]} messages
 * @param {Vector} prior
 * @param {Vector} whole
 * @param {number} total
 */
function _spread(forest, own, below, messages, prior, whole, total) {
  const above = [...own];
  const joint = [...own];
  for (const p of forest.order) {
    const parent = forest.parent[p];
    const rates = forest.rates[p];
    if (_is_silent(below[p])) {
      joint[p] = _passed(parent === null ? [whole, whole] : joint[parent], rates);
      continue;
    }
    above[p] = _passed(_context(forest, own, above, messages, prior, p), rates);
    const [[original, replaced]] = rescale(_both(above[p], below[p]));
    const found = sum(original) + sum(replaced);
    // What was read may be impossible if other parts were replaced on a whole set.
    const share = total ? found / total : 1;
    joint[p] = [_over(original, share), _over(replaced, share)];
  }
  return joint;
}

/**
 * What is known by a parent's state, by that of the part that follows it; of a root
 * the same in both places.
 * @param {States} above
 * @param {readonly [number, number]} rates
 * @returns {States}
 */
function _passed(above, rates) {
  if (above[0] === above[1]) {
    return [_scaled(above[0], 1 - rates[0]), _scaled(above[0], rates[0])];
  }
  return [
    _blend(above, 1 - rates[0], 1 - rates[1]),
    _blend(above, rates[0], rates[1]),
  ];
}

/**
 * All that is known without `p` and its followers, by the parent's state.
 *
 * A root has no parent; what is known then stands in both places.
 * @param {Forest} forest
 * @param {readonly States[]} own
 * @param {States[]} above
 * @param {States[]} messages
 * @param {Vector} prior
 * @param {number} p
 * @returns {States}
 */
function _context(forest, own, above, messages, prior, p) {
  const parents = forest.parent;
  const parent = parents[p];
  if (parent === null) {
    const [rest] = _evidence(forest, messages, prior, p);
    return [rest, rest];
  }
  let [context] = rescale(_both(above[parent], own[parent]));
  for (let q = 0; q < parents.length; q++) {
    if (parents[q] === parent && q !== p && !_is_silent(messages[q])) {
      [context] = rescale(_both(context, messages[q]));
    }
  }
  return context;
}

/**
 * Prior of each cell times what the roots tell, one of them left out; and how
 * often that was scaled up.
 * @param {Forest} forest
 * @param {States[]} messages
 * @param {Vector} prior
 * @param {number | null} but
 * @returns {[Vector, number]}
 */
function _evidence(forest, messages, prior, but) {
  let weights = prior;
  let scaled = 0;
  for (const [p, parent] of forest.parent.entries()) {
    if (parent === null && p !== but && !_is_silent(messages[p])) {
      const [vectors, count] = rescale([_times(weights, messages[p][0])]);
      [weights] = vectors;
      scaled += count;
    }
  }
  return [weights, scaled];
}

/**
 * As long as another vector.
 * @param {Vector} a
 * @param {number} x
 * @returns {number[]}
 */
function _filled(a, x) {
  const filled = a.slice();
  for (let i = 0; i < filled.length; i++) {
    filled[i] = x;
  }
  return filled;
}

/**
 * Each of the two states times the other's.
 * @param {States} a
 * @param {States} b
 * @returns {States}
 */
function _both(a, b) {
  return [_times(a[0], b[0]), _times(a[1], b[1])];
}

/**
 * @param {Vector} a
 * @param {Vector} b
 * @returns {Vector}
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
 * @param {number} total
 * @returns {Vector}
 */
function _over(a, total) {
  const shares = a.slice();
  for (let i = 0; i < shares.length; i++) {
    shares[i] /= total;
  }
  return shares;
}

/**
 * @param {Vector} a
 * @param {number} factor
 * @returns {Vector}
 */
function _scaled(a, factor) {
  const scaled = a.slice();
  for (let i = 0; i < scaled.length; i++) {
    scaled[i] *= factor;
  }
  return scaled;
}

/**
 * @param {States} states
 * @param {number} a
 * @param {number} b
 * @returns {Vector}
 */
function _blend(states, a, b) {
  const [original, replaced] = states;
  const mixed = original.slice();
  for (let i = 0; i < mixed.length; i++) {
    mixed[i] = a * original[i] + b * replaced[i];
  }
  return mixed;
}
