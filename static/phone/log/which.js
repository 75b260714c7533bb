/** Which members a find is of, and how many: by its guide's names where that is there. Pure. */

import { called, listed } from "../engine/words.js";
import { runs } from "../view/names.js";

/** @typedef {import("../shelf.js").Guide} Guide */

/**
 * As "set of 8: 3 to 9 and W" or "member 7"; nothing where no member is named.
 * @param {Pick<import("./entry.js").Entry["find"], "items">} find
 * @param {Guide | null} [guide]
 */
export function whichSay({ items }, guide = null) {
  const members = items.map(({ member }) => member ?? "");
  if (members.length > 1) return `set of ${members.length}: ${among(members, guide)}`;
  const [member] = members;
  const isKnown = guide?.members?.all.includes(member);
  if (guide && isKnown) return called(guide, member);
  return member && `member ${member}`;
}

/** @param {readonly string[]} members @param {Guide | null} guide */
function among(members, guide) {
  const all = guide?.members?.all ?? [];
  const isKnown = members.every((member) => all.includes(member));
  return guide && isKnown ? runs(guide, members) : listed(members);
}
