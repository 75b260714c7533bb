/** The phone itself, on Home: ready for no signal, an update, a place among the apps. */

import { accept, start } from "./offline.js";
import { listen } from "./view/dom.js";
import { drawInstall, drawReady } from "./view/home.js";

/**
 * Shows how ready the phone is, and offers to install.
 * @param {HTMLElement} root
 * @param {() => void} keep called before an update replaces the page
 */
export function startDevice(root, keep) {
  /** @type {any} */
  let offered = null;
  listen(root, {
    install: () => offered?.prompt(),
    update: () => {
      keep();
      accept();
    },
  });
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
  start((/** @type {any} */ state) => drawReady(root, state));
}
