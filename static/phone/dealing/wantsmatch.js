/**
 * Whether a find is what somebody is after: how probable that is, and how scarce it is as
 * far as the guide knows. Pure.
 */

import { brackets } from "../engine/range.js";
import { is_read } from "../engine/saying.js";
import { round9 } from "../engine/special.js";

/** @typedef {import("../engine/find.js").Find} Find */
/** @typedef {import("../engine/find.js").Verdict} Verdict */
/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../log/wants.js").Want} Want */
/** @typedef {{guide: Guide, find: Find, verdict: Verdict}} Judged as a desk has them */
/** @typedef {Pick<Want, "since" | "until">} Span */
/**
 * A want that the find may be; `scarce` is the share of its years among all that were
 * made, or null where that says nothing.
 * @typedef {{want: Want, probability: number, scarce: number | null}} Match
 */

/** From so probable on it is said at all: one find of five is worth a second look. */
export const MAY_BE = 0.2;
/** From so probable on it is said without a "may". */
export const MOST_LIKELY = 0.5;

/**
 * The wants that the find may be, the likeliest first; none as long as nothing was read,
 * for what is made most often would be met everywhere.
 * @param {Judged} judged
 * @param {readonly Want[]} wants
 * @returns {Match[]}
 */
export function matches(judged, wants) {
  const { guide, find } = judged;
  if (!is_read(find.items)) return [];
  const mine = wants.filter((want) => want.guide === guide.id);
  return mine
    .map((want) => ({ want, probability: isOne(judged, want), scarce: scarcity(guide, want) }))
    .filter(({ probability }) => round9(probability) >= MAY_BE)
    .sort((one, other) => round9(other.probability) - round9(one.probability));
}

/**
 * How probable it is that the find is, or has among it, what is wanted: the sum over the
 * years that are wanted. A member that is not there, or not known to be there, is none.
 * @param {Judged} judged
 * @param {Want} want
 */
export function isOne({ find, verdict }, want) {
  if (want.member === null) return within(verdict.model_years, want);
  if (!find.items.some(({ member }) => member === want.member)) return 0;
  const of = verdict.members.find(({ member }) => member === want.member);
  if (!of) return within(verdict.model_years, want);
  // A stray is of the years that it tells by itself, any other of those of its set.
  return (
    (1 - of.stray) * within(verdict.model_years, want) + of.stray * within(of.model_years, want)
  );
}

/**
 * The share of the wanted years among all objects of the line, by the guide's volumes.
 * Null where all years are wanted, where the guide says of no year how much was made, and
 * where it knows no line but marks.
 * @param {Guide} guide
 * @param {Span} span
 */
export function scarcity(guide, span) {
  const { years } = guide;
  const volumes = years.map(({ year, volume }) => /** @type {const} */ ([year, volume]));
  const all = volumes.reduce((sum, [, volume]) => sum + volume, 0);
  const share = within(volumes, span) / all;
  const isTold = years.some(({ volume }) => volume !== years[0].volume);
  return isTold && !brackets(guide) && round9(share) < 1 ? share : null;
}

/**
 * The sum of what the years have that lie in a span.
 * @param {readonly (readonly [number, number])[]} years
 * @param {Span} span
 */
function within(years, { since, until }) {
  const wanted = years.filter(
    ([year]) => (since ?? -Infinity) <= year && year <= (until ?? Infinity),
  );
  return wanted.reduce((sum, [, each]) => sum + each, 0);
}
