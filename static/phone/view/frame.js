/** The frame of every screen of a find: the bar at the foot. */

import { brackets } from "../engine/range.js";
import { piece, set, slot } from "./dom.js";
import { toClue } from "../routes.js";
import { byId } from "./reading.js";

/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../engine/find.js").Next} Next */
/** @typedef {import("../session.js").Session} Session */
/**
 * @typedef {object} Framed
 * @property {string} screen
 * @property {Session} session
 * @property {Guide} guide
 * @property {readonly Next[]} nexts
 * @property {string | null} member whose own verdict is shown
 */

const LOOK = { label: "Next question", href: "#look" };
const WHOLE = { label: "Whole object", href: "#places" };
const MARKS = { label: "All marks", href: "#places" };
const VERDICT = { label: "Verdict", href: "#verdict" };
const SET_VERDICT = { label: "Whole set", href: "#verdict" };
const BACK = { label: "Back to looking", href: "#look" };

/**
 * Draws the bar of a screen.
 * @param {HTMLElement} root
 * @param {Framed} data
 */
export function drawBar(root, data) {
  const [other, main] = ways(data);
  const disabled = data.session.past.length === 0;
  // From question to question the bar is the same, and need not be laid out anew.
  const drawn = JSON.stringify([disabled, other, main]);
  if (root.dataset.drawn === drawn) return;
  root.dataset.drawn = drawn;
  const made = piece("bar", { other: other.label, main: main.label });
  set(slot(made, "other"), { href: other.href });
  set(slot(made, "main"), { href: main.href });
  set(slot(made, "undo"), { disabled });
  root.replaceChildren(made);
}

/** @param {Framed} data */
function ways({ screen, guide, nexts, member }) {
  const whole = brackets(guide) ? MARKS : WHOLE;
  if (screen === "look") return [whole, VERDICT];
  if (screen !== "verdict") return [VERDICT, LOOK];
  const back = member ? SET_VERDICT : whole;
  if (!nexts[0]) return [back, BACK];
  const clue = byId(guide.clues, nexts[0].clue);
  return [back, { label: `Look next: ${clue.name}`, href: toClue(clue.id, member) }];
}
