/** What a person types into the fields of an entry, and what stands there. Pure. */

import * as take from "../log/fields.js";
import { currency, CURRENCY_WRONG, price, priced, PRICE_WRONG } from "../price.js";

/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("../log/record.js").Own} Own */
/** @typedef {Exclude<keyof Own, "photos">} Field */

/** How each is called in a sentence. @type {Record<Field, string>} */
export const NAMES = {
  title: "title",
  date: "date",
  place: "place",
  asked: "price asked",
  paid: "price paid",
  currency: "currency",
  note: "note",
};

const HALF = "Choose a whole day, with its month and year.";
/** How each is taken by the log; a RecordError says why it is not. @type {Record<Field, (typed: string, what: string) => string | number | null>} */
const TAKEN = {
  title: (typed, what) => take.short(typed.trim(), what),
  date: take.day,
  place: (typed, what) => take.short(typed.trim(), what),
  asked: (typed) => there(price(typed), PRICE_WRONG),
  paid: (typed) => there(price(typed), PRICE_WRONG),
  currency: (typed) => there(currency(typed), CURRENCY_WRONG),
  note: take.text,
};

/**
 * The field as the log takes it, or what is wrong with it.
 * @param {Field} field
 * @param {string} typed
 * @param {{badInput: boolean}} validity a browser gives half a date as none
 * @returns {{own: Partial<Own>, wrong: string}}
 */
export function read(field, typed, { badInput }) {
  if (badInput) return { own: {}, wrong: HALF };
  try {
    return { own: { [field]: TAKEN[field](typed, NAMES[field]) }, wrong: "" };
  } catch (error) {
    const { name, message } = /** @type {Error} */ (error);
    if (name !== "RecordError") throw error;
    return { own: {}, wrong: message };
  }
}

/** What was found, or the reason why it was not. @template T @param {T | undefined} found @param {string} why */
function there(found, why) {
  if (found === undefined) throw new take.RecordError(why);
  return found;
}

/** What stands in the field. @param {Entry} entry @param {Field} field */
export function written(entry, field) {
  const value = entry[field];
  return typeof value === "string" ? value : priced(value);
}
