/** The answer, worked out when something has changed; a set's after the screen is drawn. */

import { offer } from "../engine/offer.js";
import { counting } from "./prices.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../engine/offer.js").Offer} Offer */
/** @typedef {{prices: import("../engine/guide.js").Prices, deal: import("../engine/deal.js").Deal}} Terms */

/** Whoever has the last turn is answered. */
let turn = 0;
/** What was answered last, and to what. @type {{find: unknown, terms: string, answer: Offer} | null} */
let last = null;

/**
 * Works out the answer and tells it: null first where that takes its time.
 * @param {Desk} desk
 * @param {Terms} terms
 * @param {(answer: Offer | null) => void} tell
 */
export async function answer(desk, terms, tell) {
  const mine = ++turn;
  const isKnown = last?.find === desk.find && last.terms === told(desk, terms);
  if (desk.find.items.length > 1 && !isKnown) {
    tell(null);
    await painted();
    // Whoever has gone on meanwhile must not wait for it.
    if (mine !== turn) return;
  }
  tell(isKnown && last ? last.answer : worked(desk, terms));
}

/** Nobody waits for the answer any more. */
export function leaveAnswer() {
  turn++;
}

/** @param {Desk} desk @param {Terms} terms */
function worked(desk, terms) {
  const { tables, find, session } = desk;
  const { away, without, photos } = session;
  const prices = counting(terms.prices);
  const made = offer(tables, find, { prices, deal: terms.deal, away, without, photos });
  last = { find, terms: told(desk, terms), answer: made };
  return made;
}

/** All that the answer follows from besides the find. @param {Desk} desk @param {Terms} terms */
const told = ({ session }, terms) =>
  JSON.stringify([terms, session.away, session.without, session.photos]);

/** Once the page was painted. */
const painted = () => new Promise((go) => requestAnimationFrame(() => setTimeout(go, 0)));
