/** What the guides of this bundle and their finds are called, and which are invented. */

import { nameOf } from "../log/title.js";
import { screenOf } from "../view/dom.js";
import { inventedOn } from "../view/finds.js";

/** @typedef {import("../shelf.js").Guide} Guide */

/**
 * The guides of these finds, by their ids, as far as they are on this phone.
 * @param {import("../kept.js").App} app
 * @param {readonly import("../log/record.js").Entry[]} entries
 */
export async function openedFor({ cards, opened }, entries) {
  const wanted = new Set(entries.map(({ guide }) => guide));
  /** @type {Map<string, Guide>} */
  const guides = new Map();
  for (const { id } of cards.filter((card) => wanted.has(card.id))) {
    try {
      guides.set(id, (await opened(id)).guide);
    } catch (error) {
      // It was never fetched, and there is no signal: its finds are told by ids.
      if (/** @type {Error} */ (error).name !== "ShelfError") throw error;
    }
  }
  return guides;
}

/**
 * A guide that is not in this bundle goes by its id, and nothing is known of it.
 * @param {import("../kept.js").App} app
 * @returns {import("../view/findsrow.js").Shelf}
 */
export function guidesOf({ cards }) {
  const titles = new Map(cards.map(({ id, title }) => [id, title]));
  const invented = inventedOn(screenOf("home"));
  const titled = (/** @type {string} */ guide) => titles.get(guide) ?? guide;
  return {
    titled,
    named: (entry) => nameOf(entry, titled(entry.guide)),
    invented: (guide) => invented.has(guide),
  };
}
