/** Which members of a set are probably strays, and why, in words. */

import { alone, fitting } from "./claim.js";
import { EVEN } from "./flags.js";
import { often_apart } from "./members.js";
import { read } from "./one.js";
import { is_read, likeliest, month_shares } from "./saying.js";
import { by_year } from "./sets.js";
import { round9, sum, TINY } from "./special.js";
import { called, likely, month, percent, years } from "./words.js";

/** @import { Item } from "./find.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Case } from "./saying.js" */
/** @import { SetPosterior } from "./sets.js" */
/** @import { Vector } from "./special.js" */

/**
 * Whether the item at place `i` is more likely a stray than not, after something
 * was read off it.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {number} i
 */
export function is_stray(told, whole, i) {
  return round9(whole.stray[i]) > EVEN && is_read([told.items[i]]);
}

/**
 * The sentence about a probable stray; empty for any other item.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {number} i
 */
export function stray_say(told, whole, i) {
  const member = told.items[i].member;
  if (member === null || !is_stray(told, whole, i)) {
    return "";
  }
  const guide = told.tables.guide;
  const p = whole.stray[i];
  const rest = told.items.length > 2 ? "the others speak" : "the other speaks";
  const why = _why(told.tables, told.items[i], _others(whole, i), rest);
  const calm = " That is no alarm: it was often bought apart.";
  return (
    `The ${called(guide, member)} is probably a stray ` +
    `(${likely(p)}, ${percent(p)})${why}.${often_apart(guide, member) ? calm : ""}`
  );
}

/**
 * Probability of each cell, and last of outside, by all items but one.
 * @param {SetPosterior} whole
 * @param {number} i
 */
function _others(whole, i) {
  const weights = whole.cells.map((_, c) =>
    whole.others[i].reduce((total, by_world) => total + by_world[c], 0),
  );
  const total = sum(weights);
  return weights.map((w) => w / total);
}

/**
 * What the reading that goes least with the others was made for; empty if none
 * does by itself, or the others speak for no year.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Vector} others
 * @param {string} rest
 */
function _why(tables, item, others, rest) {
  if (round9(others[others.length - 1]) > EVEN) {
    return "";
  }
  let least = 0;
  let why = "";
  for (const k of read(tables, item).keys()) {
    const clue = tables.guide.clues[k];
    const own = alone(tables, item, clue.id);
    // By the logarithm, since nine places of a small number are less than it has.
    const together = round9(
      Math.log(Math.max(_together(tables, own.cells, others), TINY)),
    );
    const [made, wanted] = _apart(tables, own.cells, others);
    if (together < least && made !== wanted) {
      least = together;
      why = `, with the ${clue.name} made ${made}, while ${rest} for ${wanted}`;
    }
  }
  return why;
}

/**
 * How many times more often than by chance two go together that say this of each
 * cell (and outside).
 * @param {Tables} tables
 * @param {Vector} own
 * @param {Vector} others
 */
function _together(tables, own, others) {
  let total = 0;
  for (const [c, prior] of tables.prior.entries()) {
    total += prior > 0 ? (own[c] * others[c]) / prior : 0;
  }
  return total;
}

/**
 * What each speaks for: years, or months where they share a year.
 * @param {Tables} tables
 * @param {Vector} own
 * @param {Vector} others
 * @returns {[string, string]}
 */
function _apart(tables, own, others) {
  const made = fitting(tables, by_year(tables, own));
  const wanted = fitting(tables, by_year(tables, others));
  if (!wanted.some((year) => made.includes(year))) {
    return [`for ${years(made)}`, years(wanted)];
  }
  const [t, u] = [own, others].map((cells) => likeliest(month_shares(tables, cells)));
  return [`about ${month(t)}`, `about ${month(u)}`];
}
