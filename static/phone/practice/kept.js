/**
 * What is kept of practice with a guide: its shape, from whatever lies in the setting,
 * built anew from known fields alone. Pure.
 */

import * as take from "../log/fields.js";

/** @typedef {import("./round.js").Begun & {stamp: string}} Begun With the guide that it was begun under. */
/** @typedef {import("./score.js").Scored & {seed: number}} Round That was played; its seed tells it apart. */
/** @typedef {{rounds: readonly Round[], begun: Begun | null}} Practised */

const FORMAT = 1;
/** So many rounds are kept, the last ones. */
export const MOST = 200;
const CLUES = 1000;
const SEEDS = 2 ** 31;

/** @type {Practised} */
export const NONE = { rounds: [], begun: null };

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
  return { rounds, begun: take.maybe(begun)(of("begun"), "round that was begun") };
}

/**
 * With a round more, and without it as one that was begun. A round that is there already
 * changes nothing.
 * @param {Practised} practised
 * @param {Round} round
 * @returns {Practised}
 */
export function withRound({ rounds, begun: open }, round) {
  const isNew = !rounds.some(({ seed }) => seed === round.seed);
  return {
    rounds: isNew ? [...rounds, round].slice(-MOST) : rounds,
    begun: open?.seed === round.seed ? null : open,
  };
}

/** Two accounts of the same practice as one. @param {Practised} one @param {Practised} other */
export const joined = (one, other) => ({ ...other.rounds.reduce(withRound, one), begun: other.begun });

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
  };
}

/** @param {unknown} value */
const seedOf = (value) => take.whole(value, "seed of a round", 0, SEEDS);
