/** What becomes of a guide that is to be added, in sentences. Pure. */

import { day } from "../engine/words.js";

/** @typedef {import("../shelf.js").Guide} Guide */
/**
 * @typedef {object} Plan
 * @property {string[]} says
 * @property {string} take what the button says
 */

export const UNCHECKED = "Whoever runs this site has not checked it.";

/**
 * What is said of a guide before it is added, beside what is here under its name.
 * @param {Guide} guide
 * @param {{guest: Guide | null, own: Guide | null}} here one that was added, and the app's own
 * @returns {Plan}
 */
export function plan(guide, { guest, own }) {
  const about = [
    `${years(guide)}, ${guide.clues.length} clues, as known on ${day(guide.updated)}.`,
    guide.fiction ? "It is invented: these objects never existed." : "",
    `It says that it comes from: ${guide.source}`,
    `${UNCHECKED} It can say wrong things; it cannot do anything to this phone.`,
  ];
  const [asks, take] = asked(guide, guest, own);
  return { says: [...about, asks].filter(Boolean), take };
}

/** @param {Guide} guide @param {Guide | null} guest @param {Guide | null} own */
function asked(guide, guest, own) {
  const before = guest ?? own;
  if (!before) return ["", "Add it"];
  const whose = guest ? "A guide of this name was added before" : "The app comes with a guide of this name";
  const known = `, as known on ${day(before.updated)}`;
  return [`${whose}${known}: this one ${against(guide, before)} and would stand in its place.`, "Put it in its place"];
}

/** @param {Guide} guide @param {Guide} before */
function against({ updated }, before) {
  if (updated === before.updated) return "is of the same day";
  return updated > before.updated ? "is newer" : "is older";
}

/** @param {Guide} guide */
function years({ years, verdict }) {
  const what = verdict === "range" ? "Years" : "Model years";
  return `${what} ${years[0].year} to ${years[years.length - 1].year}`;
}

/**
 * Whether a guide that was added still stands in the place of the app's own: not once an
 * update brings a newer one than both.
 * @param {{updated: string}} guide @param {string | null} over @param {{updated: string} | null} own
 */
export function stands({ updated }, over, own) {
  return !own || own.updated <= (over ?? "") || own.updated <= updated;
}
