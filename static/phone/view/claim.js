/** The claim: which year the seller says it is, what is offered as proof, its weight. */

import { capital } from "../engine/words.js";
import { element, fill, piece, set, slot } from "./dom.js";

/**
 * The section of the claim.
 * @param {{guide: any, session: any, verdict: any}} data
 */
export function drawClaim({ guide, session, verdict }) {
  const { claim } = session;
  const made = piece("claim", {
    year: options(guide, claim),
    say: verdict.claim?.say ?? null,
    cited: (verdict.claim?.cited ?? []).map((/** @type {any} */ each) => element("li", "", each.say)),
  });
  if (!claim) return fill(made, { why: null });
  set(slot(made, "why"), { open: claim.cites.length > 0 });
  return fill(made, { cites: guide.clues.map((/** @type {any} */ clue) => cite(clue, claim)) });
}

/** @param {any} guide @param {any} claim */
function options(guide, claim) {
  const years = guide.years.map((/** @type {any} */ each) => String(each.year));
  const chosen = claim ? String(claim.model_year) : "";
  return ["", ...years].map((year) => {
    const option = element("option", "", year || "no year");
    return set(option, { value: year, selected: year === chosen });
  });
}

/** @param {any} clue @param {any} claim */
function cite(clue, claim) {
  const made = piece("switch", { label: capital(clue.name) });
  const box = set(slot(made, "box"), { checked: claim.cites.includes(clue.id), value: clue.id });
  box.dataset.change = "cite";
  return made;
}
