/**
 * The page in place of an app that was taken down: what was kept is still on the phone,
 * and goes into the same file that the app would make.
 */

import { startOutgoing } from "../phone/kept/outgoing.js";
import { book } from "../phone/log/book.js";
import { at } from "../phone/view/dom.js";

const NONE = "No find is kept in this browser.";
const UNREADABLE = "cannot be read by this page and stay where they are.";

/** @param {number} n */
const finds = (n) => (n === 1 ? "1 find is" : `${n} finds are`);

/** Says what is kept, and offers the file. */
async function tell() {
  const { entries, refused } = await book.list();
  const kept = entries.length ? `${finds(entries.length)} kept in this browser.` : NONE;
  const more = refused.length ? ` ${refused.length} more ${UNREADABLE}` : "";
  at("[data-kept]").textContent = kept + more;
  at("[data-offer]").hidden = false;
}

/** @param {Error} error */
function failed(error) {
  at("[data-kept]").textContent =
    `What is kept in this browser could not be read (${error?.message ?? "no reason was given"}). ` +
    "Nothing was removed: close this page and open it again.";
}

const { guides = "" } = document.body.dataset;
// Prices are kept by guide, so those without a find are asked for by name.
const cards = guides.split(" ").map((id) => ({ id }));

window.addEventListener("error", ({ error }) => error && failed(error));
window.addEventListener("unhandledrejection", ({ reason }) => failed(reason));
startOutgoing(at("main"), /** @type {any} */ ({ cards, redraw: () => tell().catch(failed), failed }));
tell().catch(failed);
