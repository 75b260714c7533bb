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
 * @param {readonly import("../log/owned.js").RefusedRow[]} plan.refusedRows
 * @param {number} plan.taken how much it takes in
 */
export function drawPlan(root, { says, refused, refusedRows, taken }) {
  const whys = [...refused.map(reason), ...refusedRows.map(rowReason)];
  const made = piece("finds-plan", {
    says: says.map((say) => element("li", "", say)),
    reasons: whys.slice(0, SHOWN).map((why) => element("li", "", why)),
    rest: whys.length > SHOWN ? `And ${whys.length - SHOWN} more.` : null,
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
  return `${name ? `“${name}”` : "A find"} (number ${place}): ${why}`;
}

/** @param {import("../log/owned.js").RefusedRow} refused */
function rowReason({ kind, name, why }) {
  const what = kind === "wants" ? "A want" : "Prices";
  return `${what}${name ? ` for “${name}”` : ""}: ${why}`;
}
