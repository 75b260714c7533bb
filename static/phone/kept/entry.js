/** One entry of the log: shown, filled in, judged anew, laid open again, deleted. */

import { book } from "../log/book.js";
import { route } from "../routes.js";
import { keepingFocus, listen, slot } from "../view/dom.js";
import * as view from "../view/entry.js";
import { fillOwn } from "../view/entryown.js";
import { figures } from "../view/entryphotos.js";
import { drawMissed } from "../view/finds.js";
import { changes, today } from "./again.js";
import { saveLeft, startFields } from "./entryfields.js";
import { fillIn, startPhotos } from "./entryphotos.js";
import { fillWays, startReport } from "./entryreport.js";
import { guidesOf } from "./guides.js";
import { isMissed } from "./missed.js";
import { written } from "./own.js";
import { reopened, unkept } from "./open.js";
import { saidNow, sayNext } from "./said.js";
import { attempt } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("./own.js").Field} Field */
/**
 * What is shown; the entry is there once the log was read, its guide if this phone has it.
 * @typedef {object} Shown
 * @property {string} id
 * @property {Entry} entry
 * @property {import("../shelf.js").Opened | null} opened
 * @property {import("../desk.js").Desk | null} judged today's, if that was asked for
 * @property {Map<string, HTMLElement>} figures
 */

/** What the address names, as far as it is known. @type {Shown | null} */
let shown = null;
const now = () => /** @type {Shown} */ (shown);

/** @param {HTMLElement} root @param {App} app */
export function startEntry(root, app) {
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, (why) => view.sayOn(root, why), app.failed);
  listen(root, {
    reopen: () => doing(() => reopen(root, app)),
    "reopen-over": () => doing(() => layOpen(app)),
    "reopen-not": () => view.askOver(root, ""),
    again: () => doing(() => judgeAgain(root, app)),
    "keep-again": () => doing(() => keepAgain(root, app)),
    "leave-again": () => view.dropAgain(root),
    delete: () => doing(() => remove(root, app)),
  });
  startFields(root, app, () => shown);
  startPhotos(root, app, now);
  startReport(root, app, now);
  window.addEventListener("hashchange", () => {
    if (route(location.hash).screen !== "entry") leave(root, app);
  });
}

/**
 * @param {HTMLElement} root
 * @param {import("../routes.js").Route} wanted
 * @param {App} app
 */
export function drawEntry(root, { id }, app) {
  if (shown?.id !== id) {
    leave(root, app);
    // The rest of it is there before anybody can tap.
    shown = /** @type {Shown} */ ({ id, opened: null, judged: null, figures: figures() });
    root.append(view.entryFrame());
  }
  const said = saidNow();
  if (said) view.sayOn(root, said);
  attempt(() => fill(root, app, now()), (why) => view.sayOn(root, why), app.failed);
}

/** @param {HTMLElement} root @param {App} app */
function leave(root, app) {
  if (shown) saveLeft(root, app, shown);
  shown = null;
  root.replaceChildren();
}

/** @param {HTMLElement} root @param {App} app @param {Shown} filling */
async function fill(root, app, filling) {
  const { entries } = await book.list();
  const entry = entries.find(({ id }) => id === filling.id);
  // Whoever is quick is elsewhere already.
  if (shown !== filling) return;
  if (!entry) return keepingFocus(root, () => root.replaceChildren(view.drawNoEntry()));
  filling.entry = entry;
  const isHere = app.cards.some(({ id }) => id === entry.guide);
  view.fillEntry(root, entry, { ...guidesOf(app), isHere });
  fillOwn(root, (field) => written(entry, /** @type {Field} */ (field)));
  drawMissed(slot(root, "missed"), isMissed(entry.id) ? { title: "", href: "" } : null);
  await fillWithGuide(root, filling);
  if (!isHere || filling.opened) return;
  filling.opened = await app.opened(entry.guide);
  await fillWithGuide(root, filling);
}

/** What says more once the guide is there. @param {HTMLElement} root @param {Shown} filling */
async function fillWithGuide(root, filling) {
  view.fillWhich(root, filling.entry.find, filling.opened?.guide ?? null);
  fillWays(root, filling);
  await fillIn(root, filling);
}

/**
 * Lays the find open, unless that would forget another.
 * @param {HTMLElement} root @param {App} app
 */
async function reopen(root, app) {
  const loss = await unkept(now().entry);
  if (!loss) return layOpen(app);
  view.askOver(root, loss);
}

/** @param {App} app */
async function layOpen(app) {
  const { entry } = now();
  const { desk, lost } = today(entry, await app.opened(entry.guide));
  await app.open(desk.find);
  lost.forEach(app.say);
  await reopened(/** @type {import("../desk.js").Desk} */ (app.desk()), entry);
}

/** @param {HTMLElement} root @param {App} app */
async function judgeAgain(root, app) {
  const { entry } = now();
  const { desk, lost } = today(entry, await app.opened(entry.guide));
  now().judged = desk;
  const { say } = desk.verdict;
  view.fillAgain(root, { say, updated: desk.guide.updated, changes: changes(entry, desk), lost });
}

/** @param {HTMLElement} root @param {App} app */
async function keepAgain(root, app) {
  const { entry, judged } = now();
  if (!judged) return;
  // What was seen stays whole, even what today's guide does not know.
  await book.judgeAgain(entry.id, { ...judged, find: entry.find });
  view.dropAgain(root);
  view.sayOn(root, "Today’s verdict is kept.");
  app.redraw();
  slot(root, "heading").focus();
}

/** @param {HTMLElement} root @param {App} app */
async function remove(root, app) {
  const { entry } = now();
  await book.remove(entry.id);
  // Nothing that was typed into it is to be saved.
  root.replaceChildren();
  sayNext(`“${guidesOf(app).named(entry)}” is deleted.`);
  location.hash = "#finds";
}
