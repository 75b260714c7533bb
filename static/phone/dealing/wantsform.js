/** What a person types of a want, and what stands there. Pure. */

import { currency as code, CURRENCY_WRONG, money, priced, PRICE_WRONG } from "../price.js";

/** @typedef {import("../log/wants.js").Want} Want */
/** @typedef {Pick<Want, "guide" | "since" | "until" | "member" | "most" | "currency" | "note">} Told */
/** @typedef {keyof Told} Field */
/**
 * What stands in the form.
 * @typedef {Record<Field, string>} Typed
 */

const BACKWARDS = "Choose the same year as in “From”, or a later one.";
const OTHER = "Type it in the currency beside it, or change that one.";

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
  const most = money(typed.most);
  const chosen = code(typed.currency);
  const currency = chosen || (most?.currency ?? "");
  /** @type {Partial<Typed>} */
  const wrong = {};
  if (since !== null && until !== null && until < since) wrong.until = BACKWARDS;
  if (!most) wrong.most = PRICE_WRONG;
  else if (chosen && most.currency && most.currency !== chosen) wrong.most = OTHER;
  if (chosen === undefined) wrong.currency = CURRENCY_WRONG;
  const { guide, member, note } = typed;
  const limit = { most: most?.price ?? null, currency };
  const told = { guide, since, until, member: member || null, ...limit, note };
  return { told, wrong };
}

/** What stands in the form of a want. @param {Told} want @returns {Typed} */
export function written({ guide, since, until, member, most, currency, note }) {
  const years = { since: String(since ?? ""), until: String(until ?? "") };
  return { guide, ...years, member: member ?? "", most: priced(most), currency, note };
}
