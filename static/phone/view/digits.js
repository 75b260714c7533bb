/** A number on a keypad of the ten digits. */

import { ends, grouped } from "../counting.js";
import { BACK } from "../spelling.js";
import { element } from "./dom.js";

/** @typedef {import("../counting.js").Counted} Counted */

const DIGITS = [..."1234567890"];

/**
 * The keypad of a number, with what was typed so far.
 * @param {Counted} number
 * @param {string} typed
 * @returns {import("./pad.js").Pad}
 */
export function digitPad(number, typed) {
  const now = remark(number, typed);
  return {
    spoken: `Typed so far: ${[...typed].join(" ") || "nothing"}. ${now}`,
    stamp: [element("span", "figure", grouped(typed))],
    now,
    label: "Digits",
    shape: "digits",
    keys: [...DIGITS.map((a) => /** @type {const} */ ([a, a])), ["One back", BACK]],
    ways: [],
  };
}

/** @param {Counted} number @param {string} typed */
function remark(number, typed) {
  const read = String(Number(typed));
  const [least, most] = ends(number);
  if (!typed || read === typed) return `From ${least} to ${most}.`;
  return `It reads as ${grouped(read)}.`;
}
