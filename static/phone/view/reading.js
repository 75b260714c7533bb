/** A clue's reading in words, for lists and for the file. */

import { figure, MONTHS } from "../engine/words.js";

export const CANNOT_TELL = "can’t tell";

/**
 * What was read, as a person says it; nothing where nothing was read.
 * @param {any} clue
 * @param {string | number | null | undefined} reading
 */
export function told(clue, reading) {
  if (reading === undefined) return "";
  if (reading === null) return CANNOT_TELL;
  if (clue.kind.name === "choice") return label(clue, reading);
  if (clue.kind.name === "measure") return `${figure(Number(reading))} ${clue.kind.unit}`;
  return String(reading).replaceAll("?", "·");
}

/** How many readings there are, in words. @param {[string, unknown][]} readings */
export function counted(readings) {
  const told = readings.filter(([, reading]) => reading !== null).length;
  if (told === 0) return "no readings yet";
  return told === 1 ? "1 reading" : `${told} readings`;
}

/** @param {any} clue @param {unknown} reading */
function label(clue, reading) {
  return clue.kind.options.find((/** @type {any} */ o) => o.id === reading)?.label ?? "";
}

/** A day as people write it: 2025-06-01 is 1 June 2025. @param {string} iso */
export function day(iso) {
  const [year, month, date] = iso.split("-").map(Number);
  return `${date} ${MONTHS[month - 1]} ${year}`;
}
