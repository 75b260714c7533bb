/** What is asked for the find that lies open, and what else is said of this deal alone. */

import * as take from "../log/fields.js";
import { ofOpen } from "./ofopen.js";

/** @typedef {import("./ofopen.js").Open} Open */
/**
 * The price `asked` (null: not yet known) in a currency, the grade of condition, and what
 * the find will cost besides.
 * @typedef {{asked: number | null, currency: string, condition: string, costs: number}} Dealt
 */

/** @type {Dealt} */
export const UNDEALT = Object.freeze({ asked: null, currency: "", condition: "", costs: 0 });

// The price is often asked before anything is read, and a wrong one shows on the screen.
const memory = ofOpen("deals", { unread: true });

/**
 * What is known of the deal. What cannot be read counts as never said: it is soon typed
 * again, and must not stand in the way of keeping the find.
 * @param {Open} open
 * @returns {Promise<Dealt>}
 */
export async function dealOf(open) {
  const known = await memory.of(open);
  try {
    return known ? dealt(known) : UNDEALT;
  } catch (error) {
    if (/** @type {Error} */ (error).name !== "RecordError") throw error;
    return UNDEALT;
  }
}

/** @param {Open} open @param {Dealt} dealt */
export const noteDeal = (open, dealt) => memory.keep(open, dealt);

/** Another find is begun. @param {string} guide */
export async function dropDeal(guide) {
  try {
    await memory.forget(guide);
  } catch (error) {
    // Where nothing can be kept, nothing is there that would come back.
    if (/** @type {Error} */ (error).name !== "StoreError") throw error;
  }
}

/** @param {unknown} json @returns {Dealt} */
function dealt(json) {
  const of = take.table(json, "deal");
  return {
    asked: take.maybe(take.price)(of("asked"), "price asked"),
    currency: take.currency(of("currency"), "currency"),
    condition: take.short(of("condition"), "condition"),
    costs: take.price(of("costs"), "costs"),
  };
}
