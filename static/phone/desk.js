/** What lies open: a guide, the session with it, and all that follows from the two. */

import { WORTHWHILE } from "./engine/gain.js";
import { judge } from "./engine/index.js";
import { find } from "./session.js";

/** @typedef {import("./shelf.js").Opened} Opened */
/** @typedef {import("./session.js").Session} Session */

/** @typedef {import("./engine/find.js").Find} Find */
/** @typedef {import("./engine/find.js").Verdict} Verdict */
/** @typedef {import("./engine/find.js").Next} Next */

/**
 * @typedef {object} Followed
 * @property {Session} session
 * @property {Find} find
 * @property {Verdict} verdict
 * @property {readonly Next[]} nexts what is still worth looking at, best first
 */
/** @typedef {Opened & Followed} Desk */

/**
 * The desk for a session: always judged anew, so nothing on it can be stale.
 * @param {Opened} shelved
 * @param {Session} session
 * @returns {Desk}
 */
export function laid({ guide, tables, stamp }, session) {
  const found = find(session, guide);
  const { away, without } = session;
  const verdict = judge(tables, found, { away, without });
  const nexts = verdict.next.filter(({ bits }) => bits >= WORTHWHILE);
  return { guide, tables, stamp, session, find: found, verdict, nexts };
}

/**
 * The clue to ask about: the wanted one, else the one that tells most; null at the end.
 * @param {Desk} desk
 * @param {string | null} wanted
 */
export function asked({ guide, nexts }, wanted) {
  const find = (/** @type {string | null} */ id) => guide.clues.find((each) => each.id === id);
  return find(wanted) ?? find(nexts[0]?.clue ?? null) ?? null;
}
