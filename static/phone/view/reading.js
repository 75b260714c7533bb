/** A clue's reading in words, for lists and for the file. */

import { grouped } from "../counting.js";
import { measured } from "../engine/find.js";
import { sizeSaid } from "./measure.js";
import { apart } from "../spelling.js";

export { day } from "../engine/words.js";

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
  if (kind.name === "measure") return sizeSaid(kind, measured(reading));
  if (kind.name === "number") return grouped(String(reading));
  return apart(kind, String(reading)).replaceAll("?", "·");
}

/** How many readings there are, in words. @param {readonly import("../session.js").Kept[]} items */
export function counted(items) {
  const readings = items.flatMap((item) => item.readings);
  const told = readings.filter(([, reading]) => reading !== null).length;
  const many = told === 1 ? "1 reading" : `${told || "no"} readings`;
  if (items.length === 1) return told ? many : `${many} yet`;
  return `a set of ${items.length} with ${many}`;
}
