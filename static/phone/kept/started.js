/** How the screens of the later scripts are begun. */

import { screenOf } from "../view/dom.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../routes.js").Route} Route */
/**
 * By its name, what listens on a screen once, and what draws it.
 * @typedef {Record<string, [(root: HTMLElement, app: App) => void, (root: HTMLElement, wanted: Route, app: App) => void]>} Screens
 */

/**
 * Listens on each screen, and gives what draws it.
 * @param {Screens} screens
 * @param {App} app
 * @returns {Record<string, (wanted: Route) => void>}
 */
export function started(screens, app) {
  const drawn = Object.entries(screens).map(([name, [listen, draw]]) => {
    listen(screenOf(name), app);
    return [name, (/** @type {Route} */ wanted) => draw(screenOf(name), wanted, app)];
  });
  return Object.fromEntries(drawn);
}
