/**
 * What a round scores: the Brier score (G. W. Brier, "Verification of forecasts expressed
 * in terms of probability", Monthly Weather Review 78, 1950). Pure.
 *
 * It counts all that was forecast, so it is best, on average, for whoever names the
 * likeliest year and says how likely it really is. Counting only whether the named year
 * was right would be best for whoever names a wrong year and says so.
 */

import { sum } from "../engine/special.js";

/** @typedef {{year: number, said: number, sure: number, years: number}} Scored The year it was, the year that was said, how sure (0 to 1), and among how many years. */

/** In per cent: apart enough for a thumb, and closer where it matters more. */
const STEPS = [10, 20, 35, 50, 65, 80, 90, 95, 99];

/**
 * How sure one can say to be, in per cent; never less than by guessing, since then
 * another year would be the one to name.
 * @param {number} years among how many
 */
export const steps = (years) => STEPS.filter((step) => step * years >= 100);

/**
 * One forecast's score: 0 if it was certain of what came, 2 if of something else.
 * @param {readonly number[]} forecast the probability of each outcome
 * @param {number} came the place of the outcome that came
 */
export const brier = (forecast, came) =>
  sum(forecast.map((p, place) => (p - (place === came ? 1 : 0)) ** 2));

/** What a round scores. @param {Scored} round */
export const scored = ({ year, said, sure, years }) =>
  brier(forecast(sure, years), year === said ? 0 : 1);

/** What it scores to say that all years are as likely. @param {{years: number}} round */
export const guessed = ({ years }) => brier(forecast(1 / years, years), 0);

/** @param {readonly number[]} numbers not none */
export const mean = (numbers) => sum(numbers) / numbers.length;

/**
 * The probability of the year that was said, and of each other year the same.
 * @param {number} sure
 * @param {number} years
 */
function forecast(sure, years) {
  return [sure, ...Array(years - 1).fill((1 - sure) / (years - 1))];
}
