/**
 * The one shape that all kinds of clues answer in; a leaf.
 *
 * Model page: "Clues: how likely a reading is".
 */

import { dot } from "./special.js";

/** @import { Vector } from "./special.js" */

/**
 * How likely a reading is: in each cell while the part is original, when it
 * is replaced, and on an object outside the guide.
 *
 * `by_source` is how likely it is from each source that replaced parts come from,
 * of which `rep` is the weighted mean; only sets need it.
 * @typedef {object} Likelihood
 * @property {Vector} orig
 * @property {number} rep
 * @property {number} out
 * @property {Vector} by_source
 */

/**
 * Whether a span or size counts for this set member (null: not known).
 * @param {readonly (string | null)[]} members
 * @param {readonly (string | null)[]} excluded
 * @param {string | null} member
 */
export function applies(members, excluded, member) {
  const included = members.length === 0 || members.includes(member);
  return included && !excluded.includes(member);
}

/**
 * Weights of the sources of a replaced part when the guide does not say: half the
 * line's own mixture over all years, half anything.
 * @param {Vector} spread
 * @returns {Vector}
 */
export function halves(spread) {
  return [...spread.map((p) => 0.5 * p), 0.5];
}

/**
 * How probable it is that each class of cells is shown, and last anything.
 *
 * `which` is each cell's class, `original` the probability of each cell with the part
 * original, `replaced` that of the part being replaced, `outside` that of none of
 * these, and `whole` of each source with the part replaced on the whole set.
 * @param {readonly number[]} which
 * @param {Vector} sources
 * @param {Vector} original
 * @param {number} replaced
 * @param {number} outside
 * @param {Vector} whole
 */
export function gathered(which, sources, original, replaced, outside, whole) {
  const mass = sources.map((w) => replaced * w);
  for (let c = 0; c < which.length; c++) {
    mass[which[c]] += original[c];
  }
  for (const [k, p] of whole.entries()) {
    mass[k] += p;
  }
  mass[mass.length - 1] += outside;
  return mass;
}

/**
 * What is shown if the source is not known.
 * @param {Vector} sources
 * @param {Vector} by_source
 */
export function blend(sources, by_source) {
  return dot(sources, by_source);
}
