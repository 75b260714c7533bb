/** The report of an entry: shared, saved or printed, with no more than the person ticks. */

import { book } from "../log/book.js";
import { fileName, page, report } from "../log/report.js";
import { canPrint, print, save, share } from "../log/reporthand.js";
import { STYLE } from "../log/reportstyle.js";
import { listen, slot } from "../view/dom.js";
import { fillReport, ticked } from "../view/entryreport.js";
import { today } from "./again.js";
import { attempt } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/report.js").Asked} Asked */
/** @typedef {import("./entry.js").Shown} Shown */

/**
 * @param {HTMLElement} root
 * @param {App} app
 * @param {() => Shown} now what is shown
 */
export function startReport(root, app, now) {
  const tell = (/** @type {string} */ say) => void (slot(root, "reported").textContent = say);
  /** @param {(asked: Asked) => Promise<string> | string} way */
  const hand = (way) =>
    void attempt(async () => tell(await way(await asked(root, app, now()))), tell, app.failed);
  listen(root, {
    "report-share": () => hand((asked) => share(report(asked), fileName(asked))),
    "report-save": () => hand((asked) => save(report(asked), fileName(asked))),
    "report-print": () => hand(printed),
  });
}

/** @param {Asked} asked */
const printed = (asked) => print({ page: (source) => page(asked, source), style: STYLE });

/** Offers what can be told and done. @param {HTMLElement} root @param {Shown} shown */
export function fillWays(root, { entry, opened }) {
  fillReport(root, entry, { there: opened !== null, printable: canPrint() });
}

/** @param {HTMLElement} root @param {App} app @param {Shown} shown @returns {Promise<Asked>} */
async function asked(root, app, { entry }) {
  const opened = await app.opened(entry.guide);
  const { verdict } = today(entry, opened).desk;
  const photos = await book.photosOf(entry);
  return { ...opened, entry, verdict, photos, with: ticked(root) };
}
