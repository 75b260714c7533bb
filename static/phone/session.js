// One person's session with one guide: what was read, what is gone, what is claimed.
// Pure: an old session and an event in, a new frozen session out. No arithmetic.

import { FORMAT, mended, opened } from "./draft.js";

export { DraftError } from "./draft.js";

/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {import("./engine/guide.js").Guide} Guide */
/** @typedef {import("./engine/find.js").Claim} Claim */
/** @typedef {import("./engine/find.js").Find} Find */
/** @typedef {import("./engine/find.js").Reading} Reading */
/**
 * @typedef {object} State What undo goes back to.
 * @property {string} guide
 * @property {readonly (readonly [string, Reading])[]} readings In order of the taps.
 * @property {readonly string[]} gone
 * @property {string | null} member
 * @property {Claim | null} claim
 * @property {boolean} away Whether the object can only be looked at from a step away.
 * @property {readonly string[]} without The tools that are not at hand.
 */
/** @typedef {State & {past: readonly State[]}} Session */
/** @typedef {{format: number, guide: string, stamp: string, session: Session}} Draft */

// A draft carries its past, so the past must end somewhere.
const MOST_UNDO = 100;

/** @param {string} guide @returns {Session} */
export function begin(guide) {
  const state = { guide, readings: [], gone: [], member: null, claim: null };
  return frozen({ ...state, away: false, without: [], past: [] });
}

/**
 * The session with this reading, in place of an earlier one of the same clue; a part
 * that is read cannot be gone.
 * @param {Session} session @param {Pick<Clue, "id" | "part">} clue @param {Reading} reading
 */
export function answer(session, { id, part }, reading) {
  const readings = [...new Map(session.readings).set(id, reading)];
  const gone = session.gone.filter((lost) => lost !== part || reading === null);
  return step(session, { readings, gone });
}

/** @param {Session} session @param {string} clue */
export function retract(session, clue) {
  return step(session, { readings: session.readings.filter(([id]) => id !== clue) });
}

/**
 * The session with this part gone. Readings on it are kept but do not count.
 * @param {Session} session @param {string} part @param {Guide} guide
 */
export function lose(session, part, guide) {
  const { name, replaced } = /** @type {{name: string, replaced: number}} */ (
    guide.parts.find(({ id }) => id === part)
  );
  if (replaced === 0) {
    // The model would be left without any explanation at all.
    throw new RangeError(
      `This guide says that the ${name} is never replaced, so it cannot be gone.`,
    );
  }
  return step(session, { gone: [...new Set(session.gone).add(part)] });
}

/** @param {Session} session @param {string} part */
export function regain(session, part) {
  return step(session, { gone: session.gone.filter((id) => id !== part) });
}

/** @param {Session} session @param {string | null} id */
export const member = (session, id) => step(session, { member: id });

/** @param {Session} session @param {Claim | null} told */
export function claim(session, told) {
  const kept = told && { model_year: told.model_year, cites: [...told.cites] };
  return step(session, { claim: kept });
}

/** @param {Session} session @param {boolean} only Only what shows from a step away. */
export const away = (session, only) => step(session, { away: only });

/** @param {Session} session @param {readonly string[]} tools */
export const without = (session, tools) => step(session, { without: [...tools] });

/**
 * The session before its last step; a session without a past stays as it is.
 * @param {Session} session @returns {Session}
 */
export function undo(session) {
  const last = session.past.at(-1);
  return last ? frozen({ ...last, past: session.past.slice(0, -1) }) : session;
}

/**
 * The find to judge: all in the guide's order, readings on gone parts left out.
 * @param {Session} session @param {Guide} guide @returns {Find}
 */
export function find(session, guide) {
  const readings = new Map(session.readings);
  const counted = guide.clues.filter(
    ({ id, part }) => readings.has(id) && !session.gone.includes(part),
  );
  const item = {
    readings: counted.map(({ id }) => [id, readings.get(id)]),
    gone: guide.parts.map(({ id }) => id).filter((id) => session.gone.includes(id)),
    member: session.member,
  };
  return frozen({ guide: session.guide, items: [item], claim: session.claim });
}

/**
 * What to keep, so that the session can be taken up again.
 * @param {Session} session @param {string} stamp The guide's version. @returns {Draft}
 */
export function draft(session, stamp) {
  return frozen({ format: FORMAT, guide: session.guide, stamp, session });
}

/**
 * The kept session, as far as the guide still knows it, and a sentence for each loss.
 * @param {unknown} json @param {Guide} guide @param {string} stamp
 * @returns {{session: Session, lost: string[]}}
 */
export function restore(json, guide, stamp) {
  const kept = opened(json, guide);
  const { state, lost } = mended(kept.session, guide);
  const steps = kept.session.past.slice(-MOST_UNDO);
  const past = steps.map((earlier) => mended(earlier, guide).state);
  const changed = "The guide has changed since this draft was kept; years may move.";
  return {
    session: frozen({ ...state, past }),
    lost: kept.stamp === stamp ? lost : [changed, ...lost],
  };
}

/** @param {Session} session @param {Partial<State>} change @returns {Session} */
function step(session, change) {
  const { past, ...before } = session;
  const after = { ...before, ...change };
  if (JSON.stringify(after) === JSON.stringify(before)) return session;
  return frozen({ ...after, past: [...past, before].slice(-MOST_UNDO) });
}

/** @template T @param {T} value @returns {T} The value, frozen all the way down. */
function frozen(value) {
  if (!Object.isFrozen(value)) {
    Object.values(/** @type {object} */ (value)).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}
