/**
 * The find that is shown. Its screen may be left before what was asked for is done: what
 * is drawn then goes into a frame that nobody sees, and why it failed is said elsewhere.
 */

import { sayOn } from "../view/entry.js";
import { attempt } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/**
 * What is shown; the entry is there once the log was read, its guide if this phone has it.
 * @typedef {object} Shown
 * @property {string} id
 * @property {HTMLElement} frame
 * @property {import("../log/record.js").Entry} entry
 * @property {import("../shelf.js").Opened | null} opened
 * @property {import("../desk.js").Desk | null} judged today's, if that was asked for
 * @property {Map<string, HTMLElement>} figures
 * @property {import("./entryphotos.js").Removed | null} removed the photo that was removed last
 */

/** Whether it is on the screen still. @param {Shown} shown */
export const isSeen = ({ frame }) => frame.isConnected;

/**
 * Says it on the screen of the find; over the page once that was left.
 * @param {Shown} shown @param {App} app @param {string} say
 * @param {(frame: HTMLElement, say: string) => void} [here] where it is said on the screen
 */
export function tell(shown, app, say, here = sayOn) {
  if (isSeen(shown)) here(shown.frame, say);
  else app.say(say);
}

/**
 * What does work on the find that is shown when it is asked for, and tells why it failed.
 * @param {App} app @param {() => Shown} now
 */
export const doingWith = (app, now) => (/** @type {(shown: Shown) => Promise<void>} */ work) => {
  const shown = now();
  attempt(() => work(shown), (why) => tell(shown, app, why), app.failed);
};
