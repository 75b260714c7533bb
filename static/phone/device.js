/** The phone itself, on Home: ready for no signal, an update, a place among the apps. */

import { accept, start } from "./offline.js";
import { listen } from "./view/dom.js";
import { drawInstall, drawReady } from "./view/home.js";

/**
 * Shows how ready the phone is, and offers to install.
 * @param {HTMLElement} root
 * @param {() => Promise<void>} save what to do before an update replaces the page
 */
export function startDevice(root, save) {
  /** @type {any} */
  let offered = null;
  listen(root, { install: () => offered?.prompt(), update: accept });
  window.addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    offered = event;
    drawInstall(root, "button");
  });
  window.addEventListener("appinstalled", () => drawInstall(root, null));
  // Only where pages can be added by hand alone does this name exist, false in a tab.
  if (/** @type {any} */ (navigator).standalone === false) drawInstall(root, "steps");
  const scripted = /** @type {HTMLElement} */ (root.querySelector("[data-scripted]"));
  scripted.hidden = false;
  return start((state) => drawReady(root, state), save);
}
