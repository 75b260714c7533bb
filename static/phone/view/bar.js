/** The one-row bar at the foot: undo, the other way to look, the way on. */

import { piece, set, slot } from "./dom.js";
import { toClue } from "../routes.js";

const LOOK = { label: "Next question", href: "#look" };
const WHOLE = { label: "Whole object", href: "#places" };
const VERDICT = { label: "Verdict", href: "#verdict" };

/**
 * Draws the bar of a screen.
 * @param {HTMLElement} root
 * @param {{screen: string, session: any, guide: any, nexts: any[]}} data
 */
export function drawBar(root, { screen, session, guide, nexts }) {
  const [other, main] = ways(screen, guide, nexts[0]);
  const made = piece("bar", { other: other.label, main: main.label });
  set(slot(made, "other"), { href: other.href });
  set(slot(made, "main"), { href: main.href });
  set(slot(made, "undo"), { disabled: session.past.length === 0 });
  root.replaceChildren(made);
}

/** @param {string} screen @param {any} guide @param {any} next */
function ways(screen, guide, next) {
  if (screen === "look") return [WHOLE, VERDICT];
  if (screen === "places") return [VERDICT, LOOK];
  if (!next) return [WHOLE, { label: "Back to looking", href: "#look" }];
  const clue = guide.clues.find((/** @type {any} */ each) => each.id === next.clue);
  return [WHOLE, { label: `Look next: ${clue.name}`, href: toClue(clue.id) }];
}
