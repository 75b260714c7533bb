/** What is remembered of the find that lies open under each guide, until another is begun. */

import { book } from "../log/book.js";
import { isTouched } from "../scope.js";

/** @typedef {Pick<import("../desk.js").Desk, "guide" | "session">} Open */
/** @typedef {import("../session.js").Session} Session */
/** A find is known again by the first that was read of it. @typedef {{first: string}} Known */

/**
 * A memory in a setting, a value for each guide.
 * @param {string} key the setting, which outlives this page
 * @param {{unread: boolean}} counts whether a value from before anything was read is taken
 *   for that of the find that lies open now, for nothing tells them apart
 */
export function ofOpen(key, { unread }) {
  /** What this page knows; null where a find was begun anew. @type {Map<string, any>} */
  const here = new Map();

  /** @returns {Promise<Map<string, any>>} */
  const all = async () => new Map(await book.setting(key));

  /** What was kept before this page was opened. @param {Open} open */
  async function remembered({ guide, session }) {
    const known = (await all()).get(guide.id);
    // Nothing says that it is the same find but what was read first.
    const isSame = known?.first ? states(session).includes(known.first) : unread;
    return isSame ? (known ?? null) : null;
  }

  return {
    /** @param {Open} open @returns {Promise<any>} */
    async of(open) {
      const value = here.get(open.guide.id);
      return value === undefined ? remembered(open) : value;
    },

    /** @param {Open} open @param {object} value plain data */
    async keep({ guide, session }, value) {
      here.set(guide.id, value);
      const kept = await all();
      kept.set(guide.id, { ...value, first: states(session)[0] ?? "" });
      await book.set(key, [...kept]);
    },

    /** The find that lies open is another one now. @param {string} guide */
    async forget(guide) {
      here.set(guide, null);
      // Whatever was read off it will tell it from the next.
      if (!unread) return;
      const kept = await all();
      if (kept.delete(guide)) await book.set(key, [...kept]);
    },
  };
}

/** All that was ever read in a session, step by step. @param {Session} session */
function states(session) {
  const read = [...session.past, session].filter(({ items }) => items.some(isTouched));
  return read.map(({ items }) => JSON.stringify(items));
}
