/** What is being typed into the offer's fields: what would follow from it, and what is wrong. Pure. */

import { read } from "./pricestyped.js";

/** @typedef {import("../engine/deal.js").Deal} Deal */
/** @typedef {import("../engine/guide.js").Prices} Prices */
/** @typedef {{prices: Prices, deal: Deal}} Terms */
/**
 * The fields that there are.
 * @typedef {object} Fields
 * @property {ReadonlyMap<string, import("./dealsfields.js").Field>} deals
 * @property {ReadonlyMap<string, import("./pricesfields.js").Field>} prices
 */

/**
 * The value of what stands in a field, or what is wrong with it.
 * @param {Fields} fields @param {string} key @param {string} typed @param {Terms} terms
 */
export function readAt({ deals, prices }, key, typed, terms) {
  const field = deals.get(key) ?? prices.get(key);
  return field ? read(field.kind, typed, terms.prices.currency) : { value: null, wrong: "" };
}

/**
 * The terms with what is being typed into a field, as if it were taken; the same where it
 * cannot be read.
 * @param {Fields} fields @param {string} key @param {string} typed @param {Terms} terms
 * @returns {Terms}
 */
export function withTyped(fields, key, typed, terms) {
  const { value, wrong } = readAt(fields, key, typed, terms);
  if (wrong) return terms;
  const deal = fields.deals.get(key)?.put(terms.deal, value) ?? terms.deal;
  const prices = fields.prices.get(key)?.put(terms.prices, value) ?? terms.prices;
  return { prices, deal };
}

/**
 * That nothing follows as long as a field cannot be read.
 * @param {Fields} fields @param {string} key
 */
export function trouble({ deals, prices }, key) {
  const name = deals.get(key)?.name ?? `“${prices.get(key)?.label}” among your prices`;
  return `${name} cannot be read: mend it below.`;
}
