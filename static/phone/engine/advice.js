/** What to look at next, in words: the clue, on which member, and why. */

import { WORTHWHILE, between, separates } from "./gain.js";
import { ranked } from "./one.js";
import { brackets } from "./range.js";
import { pairs, round9 } from "./special.js";
import { called, figure, percent } from "./words.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Item, Next } from "./find.js" */
/** @import { Prospect } from "./gain.js" */
/** @import { Tables } from "./prepare.js" */

/** How many of the most probable model years a reason is sought among. */
export const RIVALS = 4;

/**
 * A prospect with its reason in words.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @param {Prospect} prospect
 * @returns {Next}
 */
export function advice(tables, items, posterior, prospect) {
  const clue = tables.guide.clues[prospect.k];
  const effort = `${figure(clue.seconds)} seconds; ${clue.needs || "no tools"}`;
  return Object.freeze({
    member: items[prospect.item].member,
    clue: clue.id,
    what: what(tables, items, [prospect.k, prospect.item]),
    bits: prospect.bits,
    bits_per_second: prospect.bits_per_second,
    say: `${_reason(tables, posterior, prospect)}; ${effort}`,
  });
}

/**
 * What there is to look at: a clue, in a set with the member that it is on, by the
 * places of the two.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {readonly [number, number]} place
 */
export function what(tables, items, place) {
  const [k, i] = place;
  const name = tables.guide.clues[k].name;
  const member = items[i].member;
  if (member === null || items.length === 1) {
    return `the ${name}`;
  }
  return `the ${called(tables.guide, member)}'s ${name}`;
}

/**
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @param {Prospect} prospect
 */
function _reason(tables, posterior, prospect) {
  if (prospect.bits < WORTHWHILE) {
    return "tells next to nothing now";
  }
  if (brackets(tables.guide)) {
    return `leaves about ${percent(2 ** -prospect.bits)} of the years open`;
  }
  const rivals = ranked(posterior.years).slice(0, RIVALS);
  const weighed = pairs([...rivals].sort((a, b) => a - b)).map((pair) => ({
    pair,
    bits: round9(between(prospect.rows, ...pair)),
  }));
  // The first pair can nearly always be told apart, so the others need no look.
  const told = weighed
    .sort((a, b) => b.bits - a.bits)
    .find(({ pair }) => separates(tables, prospect, ...pair));
  const [i, j] = told?.pair ?? [rivals[0], rivals[0]];
  const years = tables.guide.years;
  if (i === j) {
    return `tells ${years[i].year} from anything else`;
  }
  return `tells ${years[i].year} from ${years[j].year}`;
}
