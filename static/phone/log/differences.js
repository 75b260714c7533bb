/** What has changed between the verdict at the time and a verdict now. Pure. */

import { percent } from "../engine/words.js";
import { leads } from "../view/ribbon.js";

/** @typedef {import("./entry.js").Summary} Summary */

/**
 * One sentence a change; none if both say the same to a whole percent.
 * @param {Summary} then
 * @param {Summary} now
 */
export function differences(then, now) {
  const [before, after] = [answer(then), answer(now)];
  const moved = before === after ? [] : [`${before}, is now ${after}.`];
  return [
    ...moved,
    ...missing(now.flags, then.flags).map((say) => `New red flag: ${say}`),
    ...missing(then.flags, now.flags).map((say) => `No longer a red flag: ${say}`),
  ];
}

/** What led, and how sure that was; the whole sentence where nothing did. @param {Summary} summary */
function answer(summary) {
  const { say, leading, range, probability } = summary;
  if (leading !== null && !leads(summary)) return say;
  return `${leading === null ? "none of these" : (range?.say ?? leading)}, ${percent(probability)}`;
}

/** @param {readonly string[]} some @param {readonly string[]} others */
const missing = (some, others) => some.filter((each) => !others.includes(each));
