/**
 * The entry of the last script: finds that are kept. It sees the log; what lies open it
 * gets from finding.js.
 */

import { drawEntry, startEntry } from "./kept/entry.js";
import { drawFinds, startFinds } from "./kept/finds.js";
import { screenOf } from "./view/dom.js";

/** @typedef {import("./desk.js").Desk} Desk */
/** @typedef {import("./routes.js").Route} Route */
/**
 * What these screens ask of the app.
 * @typedef {object} App
 * @property {() => Desk | null} desk what lies open
 * @property {readonly import("./shelf.js").Card[]} cards the guides that there are
 * @property {(guide: string) => Promise<import("./shelf.js").Opened>} opened
 * @property {(find: import("./engine/find.js").Find) => Promise<void>} open lays a find
 *   open anew and shows its verdict
 * @property {() => void} redraw
 * @property {(sentence: string) => void} say
 * @property {(error: Error) => void} failed
 */

/** @type {Record<string, [(root: HTMLElement, app: App) => void, (root: HTMLElement, wanted: Route, app: App) => void]>} */
const SCREENS = {
  finds: [startFinds, drawFinds],
  entry: [startEntry, drawEntry],
};

/**
 * Listens on its screens, and gives what draws one of them.
 * @param {App} app
 */
export function start(app) {
  for (const [screen, [listen]] of Object.entries(SCREENS)) listen(screenOf(screen), app);
  return (/** @type {Route} */ wanted) =>
    SCREENS[wanted.screen][1](screenOf(wanted.screen), wanted, app);
}
