/** Who is in the set: events like those of session.js, each undone in one step. */

import { ALL, isSet, isTouched, placeOf } from "./scope.js";
import { step } from "./session.js";

/** @typedef {import("./engine/guide.js").Guide} Guide */
/** @typedef {import("./session.js").Kept} Kept */
/** @typedef {import("./session.js").Session} Session */

/**
 * The session with these members too. One object of which the member was not known is
 * the first of them.
 * @param {Session} session @param {readonly string[]} ids @param {Guide} guide
 */
export function addMembers(session, ids, guide) {
  const [first, ...others] = session.items;
  const [id = null, ...rest] = ids.filter((each) => placeOf(session, each) < 0);
  if (id === null) return session;
  const items = first.member === null ? [{ ...first, member: id }] : [first, added(id)];
  return arranged(session, [...items, ...others, ...rest.map(added)], guide);
}

/** @param {Session} session @param {string} id @param {Guide} guide */
export const addMember = (session, id, guide) => addMembers(session, [id], guide);

/**
 * The session without a member and its readings; the last one only loses its number,
 * since one object is always there.
 * @param {Session} session @param {string} id @param {Guide} guide
 */
export function removeMember(session, id, guide) {
  const others = session.items.filter(({ member }) => member !== id);
  if (others.length === 0) return renamed(session, id, null, guide);
  return arranged(session, others, guide);
}

/**
 * The session with a member under another number: it is not the 5 but the 6.
 * @param {Session} session @param {string} id @param {string} other a free one
 * @param {Guide} guide
 */
export function rename(session, id, other, guide) {
  if (placeOf(session, other) >= 0) {
    throw new RangeError(`The set has its "${other}" already; no member can be there twice.`);
  }
  return renamed(session, id, other, guide);
}

/** The session asking about a member, or about all. @param {Session} session @param {"all" | number} at */
export const pick = (session, at) => step(session, { at: isSet(session) ? at : ALL });

/**
 * The members that the last step took away together with something read.
 * @param {Session} session
 */
export function takenAway(session) {
  const before = session.past.at(-1)?.items ?? [];
  // A member with another number is still there, under that one.
  if (before.length <= session.items.length) return [];
  return before.filter((item) => isTouched(item) && placeOf(session, item.member) < 0);
}

/** @param {string} id @returns {Kept} */
const added = (id) => ({ member: id, readings: [], gone: [] });

/** @param {Session} session @param {string} id @param {string | null} other @param {Guide} guide */
function renamed(session, id, other, guide) {
  const items = session.items.map((item) =>
    item.member === id ? { ...item, member: other } : item,
  );
  const asked = askedMember(session);
  return arranged(session, items, guide, asked === id ? other : asked);
}

/** The member that is asked about; null for all. @param {Session} session */
const askedMember = ({ items, at }) => (at === ALL ? null : items[at].member);

/**
 * The items in the guide's order, the same one asked about as far as it is still there.
 * @param {Session} session @param {readonly Kept[]} items @param {Guide} guide
 */
function arranged(session, items, guide, asked = askedMember(session)) {
  const order = guide.members?.all ?? [];
  const rank = (/** @type {Kept} */ { member }) => order.indexOf(member ?? "");
  const sorted = [...items].sort((a, b) => rank(a) - rank(b));
  const place = asked === null ? -1 : placeOf({ items: sorted }, asked);
  return step(session, { items: sorted, at: place < 0 || !isSet({ items }) ? ALL : place });
}
