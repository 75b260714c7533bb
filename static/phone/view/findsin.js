/** What would become of the log if a file were taken in. */

import { element, piece, slot } from "./dom.js";

/** Of so many refused finds the reasons are shown. */
const SHOWN = 50;

/**
 * Draws the plan, and the button that carries it out if it does anything.
 * @param {HTMLElement} root
 * @param {object} plan
 * @param {readonly string[]} plan.says
 * @param {readonly import("../log/importing.js").Refused[]} plan.refused
 * @param {number} plan.taken how many finds it takes in
 */
export function drawPlan(root, { says, refused, taken }) {
  const made = piece("finds-plan", {
    says: says.map((say) => element("li", "", say)),
    reasons: refused.slice(0, SHOWN).map(reason),
    rest: refused.length > SHOWN ? `And ${refused.length - SHOWN} more.` : null,
    take: taken ? (taken === 1 ? "Take it in" : `Take these ${taken} in`) : null,
  });
  if (!taken) slot(made, "leave").textContent = "Close";
  slot(root, "plan").replaceChildren(made);
  slot(made, "heading").focus();
}

/** @param {HTMLElement} root */
export function dropPlan(root) {
  slot(root, "plan").replaceChildren();
}

/** What has become of it. @param {HTMLElement} root @param {string} say */
export function sayInto(root, say) {
  slot(root, "into").textContent = say;
}

/** @param {import("../log/importing.js").Refused} refused */
function reason({ place, name, why }) {
  return element("li", "", `${name ? `“${name}”` : "A find"} (number ${place}): ${why}`);
}
