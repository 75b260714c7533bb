/**
 * The one shape that all kinds of clues answer in; a leaf.
 *
 * Model page: "Clues: how likely a reading is".
 */

/** @import { Vector } from "./special.js" */

/**
 * How likely a reading is: in each cell while the part is original, when it
 * is replaced, and on an object outside the guide.
 * @typedef {object} Likelihood
 * @property {Vector} orig
 * @property {number} rep
 * @property {number} out
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
 * What a replaced part shows when the guide does not say: half the line's own
 * mixture over all years, half anything.
 * @param {Vector} orig
 * @param {Vector} spread
 * @param {number} out
 */
export function blend(orig, spread, out) {
  let total = 0;
  for (let i = 0; i < orig.length; i++) {
    total += spread[i] * orig[i];
  }
  return 0.5 * total + 0.5 * out;
}
