/** The verdict as plain text: what a person sends to another. */

import { UNSEEN } from "../engine/saying.js";
import { called, capital } from "../engine/words.js";
import { byId } from "./reading.js";

/** @typedef {import("../desk.js").Desk} Desk */

const ESTIMATE =
  "This is an estimate from what was read, not an authentication or an appraisal.";

/**
 * The verdict in sentences, a paragraph for each thing that it says.
 * @param {Pick<Desk, "guide" | "verdict">} desk
 */
export function story({ guide, verdict }) {
  const { say, runner_up: second, built_say: built, range, claim, flags } = verdict;
  const told = [
    [guide.title + (guide.fiction ? " (invented)" : "")],
    [`${capital(say)}.`, second && `Runner-up: ${second}.`, built && `${capital(built)}.`],
    [range?.start_say, range?.stop_say],
    [verdict.set_say, ...verdict.members.map((member) => one(guide, member))],
    parts(guide, verdict),
    claim ? [claim.say, ...claim.cited.map((cited) => cited.say)] : [],
    flags.map((flag) => flag.say + (flag.ask && ` Ask: “${flag.ask}”`)),
    [ESTIMATE],
  ];
  const paragraphs = told.map((lines) => lines.filter(Boolean).join("\n"));
  return `${paragraphs.filter(Boolean).join("\n\n")}\n`;
}

/** @param {Desk["guide"]} guide @param {import("../engine/find.js").MemberVerdict} member */
function one(guide, { member, say, stray_say: stray }) {
  return stray || `${capital(called(guide, member))}: ${say}.`;
}

/** What became of the parts that were looked at. @param {Desk["guide"]} guide @param {Desk["verdict"]} verdict */
function parts(guide, { replaced, whole_set: whole }) {
  const seen = [...replaced, ...whole].filter(({ say }) => !say.startsWith(UNSEEN));
  return seen.map(({ part, say }) => `${capital(byId(guide.parts, part).name)} ${say}.`);
}
