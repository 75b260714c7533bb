/**
 * A deal, and what to say about it: buy, offer up to a price, or walk away.
 *
 * Model page: "The offer". The sentences never say more than follows from the person's
 * own prices.
 */

import { round9 } from "./special.js";
import { WHOLE, day, figure, money } from "./words.js";

/** @import { Guide, Prices } from "./guide.js" */

/**
 * What the person says of this find: the price `asked` (null: not yet known), how
 * many per cent of the worth are to be left over, the grade of condition, what else it
 * will cost, and what an hour is worth (0: not said).
 * @typedef {object} Deal
 * @property {number | null} asked
 * @property {number} margin
 * @property {string} condition
 * @property {number} costs
 * @property {number} hour
 */

/**
 * A deal with what the find is expected to be worth, at least and at most four
 * times in five, what share of that may be paid, and the walk-away price.
 * @typedef {object} Terms
 * @property {Deal} deal
 * @property {string} currency
 * @property {number} expected
 * @property {number} low
 * @property {number} high
 * @property {number} keep
 * @property {number} walk
 */

/**
 * The most to pay, as it is written and no finer.
 * @param {number} keep
 * @param {number} expected
 */
export function walk_away(keep, expected) {
  const most = round9(Math.max(keep * expected, 0));
  const written = Math.floor(100 * most + 0.5) / 100;
  return written < WHOLE ? written : Math.floor(most + 0.5);
}

/**
 * Buy where no more is asked than the walk-away price; walk where nothing could be
 * paid, or where more is asked than it hardly ever is worth; else offer.
 * @param {Terms} terms
 * @returns {"buy" | "offer" | "walk"}
 */
export function advice(terms) {
  const { asked } = terms.deal;
  if (terms.walk <= 0) {
    return "walk";
  }
  if (asked === null) {
    return "offer";
  }
  if (round9(asked) <= terms.walk) {
    return "buy";
  }
  return round9(asked) > round9(terms.keep * terms.high) ? "walk" : "offer";
}

/**
 * The advice with its reason; what it is worth, `range_say` tells.
 * @param {Terms} terms
 */
export function advice_say(terms) {
  const margin = `the ${figure(terms.deal.margin)} % that you want`;
  const wants = terms.deal.margin > 0;
  if (terms.walk <= 0) {
    if (wants && round9(terms.expected) > 0) {
      return `Walk away: no price leaves you ${margin}.`;
    }
    return "Walk away: after all costs it is worth nothing to you.";
  }
  const walk = amount(terms, terms.walk);
  if (terms.deal.asked === null) {
    const why = wants ? `less than ${margin}` : "to lose by it";
    return `Offer up to ${walk}: if you pay more, expect ${why}.`;
  }
  const asked = `the ${amount(terms, terms.deal.asked)} asked`;
  const short = wants
    ? `would not leave you ${margin}`
    : "is more than it is worth to you";
  switch (advice(terms)) {
    case "buy": {
      const fits = wants ? `leaves you ${margin}` : "is no more than it is worth to you";
      return `Buy: ${asked} ${fits}.`;
    }
    case "walk":
      return `Walk away: ${asked} ${short}, even where it turns out well.`;
  }
  return `Offer up to ${walk}: ${asked} ${short}.`;
}

/**
 * What it is worth, and how sure that is.
 * @param {Terms} terms
 */
export function range_say(terms) {
  const worths = [terms.expected, terms.low, terms.high];
  const [mean, low, high] = worths.map((x) => amount(terms, x));
  if (low === high && high === mean) {
    return `It is worth ${mean} to you.`;
  }
  if (low === high) {
    return `On average it is worth ${mean} to you, and mostly ${low}.`;
  }
  return (
    `On average it is worth ${mean} to you, ` +
    `and four times in five between ${low} and ${high}.`
  );
}

/**
 * Whose prices these are, and what the answer is not.
 * @param {Guide} guide
 * @param {Prices} prices
 */
export function note(guide, prices) {
  if (!prices.source) {
    return "This is arithmetic on your own prices, not an appraisal.";
  }
  const kind = guide.fiction ? "invented prices" : "prices";
  return (
    `This is arithmetic on this guide's ${kind} of ${day(prices.date)}, ` +
    "which you can change to your own, not an appraisal."
  );
}

/**
 * An amount of money in the deal's currency.
 * @param {Terms} terms
 * @param {number} x
 */
export function amount(terms, x) {
  return money(x, terms.currency);
}
