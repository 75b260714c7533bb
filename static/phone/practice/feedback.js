/**
 * What a round teaches, worked out exactly: what the looks say of the year, whether one
 * was as sure as they allow, what each look has made of the year that it was, and which
 * look that was never taken would have told more. Pure.
 *
 * All model years are alike and nothing is from outside, since each year has one card.
 */

import { between, prospects } from "../engine/gain.js";
import { ranked, weigh } from "../engine/one.js";
import { pairs, round9 } from "../engine/special.js";
import { evenly, laid, open, shown } from "./round.js";
import { scored, steps } from "./score.js";
import { slips } from "./truth.js";

/** @typedef {import("../engine/gain.js").Prospect} Prospect */
/** @typedef {import("../engine/one.js").Posterior} Posterior */
/** @typedef {import("../engine/prepare.js").Tables} Tables */
/** @typedef {import("./round.js").Begun} Begun */
/** @typedef {import("./round.js").Laid} Laid */
/** What stood before a look: what the year was then, and what could be looked at. @typedef {{posterior: Posterior, found: readonly Prospect[]}} Before */
/**
 * A look that was never taken and would have told more: the clue, the seconds that it
 * takes, and the two years between which it would have told best, if two led.
 * @typedef {{clue: string, seconds: number, between: readonly [number, number] | null}} Missed
 */
/** @typedef {{look: string, missed: Missed, more: number}} Advice In place of a look; how many bits more. */
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
 * @property {readonly {clue: string, share: number}[]} looks each with the share of the year
 *   that it was, once this was seen
 * @property {readonly Advice[]} advice in the order of the looks
 * @property {Missed | null} missed what there was still time for, where it mattered
 */

/** A year with less than this share of the likeliest one is not what the looks spoke for. */
const BESIDE = 0.5;
/** With so much a year is as good as known, and what one looks at then is no mistake. */
export const KNOWN = 0.9;
/** So many bits more are worth a word. */
export const WORD = 0.3;
/** More advice than this, what there was time for among it, is a sermon. */
const MOST = 2;
/** Two years lead if they share so much, and are told apart if so much of that is told. */
const LEAD = 0.5;
const APART = 0.3;
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
  // What was known before each look, and after the last.
  const stages = [...looks, ""].map((_, i) => before(even, all, looks.slice(0, i)));
  const y = years.findIndex(([each]) => each === year);
  const missed = better(even, stages[looks.length], { looks, than: 0, within: Infinity })?.missed ?? null;
  return {
    ...{ year, said, sure, years, likeliest },
    score: scored({ year, said, sure, years: years.length }),
    judged: own < BESIDE * Math.max(...posterior.years) ? "elsewhere" : judged(sure, own, years.length),
    replaced: tables.guide.parts.filter((_, p) => all.specimen.replaced[p]).map(({ id }) => id),
    slips: slips(tables, all).filter(({ clue }) => looks.includes(clue)),
    looks: looks.map((clue, i) => ({ clue, share: stages[i + 1].posterior.years[y] })),
    advice: advice(even, looks, stages, missed),
    missed,
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
 * @param {Tables} even
 * @param {Laid} all
 * @param {readonly string[]} looks
 * @returns {Before}
 */
function before(even, all, looks) {
  const item = shown(all, looks);
  const posterior = weigh(even, item);
  const timely = open(even.guide, looks).map(({ id }) => id);
  const found = prospects(even, item, posterior, FREE);
  return { posterior, found: found.filter(({ k }) => timely.includes(even.guide.clues[k].id)) };
}

/**
 * The few looks in whose place another would have told most, each other one named once.
 * @param {Tables} even
 * @param {readonly string[]} looks
 * @param {readonly Before[]} stages
 * @param {Missed | null} timely what is named already, since there was time for it
 * @returns {Advice[]}
 */
function advice(even, looks, stages, timely) {
  const found = looks.flatMap((look, i) => {
    const own = /** @type {Prospect} */ (stages[i].found.find(({ k }) => even.guide.clues[k].id === look));
    const other = better(even, stages[i], { looks, than: own.bits, within: even.guide.clues[own.k].seconds });
    return other && other.missed.clue !== timely?.clue ? [{ look, ...other }] : [];
  });
  const most = found
    .sort((a, b) => round9(b.more) - round9(a.more))
    .filter(({ missed }, i, all) => all.findIndex((each) => each.missed.clue === missed.clue) === i)
    .slice(0, MOST - (timely ? 1 : 0));
  return most.sort((a, b) => looks.indexOf(a.look) - looks.indexOf(b.look));
}

/**
 * The clue that was never looked at and would have told most, where it would have told
 * clearly more, taken no longer, and the year was not as good as known.
 * @param {Tables} even
 * @param {Before} stage
 * @param {{looks: readonly string[], than: number, within: number}} limits
 * @returns {{missed: Missed, more: number} | null}
 */
function better(even, { posterior, found }, { looks, than, within }) {
  if (Math.max(...posterior.years) >= KNOWN) return null;
  const { clues } = even.guide;
  const [best] = found
    .filter(({ k, bits }) => !looks.includes(clues[k].id) && clues[k].seconds <= within && bits >= than + WORD)
    .sort((a, b) => round9(b.bits) - round9(a.bits));
  if (!best) return null;
  const { id, seconds } = clues[best.k];
  return { missed: { clue: id, seconds, between: parted(even, posterior, best) }, more: best.bits - than };
}

/**
 * The two years between which the clue tells best, if they lead and it tells them apart.
 * @param {Tables} even
 * @param {Posterior} posterior
 * @param {Prospect} prospect
 * @returns {readonly [number, number] | null}
 */
function parted({ guide: { years } }, posterior, { rows }) {
  const found = pairs(years.map((_, y) => y)).map(([i, j]) => ({ i, j, told: between(rows, i, j) }));
  const [{ i, j, told: most }] = found.sort((a, b) => round9(b.told) - round9(a.told));
  const share = posterior.years[i] + posterior.years[j];
  return share >= LEAD && most >= APART * share ? [years[i].year, years[j].year] : null;
}
