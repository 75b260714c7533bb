/** What the guides of this bundle and their finds are called, and which are invented. */

import { nameOf } from "../log/title.js";
import { screenOf } from "../view/dom.js";
import { inventedOn } from "../view/finds.js";

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
