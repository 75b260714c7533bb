/**
 * The entry of the third script: finds that are kept. It sees the log; what lies open it
 * gets from finding.js.
 */

import { LISTED } from "./guests/known.js";
import { drawEntry, startEntry } from "./kept/entry.js";
import { drawFinds, startFinds } from "./kept/finds.js";
import { sentence } from "./kept/sentence.js";
import { started } from "./kept/started.js";
import { wholeLog } from "./log/book.js";

/** @typedef {import("./desk.js").Desk} Desk */
/** @typedef {import("./kept/started.js").Screens} Screens */
/**
 * What the screens of the later scripts ask of the app.
 * @typedef {object} App
 * @property {() => Desk | null} desk what lies open
 * @property {readonly import("./shelf.js").Card[]} cards the guides that there are
 * @property {(guide: string) => Promise<import("./shelf.js").Opened>} opened
 * @property {(find: import("./engine/find.js").Find) => Promise<void>} open lays a find
 *   open anew and shows its verdict
 * @property {() => import("./desk.js").Question | null} asked the question that the address
 *   names
 * @property {(answer: import("./view/answering.js").Taken) => void} take answers it, and goes on
 * @property {(id: string, card: import("./shelf.js").Card | null) => Promise<void>} changed
 *   takes up a guide anew that has come, is another now, or with no card is gone
 * @property {(listener: (root: HTMLElement, desk: Desk) => void) => void} onVerdict calls the
 *   listener whenever a verdict is shown, with its screen
 * @property {() => void} redraw
 * @property {(sentence: string) => void} say
 * @property {(error: Error) => void} failed
 */

/** @type {Screens} */
const SCREENS = {
  finds: [startFinds, drawFinds],
  entry: [startEntry, drawEntry],
};

/** Whether there are guides from files; where nothing can be read, the log says so. */
export const hasGuests = () =>
  wholeLog.loadSetting(LISTED).then(
    (rows) => (rows ?? []).length > 0,
    (error) => !sentence(error),
  );

/** Listens on its screens, and gives what draws each. @param {App} app */
export const start = (app) => started(SCREENS, app);
