/** The photo that never came: the phone had ended the page while its camera was open. */

import { book } from "../log/book.js";
import { toEntry } from "../routes.js";
import { at, listen, screenOf } from "../view/dom.js";
import { drawMissed } from "../view/finds.js";
import { guidesOf } from "./guides.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/entries.js").Awaited} Awaited */

/** What was awaited when this page was opened. @type {Awaited | null} */
let missed = null;

/** Says on Home what is missing, until it came or the person knows. @param {App} app */
export function startMissed(app) {
  const known = () => void forgetMissed().catch(app.failed);
  for (const screen of ["home", "entry"]) listen(screenOf(screen), { known });
  take(app).catch(app.failed);
}

/** @param {App} app */
async function take(app) {
  const [awaited, { entries }] = await Promise.all([book.awaited(), book.list()]);
  const entry = entries.find(({ id }) => id === awaited?.entry);
  if (!entry) return;
  missed = awaited;
  const href = toEntry(entry.id);
  drawMissed(at("[data-missed]"), { title: guidesOf(app).named(entry), href });
  if (location.hash === href) app.redraw();
}

/** Whether the entry's photo never came. @param {string} id */
export const isMissed = (id) => missed?.entry === id;

/** It came after all, or the person knows. */
export async function forgetMissed() {
  // What is gone from the screen is not to come back with the next start.
  await book.awaitNoMore();
  missed = null;
  for (const place of document.querySelectorAll("[data-missed]")) {
    drawMissed(/** @type {HTMLElement} */ (place), null);
  }
}
