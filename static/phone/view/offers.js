/** Guides that may know more of an object whose years are known by its marks alone. */

import { piece, slot } from "./dom.js";

/** @typedef {import("../shelf.js").Card} Card */
/** @typedef {import("../engine/find.js").Range} Range */

/**
 * The guides whose years overlap with the range; nothing under a guide of one line.
 * @param {{guide: {anything: boolean}, verdict: {range: Range | null}, cards: readonly Card[]}} data
 */
export function drawOffers({ guide, verdict: { range }, cards }) {
  if (!guide.anything || !range) return null;
  const fitting = cards.filter(
    ({ anything, since, until }) => !anything && since <= range.until && range.since <= until,
  );
  if (!fitting.length) return null;
  return piece("offers", { rows: fitting.map(row) });
}

/** @param {Card} card */
function row({ id, title, since, until, invented }) {
  const span = `${since} to ${until}${invented ? ", invented" : ""}`;
  const made = piece("offer", { title, span });
  slot(made, "start").dataset.guide = id;
  return made;
}
