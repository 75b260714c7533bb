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
import { doingWith, isSeen } from "./shown.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("./own.js").Field} Field */
/** @typedef {import("./shown.js").Shown} Shown */

/** What the address names, as far as it is known. @type {Shown | null} */
let shown = null;
const now = () => /** @type {Shown} */ (shown);

/** @param {HTMLElement} root @param {App} app */
export function startEntry(root, app) {
  const doing = doingWith(app, now);
  listen(root, {
    reopen: () => doing((here) => reopen(here, app)),
    "reopen-over": () => doing((here) => layOpen(here, app)),
    "reopen-not": () => view.askOver(root, ""),
    again: () => doing((here) => judgeAgain(here, app)),
    "keep-again": () => doing((here) => keepAgain(here, app)),
    "leave-again": () => view.dropAgain(root),
    delete: () => doing((here) => remove(root, here, app)),
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
    const frame = view.entryFrame();
    // The rest of it is there before anybody can tap.
    const nothing = { opened: null, judged: null, removed: null };
    shown = /** @type {Shown} */ ({ id, frame, ...nothing, figures: figures() });
    root.append(frame);
  }
  const said = saidNow();
  if (said) view.sayOn(now().frame, said);
  doingWith(app, now)((here) => fill(root, app, here));
}

/** @param {HTMLElement} root @param {App} app */
function leave(root, app) {
  const left = shown;
  shown = null;
  root.replaceChildren();
  if (left) saveLeft(left, app);
}

/** @param {HTMLElement} root @param {App} app @param {Shown} filling */
async function fill(root, app, filling) {
  const { entries } = await book.list();
  const entry = entries.find(({ id }) => id === filling.id);
  // Whoever is quick is elsewhere already.
  if (shown !== filling) return;
  if (!entry) return keepingFocus(root, () => root.replaceChildren(view.drawNoEntry()));
  const { frame } = filling;
  // Another page may have brought it back.
  if (!isSeen(filling)) root.replaceChildren(frame);
  filling.entry = entry;
  const isHere = app.cards.some(({ id }) => id === entry.guide);
  view.fillEntry(frame, entry, { ...guidesOf(app), isHere });
  fillOwn(frame, (field) => written(entry, /** @type {Field} */ (field)));
  drawMissed(slot(frame, "missed"), isMissed(entry.id) ? { title: "", href: "" } : null);
  await fillWithGuide(filling);
  if (!isHere || filling.opened) return;
  filling.opened = await app.opened(entry.guide);
  await fillWithGuide(filling);
}

/** What says more once the guide is there. @param {Shown} filling */
async function fillWithGuide(filling) {
  view.fillWhich(filling.frame, filling.entry.find, filling.opened?.guide ?? null);
  fillWays(filling);
  await fillIn(filling);
}

/**
 * Lays the find open, unless that would forget another.
 * @param {Shown} here @param {App} app
 */
async function reopen(here, app) {
  const loss = await unkept(here.entry);
  if (!loss) return layOpen(here, app);
  view.askOver(here.frame, loss);
}

/** @param {Shown} here @param {App} app */
async function layOpen(here, app) {
  const { entry } = here;
  const { desk, lost } = today(entry, await app.opened(entry.guide));
  // Whoever has gone elsewhere meanwhile stays there.
  if (!isSeen(here)) return;
  await app.open(desk.find);
  lost.forEach(app.say);
  await reopened(/** @type {import("../desk.js").Desk} */ (app.desk()), entry);
}

/** @param {Shown} here @param {App} app */
async function judgeAgain(here, app) {
  const { entry } = here;
  const { desk, lost } = today(entry, await app.opened(entry.guide));
  here.judged = desk;
  const { say } = desk.verdict;
  view.fillAgain(here.frame, { say, updated: desk.guide.updated, changes: changes(entry, desk), lost });
}

/** @param {Shown} here @param {App} app */
async function keepAgain({ frame, entry, judged }, app) {
  if (!judged) return;
  // What was seen stays whole, even what today's guide does not know.
  await book.judgeAgain(entry.id, { ...judged, find: entry.find });
  view.dropAgain(frame);
  view.sayOn(frame, "Today’s verdict is kept.");
  app.redraw();
  slot(frame, "heading").focus();
}

/** @param {HTMLElement} root @param {Shown} here @param {App} app */
async function remove(root, here, app) {
  const { entry } = here;
  await book.remove(entry.id);
  sayNext(`“${guidesOf(app).named(entry)}” is deleted.`);
  if (!isSeen(here)) return app.redraw();
  // Nothing that was typed into it is to be saved.
  shown = null;
  root.replaceChildren();
  location.hash = "#finds";
}
