/** Why: what each reading adds for the leading year, and which readings disagree. */

import { alone, fitting, odds } from "./claim.js";
import { read, weigh } from "./one.js";
import { pair } from "./parts.js";
import { brackets, meet, named, own_run } from "./range.js";
import { pairs, round9 } from "./special.js";
import { told } from "./typical.js";
import { BARE, capital, evidence, tells_nothing, times, years } from "./words.js";

/** @import { Item, Weight } from "./find.js" */
/** @import { Clue } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Run } from "./range.js" */

// Two readings are named when they go together so many times more seldom than by
// chance that the factor is more than barely worth a mention.
export const CONFLICT = BARE;
export const MOST_PAIRS = 3;

/**
 * Two clues, by place, that go together `times` more seldom than by chance.
 * @typedef {object} Conflict
 * @property {number} first
 * @property {number} second
 * @property {number} times
 */

/**
 * The factor that each reading adds for the years that lead.
 *
 * It is the Bayes factor with the reading over the one without it, all other
 * readings kept.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {Run} lead
 * @returns {Weight[]}
 */
export function weights(tables, item, posterior, lead) {
  const full = _factor(tables, posterior, lead);
  const what = named(tables.guide, lead);
  return [...read(tables, item).keys()].map((k) => {
    const clue = tables.guide.clues[k];
    const rest = item.readings.filter(([id]) => id !== clue.id);
    const without = _factor(tables, weigh(tables, { ...item, readings: rest }), lead);
    return _weight(clue, item, full / without, what);
  });
}

/**
 * The pairs of readings that disagree most, the worst first.
 *
 * The measure is P(a) P(b) / P(a, b), parts summed out: the conflict measure of
 * F. V. Jensen and others (1990; cited from memory), for two findings. Under a guide
 * that brackets, readings disagree if their own ranges have no year in common.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Conflict[]}
 */
export function conflicts(tables, item) {
  const shares = [...read(tables, item)].map(
    ([k, a]) => /** @type {const} */ ([k, _over_itself(tables, k, a)]),
  );
  const runs = _runs(tables, item, shares.map(([k]) => k));
  const worst = pairs(shares)
    .map(([[k, a], [q, b]]) => ({ first: k, second: q, times: 1 / _together(tables, k, a, q, b) }))
    .filter((pair) => _disagree(pair, runs));
  // By the logarithm, since nine places of a large number are more than it has.
  return worst
    .sort((a, b) => round9(Math.log(b.times)) - round9(Math.log(a.times)))
    .slice(0, MOST_PAIRS);
}

/**
 * A reading and the years that it alone speaks for.
 * @param {Tables} tables
 * @param {Item} item
 * @param {number} k
 */
export function said(tables, item, k) {
  const clue = tables.guide.clues[k];
  const what = told(clue, new Map(item.readings).get(clue.id));
  if (brackets(tables.guide)) {
    return `${what} for ${named(tables.guide, own_run(tables, item, k))}`;
  }
  return `${what} for ${years(fitting(tables, alone(tables, item, clue.id).years))}`;
}

/**
 * Bayes factor of the years that lead against all the rest.
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @param {Run} lead
 */
function _factor(tables, posterior, lead) {
  return odds(tables, [...posterior.years, posterior.outside], lead);
}

/**
 * The own range of each reading, under a guide that brackets.
 * @param {Tables} tables
 * @param {Item} item
 * @param {readonly number[]} read
 * @returns {Map<number, Run>}
 */
function _runs(tables, item, read) {
  const own = brackets(tables.guide) ? read : [];
  return new Map(own.map((k) => [k, own_run(tables, item, k)]));
}

/**
 * @param {Conflict} pair
 * @param {Map<number, Run>} runs
 */
function _disagree(pair, runs) {
  const [first, second] = [runs.get(pair.first), runs.get(pair.second)];
  if (!first || !second) {
    return pair.times > CONFLICT;
  }
  return !meet(first, second);
}

/**
 * The likelihood of reading `a` over its probability, so that the product of two
 * long codes cannot underflow.
 * @param {Tables} tables
 * @param {number} k
 * @param {Likelihood} a
 * @returns {Likelihood}
 */
function _over_itself(tables, k, a) {
  const any_reading = { orig: tables.cells.map(() => 1), rep: 1, out: 1, by_source: [] };
  const alone = _together(tables, k, a, k, any_reading);
  return {
    orig: a.orig.map((x) => x / alone),
    rep: a.rep / alone,
    out: a.out / alone,
    by_source: [],
  };
}

/**
 * Probability of reading `a` of clue `k` and `b` of clue `q`.
 * @param {Tables} tables
 * @param {number} k
 * @param {Likelihood} a
 * @param {number} q
 * @param {Likelihood} b
 */
function _together(tables, k, a, q, b) {
  const [both, first_only, second_only, neither] = pair(
    tables.forest,
    tables.part_of[k],
    tables.part_of[q],
  );
  let total = tables.guide.outside * a.out * b.out;
  // Whether each part is original: both, the first alone, the second alone, neither.
  for (let i = 0; i < tables.cells.length; i++) {
    const x = a.orig[i];
    const y = b.orig[i];
    total +=
      tables.prior[i] *
      (both * x * y +
        first_only * x * b.rep +
        second_only * a.rep * y +
        neither * a.rep * b.rep);
  }
  return total;
}

/**
 * @param {Clue} clue
 * @param {Item} item
 * @param {number} weighed
 * @param {string} lead
 * @returns {Weight}
 */
function _weight(clue, item, weighed, lead) {
  const what = capital(told(clue, new Map(item.readings).get(clue.id)));
  const say = tells_nothing(weighed)
    ? `${what}: next to nothing about ${lead}.`
    : `${what}: ${evidence(weighed, lead)}, ${times(weighed)}.`;
  return Object.freeze({ clue: clue.id, factor: weighed, say });
}
