/** Check this phone: how many worked examples come out as they should. */

import { element, piece, set, slot } from "./dom.js";

/** @typedef {import("../check.js").Report} Report */

const MOST_FAILURES = 5;

/**
 * Draws the page of the check.
 * @param {HTMLElement} root
 * @param {{done: number, total: number, running: boolean, result: Report | null}} data
 */
export function drawCheck(root, { done, total, running, result }) {
  const failures = result?.failures ?? [];
  const made = piece("check", {
    button: result ? "Run it again" : "Run the check",
    result: running ? progress(done, total) : result ? summary(result) : null,
    failures: failures.slice(0, MOST_FAILURES).map((each) => element("li", "", each)),
  });
  set(slot(made, "button"), { disabled: running });
  if (running || result) set(slot(made, "progress"), { value: total ? done / total : 0 });
  else slot(made, "progress").remove();
  root.replaceChildren(made);
}

/** @param {number} done @param {number} total */
function progress(done, total) {
  return total ? `${done} of ${total} done.` : "Getting the examples…";
}

/** @param {Report} result */
function summary({ agree, total }) {
  if (agree === total) return `All ${total} examples agree. This phone’s arithmetic is sound.`;
  return `${agree} of ${total} examples agree. Do not rely on a verdict of this phone; try another browser.`;
}
