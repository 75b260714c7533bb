/**
 * What a find is called wherever it is named: as the person titled it, else by what is
 * known of it, so that two finds of one guide can be told apart. Pure.
 */

import { is_read, SETTLED } from "../engine/saying.js";
import { halves } from "../view/ribbon.js";

/** @typedef {import("./entry.js").Entry} Entry */
/**
 * As much of an entry as names it.
 * @typedef {Pick<Entry, "title" | "verdict"> & {find: Pick<Entry["find"], "items">}} Nameable
 */

const EVEN = 0.5;

/**
 * The name of a find.
 * @param {Nameable} entry
 * @param {string} guide what its guide is called
 */
export function nameOf({ title, find, verdict }, guide) {
  if (title.trim()) return title;
  return [guide, years(find, verdict), which(find)].filter(Boolean).join(", ");
}

/**
 * The year, both or the range that is named, with no more certainty than there is.
 * @param {Nameable["find"]} find
 * @param {Entry["verdict"]} verdict
 */
function years({ items }, verdict) {
  const { leading, range, probability } = verdict;
  const told = range?.say ?? halves(verdict)[1];
  if (leading === null || !is_read(items) || !told) return "";
  if (probability >= SETTLED) return `${told}`;
  return `${probability > EVEN ? "probably" : "perhaps"} ${told}`;
}

/** Which member it is, or of how many. @param {Nameable["find"]} find */
function which({ items }) {
  if (items.length > 1) return `set of ${items.length}`;
  const [{ member }] = items;
  return member === null ? "" : `member ${member}`;
}
