/** One entry of the log: shown, filled in, judged anew, laid open again, deleted. */

import { book } from "../log/book.js";
import { route } from "../routes.js";
import { keepingFocus, listen, slot } from "../view/dom.js";
import * as view from "../view/entry.js";
import { fillOwn, showTaken, showWrong, unsaved } from "../view/entryown.js";
import { figures } from "../view/entryphotos.js";
import { drawMissed } from "../view/finds.js";
import { changes, today } from "./again.js";
import { fillIn, startPhotos } from "./entryphotos.js";
import { fillWays, startReport } from "./entryreport.js";
import { guidesOf } from "./guides.js";
import { isMissed } from "./missed.js";
import { NAMES, read, written } from "./own.js";
import { reopened, unkept } from "./open.js";
import { saidNow, sayNext } from "./said.js";
import { attempt } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("../view/entryown.js").Control} Control */
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
  root.addEventListener("change", ({ target }) => {
    const control = /** @type {Control} */ (target);
    if (control.dataset.own) save(root, app, control);
  });
  listen(root, {
    reopen: () => doing(() => reopen(root, app)),
    "reopen-over": () => doing(() => layOpen(app)),
    "reopen-not": () => view.askOver(root, ""),
    again: () => doing(() => judgeAgain(root, app)),
    "keep-again": () => doing(() => keepAgain(root, app)),
    "leave-again": () => view.dropAgain(root),
    delete: () => doing(() => remove(app)),
  });
  startPhotos(root, app, now);
  startReport(root, app, now);
  window.addEventListener("hashchange", () => {
    if (route(location.hash).screen !== "entry") leave(root, app);
  });
  // The phone may end a page that is out of sight, without a word.
  document.addEventListener("visibilitychange", () => saveTyped(root, app));
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
  saveTyped(root, app);
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
  fillWays(root, filling);
  await fillIn(root, filling);
}

/**
 * Keeps what stands in a field, or says beside it why it cannot be kept.
 * @param {HTMLElement} root @param {App} app @param {Control} control
 */
function save(root, app, control) {
  const { value: typed, dataset } = control;
  const field = /** @type {Field} */ (dataset.own);
  const { id } = now();
  const refuse = (/** @type {string} */ why) => {
    showWrong(root, control, why);
    view.sayOn(root, `The ${NAMES[field]} is not saved.`);
  };
  const { own, wrong } = read(field, typed, control.validity);
  if (wrong) return refuse(wrong);
  attempt(
    async () => {
      const entry = await book.change(id, own);
      if (shown?.id !== id) return;
      // What was typed meanwhile is on its own way.
      if (control.value === typed) showTaken(control, written(entry, field));
      showWrong(root, control, "");
      view.sayOn(root, `The ${NAMES[field]} is saved.`);
      app.redraw();
    },
    refuse,
    app.failed,
  );
}

/** Keeps what no tap elsewhere has ended yet. @param {HTMLElement} root @param {App} app */
function saveTyped(root, app) {
  const control = shown?.entry && unsaved(root);
  if (control) save(root, app, control);
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

/** @param {App} app */
async function remove(app) {
  const { entry } = now();
  await book.remove(entry.id);
  sayNext(`“${guidesOf(app).named(entry)}” is deleted.`);
  location.hash = "#finds";
}
