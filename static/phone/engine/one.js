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
/** @import { Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

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
  const [own, scaled] = _own(tables, item);
  const [below, messages, more] = _collect(tables, own);
  const [whole, last] = _evidence(tables, messages, null);
  const total = sum(whole);
  const states = _spread(tables, own, below, messages);
  const posterior = _over(whole, total);
  return Object.freeze({
    original: states.map(([original]) => original),
    replaced: states.map(([, replaced]) => replaced),
    cells: posterior,
    years: tables.stretches.map(([start, stop]) => sum(posterior, start, stop)),
    outside: posterior[posterior.length - 1],
    log_evidence: Math.log(total) - (scaled + more + last) * LOG_HUGE,
  });
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
 * @param {Posterior} posterior
 */
export function ranked(posterior) {
  const sizes = posterior.years.map(round9);
  return [...sizes.keys()].sort((i, j) => sizes[j] - sizes[i]);
}

/**
 * What the readings on each part say, and how often that was scaled up.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {[States[], number]}
 */
function _own(tables, item) {
  const found = read(tables, item);
  /** @type {States[]} */
  const own = [];
  let scaled = 0;
  for (const [p, part] of tables.guide.parts.entries()) {
    const gone = item.gone.includes(part.id);
    /** @type {States} */
    let states = [
      tables.prior.slice().fill(gone ? 0 : 1),
      tables.prior.slice().fill(1),
    ];
    for (const [k, { orig, rep, out }] of found) {
      if (tables.part_of[k] === p) {
        const [vectors, count] = rescale([
          _times(states[0], [...orig, out]),
          _times(states[1], [...orig.slice().fill(rep), out]),
        ]);
        states = vectors;
        scaled += count;
      }
    }
    own.push(states);
  }
  return [own, scaled];
}

/**
 * From the followers up: each part with all that follows it, and what it tells
 * its parent, by the parent's state.
 * @param {Tables} tables
 * @param {States[]} own
 * @returns {[States[], States[], number]}
 */
function _collect(tables, own) {
  const below = [...own];
  const messages = [...own];
  let scaled = 0;
  for (const p of [...tables.forest.order].reverse()) {
    const parent = tables.forest.parent[p];
    const [first, second] = tables.forest.rates[p];
    messages[p] = [
      _blend(below[p], 1 - first, first),
      _blend(below[p], 1 - second, second),
    ];
    if (parent !== null) {
      const [states, count] = rescale(
        [0, 1].map((s) => _times(below[parent][s], messages[p][s])),
      );
      below[parent] = states;
      scaled += count;
    }
  }
  return [below, messages, scaled];
}

/**
 * From the roots down: probability of each cell with each state of each part.
 * @param {Tables} tables
 * @param {States[]} own
 * @param {States[]} below
 * @param {States[]} messages
 */
function _spread(tables, own, below, messages) {
  const above = [...own];
  const joint = [...own];
  for (const p of tables.forest.order) {
    const context = _context(tables, own, above, messages, p);
    const rates = tables.forest.rates[p];
    above[p] = [
      _blend(context, 1 - rates[0], 1 - rates[1]),
      _blend(context, rates[0], rates[1]),
    ];
    const [[original, replaced]] = rescale(
      [0, 1].map((s) => _times(above[p][s], below[p][s])),
    );
    const total = sum(original) + sum(replaced);
    joint[p] = [_over(original, total), _over(replaced, total)];
  }
  return joint;
}

/**
 * All that is known without `p` and its followers, by the parent's state.
 *
 * A root has no parent; what is known then stands in the first place.
 * @param {Tables} tables
 * @param {States[]} own
 * @param {States[]} above
 * @param {States[]} messages
 * @param {number} p
 * @returns {States}
 */
function _context(tables, own, above, messages, p) {
  const parents = tables.forest.parent;
  const parent = parents[p];
  if (parent === null) {
    const [rest] = _evidence(tables, messages, p);
    return [rest, rest.slice().fill(0)];
  }
  let [context] = rescale([0, 1].map((s) => _times(above[parent][s], own[parent][s])));
  for (let q = 0; q < parents.length; q++) {
    if (parents[q] === parent && q !== p) {
      [context] = rescale([0, 1].map((s) => _times(context[s], messages[q][s])));
    }
  }
  return context;
}

/**
 * Prior of each cell times what the roots tell, one of them left out; and how
 * often that was scaled up.
 * @param {Tables} tables
 * @param {States[]} messages
 * @param {number | null} but
 * @returns {[Vector, number]}
 */
function _evidence(tables, messages, but) {
  let weights = tables.prior;
  let scaled = 0;
  for (const [p, parent] of tables.forest.parent.entries()) {
    if (parent === null && p !== but) {
      const [vectors, count] = rescale([_times(weights, messages[p][0])]);
      [weights] = vectors;
      scaled += count;
    }
  }
  return [weights, scaled];
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
