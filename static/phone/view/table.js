/** A set's members, each judged alone, and which of them is probably a stray. */

import { called, capital } from "../engine/words.js";
import { toMember } from "../routes.js";
import { piece, set, slot } from "./dom.js";
import { isStray } from "./members.js";
import { isOftenApart } from "./names.js";

/** @typedef {import("../engine/find.js").MemberVerdict} MemberVerdict */
/** @typedef {import("../engine/find.js").Verdict} Verdict */
/** @typedef {import("../shelf.js").Guide} Guide */

/**
 * The table; nothing for one object.
 * @param {{guide: Guide, verdict: Verdict}} data
 */
export function drawMembers({ guide, verdict }) {
  if (!verdict.members.length) return null;
  return piece("members", {
    say: verdict.set_say || null,
    rows: verdict.members.map((member) => row(member, guide)),
  });
}

/** @param {MemberVerdict} each @param {Guide} guide */
function row(each, guide) {
  const stray = isStray(each);
  const calm = isOftenApart(guide, each.member);
  const made = piece("member-row", {
    name: capital(called(guide, each.member)),
    say: capital(each.say),
    mark: stray ? (calm ? "apart" : "stray") : null,
    why: stray ? each.stray_say : null,
  });
  set(slot(made, "link"), { href: toMember(each.member) });
  made.classList.toggle("of-set--stray", stray && !calm);
  return made;
}
