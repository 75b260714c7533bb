/**
 * A reading of the log in words, also where its guide is not here or no longer knows it:
 * by the ids then. Pure.
 */

import { measured } from "../engine/find.js";
import { shown } from "../engine/typical.js";
import { CANNOT_TELL } from "../view/reading.js";

/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {import("../shelf.js").Guide} Guide */

/** What a clue is called. @param {Guide | null} guide @param {string} clue */
export const nameOf = (guide, clue) => clueOf(guide, clue)?.name ?? clue;

/**
 * What was read of a clue.
 * @param {{guide: Guide | null, clue: string, reading: Reading}} read
 */
export function textOf({ guide, clue: id, reading }) {
  if (reading === null) return CANNOT_TELL;
  const clue = clueOf(guide, id);
  const { kind } = clue ?? {};
  const known = kind?.name !== "choice" || kind.options.some((option) => option.id === reading);
  if (clue && known) return shown(clue, reading);
  if (typeof reading === "string") return reading;
  const { value, error } = measured(reading);
  return error > 0 ? `${value}, give or take ${error}` : String(value);
}

/** @param {Guide | null} guide @param {string} clue */
const clueOf = (guide, clue) => guide?.clues.find(({ id }) => id === clue);
