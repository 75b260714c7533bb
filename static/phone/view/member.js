/** The quiet, optional choice of which member of a set this is. */

import { element, piece, set, slot } from "./dom.js";

/**
 * The choice; nothing where the guide knows no sets.
 * @param {any} guide
 * @param {any} session
 */
export function drawMember(guide, session) {
  if (!guide.members) return null;
  const made = piece("member", { now: `Which of the set is it: ${session.member ?? "not known"}` });
  const options = [["", "not known"], ...guide.members.all.map((/** @type {string} */ m) => [m, m])];
  slot(made, "select").replaceChildren(
    ...options.map(([value, label]) => {
      const option = element("option", "", label);
      return set(option, { value, selected: value === (session.member ?? "") });
    }),
  );
  return made;
}
