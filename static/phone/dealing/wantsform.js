/** What a person types of a want, and what stands there. Pure. */

import { price, priced, PRICE_WRONG } from "../price.js";

/** @typedef {import("../log/wants.js").Want} Want */
/** @typedef {Pick<Want, "guide" | "since" | "until" | "member" | "most" | "currency" | "note">} Told */
/** @typedef {keyof Told} Field */
/**
 * What stands in the form.
 * @typedef {Record<Field, string>} Typed
 */

const BACKWARDS = "Choose the same year as in “From”, or a later one.";
const THREE_LETTERS = "Type the three letters of the currency, as EUR.";
const CURRENCY = /^([A-Z]{3})?$/;

/** @type {Typed} */
export const EMPTY = {
  guide: "",
  since: "",
  until: "",
  member: "",
  most: "",
  currency: "",
  note: "",
};

/**
 * The want as it is meant, or a sentence for each field that cannot be taken.
 * @param {Typed} typed
 * @returns {{told: Told, wrong: Partial<Typed>}}
 */
export function read(typed) {
  const [since, until] = [typed.since, typed.until].map((year) => (year ? Number(year) : null));
  const most = price(typed.most);
  const currency = typed.currency.trim().toUpperCase();
  /** @type {Partial<Typed>} */
  const wrong = {};
  if (since !== null && until !== null && until < since) wrong.until = BACKWARDS;
  if (most === undefined) wrong.most = PRICE_WRONG;
  if (!CURRENCY.test(currency)) wrong.currency = THREE_LETTERS;
  const { guide, member, note } = typed;
  const told = { guide, since, until, member: member || null, most: most ?? null, currency, note };
  return { told, wrong };
}

/** What stands in the form of a want. @param {Told} want @returns {Typed} */
export function written({ guide, since, until, member, most, currency, note }) {
  const years = { since: String(since ?? ""), until: String(until ?? "") };
  return { guide, ...years, member: member ?? "", most: priced(most), currency, note };
}
