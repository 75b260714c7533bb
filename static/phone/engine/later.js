/**
 * Marks that are older than the object: how long a date stays in use. A leaf.
 *
 * Model page: "number" and "code", for those that mean not-before.
 */

/** @import { Vector } from "./special.js" */

/**
 * The share of marks that stay in use for one step more, where they do so for
 * `lag` steps on average.
 * @param {number} lag
 */
export function staying(lag) {
  return Math.exp(-1 / lag);
}

/**
 * How likely a reading is on what was built in each step, where `dates` is how
 * likely it is for a mark of each step: older marks fade, younger ones there are not.
 *
 * One pass, since what was seen a step before only fades: no sum over all pairs.
 * @param {Vector} dates
 * @param {number} stay
 * @returns {number[]}
 */
export function on_later(dates, stay) {
  const found = [];
  let seen = 0;
  for (const x of dates) {
    seen = stay * seen + (1 - stay) * x;
    found.push(seen);
  }
  return found;
}
