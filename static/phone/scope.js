/** Which members of a set an event counts for; pure, and a leaf under session.js. */

/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {import("./session.js").Kept} Kept */
/** @typedef {import("./session.js").State} State */

/** In place of a member's place: the whole set. */
export const ALL = "all";

/** Whether there are several. @param {Pick<State, "items">} state */
export const isSet = ({ items }) => items.length > 1;

/**
 * The places that are being asked about: one member's, or all.
 * @param {Pick<State, "items" | "at">} state
 */
export function everywhere({ items, at }) {
  return at === ALL ? items.map((_, place) => place) : [at];
}

/**
 * The places that an answer counts for. With the whole set asked about: the members
 * that have no reading of the clue yet, so that an exception stays one; if none is left,
 * all that have the part.
 * @param {Pick<State, "items" | "at">} state
 * @param {Pick<Clue, "id" | "part">} clue
 */
export function targets(state, { id, part }) {
  const places = everywhere(state);
  const there = places.filter((place) => !state.items[place].gone.includes(part));
  const unread = there.filter((place) => !isRead(state.items[place], id));
  return [unread, there, places].find((some) => some.length > 0) ?? [];
}

/**
 * Where a member stands; -1 if it is none of the set.
 * @param {Pick<State, "items">} state @param {string | null} id
 */
export function placeOf({ items }, id) {
  return items.findIndex(({ member }) => member === id);
}

/** Whether there is a reading of a clue, be it "can't tell". @param {Kept} item @param {string} clue */
export function isRead({ readings }, clue) {
  return readings.some(([id]) => id === clue);
}

/**
 * What was read of a clue; undefined where nothing was.
 * @param {Kept} item @param {string} clue
 */
export function reading({ readings }, clue) {
  return readings.find(([id]) => id === clue)?.[1];
}

/** Whether anything was read or is gone. @param {Kept} item */
export function isTouched({ readings, gone }) {
  return readings.length > 0 || gone.length > 0;
}
