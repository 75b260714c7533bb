/**
 * A person's prices and habits in settings. What cannot be kept counts all the same, as
 * long as the page is open.
 */

import { book } from "../log/book.js";
import * as take from "../log/fields.js";
import { prices, pricesKey } from "../log/prices.js";
import { NO_HABITS } from "./dealsfields.js";

/** @typedef {import("../log/prices.js").OwnPrices} OwnPrices */
/** @typedef {import("./dealsfields.js").Habits} Habits */
/** The person's prices for a guide, and why those that are there cannot be read. @typedef {{own: OwnPrices | null, unread: string}} Kept */

const HABITS = "habits";
/** Prices that could not be read, once others took their place. @param {string} guide */
const asideKey = (guide) => `unread-prices/${guide}`;

/** What could not be kept yet, by setting. @type {Map<string, any>} */
const unkept = new Map();

/** @param {string} guide @returns {Promise<Kept>} */
export async function ownPrices(guide) {
  return taken(await setting(pricesKey(guide)));
}

/**
 * Keeps the prices, or none any more. What lies there and cannot be read is set aside.
 * @param {string} guide
 * @param {OwnPrices | null} own
 */
export async function keepPrices(guide, own) {
  const key = pricesKey(guide);
  unkept.set(key, own);
  const before = await book.setting(key);
  if (taken(before).unread) {
    const aside = (await book.setting(asideKey(guide))) ?? [];
    await book.set(asideKey(guide), [...aside, before]);
  }
  await keep(key, own);
}

/** @returns {Promise<Habits>} */
export async function habits() {
  const known = await setting(HABITS);
  if (known === null) return NO_HABITS;
  const of = take.table(known, "margin and hour");
  return {
    margin: take.number(of("margin"), "margin", 0, 100),
    hour: take.price(of("hour"), "price of an hour"),
  };
}

/** @param {Habits} habits */
export const keepHabits = ({ margin, hour }) => keep(HABITS, { margin, hour });

/** @param {unknown} json @returns {Kept} */
function taken(json) {
  try {
    return { own: json === null ? null : prices(json), unread: "" };
  } catch (error) {
    const { name, message } = /** @type {Error} */ (error);
    if (name !== "RecordError") throw error;
    return { own: null, unread: message };
  }
}

/** @param {string} key @returns {Promise<unknown>} */
async function setting(key) {
  return unkept.has(key) ? unkept.get(key) : book.setting(key);
}

/** @param {string} key @param {unknown} value */
async function keep(key, value) {
  unkept.set(key, value);
  await book.set(key, value);
  // What was changed meanwhile is on its own way.
  if (unkept.get(key) === value) unkept.delete(key);
}
