/** What a person types into the fields of an entry, and what stands there. Pure. */

import { price, priced, PRICE_WRONG } from "../price.js";

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
/** @type {readonly Field[]} */
const PRICES = ["asked", "paid"];

/**
 * The field as the log takes it, or what is wrong with it.
 * @param {Field} field
 * @param {string} typed
 * @param {{badInput: boolean}} validity a browser gives half a date as none
 * @returns {{own: Partial<Own>, wrong: string}}
 */
export function read(field, typed, { badInput }) {
  if (badInput) return { own: {}, wrong: HALF };
  if (field === "currency") return { own: { currency: typed.trim().toUpperCase() }, wrong: "" };
  if (field === "note") return { own: { note: typed }, wrong: "" };
  if (!PRICES.includes(field)) return { own: { [field]: typed.trim() }, wrong: "" };
  const found = price(typed);
  if (found === undefined) return { own: {}, wrong: PRICE_WRONG };
  return { own: { [field]: found }, wrong: "" };
}

/** What stands in the field. @param {Entry} entry @param {Field} field */
export function written(entry, field) {
  const value = entry[field];
  return typeof value === "string" ? value : priced(value);
}
