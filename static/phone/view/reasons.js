/** Why: red flags with their questions, the weight of each reading, what to see next. */

import { capital } from "../engine/words.js";
import { piece, set, slot } from "./dom.js";
import { toClue } from "../routes.js";

/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../engine/find.js").Next} Next */
/** @typedef {import("../engine/find.js").Verdict} Verdict */

/** The factor that fills the beam: from here on the evidence is "very strong". */
const FULL = 150;
/** A beam shorter than this, in per cent, is drawn as a dot's width. */
const LEAST = 1;
const MOST_NEXT = 3;

/** The red flags as tags; nothing where there are none. @param {Verdict} verdict */
export function drawFlags({ flags }) {
  if (!flags.length) return null;
  const tags = flags.map(({ say, ask }) =>
    piece("flag", { say, ask: ask ? `Ask: “${ask}”` : null }),
  );
  const title =
    flags.length === 1 ? "1 red flag to ask about" : `${flags.length} red flags to ask about`;
  return piece("flags", { title, tags });
}

/**
 * The readings on a balance, or a set's members; nothing where nothing was read.
 * @param {{guide: Guide, verdict: Verdict}} data
 */
export function drawWeights({ verdict }) {
  const whole = verdict.members.length > 0;
  const found = whole
    ? verdict.members.filter(({ factor_say }) => factor_say).map(
        ({ factor, factor_say }) => ({ factor, say: factor_say }),
      )
    : verdict.weights;
  if (!found.length) return null;
  const year = leading(verdict);
  return piece("weights", {
    title: `The weight of each ${whole ? "member" : "reading"}`,
    against: `against ${year}`,
    for: `for ${year}`,
    rows: found.map(beam),
  });
}

/**
 * What to look at next, best first, each clue once; nothing once the clues are exhausted.
 * @param {{nexts: readonly Next[]}} data
 */
export function drawNext({ nexts }) {
  const best = nexts.filter(
    ({ clue }, place) => nexts.findIndex((each) => each.clue === clue) === place,
  );
  if (!best.length) return null;
  const rows = best.slice(0, MOST_NEXT).map(({ member, clue, what, say }) => {
    const made = piece("next-row", { name: capital(what), say: `${capital(say)}.` });
    set(slot(made, "link"), { href: toClue(clue, member) });
    return made;
  });
  return piece("next", { rows });
}

/** The year, or the range, that the weights speak of. @param {Verdict} verdict */
function leading({ leading, model_years, range }) {
  if (range) return range.say;
  if (leading !== null) return leading;
  const best = Math.max(...model_years.map(([, p]) => p));
  return model_years.filter(([, p]) => p === best)[0][0];
}

/** @param {{factor: number, say: string}} weight */
function beam({ factor, say }) {
  const made = piece("weight", { say });
  const reach = Math.min(Math.abs(Math.log(factor)) / Math.log(FULL), 1) * 50;
  const width = Math.max(reach, LEAST);
  const against = factor < 1;
  set(slot(made, "bar"), {
    class: `weight__bar weight__bar--${against ? "against" : "for"}`,
    x: `${(against ? 50 - width : 50).toFixed(1)}%`,
    width: `${width.toFixed(1)}%`,
  });
  return made;
}
