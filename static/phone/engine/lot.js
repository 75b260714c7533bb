/**
 * Drawing lots that can be repeated: the same from the same seed. A leaf.
 *
 * The minimal standard generator of S. K. Park and K. W. Miller (Communications of the
 * ACM 31, 1988) with their multiplier of 1993, which ISO C++ calls `minstd_rand`.
 */

import { sum } from "./special.js";

/** @import { Vector } from "./special.js" */

/**
 * Gives a number between 0 and 1, another one at each call.
 * @typedef {() => number} Draw
 */

export const MULTIPLIER = 48271;
export const MODULUS = 2147483647;

/**
 * What draws from this seed on, a whole number from 0.
 * @param {number} seed
 * @returns {Draw}
 */
export function lots(seed) {
  let state = (seed % (MODULUS - 1)) + 1;
  return () => {
    state = (state * MULTIPLIER) % MODULUS;
    return state / MODULUS;
  };
}

/**
 * A place among the weights, each as often as it weighs.
 * @param {Draw} draw
 * @param {Vector} weights
 */
export function pick(draw, weights) {
  let left = draw() * sum(weights);
  for (const [i, w] of weights.entries()) {
    left -= w;
    if (left < 0) {
      return i;
    }
  }
  // The last digits of a sum may leave a little over.
  return weights.findLastIndex((w) => w > 0);
}

/**
 * One of so many places, all alike.
 * @param {Draw} draw
 * @param {number} count
 */
export function among(draw, count) {
  return Math.floor(draw() * count);
}

/**
 * A standard normal variable (G. E. P. Box and M. E. Muller, 1958).
 * @param {Draw} draw
 */
export function normal(draw) {
  const radius = Math.sqrt(-2 * Math.log(draw()));
  return radius * Math.cos(2 * Math.PI * draw());
}

/**
 * An exponential variable of mean 1.
 * @param {Draw} draw
 */
export function exponential(draw) {
  return -Math.log(draw());
}
