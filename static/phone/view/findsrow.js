/** One find in the list: a link to it with what it is, where and when, and a photo. */

import { capital } from "../engine/words.js";
import { whichSay } from "../log/which.js";
import { priced } from "../price.js";
import { toEntry } from "../routes.js";
import { piece, set, slot } from "./dom.js";
import { day } from "./reading.js";

/** @typedef {import("../log/record.js").Entry} Entry */
/**
 * What is known of the guides of this bundle.
 * @typedef {object} Shelf
 * @property {(guide: string) => string} titled
 * @property {(entry: Entry) => string} named
 * @property {(guide: string) => boolean} invented
 */

/**
 * A row; its place for a photo is empty, for a photo costs time.
 * @param {Entry} entry
 * @param {Shelf} shelf
 */
export function row(entry, { titled, named, invented }) {
  const { id, guide, find, photos, verdict } = entry;
  // Its name says both, where nobody has given it one.
  const isTitled = entry.title.trim() !== "";
  const made = piece("find-row", {
    title: named(entry),
    guide: isTitled ? titled(guide) : null,
    which: isTitled ? capital(whichSay(find)) : null,
    say: `${capital(verdict.say)}.`,
    where: where(entry) || null,
    invented: invented(guide) ? "invented" : null,
  });
  if (!photos.length) slot(made, "picture").remove();
  set(slot(made, "link"), { href: toEntry(id) });
  return made;
}

/** When, where and for how much. @param {Entry} entry */
function where({ date, place, paid, currency }) {
  const price = paid === null ? "" : `paid ${priced(paid)} ${currency}`.trim();
  return [date && day(date), place, price].filter(Boolean).join(" · ");
}

/**
 * The place in a row for its photo, if it has one.
 * @param {HTMLElement} row
 * @returns {HTMLElement | null}
 */
export function pictureIn(row) {
  return row.querySelector("[data-slot=picture]");
}
