/** Finds to files: made when asked, then saved or handed on with a tap of their own. */

import { book } from "../log/book.js";
import { sort } from "../log/search.js";
import { table } from "../log/table.js";
import { exported, lots } from "../log/transfer.js";
import { listen } from "../view/dom.js";
import { drawFile, dropFile, sayOut } from "../view/findsout.js";
import { attempt } from "./sentence.js";
import { today } from "./today.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/record.js").Entry} Entry */
/**
 * A file that is ready, one of several perhaps.
 * @typedef {object} Ready
 * @property {File} file
 * @property {readonly string[]} left a sentence for each photo that is not in it
 * @property {() => Promise<void>} taken what follows once it is saved or handed on
 */

const EMPTY = "There is no find to put into a file.";
const MAKING = "Making the file…";
const SAVED = "Look into your downloads: the file should be there now.";
const SHARED = "Handed on.";
const NOT_SHARED = "It was not shared.";
const CANNOT_SHARE = "This phone could not share it. Save it instead.";

/** @type {Ready | null} */
let ready = null;

/** @param {HTMLElement} root @param {App} app */
export function startOutgoing(root, app) {
  const tell = (/** @type {string} */ say) => sayOut(root, say);
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, tell, app.failed);
  const taken = (/** @type {string} */ say) =>
    doing(async () => {
      tell(say);
      await ready?.taken();
    });
  listen(root, {
    "make-log": () => doing(() => makeLog(root, app)),
    "make-table": () => doing(() => makeTable(root)),
    "save-file": () => taken(SAVED),
    "share-file": () => void share(root, taken),
  });
  // A file may be large, and is soon made again.
  window.addEventListener("hashchange", () => {
    ready = null;
    dropFile(root);
  });
}

/** @param {HTMLElement} root @param {App} app */
async function makeLog(root, app) {
  // From before it is read: what changes meanwhile is not in the file.
  const since = new Date().toISOString();
  const { entries } = await book.list();
  const parts = lots(sort(entries, "date"));
  if (!parts.length) return sayOut(root, EMPTY);
  return makePart(root, app, { since, parts, at: 0 });
}

/**
 * One file of the log; the next is made once this one is saved, for both might not fit.
 * @param {HTMLElement} root @param {App} app
 * @param {{since: string, parts: Entry[][], at: number}} out
 */
async function makePart(root, app, { since, parts, at }) {
  sayOut(root, MAKING);
  const { file, left } = await exported(parts[at], book.photosOf);
  const number = parts.length > 1 ? `-${at + 1}-of-${parts.length}` : "";
  const name = `fieldid-finds-${today()}${number}.zip`;
  const isLast = at + 1 === parts.length;
  show(root, {
    file: new File([file], name, { type: "application/zip" }),
    left,
    async taken() {
      if (!isLast) return makePart(root, app, { since, parts, at: at + 1 });
      await book.exported(since);
      app.redraw();
    },
  });
}

/** @param {HTMLElement} root */
async function makeTable(root) {
  const { entries } = await book.list();
  if (!entries.length) return sayOut(root, EMPTY);
  const name = `fieldid-finds-${today()}.csv`;
  const file = new File([table(sort(entries, "date"))], name, { type: "text/csv" });
  show(root, { file, left: [], taken: async () => {} });
}

/** @param {HTMLElement} root @param {Ready} made */
function show(root, made) {
  ready = made;
  const { file, left } = made;
  // Which files may be shared is known of the very file alone.
  drawFile(root, { file, left, shareable: navigator.canShare?.({ files: [file] }) ?? false });
  sayOut(root, "");
}

/** @param {HTMLElement} root @param {(say: string) => void} taken */
async function share(root, taken) {
  if (!ready) return;
  try {
    // With a title beside it, some phones share the title alone.
    await navigator.share({ files: [ready.file] });
  } catch (error) {
    const { name } = /** @type {Error} */ (error);
    return sayOut(root, name === "AbortError" ? NOT_SHARED : CANNOT_SHARE);
  }
  taken(SHARED);
}
