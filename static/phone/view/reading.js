/** A clue's reading in words, for lists and for the file. */

import { grouped } from "../counting.js";
import { measured } from "../engine/find.js";
import { figure, MONTHS } from "../engine/words.js";
import { written } from "./measure.js";
import { apart } from "../spelling.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */

/**
 * The one of the guide's things that has this id, which it is known to have.
 * @template {{id: string}} T
 * @param {readonly T[]} things
 * @param {string} id
 */
export function byId(things, id) {
  return /** @type {T} */ (things.find((each) => each.id === id));
}

export const CANNOT_TELL = "can’t tell";

/**
 * What was read, as a person says it; nothing where nothing was read.
 * @param {Clue} clue
 * @param {import("../engine/find.js").Reading | undefined} reading
 */
export function told(clue, reading) {
  if (reading === undefined) return "";
  if (reading === null) return CANNOT_TELL;
  const { kind } = clue;
  if (kind.name === "choice") return byId(kind.options, String(reading)).label;
  if (kind.name === "measure") return size(kind, reading);
  if (kind.name === "number") return grouped(String(reading));
  return apart(kind, String(reading)).replaceAll("?", "·");
}

/** A size, with its error where it has one. @param {import("../engine/guide.js").Measure} kind @param {import("../engine/find.js").Reading} reading */
function size(kind, reading) {
  const { value, error } = measured(reading);
  return written(kind, value) + (error > 0 ? `, give or take ${figure(error)}` : "");
}

/** How many readings there are, in words. @param {readonly import("../session.js").Kept[]} items */
export function counted(items) {
  const readings = items.flatMap((item) => item.readings);
  const told = readings.filter(([, reading]) => reading !== null).length;
  const many = told === 1 ? "1 reading" : `${told || "no"} readings`;
  if (items.length === 1) return told ? many : `${many} yet`;
  return `a set of ${items.length} with ${many}`;
}

/** A day as people write it: 2025-06-01 is 1 June 2025. @param {string} iso */
export function day(iso) {
  const [year, month, date] = iso.split("-").map(Number);
  return `${date} ${MONTHS[month - 1]} ${year}`;
}
