/** The verdict: year, build months, parts, claim, flags, reasons, what next, cautions. */

import { decades } from "../engine/range.js";
import { UNSEEN } from "../engine/saying.js";
import { capital, percent } from "../engine/words.js";
import { drawClaim } from "./claim.js";
import { element, piece, slot } from "./dom.js";
import { drawKeep } from "./keep.js";
import { drawMonths } from "./months.js";
import { the } from "./names.js";
import { drawOffers } from "./offers.js";
import { drawStates } from "./parts.js";
import { day } from "./reading.js";
import { drawFlags, drawNext, drawWeights } from "./reasons.js";
import { drawMembers } from "./table.js";
import { halves } from "./ribbon.js";

/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../engine/find.js").Verdict} Verdict */
/**
 * The member is the one whose own verdict it is.
 * @typedef {Desk & {member: string | null, cards: readonly import("../shelf.js").Card[]}} Shown
 */

/** What no guide needs to say, because it holds for every verdict. */
const ALWAYS = [
  "This is an estimate from what was read, not an authentication or an appraisal.",
  "For insurance, an estate, tax, customs or a dispute, ask a qualified appraiser.",
];

const EVERY_YEAR = "Every year in figures";

/**
 * Draws the verdict.
 * @param {HTMLElement} root
 * @param {Shown} data
 */
export function drawVerdict(root, data) {
  const { guide, verdict } = data;
  root.replaceChildren(
    piece("verdict", {
      invented: guide.fiction ? "Invented for demonstration: no such object exists." : null,
      headline: headline(verdict),
      runner: verdict.runner_up && read(data) ? `Runner-up: ${verdict.runner_up}.` : null,
      clash: clash(verdict),
      start: verdict.range?.start_say || null,
      stop: verdict.range?.stop_say || null,
      exhausted: verdict.exhausted || null,
      built: drawBuilt(verdict),
      parts: tellsParts(verdict) ? drawStates(data) : null,
      alone: data.member ? aloneSay(data) : null,
      members: drawMembers(data),
      claim: drawClaim(data),
      flags: drawFlags(verdict),
      weights: drawWeights(data),
      offers: drawOffers(data),
      next: drawNext(data),
      years: drawYears(verdict),
      keep: drawKeep(data),
      cautions: drawCautions(guide),
    }),
  );
  // A set is bought whole.
  if (data.member) slot(root, "deals").remove();
}

/**
 * The sentence with its year in large figures, or the sentence alone.
 * @param {Verdict} verdict
 */
function headline(verdict) {
  const [lean, figure, sure] = halves(verdict);
  if (!figure) return piece("headline", { lean: null, figure: null, sure: capital(lean) });
  const made = piece("headline", {
    lean: capital(lean.trim()) || null,
    figure,
    sure: sure.replace(/^: /, "").trim(),
  });
  made.classList.toggle("answer-year__words--open", lean.includes(":"));
  made.classList.toggle("answer-year__words--range", verdict.range !== null || figure.includes(" "));
  return made;
}

/** That marks contradict each other, in sight of the answer that is given all the same. @param {Verdict} verdict */
function clash({ range, flags }) {
  const apart = range && flags.some(({ kind }) => kind === "disagree");
  return apart ? "But two marks do not go together: read the red flag before you rely on it." : null;
}

/** Whether there is more to say of parts than that nothing speaks against them. @param {Verdict} verdict */
function tellsParts({ range, replaced }) {
  return !range || replaced.some(({ say }) => !say.startsWith("original") && !say.startsWith(UNSEEN));
}

/** Whether anything was read or is gone. @param {Desk} data */
function read({ session }) {
  return session.items.some(
    ({ gone, readings }) => gone.length > 0 || readings.some(([, reading]) => reading !== null),
  );
}

/** @param {Shown} data */
function aloneSay({ guide, member }) {
  return `${capital(the(guide, member))} judged alone, as if nothing else had been looked at.`;
}

/** @param {Verdict} verdict */
function drawBuilt(verdict) {
  if (!verdict.built_say) return null;
  return piece("built", {
    months: drawMonths(verdict.built),
    say: `${capital(verdict.built_say)}.`,
  });
}

/** @param {Verdict} verdict */
function drawYears(verdict) {
  const { model_years: years, range } = verdict;
  const named = range ? decades(years) : years;
  const rows = named.map(([year, p]) =>
    piece("year-row", { year: String(year), percent: percent(p) }),
  );
  rows.push(piece("year-row", { year: "none of these", percent: percent(verdict.outside) }));
  const [title, head] = range ? ["Every decade in figures", "Decade"] : [EVERY_YEAR, "Model year"];
  return piece("years", { title, head, rows });
}

/** @param {Guide} guide */
function drawCautions({ title, updated, source, cautions }) {
  const known = updated ? `What is known here is of ${day(updated)}.` : "";
  return piece("cautions", {
    rows: [...ALWAYS, ...cautions].map((say) => element("li", "", say)),
    source: [/[.?!]$/.test(title) ? `Guide: ${title}` : `Guide: ${title}.`, known, source].filter(Boolean).join(" "),
  });
}
