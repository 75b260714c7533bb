/** On a verdict: that it is what is wanted, and that the members it lacks can be. */

import { piece, set, slot } from "./dom.js";

/** @typedef {{say: string, is: string, scarce: string, note: string}} Told */

/**
 * Says above all else which wants the find may be; nothing where it is none.
 * @param {HTMLElement} place
 * @param {string} title
 * @param {readonly Told[]} told
 */
export function drawMatches(place, title, told) {
  if (!told.length) return place.replaceChildren();
  const rows = told.map(({ say, is, scarce, note }) =>
    piece("wanted-row", { say: `${say}.`, is, scarce: scarce || null, note: note || null }),
  );
  place.replaceChildren(piece("wanted", { title, rows }));
}

/**
 * Says of each want that is shown how what is asked stands to it.
 * @param {HTMLElement} place
 * @param {readonly string[]} limits
 */
export function fillLimits(place, limits) {
  const rows = place.querySelectorAll(".want__limit");
  for (const [i, row] of rows.entries()) row.textContent = limits[i] ?? "";
}

/**
 * Below the members of a set: a button to want those that it lacks, or what has become
 * of that.
 * @param {HTMLElement} root
 * @param {{count: number, said: string}} lacking
 */
export function drawLacking(root, { count, said }) {
  const members = root.querySelector(".members");
  members?.querySelector(".lacking")?.remove();
  if (!members || !(count || said)) return;
  const made = piece("lacking", { "want-them": wantThem(count) || null });
  members.append(made);
  const place = slot(made, "lacking-said");
  set(slot(made, "to-wants"), { hidden: !said });
  // Set after it stands there, so that it is heard.
  place.textContent = said;
}

/** What the button says. @param {number} count */
export function wantThem(count) {
  if (!count) return "";
  return count === 1 ? "Want the missing one" : "Want the missing ones";
}
