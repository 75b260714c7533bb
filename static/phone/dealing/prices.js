/**
 * Prices as a person keeps them for a guide: what they begin with, what of them counts, and
 * what the guide no longer has. Pure.
 */

import { starting } from "../engine/offer.js";
import { listed } from "../engine/words.js";

/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../engine/guide.js").Off} Off */
/** @typedef {import("../engine/guide.js").PartPrice} PartPrice */
/** @typedef {import("../engine/guide.js").Prices} Prices */
/** @typedef {import("../engine/guide.js").SetPrices} SetPrices */
/** @typedef {readonly (readonly [number, number])[]} Worths By year. */

/** @type {Off} */
export const NO_OFF = Object.freeze({ amount: 0, share: 0 });
/** @type {SetPrices} */
export const NO_SET = Object.freeze({ worth: [], other: 0, missing: NO_OFF, stray: NO_OFF });

/**
 * The guide's prices, or none yet, in the currency of the last time.
 * @param {Guide} guide
 * @param {string} currency
 * @returns {Prices}
 */
export function beginning(guide, currency) {
  const begun = starting(guide);
  return { ...begun, currency: begun.currency || currency };
}

/**
 * The prices that count. A set that has no price is worth its members one by one, whatever
 * a stray would take off it.
 * @param {Prices} prices
 * @returns {Prices}
 */
export function counting(prices) {
  const { set } = prices;
  const told = set && (set.other > 0 || set.worth.some(([, price]) => price > 0));
  return told ? prices : { ...prices, set: null };
}

/**
 * What these years are worth: one price, null where none has one, undefined where they
 * differ.
 * @param {Worths} worth
 * @param {readonly number[]} years
 */
export function priceOf(worth, years) {
  const known = new Map(worth);
  const [first, ...others] = years.map((year) => known.get(year) ?? null);
  return others.every((price) => price === first) ? first : undefined;
}

/**
 * The same with one price for these years, or none.
 * @param {Worths} worth
 * @param {readonly number[]} years
 * @param {number | null} price
 * @returns {Worths}
 */
export function withPrice(worth, years, price) {
  const found = new Map(worth);
  for (const year of years) {
    if (price === null) found.delete(year);
    else found.set(year, price);
  }
  return [...found].sort(([one], [other]) => one - other);
}

/** @param {Prices} prices @param {string} id @returns {PartPrice} */
export function partOf({ parts }, id) {
  const found = parts.find(({ part }) => part === id);
  return found ?? { part: id, off: NO_OFF, put_right: null };
}

/**
 * The prices with another price of a part; one that says nothing is left out.
 * @param {Prices} prices
 * @param {PartPrice} price
 * @returns {Prices}
 */
export function withPart(prices, price) {
  const others = prices.parts.filter(({ part }) => part !== price.part);
  const isNothing = isNone(price.off) && price.put_right === null;
  return { ...prices, parts: isNothing ? others : [...others, price] };
}

/** The grade's share, null where it takes off nothing. @param {Prices} prices @param {string} grade */
export function gradeOf({ condition }, grade) {
  return condition.find(([name]) => name === grade)?.[1] ?? NO_OFF;
}

/** @param {Prices} prices @param {string} grade @param {Off} off @returns {Prices} */
export function withGrade(prices, grade, off) {
  const others = prices.condition.filter(([name]) => name !== grade);
  return { ...prices, condition: [...others, [grade, off]] };
}

/** The grades of condition, the guide's first. @param {Guide} guide @param {Prices} prices */
export function gradesOf(guide, { condition }) {
  const own = condition.map(([name]) => name);
  const known = starting(guide).condition.map(([name]) => name);
  return [...new Set([...known, ...own])];
}

/** Whether nothing is taken off. @param {Off} off */
export const isNone = ({ amount, share }) => amount === 0 && share === 0;

/**
 * A sentence on what was priced and is not in the guide; nothing where all is.
 * @param {Guide} guide
 * @param {Prices} prices
 */
export function lost(guide, { worth, parts, set }) {
  const years = new Set(guide.years.map(({ year }) => year));
  const known = new Set(guide.parts.map(({ id }) => id));
  const priced = [...worth, ...(set?.worth ?? [])].map(([year]) => year);
  const gone = [
    ...priced.filter((year) => !years.has(year)).map(String),
    ...parts.flatMap(({ part }) => (known.has(part) ? [] : [`the part “${part}”`])),
  ];
  if (!gone.length) return "";
  return `You have priced ${listed([...new Set(gone)])}, which the guide no longer has: that is kept, and does not count.`;
}
