/** The claim: which year the seller says it is, what is offered as proof, its weight. */

import { capital } from "../engine/words.js";
import { toClue } from "../routes.js";
import { element, fill, piece, set, slot } from "./dom.js";

/** @typedef {import("../engine/find.js").Claim} Claim */
/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../engine/find.js").Verdict} Verdict */

/**
 * The screen of the claim: the same section, with a word on what it is good for.
 * @param {HTMLElement} root
 * @param {{guide: Guide, session: Session, verdict: Verdict}} data
 */
export function drawClaimScreen(root, data) {
  root.replaceChildren(piece("claim-screen", { claim: drawClaim(data, true) }));
}

/**
 * The section of the claim.
 * @param {{guide: Guide, session: Session, verdict: Verdict}} data
 * @param {boolean} [open] whether what is pointed to is open before anything is ticked
 */
export function drawClaim({ guide, session, verdict }, open = false) {
  const { claim } = session;
  const made = piece("claim", {
    year: options(guide, claim),
    say: verdict.claim?.say ?? null,
    cited: (verdict.claim?.cited ?? []).map(weighed),
  });
  if (!claim) return fill(made, { why: null });
  set(slot(made, "why"), { open: open || claim.cites.length > 0 });
  return fill(made, { cites: guide.clues.map((clue) => cite(clue, claim)) });
}

/** A cited clue's worth, with the way to it if nobody has looked. @param {import("../engine/find.js").Cited} cited */
function weighed({ clue, read, say }) {
  const made = element("li", "", say);
  if (read) return made;
  const link = set(element("a", "link", "Look at it"), { href: toClue(clue) });
  made.className = "claim__unread";
  made.append(" ", link);
  return made;
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
