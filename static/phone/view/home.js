/** Home's moving parts: drafts on their guides, the badge, the update, installing. */

import { element, piece, set, slot } from "./dom.js";
import { counted } from "./reading.js";

/** @typedef {{items: readonly import("../session.js").Kept[], say: string, exhausted: string}} Kept */

/**
 * The guides of this bundle, as their cards tell them.
 * @param {HTMLElement} root
 * @returns {import("../shelf.js").Card[]}
 */
export function cardsOf(root) {
  const cards = /** @type {HTMLElement[]} */ ([...root.querySelectorAll("[data-guide-card]")]);
  return cards.map(({ dataset: { guideCard: id = "", title = "", years = "", anything, invented } }) => {
    const [since, until] = years.split(" ").map(Number);
    const kinds = { anything: anything !== undefined, invented: invented !== undefined };
    return { id, title, since, until, ...kinds };
  });
}

/**
 * Puts a kept draft on its guide's card, or takes it off.
 * @param {HTMLElement} root
 * @param {string} guide
 * @param {Kept | null} draft
 */
export function drawDraft(root, guide, draft) {
  const card = root.querySelector(`[data-guide-card="${CSS.escape(guide)}"]`);
  if (!(card instanceof HTMLElement)) return;
  const place = /** @type {HTMLElement} */ (card.querySelector("[data-draft]"));
  const start = /** @type {HTMLElement} */ (card.querySelector("[data-start-row]"));
  place.hidden = draft === null;
  start.hidden = draft !== null;
  place.replaceChildren(...(draft ? [kept(guide, draft)] : []));
}

/** @param {string} guide @param {Kept} draft */
function kept(guide, draft) {
  const many = counted(draft.items);
  const made = piece("draft", {
    say: draft.say ? `Left open: ${many}, ${draft.say}.` : `Left open: ${many}.`,
    loss: `This forgets what lies open: ${many}.`,
  });
  if (draft.exhausted) made.dataset.done = "";
  for (const name of ["go", "start"]) slot(made, name).dataset.guide = guide;
  return made;
}

/**
 * Says how ready the phone is for no signal.
 * @param {HTMLElement} root
 * @param {{state: string, say: string}} offline
 */
export function drawReady(root, { state, say }) {
  const badge = /** @type {HTMLElement} */ (root.querySelector("[data-ready]"));
  badge.hidden = !say;
  badge.dataset.state = state;
  badge.textContent = say;
  drawUpdate(root, state);
}

/** @param {HTMLElement} root @param {string} state */
function drawUpdate(root, state) {
  const place = /** @type {HTMLElement} */ (root.querySelector("[data-update]"));
  place.hidden = state !== "update";
  if (place.hidden || place.childElementCount) return;
  const button = set(element("button", "button", "Update now"), { type: "button" });
  button.dataset.act = "update";
  place.replaceChildren(button);
}

/**
 * Offers to put the app on the phone: a button where the browser can, else the steps.
 * @param {HTMLElement} root
 * @param {"button" | "steps" | null} way
 */
export function drawInstall(root, way) {
  const place = /** @type {HTMLElement} */ (root.querySelector("[data-install]"));
  place.hidden = way === null;
  if (way === null) return;
  const steps =
    "To have it beside your other apps: tap Share, then “Add to Home Screen”. " +
    "Then open it once from there while there still is signal.";
  const button = "It can stand beside your other apps and opens without signal.";
  const made = piece("install", { say: way === "steps" ? steps : button });
  if (way === "steps") slot(made, "button").remove();
  place.replaceChildren(made);
}
