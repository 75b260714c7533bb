/** What the events of several controls make of a session; pure, over session.js. */

import { ALL, isSet, placeOf, reading } from "./scope.js";
import { addMember, removeMember } from "./members.js";
import { answer, claim, lose, without } from "./session.js";

/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {import("./engine/guide.js").Guide} Guide */
/** @typedef {import("./session.js").Kept} Kept */
/** @typedef {import("./session.js").Session} Session */

/**
 * How far the last answer for a set spread: how many of its members have alike what most
 * of them have, and whether that is that the part is gone.
 * @typedef {{clue: Clue, count: number, total: number, gone: boolean}} Spread
 */

/**
 * The session after an answer that was tapped: an option, that it cannot be told, or that
 * the part is gone.
 * @param {Session} session
 * @param {import("./desk.js").Question} question
 * @param {import("./view/answering.js").Taken} answer
 * @param {Guide} guide
 */
export function answered(session, { clue, places, open }, { means, value }, guide) {
  if (means === "gone") return lose(session, clue.part, guide, places);
  if (means === "cannot") return answer(session, clue, null, open);
  return answer(session, clue, value, places);
}

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

/**
 * The session with a member that was not there, or without one that was.
 * @param {Session} session @param {string} id @param {Guide} guide
 */
export function withMember(session, id, guide) {
  const event = placeOf(session, id) < 0 ? addMember : removeMember;
  return event(session, id, guide);
}

/**
 * What the last step told of the whole set, so that an exception can follow it; null
 * where it told nothing of the kind.
 * @param {Session} session @param {Guide} guide
 * @returns {Spread | null}
 */
export function spread(session, guide) {
  const before = session.past.at(-1);
  if (!isSet(session) || session.at !== ALL) return null;
  if (before?.items.length !== session.items.length) return null;
  const [clue = null] = guide.clues.filter((each) => changed(before.items, session.items, each));
  if (!clue) return null;
  const told = session.items.map((item) => stands(item, clue)).filter((one) => one !== "");
  const alike = (/** @type {string} */ one) => told.filter((other) => other === one).length;
  const [most = ""] = [...told].sort((one, other) => alike(other) - alike(one));
  if (alike(most) < 2) return null;
  return { clue, count: alike(most), total: session.items.length, gone: most === GONE };
}

const GONE = "gone";

/** @param {readonly Kept[]} before @param {readonly Kept[]} after @param {Clue} clue */
function changed(before, after, clue) {
  return after.some((item, place) => stands(item, clue) !== stands(before[place], clue));
}

/** What is told of a clue on one object, so that equal ones are alike; "" where nothing is. @param {Kept} item @param {Clue} clue */
function stands(item, { id, part }) {
  return item.gone.includes(part) ? GONE : (JSON.stringify(reading(item, id)) ?? "");
}

/** @param {readonly string[]} list @param {string} each @param {boolean} on */
function toggled(list, each, on) {
  const others = list.filter((other) => other !== each);
  return on ? [...others, each] : others;
}
