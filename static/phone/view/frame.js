/** The frame of every screen: the bar at the foot, and sentences over the page. */

import { piece, set, slot } from "./dom.js";
import { toClue } from "../routes.js";
import { byId } from "./reading.js";

/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../engine/find.js").Next} Next */
/** @typedef {import("../session.js").Session} Session */

const LOOK = { label: "Next question", href: "#look" };
const WHOLE = { label: "Whole object", href: "#places" };
const VERDICT = { label: "Verdict", href: "#verdict" };

/**
 * Draws the bar of a screen.
 * @param {HTMLElement} root
 * @param {{screen: string, session: Session, guide: Guide, nexts: readonly Next[]}} data
 */
export function drawBar(root, { screen, session, guide, nexts }) {
  const [other, main] = ways(screen, guide, nexts[0]);
  const made = piece("bar", { other: other.label, main: main.label });
  set(slot(made, "other"), { href: other.href });
  set(slot(made, "main"), { href: main.href });
  set(slot(made, "undo"), { disabled: session.past.length === 0 });
  root.replaceChildren(made);
}

/** @param {string} screen @param {Guide} guide @param {Next | undefined} next */
function ways(screen, guide, next) {
  if (screen === "look") return [WHOLE, VERDICT];
  if (screen === "places") return [VERDICT, LOOK];
  if (!next) return [WHOLE, { label: "Back to looking", href: "#look" }];
  const clue = byId(guide.clues, next.clue);
  return [WHOLE, { label: `Look next: ${clue.name}`, href: toClue(clue.id) }];
}

/**
 * Shows a sentence; the same sentence is not shown twice.
 * @param {HTMLElement} root
 * @param {string} say
 */
export function notify(root, say) {
  const shown = [...root.querySelectorAll("[data-slot=say]")].map((each) => each.textContent);
  if (shown.includes(say)) return;
  root.append(piece("notice", { say }));
  root.hidden = false;
}

/** Takes a sentence away once it was understood. @param {HTMLElement} root @param {Event} event */
export function dismiss(root, event) {
  if (event.target instanceof Element) event.target.closest(".banner__notice")?.remove();
  root.hidden = root.childElementCount === 0;
}
