/** Finds from a file: read, shown as what would become of the log, then taken in. */

import { book } from "../log/book.js";
import { inWords, merged, opened, taking } from "../log/transfer.js";
import { listen, listenChanges } from "../view/dom.js";
import { drawPlan, dropPlan, sayInto } from "../view/findsin.js";
import { attempt } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/importing.js").Opened} Opened */

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
  const { entries } = await book.list();
  const plan = merged(entries, found);
  file = found;
  sayInto(root, "");
  drawPlan(root, {
    says: inWords(plan),
    refused: plan.refused,
    taken: plan.added.length + plan.changed.length,
  });
}

/** @param {HTMLElement} root @param {App} app */
async function takeIn(root, app) {
  if (!file) return;
  const { entries } = await book.list();
  // Since the file was read the log may have changed.
  const plan = merged(entries, file);
  const count = plan.added.length + plan.changed.length;
  file = null;
  dropPlan(root);
  sayInto(root, TAKING);
  try {
    await book.takeIn(taking(plan));
    sayInto(root, count === 1 ? "1 find was taken in." : `${count} finds were taken in.`);
  } finally {
    app.redraw();
  }
}
