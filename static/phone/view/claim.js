/** The claim: which year the seller says it is, what is offered as proof, its weight. */

import { capital } from "../engine/words.js";
import { element, fill, piece, set, slot } from "./dom.js";

/** @typedef {import("../engine/find.js").Claim} Claim */
/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../engine/find.js").Verdict} Verdict */

/**
 * The section of the claim.
 * @param {{guide: Guide, session: Session, verdict: Verdict}} data
 */
export function drawClaim({ guide, session, verdict }) {
  const { claim } = session;
  const made = piece("claim", {
    year: options(guide, claim),
    say: verdict.claim?.say ?? null,
    cited: (verdict.claim?.cited ?? []).map((each) => element("li", "", each.say)),
  });
  if (!claim) return fill(made, { why: null });
  set(slot(made, "why"), { open: claim.cites.length > 0 });
  return fill(made, { cites: guide.clues.map((clue) => cite(clue, claim)) });
}

/** @param {Guide} guide @param {Claim | null} claim */
function options(guide, claim) {
  const years = guide.years.map((each) => String(each.year));
  const chosen = claim ? String(claim.model_year) : "";
  return ["", ...years].map((year) => {
    const option = element("option", "", year || "no year");
    return set(option, { value: year, selected: year === chosen });
  });
}

/** @param {Clue} clue @param {Claim} claim */
function cite(clue, claim) {
  const made = piece("switch", { label: capital(clue.name) });
  const box = set(slot(made, "box"), {
    checked: claim.cites.includes(clue.id),
    value: clue.id,
  });
  box.dataset.change = "cite";
  return made;
}
