/** Sentences over the page, each until it was understood. */

import { piece } from "./dom.js";

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
