// What would become of a person's own prices and wants if a file's were taken in. Pure.

import { keyOfPrices, keyOfWant, nameOf, NOTHING } from "./owned.js";
import { MOST_WANTS } from "./wants.js";
import { isTable } from "./written.js";

/** @typedef {import("./owned.js").GuidePrices} GuidePrices */
/** @typedef {import("./owned.js").Kind} Kind */
/** @typedef {import("./owned.js").Owned} Owned */
/** @typedef {import("./owned.js").OwnedRead} OwnedRead */
/** @typedef {import("./owned.js").RefusedRow} RefusedRow */
/** @typedef {import("./wants.js").Want} Want */
/**
 * What lies here: the rows that can be read, and by kind the keys of those that cannot.
 * @typedef {Owned & {unread: Record<Kind, readonly string[]>}} OwnedHere
 */
/**
 * @template T
 * @typedef {{added: T[], changed: T[], same: T[], older: T[]}} Fates
 */
/**
 * @typedef {object} OwnedPlan
 * @property {Fates<GuidePrices>} prices
 * @property {Fates<Want>} wants
 * @property {RefusedRow[]} refused
 */

/** @type {OwnedHere} */
export const NOTHING_HERE = { ...NOTHING, unread: { prices: [], wants: [] } };
const UNREAD = "The one here cannot be read, and is left as it is.";
const TORN =
  "It differs from the one here, and both were changed at the same moment: the one here stays.";
const FULL = `There is room for ${MOST_WANTS} wants.`;

/**
 * Of two with the same key the one that was changed last is right.
 * @param {OwnedHere} here
 * @param {OwnedRead} file
 * @returns {OwnedPlan}
 */
export function mergedOwned(here, { prices, wants, refused }) {
  /** @type {OwnedPlan} */
  const plan = { prices: fates(), wants: fates(), refused: [...refused] };
  const taken = here.wants.length + here.unread.wants.length;
  sortOut(plan, "prices", { rows: prices, here, key: keyOfPrices, room: Infinity });
  sortOut(plan, "wants", { rows: wants, here, key: keyOfWant, room: MOST_WANTS - taken });
  return plan;
}

/** @returns {Fates<any>} */
const fates = () => ({ added: [], changed: [], same: [], older: [] });

/**
 * @param {OwnedPlan} plan
 * @param {Kind} kind
 * @param {object} given
 * @param {readonly any[]} given.rows
 * @param {OwnedHere} given.here
 * @param {(row: any) => string} given.key
 * @param {number} given.room for so many new ones
 */
function sortOut(plan, kind, { rows, here, key, room }) {
  const known = new Map(here[kind].map((row) => [key(row), row]));
  for (const row of rows) {
    const own = known.get(key(row));
    const isFull = !own && plan[kind].added.length >= room;
    const why = here.unread[kind].includes(key(row)) ? UNREAD : isFull ? FULL : torn(row, own);
    if (why) plan.refused.push({ kind, name: nameOf(row), why });
    else plan[kind][fate(row, own)].push(row);
  }
}

/** @param {any} row @param {any} own */
const torn = (row, own) =>
  own && own.changed === row.changed && told(own) !== told(row) ? TORN : "";

/** @param {any} row @param {any} own @returns {keyof Fates<any>} */
function fate(row, own) {
  if (!own) return "added";
  if (row.changed < own.changed) return "older";
  return row.changed > own.changed ? "changed" : "same";
}

/** All that a row says, in one order. @param {any} row */
const told = (row) =>
  JSON.stringify(row, (_, value) =>
    isTable(value) ? Object.fromEntries(Object.entries(value).sort()) : value,
  );
