/**
 * What a round teaches, worked out exactly: what the looks say of the year, whether one
 * was as sure as they allow, and each look beside the best one then. Pure.
 */

import { prospects } from "../engine/gain.js";
import { ranked, weigh } from "../engine/one.js";
import { evenly, laid, open, shown } from "./round.js";
import { scored, steps } from "./score.js";
import { slips } from "./truth.js";

/** @typedef {import("../engine/prepare.js").Tables} Tables */
/** @typedef {import("./round.js").Begun} Begun */
/** @typedef {import("./round.js").Laid} Laid */
/** @typedef {{clue: string, bits: number, seconds: number}} Look What a look is expected to tell, and how long it takes. */
/** @typedef {Look & {best: Look}} Chosen A look, and the one that would then have told most a second. */
/**
 * `years` is what all looks together say, `likeliest` the first of those that it is most
 * probably; `sure` and the two after it are probabilities.
 * @typedef {object} Told
 * @property {number} year
 * @property {number} said
 * @property {number} sure
 * @property {number} score
 * @property {readonly (readonly [number, number])[]} years
 * @property {number} likeliest
 * @property {"near" | "more" | "less" | "elsewhere"} judged how sure one was, against what the
 *   looks allow; elsewhere if they spoke for another year
 * @property {readonly string[]} replaced
 * @property {readonly import("./truth.js").Slip[]} slips among the looks
 * @property {readonly Chosen[]} looks
 * @property {Look | null} missed the best look that there was still time for
 */

/** A year with less than this share of the likeliest one is not what the looks spoke for. */
const BESIDE = 0.5;
const FREE = { claimed: null, away: false, without: [] };

/**
 * What is told after a round.
 * @param {Tables} tables the guide's own
 * @param {Begun} begun
 * @param {{said: number, sure: number}} answer
 * @returns {Told}
 */
export function told(tables, begun, { said, sure }) {
  const { year, looks } = begun;
  const even = evenly(tables);
  const all = laid(tables, begun);
  const posterior = weigh(even, shown(all, looks));
  const years = tables.guide.years.map((each, y) => /** @type {const} */ ([each.year, posterior.years[y]]));
  const own = years.find(([each]) => each === said)?.[1] ?? 0;
  const [likeliest] = years[ranked(posterior.years)[0]];
  return {
    ...{ year, said, sure, years, likeliest },
    score: scored({ year, said, sure, years: years.length }),
    judged: own < BESIDE * Math.max(...posterior.years) ? "elsewhere" : judged(sure, own, years.length),
    replaced: tables.guide.parts.filter((_, p) => all.specimen.replaced[p]).map(({ id }) => id),
    slips: slips(tables, all).filter(({ clue }) => looks.includes(clue)),
    looks: looks.map((clue, i) => chosen(even, all, looks.slice(0, i), clue)),
    missed: possible(even, all, looks)[0] ?? null,
  };
}

/**
 * Whether one was as sure as the looks allow, or one step beside; else more or less.
 * @param {number} sure
 * @param {number} exact
 * @param {number} years
 */
export function judged(sure, exact, years) {
  const known = steps(years).map((step) => step / 100);
  const away = known.map((step) => Math.abs(step - exact));
  const nearest = away.indexOf(Math.min(...away));
  const apart = known.indexOf(sure) - nearest;
  if (Math.abs(apart) <= 1) return "near";
  return apart > 0 ? "more" : "less";
}

/**
 * A look beside the best one then.
 * @param {Tables} even
 * @param {Laid} all
 * @param {readonly string[]} before
 * @param {string} clue
 * @returns {Chosen}
 */
function chosen(even, all, before, clue) {
  const looks = possible(even, all, before);
  const own = /** @type {Look} */ (looks.find((each) => each.clue === clue));
  return { ...own, best: looks[0] };
}

/**
 * The looks that there is time for, best first by what they tell a second.
 * @param {Tables} even
 * @param {Laid} all
 * @param {readonly string[]} before
 * @returns {Look[]}
 */
function possible(even, all, before) {
  const { guide } = even;
  const item = shown(all, before);
  const timely = open(guide, before).map(({ id }) => id);
  return prospects(even, item, weigh(even, item), FREE)
    .map(({ k, bits }) => ({ clue: guide.clues[k].id, bits, seconds: guide.clues[k].seconds }))
    .filter(({ clue }) => timely.includes(clue));
}
