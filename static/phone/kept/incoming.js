/** Finds from a file: read, shown as what would become of the log, then taken in. */

import { book } from "../log/book.js";
import { log } from "../log/entries.js";
import { inWords, merged, opened, takenInWords, taking } from "../log/transfer.js";
import { loadOwned, takeInOwned } from "../log/wantsbook.js";
import { listen, listenChanges } from "../view/dom.js";
import { drawPlan, dropPlan, sayInto } from "../view/findsin.js";
import { attempt } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/importing.js").Opened} Opened */
/** @typedef {import("../log/merge.js").Plan} Plan */
/** @typedef {import("../log/record.js").Entry} Entry */

const READING = "Reading the file…";
const TAKING = "Taking them in…";
const LEFT = "Nothing was taken in.";

/** The file that was read last. @type {Opened | null} */
let file = null;

/** @param {HTMLElement} root @param {App} app */
export function startIncoming(root, app) {
  const tell = (/** @type {string} */ say) => sayInto(root, say);
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, tell, app.failed);
  root.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== "file") return;
    const [chosen] = target.files ?? [];
    if (chosen) doing(() => read(root, chosen));
    // The same file can be chosen again.
    target.value = "";
  });
  listen(root, {
    "take-in": () => doing(() => takeIn(root, app)),
    "leave-out": () => {
      file = null;
      dropPlan(root);
      tell(LEFT);
    },
  });
}

/** @param {HTMLElement} root @param {File} chosen */
async function read(root, chosen) {
  file = null;
  dropPlan(root);
  sayInto(root, READING);
  const found = await opened(chosen);
  const plan = await planned(found);
  file = found;
  sayInto(root, "");
  const { own, refused } = plan;
  drawPlan(root, { says: inWords(plan), refused, refusedRows: own.refused, taken: count(plan) });
}

/** What would become of all that is here. @param {Opened} found */
async function planned(found) {
  const { entries } = await book.list();
  const own = await loadOwned(found.own.prices.map(({ guide }) => guide));
  return merged(entries, found, { unread: await unreadOf(entries), own });
}

/** The ids of the finds that lie here and cannot be read. @param {readonly Entry[]} entries */
async function unreadOf(entries) {
  const known = new Set(entries.map(({ id }) => id));
  const rows = /** @type {{id: string}[]} */ (await log.loadEntries());
  return rows.map(({ id }) => id).filter((id) => !known.has(id));
}

/** How many rows a plan takes in. @param {Plan} plan */
function count({ added, changed, own: { prices, wants } }) {
  const taken = [added, changed, prices.added, prices.changed, wants.added, wants.changed];
  return taken.reduce((sum, { length }) => sum + length, 0);
}

/** @param {HTMLElement} root @param {App} app */
async function takeIn(root, app) {
  if (!file) return;
  // Since the file was read the log may have changed.
  const plan = await planned(file);
  file = null;
  dropPlan(root);
  sayInto(root, TAKING);
  try {
    await book.takeIn(taking(plan));
    await takeInOwned(plan.own);
    sayInto(root, takenInWords(plan));
  } finally {
    app.redraw();
  }
}
