/** What else a report tells: the set, the claim, red flags, cautions, its origin. Pure. */

import { called, capital } from "../engine/words.js";
import { isStray } from "../view/members.js";
import { isOftenApart } from "../view/names.js";
import { day } from "../view/reading.js";
import { line, list, node, section, table } from "./reportnodes.js";

/** @typedef {import("../engine/find.js").MemberVerdict} MemberVerdict */
/** @typedef {import("./report.js").Told} Told */

const APPRAISER =
  "For insurance, an estate, tax, customs or a dispute, ask a qualified appraiser.";

/** The members of a set and which of them are strays. @param {Told} told */
export function set({ guide, verdict }) {
  const { members, set_say: say } = verdict;
  if (!members.length) return null;
  const rows = members.map((each) => [
    capital(called(guide, each.member)),
    `${capital(each.say)}.`,
    standing(guide, each),
  ]);
  return section(
    "The set",
    "set",
    line(say),
    table("members", ["Member", "Judged alone", "In the set"], rows),
    list(
      "strays",
      members.map((each) => each.stray_say).filter(Boolean),
    ),
  );
}

/** @param {Told["guide"]} guide @param {MemberVerdict} each */
function standing(guide, each) {
  if (!isStray(each)) return "fits";
  return isOftenApart(guide, each.member) ? "apart" : node("strong", {}, "stray");
}

/** What the seller says, weighed. @param {Told} told */
export function claim({ entry, verdict }) {
  const { claim: made } = entry.find;
  if (!made || !verdict.claim) return null;
  return section(
    "What the seller says",
    "claim",
    line(`The seller says that it is of ${made.model_year}.`),
    line(verdict.claim.say),
    list("cited", verdict.claim.cited.map(({ say }) => say)),
  );
}

/** What to ask the seller. @param {Told} told */
export function flags({ verdict }) {
  const rows = verdict.flags.map(({ say, ask }) =>
    node("li", {}, line(say), ask && node("p", { class: "ask" }, `Ask: “${ask}”`)),
  );
  const list = rows.length ? node("ul", { class: "flags" }, rows) : null;
  return section("Red flags", "warned", list ?? line("None was raised by what was read."));
}

/** What the verdict is not good for. @param {Told} told */
export function cautions({ guide }) {
  const says = list("says", [APPRAISER, ...guide.cautions]);
  return section("Before you rely on it", "cautions", says);
}

/** By which knowledge it was judged, and when. @param {Told} told */
export function origin({ guide, entry, stamp, now }) {
  const known = guide.updated && ` What is known here is of ${day(guide.updated)}.`;
  return section(
    "How this came about",
    "origin",
    line(`Guide: ${guide.title}, version ${stamp}.${known}`),
    line(guide.about),
    line(guide.source),
    line(`Judged on ${date(entry.judged)}; this report was written on ${date(now)}.`),
  );
}

/** The day of a moment. @param {string} time */
const date = (time) => day(time.slice(0, 10));
