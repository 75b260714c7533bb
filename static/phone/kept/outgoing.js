/** Finds to files: made when asked, then saved or handed on with a tap of their own. */

import { book } from "../log/book.js";
import { NOTHING } from "../log/owned.js";
import { canPrint } from "../log/reporthand.js";
import { sort } from "../log/search.js";
import { table } from "../log/table.js";
import { exported, lots } from "../log/transfer.js";
import { loadOwned } from "../log/wantsbook.js";
import { listen } from "../view/dom.js";
import { drawFile, dropFile, sayOut, standBelow } from "../view/findsout.js";
import { madeList, UNPAID } from "./collection.js";
import { guidesOf, openedFor } from "./guides.js";
import { attempt } from "./sentence.js";
import { today } from "./today.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/record.js").Entry} Entry */
/**
 * The log on its way into files; what is owned besides goes with the first.
 * @typedef {object} Out
 * @property {string} since
 * @property {Entry[][]} parts
 * @property {import("../log/wantsbook.js").OwnedBook} own
 * @property {number} at
 */
/**
 * A file that is ready, one of several perhaps.
 * @typedef {object} Ready
 * @property {File} file
 * @property {readonly string[]} left a sentence for each photo that is not in it
 * @property {() => Promise<void>} taken what follows once it is saved or handed on
 * @property {() => Promise<string>} [print] how it is printed, if it can be
 */

const EMPTY = "There is no find to put into a file.";
const MAKING = "Making the file…";
const SAVED = "Look into your downloads: the file should be there now.";
const SHARED = "Handed on.";
const NOT_SHARED = "It was not shared.";
const CANNOT_SHARE = "This phone could not share it. Save it instead.";
const LEFT = "One of your wants or prices is left out.";

/** @type {Ready | null} */
let ready = null;
/** Changes when what is being made is no longer wanted. */
let turn = 0;

/** @param {HTMLElement} root @param {App} app */
export function startOutgoing(root, app) {
  const tell = (/** @type {string} */ say) => sayOut(root, say);
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, tell, app.failed);
  const below = (/** @type {string} */ act, /** @type {typeof makeLog} */ make) => {
    standBelow(root, act);
    doing(() => make(root, app));
  };
  const taken = (/** @type {string} */ say) =>
    doing(async () => {
      tell(say);
      await ready?.taken();
    });
  listen(root, {
    "make-log": () => below("make-log", makeLog),
    "make-table": () => below("make-table", makeTable),
    "make-list": () => below("make-list", makeList),
    "save-file": () => taken(SAVED),
    "share-file": () => void share(root, taken),
    "print-file": () => doing(async () => tell((await ready?.print?.()) ?? "")),
  });
  // A file may be large, and is soon made again.
  window.addEventListener("hashchange", () => {
    ready = null;
    turn += 1;
    dropFile(root);
  });
}

/** @param {HTMLElement} root @param {App} app */
async function makeLog(root, app) {
  // From before it is read: what changes meanwhile is not in the file.
  const since = new Date().toISOString();
  const { entries } = await book.list();
  const guides = [...app.cards.map(({ id }) => id), ...entries.map(({ guide }) => guide)];
  const own = await loadOwned(guides);
  const parts = lots(sort(entries, "date"), own);
  if (!parts.length) return sayOut(root, EMPTY);
  return makePart(root, app, { since, parts, own, at: 0 });
}

/**
 * One file of the log; the next is made once this one is saved, for both might not fit.
 * @param {HTMLElement} root @param {App} app
 * @param {Out} out
 */
async function makePart(root, app, out) {
  sayOut(root, MAKING);
  const { since, parts, own, at } = out;
  const { file, left } = await exported(parts[at], book.photosOf, at ? NOTHING : own);
  const number = parts.length > 1 ? `-${at + 1}-of-${parts.length}` : "";
  const name = `fieldid-finds-${today()}${number}.zip`;
  const isLast = at + 1 === parts.length;
  show(root, {
    file: new File([file], name, { type: "application/zip" }),
    left: [...left, ...(at ? [] : own.refused.map((why) => `${LEFT} ${why}`))],
    async taken() {
      if (!isLast) return makePart(root, app, { ...out, at: at + 1 });
      await book.exported(since);
      app.redraw();
    },
  });
}

/** @param {HTMLElement} root @param {App} app */
async function makeTable(root, app) {
  const { entries } = await book.list();
  if (!entries.length) return sayOut(root, EMPTY);
  const name = `fieldid-finds-${today()}.csv`;
  sayOut(root, MAKING);
  const guides = await openedFor(app, entries);
  const text = table(sort(entries, "date"), guidesOf(app).titled, guides);
  const file = new File([text], name, { type: "text/csv" });
  show(root, { file, left: [], taken: async () => {} });
}

/** @param {HTMLElement} root @param {App} app */
async function makeList(root, app) {
  const own = (turn += 1);
  // The one before it may tell what is no longer ticked.
  dropFile(root);
  sayOut(root, MAKING);
  const wanted = () => own === turn;
  const made = await madeList(root, app, { tell: (say) => sayOut(root, say), wanted });
  if (!wanted()) return;
  if (!made) return sayOut(root, UNPAID);
  show(root, { ...made, taken: async () => {} });
}

/** @param {HTMLElement} root @param {Ready} made */
function show(root, made) {
  ready = made;
  const { file, left, print } = made;
  // Which files may be shared is known of the very file alone.
  const shareable = navigator.canShare?.({ files: [file] }) ?? false;
  drawFile(root, { file, left, shareable, printable: print !== undefined && canPrint() });
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
