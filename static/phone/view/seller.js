/** To the seller: a message to copy or share, free to be changed. */

import { piece, set, slot } from "./dom.js";

/** @typedef {import("../seller.js").Letter} Letter */

const CANNOT_COPY = "This browser does not copy by itself: the message is marked for you.";

/**
 * Draws the message.
 * @param {HTMLElement} root
 * @param {{letter: Letter}} data
 */
export function drawSeller(root, { letter }) {
  const { text, short, edited, stale } = letter;
  const made = piece("seller", {
    stale: stale ? "The verdict has changed since you wrote, so this is a new message." : null,
    count: count(text),
  });
  // A text area is not filled by what it holds in the page once somebody has typed.
  slot(made, "text").value = text;
  set(slot(made, "short"), { checked: short });
  set(slot(made, "anew"), { hidden: !edited });
  if (!("share" in navigator)) slot(made, "share").remove();
  root.replaceChildren(made);
}

/** After a change by hand: how long it is now, and the way back. @param {HTMLElement} root @param {string} text */
export function showTyped(root, text) {
  slot(root, "count").textContent = count(text);
  slot(root, "anew").hidden = false;
}

/** Says what became of it. @param {HTMLElement} root @param {string} say */
export function showSaid(root, say) {
  slot(root, "said").textContent = say;
}

/** Marks the message to be copied by hand. @param {HTMLElement} root */
export function markText(root) {
  slot(root, "text").select();
  showSaid(root, CANNOT_COPY);
}

/** @param {string} text */
const count = (text) => `${[...text].length} characters`;
