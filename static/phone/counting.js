/** A number while it is typed, and as it is written: in groups of three. Pure. */

import { BACK } from "./spelling.js";

/** @typedef {Pick<import("./engine/guide.js").Counted, "first" | "last">} Counted */

/** Up to so many digits are read at one glance. */
const GLANCE = 4;
/** More digits could not all be told apart by a phone. */
const MOST = 15;
const AGAIN = "Look again, or choose “Can’t tell”.";

/** The digits in groups of three, from the right, where they are many. @param {string} digits */
export function grouped(digits) {
  if (digits.length <= GLANCE) return digits;
  return digits.replace(/\B(?=(\d{3})+$)/g, "\u202f");
}

/** What a key makes of the typed digits. @param {string} typed @param {string} key */
export function press(typed, key) {
  if (key === BACK) return typed.slice(0, -1);
  return /^\d$/.test(key) && typed.length < MOST ? typed + key : typed;
}

/** The first and the last number, as they are written. @param {Counted} number */
export function ends({ first, last }) {
  return [first[0][1], last].map((n) => grouped(String(n)));
}

/** Whether no further digit could mend it. @param {Counted} number @param {string} typed */
export const isBeyond = ({ last }, typed) => Number(typed) > last;

/**
 * What is wrong with the typed number, in a sentence; nothing if it will do.
 * @param {Counted} number @param {string} typed
 */
export function unfit(number, typed) {
  const [least, most] = ends(number);
  if (!typed) return "Type the number, or choose “Can’t tell”.";
  if (isBeyond(number, typed))
    return `This guide’s numbers end with ${most}; a higher one is newer than it knows. ${AGAIN}`;
  if (Number(typed) < number.first[0][1])
    return `This guide’s numbers begin with ${least}; a lower one is older than it knows. ${AGAIN}`;
  return "";
}
