/** What the events of several controls make of a session; pure, over session.js. */

import { claim, without } from "./session.js";

/** @typedef {import("./session.js").Session} Session */

/**
 * The session without a tool, or with it again.
 * @param {Session} session @param {string} tool @param {boolean} missing
 */
export function lacking(session, tool, missing) {
  return without(session, toggled(session.without, tool, missing));
}

/**
 * The session with the year that the seller says; an empty one takes the claim back.
 * @param {Session} session @param {string} year
 */
export function claimed(session, year) {
  const cites = session.claim?.cites ?? [];
  return claim(session, year ? { model_year: Number(year), cites } : null);
}

/**
 * The session with a clue offered as proof of its claim, or no longer.
 * @param {Session} session @param {string} clue @param {boolean} on
 */
export function cited(session, clue, on) {
  if (!session.claim) return session;
  const { model_year, cites } = session.claim;
  return claim(session, { model_year, cites: toggled(cites, clue, on) });
}

/** @param {readonly string[]} list @param {string} each @param {boolean} on */
function toggled(list, each, on) {
  const others = list.filter((other) => other !== each);
  return on ? [...others, each] : others;
}
