/** What lies open: a guide, the session with it, and all that follows from the two. */

import { WORTHWHILE } from "./engine/gain.js";
import { ended, judging } from "./engine/index.js";
import { WHICH } from "./routes.js";
import { ALL, isSet, placeOf, targets } from "./scope.js";
import { find } from "./session.js";

/** @typedef {import("./shelf.js").Opened} Opened */
/** @typedef {import("./session.js").Session} Session */

/** @typedef {import("./engine/guide.js").Clue} Clue */
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
 * A question: the clue, the places that its answer counts for, and those that it could
 * count for as well. None at all: it has yet to be said which member differs.
 * @typedef {object} Question
 * @property {Clue} clue
 * @property {readonly number[]} places
 * @property {readonly number[]} open
 */

/** All of a session that a verdict follows from; a step leaves alone what stays. */
const JUDGED = /** @type {const} */ (["items", "claim", "away", "without", "photos"]);

/**
 * The desk for a session, laid out from the guide or from the desk before it: judged
 * anew, unless nothing that is judged has changed.
 * @param {Opened | Desk} before
 * @param {Session} session
 * @returns {Desk}
 */
export const laid = (before, session) => ended(laying(before, session));

/**
 * The same step by step, so that a page can answer in between.
 * @param {Opened | Desk} before
 * @param {Session} session
 * @returns {Generator<void, Desk, void>}
 */
export function* laying(before, session) {
  if ("session" in before && JUDGED.every((key) => before.session[key] === session[key]))
    return { ...before, session };
  const { guide, tables, stamp } = before;
  const found = find(session, guide);
  const { away, without, photos } = session;
  const verdict = yield* judging(tables, found, { away, without, photos });
  const nexts = verdict.next.filter(({ bits }) => bits >= WORTHWHILE);
  return { guide, tables, stamp, session, find: found, verdict, nexts };
}

/**
 * The desk of one member, as if the others were not there; null if it is none of the set.
 * @param {Desk} desk
 * @param {string | null} member
 * @returns {Desk | null}
 */
export function alone(desk, member) {
  const { session } = desk;
  const place = member === null ? -1 : placeOf(session, member);
  if (place < 0 || !isSet(session)) return null;
  return laid(desk, { ...session, items: [session.items[place]], at: ALL });
}

/**
 * What to ask: the wanted clue, else the one that tells most of whoever is asked about,
 * with `rest` however little that is; null at the end.
 * @param {Desk} desk
 * @param {Partial<import("./routes.js").Route>} wanted
 * @returns {Question | null}
 */
export function asked(desk, { clue: wanted = null, member = null, rest = false }) {
  const { guide, session } = desk;
  const place = member === null ? -1 : placeOf(session, member);
  const at = place < 0 ? session.at : place;
  const nexts = rest ? desk.verdict.next : desk.nexts;
  const worth = at === ALL ? nexts : nexts.filter(isOf(session.items[at].member));
  const ids = [wanted, worth[0]?.clue];
  const [clue = null] = ids.flatMap((id) => guide.clues.filter((each) => each.id === id));
  if (!clue) return null;
  const open = at === ALL ? targets(session, clue) : [at];
  if (member === WHICH && isSet(session)) return { clue, places: [], open };
  return { clue, places: glance(clue) ? open : [typed(session, clue, open, worth)], open };
}

/** @param {string | null} id */
const isOf = (id) => (/** @type {Next} */ { member }) => member === id;

/** Whether many can be told at one glance: what must be typed is read one by one. @param {Clue} clue */
const glance = ({ kind }) => kind.name === "choice";

/**
 * The one place of those open where it tells most to read a code or to measure.
 * @param {Session} session @param {Clue} clue @param {readonly number[]} open
 * @param {readonly Next[]} worth
 */
function typed(session, { id }, open, worth) {
  const best = worth.find(({ clue }) => clue === id)?.member ?? null;
  const place = placeOf(session, best);
  return open.includes(place) ? place : open[0];
}
