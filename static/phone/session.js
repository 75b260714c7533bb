// One person's session with one guide: what was read, what is gone, what is claimed, of
// one object or of the members of a set (members.js says which those are).
// Pure: an old session and an event in, a new frozen session out. No arithmetic.

import { FORMAT, mended, opened } from "./draft.js";
import { ALL, everywhere, reading as readingOf, targets } from "./scope.js";

export { DraftError } from "./draft.js";

/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {import("./engine/guide.js").Guide} Guide */
/** @typedef {import("./engine/find.js").Claim} Claim */
/** @typedef {import("./engine/find.js").Find} Find */
/** @typedef {import("./engine/find.js").Item} Item */
/** @typedef {import("./engine/find.js").Reading} Reading */
/**
 * @typedef {object} Kept One object. It stays the same one until it changes.
 * @property {string | null} member Null for one object of which it is not known.
 * @property {readonly (readonly [string, Reading])[]} readings In order of the taps.
 * @property {readonly string[]} gone
 */
/**
 * @typedef {object} State What undo goes back to.
 * @property {string} guide
 * @property {readonly Kept[]} items In the guide's order of members; never none.
 * @property {"all" | number} at The place of the member that is asked about, or all.
 * @property {Claim | null} claim
 * @property {boolean} away Whether the object can only be looked at from a step away.
 * @property {boolean} photos Whether there are only photos of it.
 * @property {readonly string[]} without The tools that are not at hand.
 */
/** @typedef {State & {past: readonly State[]}} Session */
/** @typedef {{format: number, guide: string, stamp: string, session: Session}} Draft */

// A draft carries its past, so the past must end somewhere.
const MOST_UNDO = 100;
/** @type {Kept} */
const BLANK = { member: null, readings: [], gone: [] };

/** @param {string} guide @returns {Session} */
export function begin(guide) {
  const state = { guide, items: [BLANK], at: /** @type {typeof ALL} */ (ALL), claim: null };
  return frozen({ ...state, away: false, photos: false, without: [], past: [] });
}

/**
 * A session in which all of a find was read already.
 * @param {Find} find @returns {Session}
 */
export function reopened({ guide, items, claim }) {
  return frozen({ ...begin(guide), items: items.map((item) => ({ ...BLANK, ...item })), claim });
}

/**
 * The session with this reading, in place of an earlier one of the same clue; a part
 * that is read cannot be gone.
 * @param {Session} session @param {Pick<Clue, "id" | "part">} clue @param {Reading} reading
 * @param {readonly number[]} places
 */
export function answer(session, clue, reading, places = targets(session, clue)) {
  return change(session, places, (item) => read(item, clue, reading));
}

/** @param {Session} session @param {string} clue */
export function retract(session, clue, places = everywhere(session)) {
  return change(session, places, (item) => ({
    ...item,
    readings: item.readings.filter(([id]) => id !== clue),
  }));
}

/**
 * The session with this part gone. Readings on it are kept but do not count.
 * @param {Session} session @param {string} part @param {Guide} guide
 * @param {readonly number[]} places
 */
export function lose(session, part, guide, places = everywhere(session)) {
  const { name, replaced } = /** @type {{name: string, replaced: number}} */ (
    guide.parts.find(({ id }) => id === part)
  );
  if (replaced === 0) {
    // The model would be left without any explanation at all.
    throw new RangeError(
      `This guide says that the ${name} is never replaced, so it cannot be gone.`,
    );
  }
  return change(session, places, (item) => ({
    ...item,
    gone: [...new Set(item.gone).add(part)],
  }));
}

/** @param {Session} session @param {string} part */
export function regain(session, part, places = everywhere(session)) {
  return change(session, places, (item) => ({
    ...item,
    gone: item.gone.filter((id) => id !== part),
  }));
}

/** @param {Session} session @param {Claim | null} told */
export function claim(session, told) {
  const kept = told && { model_year: told.model_year, cites: [...told.cites] };
  return step(session, { claim: kept });
}

/** @param {Session} session @param {boolean} only Only what shows from a step away. */
export const away = (session, only) =>
  step(session, { away: only, photos: session.photos && !only });

/** @param {Session} session @param {boolean} only Only what a photo can show. */
export const photos = (session, only) =>
  step(session, { photos: only, away: session.away && !only });

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
export function find({ guide: id, items, claim }, guide) {
  return frozen({ guide: id, items: items.map((item) => counted(item, guide)), claim });
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
  const mend = mended(guide);
  const { state, lost } = mend(kept.session);
  const past = kept.session.past.slice(-MOST_UNDO).map((earlier) => mend(earlier).state);
  const changed = "The guide has changed since this draft was kept; years may move.";
  return {
    session: frozen({ ...state, past }),
    lost: kept.stamp === stamp ? lost : [changed, ...lost],
  };
}

/**
 * The session with something else in it, and the way back; the same session where all
 * is as it was.
 * @param {Session} session @param {Partial<State>} changes @returns {Session}
 */
export function step(session, changes) {
  const { past, ...before } = session;
  const after = { ...before, ...changes };
  if (isSame(after, before)) return session;
  return frozen({ ...after, past: [...past, before].slice(-MOST_UNDO) });
}

/**
 * A step in which the items at these places change, and no other.
 * @param {Session} session @param {readonly number[]} places
 * @param {(item: Kept) => Kept} changed
 */
function change(session, places, changed) {
  const items = session.items.map((item, place) => {
    const after = places.includes(place) ? changed(item) : item;
    return isSame(after, item) ? item : after;
  });
  return step(session, { items });
}

/** @param {Kept} item @param {Pick<Clue, "id" | "part">} clue @param {Reading} reading */
function read(item, { id, part }, reading) {
  /** @type {readonly [string, Reading]} */
  const now = [id, reading];
  const readings =
    readingOf(item, id) === undefined
      ? [...item.readings, now]
      : item.readings.map((pair) => (pair[0] === id ? now : pair));
  const gone = item.gone.filter((lost) => lost !== part || reading === null);
  return { ...item, readings, gone };
}

/** What was made of an item, so that it is the same object next time. @type {WeakMap<Kept, Item>} */
const judged = new WeakMap();

/** The item as it is judged; the engine remembers by object. @param {Kept} item @param {Guide} guide */
function counted(item, guide) {
  const known = judged.get(item);
  if (known) return known;
  const readings = new Map(item.readings);
  const standing = guide.clues.filter(
    ({ id, part }) => readings.has(id) && !item.gone.includes(part),
  );
  const made = frozen({
    readings: standing.map(({ id }) => /** @type {const} */ ([id, readings.get(id) ?? null])),
    gone: guide.parts.map(({ id }) => id).filter((id) => item.gone.includes(id)),
    member: item.member,
  });
  judged.set(item, made);
  return made;
}

/** Whether two values hold the same in the same order. @param {unknown} one @param {unknown} other */
const isSame = (one, other) => one === other || JSON.stringify(one) === JSON.stringify(other);

/** @template T @param {T} value @returns {T} The value, frozen all the way down. */
function frozen(value) {
  if (!Object.isFrozen(value)) {
    Object.values(/** @type {object} */ (value)).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}
