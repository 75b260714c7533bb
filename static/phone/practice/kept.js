/**
 * What is kept of practice with a guide: its shape, from whatever lies in the setting,
 * built anew from known fields alone. Pure.
 */

import * as take from "../log/fields.js";

/** @typedef {import("./round.js").Begun & {stamp: string, said: number | null, sure: number | null}} Begun With the guide that it was begun under, and what is chosen of the answer. */
/** @typedef {import("./score.js").Scored & {seed: number}} Round That was played; its seed tells it apart. */
/** `answered` is the last round as it was answered, until the next begins. @typedef {{rounds: readonly Round[], begun: Begun | null, answered: Begun | null}} Practised */

const FORMAT = 1;
/** So many rounds are kept, the last ones. */
export const MOST = 200;
const CLUES = 1000;
const SEEDS = 2 ** 31;

/** @type {Practised} */
export const NONE = { rounds: [], begun: null, answered: null };

/** The setting of a guide. @param {string} guide */
export const practiceKey = (guide) => `practice/${guide}`;

/** As it is written. @param {Practised} practised */
export const written = (practised) => ({ format: FORMAT, ...practised });

/**
 * The rounds, or a RecordError that says why they cannot be read.
 * @param {unknown} json
 * @returns {Practised}
 */
export function practised(json) {
  const of = take.table(json, "practice");
  const format = take.whole(of("format"), "format of the practice", 1);
  if (format > FORMAT) take.refuse(format, "format of the practice", "this app is older: update it when online");
  const rounds = take.list(of("rounds"), "rounds of practice", round, MOST);
  take.assertApart(rounds.map(({ seed }) => seed), "seed of a round");
  const one = (/** @type {string} */ key, /** @type {string} */ what) => take.maybe(begun)(of(key), what);
  return { rounds, begun: one("begun", "round that was begun"), answered: one("answered", "round that was answered") };
}

/**
 * With a round more, and without it as one that was begun. A round that is there already
 * changes nothing.
 * @param {Practised} practised
 * @param {Round} round
 * @param {Begun | null} answered the round as it was answered
 * @returns {Practised}
 */
export function withRound({ rounds, begun: open, answered: last }, round, answered) {
  const isNew = !rounds.some(({ seed }) => seed === round.seed);
  return {
    rounds: isNew ? [...rounds, round].slice(-MOST) : rounds,
    begun: open?.seed === round.seed ? null : open,
    answered: isNew ? answered : last,
  };
}

/** This seed, or the next one that no round has. @param {readonly Round[]} rounds @param {number} wished @returns {number} */
export const freeSeed = (rounds, wished) =>
  rounds.some(({ seed }) => seed === wished) ? freeSeed(rounds, (wished + 1) % SEEDS) : wished;

/**
 * With a round that goes on. One that was played already, on another page, does not.
 * @param {Practised} practised
 * @param {Begun} begun
 * @returns {Practised}
 */
export function withBegun(practised, begun) {
  const { rounds } = practised;
  return rounds.some(({ seed }) => seed === begun.seed) ? practised : { rounds, begun, answered: null };
}

/** Two accounts of the same practice as one. @param {Practised} one @param {Practised} other @returns {Practised} */
export function joined(one, { rounds, begun, answered }) {
  const all = rounds.reduce((now, round) => withRound(now, round, null), one);
  return { rounds: all.rounds, begun, answered };
}

/** @param {unknown} json @param {string} what @returns {Round} */
function round(json, what) {
  const of = take.table(json, what);
  return {
    seed: seedOf(of("seed")),
    year: take.whole(of("year"), "model year of a round"),
    said: take.whole(of("said"), "model year that was said"),
    sure: take.share(of("sure"), "how sure one was"),
    years: take.whole(of("years"), "number of model years", 2, CLUES),
  };
}

/** @param {unknown} json @param {string} what @returns {Begun} */
function begun(json, what) {
  const of = take.table(json, what);
  return {
    seed: seedOf(of("seed")),
    year: take.whole(of("year"), "model year of a round"),
    looks: take.list(of("looks"), "looks of a round", take.id, CLUES),
    stamp: take.short(of("stamp"), "version of the guide"),
    said: take.maybe(take.whole)(of("said"), "model year that was said"),
    sure: take.maybe(take.share)(of("sure"), "how sure one was"),
  };
}

/** @param {unknown} value */
const seedOf = (value) => take.whole(value, "seed of a round", 0, SEEDS);
