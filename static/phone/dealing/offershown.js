/** What the offer's screen knows while it is shown. Pure. */

import { UNDEALT } from "../kept/dealt.js";
import { NO_HABITS } from "./dealsfields.js";
import { readAt } from "./offertyped.js";
import { beginning } from "./prices.js";
import { written } from "./pricestyped.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../engine/guide.js").Prices} Prices */
/** @typedef {import("../log/prices.js").OwnPrices} OwnPrices */
/**
 * What is shown.
 * @typedef {object} Shown
 * @property {string} guide with its version
 * @property {Desk} desk
 * @property {OwnPrices | null} own
 * @property {string} unread why the person's prices cannot be read
 * @property {string} currency of the last find
 * @property {import("../engine/deal.js").Deal} deal
 * @property {readonly import("../log/wants.js").Want[]} wants
 * @property {Set<string>} wrong the fields that cannot be read
 * @property {{own: OwnPrices | null} | null} before what a change of many prices put away
 * @property {Map<string, import("./dealsfields.js").Field>} deals
 * @property {Map<string, import("./pricesfields.js").Field>} prices none until they were read
 */

/** Before anything is read. @param {string} guide @param {Desk} desk @returns {Shown} */
export function begun(guide, desk) {
  const deal = { ...UNDEALT, ...NO_HABITS };
  const said = { own: null, unread: "", currency: "", deal, wants: [], before: null };
  return { guide, desk, ...said, wrong: new Set(), deals: new Map(), prices: new Map() };
}

/** What counts now: the person's own, or the guide's. @param {Shown} now @returns {Prices} */
export const pricesOf = ({ own, desk, currency }) => own ?? beginning(desk.guide, currency);

/** What is kept. @param {Shown} now */
export const termsOf = (now) => ({ prices: pricesOf(now), deal: now.deal });

/** A price in other money says nothing here. @param {Shown} now @param {import("../kept/dealt.js").Dealt} dealt */
export function askedIn(now, { asked, currency }) {
  const own = pricesOf(now).currency;
  return currency && own && currency !== own ? null : asked;
}

/** What stands in a field. @param {Shown} now @param {string} key */
export function standing(now, key) {
  const deal = now.deals.get(key);
  if (deal) return written(deal.kind, deal.get(now.deal));
  const field = now.prices.get(key);
  return field ? written(field.kind, field.get(pricesOf(now)) ?? null) : "";
}

/**
 * Notes whether what stands in a field can be read; what is wrong with it.
 * @param {Shown} now
 * @param {import("../view/entryown.js").Control} control
 */
export function check(now, { dataset: { own: key = "" }, value }) {
  const { wrong } = readAt(now, key, value, termsOf(now));
  if (wrong) now.wrong.add(key);
  else now.wrong.delete(key);
  return wrong;
}
