/** The report of an entry: shared, saved or printed, with no more than the person ticks. */

import { book } from "../log/book.js";
import { fileName, page, report } from "../log/report.js";
import { canPrint, print, save, share } from "../log/reporthand.js";
import { STYLE } from "../log/reportstyle.js";
import { listen, slot } from "../view/dom.js";
import { fillReport, ticked } from "../view/entryreport.js";
import { today } from "./again.js";
import { attempt } from "./sentence.js";
import { tell } from "./shown.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/report.js").Asked} Asked */
/** @typedef {import("./shown.js").Shown} Shown */

/**
 * @param {HTMLElement} root
 * @param {App} app
 * @param {() => Shown} now what is shown
 */
export function startReport(root, app, now) {
  /** @param {(asked: Asked) => Promise<string> | string} way */
  const hand = (way) => {
    const here = now();
    const reported = (/** @type {string} */ say) => tell(here, app, say, sayReported);
    attempt(async () => reported(await way(await asked(here, app))), reported, app.failed);
  };
  listen(root, {
    "report-share": () => hand((asked) => share(report(asked), fileName(asked))),
    "report-save": () => hand((asked) => save(report(asked), fileName(asked))),
    "report-print": () => hand(printed),
  });
}

/** @param {HTMLElement} frame @param {string} say */
const sayReported = (frame, say) => void (slot(frame, "reported").textContent = say);

/** @param {Asked} asked */
const printed = (asked) => print({ page: (source) => page(asked, source), style: STYLE });

/** Offers what can be told and done. @param {Shown} shown */
export function fillWays({ frame, entry, opened }) {
  fillReport(frame, entry, { there: opened !== null, printable: canPrint() });
}

/** @param {Shown} here @param {App} app @returns {Promise<Asked>} */
async function asked({ frame, entry }, app) {
  const opened = await app.opened(entry.guide);
  const { verdict } = today(entry, opened).desk;
  const photos = await book.photosOf(entry);
  return { ...opened, entry, verdict, photos, with: ticked(frame) };
}
