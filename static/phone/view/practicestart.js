/** Before a round: what practice is, and how one has done so far. */

import { BUDGET } from "../practice/round.js";
import { element, set } from "./dom.js";
import { drawHead } from "./practice.js";
import { drawRecord } from "./practicechart.js";

/** @typedef {import("../practice/kept.js").Round} Round */

const HOW = `Look at what you like, for ${BUDGET} seconds of looking in all: it is counted by what each look takes, not by the clock. Then say the model year, and how sure you are.`;
const HONEST =
  "Each object is invented from what the guide knows, as old objects are: parts may be replaced or worn, and a look may be misread or tell nothing.";

/**
 * Draws the way into practice.
 * @param {HTMLElement} root
 * @param {string} title the guide's
 * @param {readonly Round[]} rounds
 */
export function drawStart(root, title, rounds) {
  const begin = set(element("button", "button button--main", "Begin a round"), { type: "button", "data-act": "begin" });
  const head = drawHead("Practise", `${title}. ${HOW}`);
  root.replaceChildren(
    rounds.length
      ? element("div", "spread", element("div", "practice__side", head, begin), element("div", "practice__main", ...drawRecord(rounds)))
      : element("div", "column", head, element("p", "", HONEST), begin),
  );
}

/** Draws why there is nothing to practise here. @param {HTMLElement} root @param {string} why */
export function drawNone(root, why) {
  root.replaceChildren(element("div", "column", drawHead("Practise", why)));
}
