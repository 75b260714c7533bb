/**
 * How sure one said to be against how often that was right. Pure.
 *
 * The range beside each share is the score interval of E. B. Wilson ("Probable inference",
 * Journal of the American Statistical Association 22, 1927): how often one would be right
 * in the long run may well be anywhere in it.
 */

import { mean } from "./score.js";

/** @typedef {readonly {year: number, said: number, sure: number}[]} Rounds */
/** @typedef {{sure: number, rounds: number, right: number, share: number, low: number, high: number}} Level Of all rounds in which one was so sure. */

/** Fewer rounds say too little. */
export const ENOUGH = 20;
/** Nineteen times in twenty. */
const Z = 1.959964;

/** How many rounds are missing for the picture. @param {Rounds} rounds */
export const missing = (rounds) => Math.max(ENOUGH - rounds.length, 0);

/**
 * Each confidence that was stated, rising.
 * @param {Rounds} rounds
 * @returns {Level[]}
 */
export function levels(rounds) {
  const said = [...new Set(rounds.map(({ sure }) => sure))].sort((a, b) => a - b);
  return said.map((sure) => {
    const own = rounds.filter((round) => round.sure === sure);
    const right = own.filter(isRight).length;
    const share = right / own.length;
    return { sure, rounds: own.length, right, share, ...wilson(share, own.length) };
  });
}

/**
 * How often one was right in all, how sure one was on average, and whether that may be
 * chance.
 * @param {Rounds} rounds
 */
export function overall(rounds) {
  const sure = mean(rounds.map((round) => round.sure));
  const right = rounds.filter(isRight).length;
  const { low, high } = wilson(right / rounds.length, rounds.length);
  const judged = sure > high ? "more" : sure < low ? "less" : "near";
  return { sure, right, share: right / rounds.length, judged };
}

/** @param {{year: number, said: number}} round */
const isRight = ({ year, said }) => year === said;

/** @param {number} share @param {number} n */
export function wilson(share, n) {
  const z2 = Z * Z;
  const middle = (share + z2 / (2 * n)) / (1 + z2 / n);
  const half = (Z / (1 + z2 / n)) * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n * n));
  return { low: Math.max(middle - half, 0), high: Math.min(middle + half, 1) };
}
