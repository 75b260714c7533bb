/** The members that a set lacks, as wants. Pure. */

/** @typedef {import("../engine/find.js").Verdict} Verdict */
/** @typedef {import("../log/wants.js").Want} Want */
/** @typedef {Pick<Want, "since" | "until">} Span */

/** A model year that is less probable than this is none that a set is completed with. */
export const LIKELY_YEAR = 0.1;

/**
 * From the first to the last model year that the set may well be of; any year where it is
 * most likely none of these, or where no year stands out.
 * @param {Pick<Verdict, "leading" | "model_years">} verdict
 * @returns {Span}
 */
export function likelyYears({ leading, model_years: years }) {
  const likely = years.filter(([, p]) => p >= LIKELY_YEAR).map(([year]) => year);
  if (leading === null || !likely.length) return { since: null, until: null };
  return { since: Math.min(...likely), until: Math.max(...likely) };
}

/**
 * The missing members that are not among the wants: one of the same years counts as the
 * same, even if not of all of them.
 * @param {Verdict} verdict
 * @param {readonly Want[]} wants
 */
export function unwanted(verdict, wants) {
  const span = likelyYears(verdict);
  return verdict.missing.filter(
    (id) =>
      !wants.some(
        (want) => want.guide === verdict.guide && want.member === id && overlap(want, span),
      ),
  );
}

/**
 * A want for each of these members.
 * @param {Verdict} verdict
 * @param {readonly string[]} members
 * @param {{newId: () => string, now: string}} made
 * @returns {Want[]}
 */
export function wantsFor(verdict, members, { newId, now }) {
  return members.map((member) => ({
    id: newId(),
    guide: verdict.guide,
    ...likelyYears(verdict),
    member,
    most: null,
    currency: "",
    note: "",
    created: now,
    changed: now,
  }));
}

/** @param {Span} one @param {Span} other */
const overlap = (one, other) =>
  (one.since ?? -Infinity) <= (other.until ?? Infinity) &&
  (other.since ?? -Infinity) <= (one.until ?? Infinity);
