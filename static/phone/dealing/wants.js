/** What a person is after: kept, changed, deleted, and brought back. */

import { several } from "../engine/members.js";
import { lastCurrency } from "../kept/keep.js";
import { attempt } from "../kept/sentence.js";
import { newId } from "../log/book.js";
import { want as checked, withoutWant, withWants } from "../log/wants.js";
import { changeWants, loadWants } from "../log/wantsbook.js";
import { listen, slot } from "../view/dom.js";
import * as view from "../view/wants.js";
import { wantSay } from "../view/wantssay.js";
import { EMPTY, read, written } from "./wantsform.js";
import { wantMissing } from "./wantslacking.js";
import { unwanted } from "./wantsmissing.js";
import { startOnVerdict } from "./wantsverdict.js";

/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/wants.js").Want} Want */

const LOST = "Its guide is not on this phone, so no verdict is held against it here.";
const KEPT = "It is kept. A verdict that may be one says so.";

/** The wants as they were read last. @type {readonly Want[]} */
let wants = [];
/** The one that the form changes; null for one more. @type {Want | null} */
let changing = null;
/** The one that was deleted last, to be had back. @type {Want | null} */
let removed = null;

/** @param {HTMLElement} root @param {App} app */
export function startWants(root, app) {
  startOnVerdict(app);
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, (why) => view.sayWant(root, why), app.failed);
  let busy = false;
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    if (busy) return;
    busy = true;
    doing(() => keep(root, app).finally(() => (busy = false)));
  });
  root.addEventListener("change", ({ target }) => {
    if (target === slot(root, "want-guide")) doing(() => offer(root, app));
  });
  listen(root, {
    change: ({ want = "" }) => doing(() => change(root, app, want)),
    leave: () => doing(() => leave(root, app)),
    delete: ({ want = "" }) => doing(() => remove(root, app, want)),
    undo: () => doing(() => bringBack(root, app)),
    "want-missing": () => doing(() => addMissing(root, app)),
  });
  window.addEventListener("hashchange", () => {
    removed = null;
    if (root.firstElementChild) view.sayWant(root, "");
  });
}

/** @param {HTMLElement} root @param {import("../routes.js").Route} _ @param {App} app */
export function drawWants(root, _, app) {
  const isFirst = !root.firstElementChild;
  if (isFirst) root.append(view.wantsFrame(app.cards));
  attempt(() => arrive(root, app, isFirst), (why) => view.sayWant(root, why), app.failed);
}

/** @param {HTMLElement} root @param {App} app @param {boolean} isFirst */
async function arrive(root, app, isFirst) {
  if (isFirst) {
    const guide = app.desk()?.guide.id ?? lines(app)[0]?.id ?? "";
    view.typeIn(root, { guide });
    await offer(root, app);
    const currency = await usualCurrency();
    // Whoever types is quicker than some disks.
    if (!view.typedIn(root).currency) view.typeIn(root, { currency });
  }
  await fill(root, app);
}

/** The guides of a line of objects. @param {App} app */
const lines = ({ cards }) => cards.filter(({ anything }) => !anything);

/** That of the want that was kept last, or of the last find. */
async function usualCurrency() {
  const told = (await loadWants()).wants.filter(({ currency }) => currency);
  const latest = told.sort((one, other) => compare(one.changed, other.changed)).at(-1);
  return latest?.currency ?? lastCurrency();
}

/** @param {string} one @param {string} other */
const compare = (one, other) => Number(one > other) - Number(one < other);

/** @param {HTMLElement} root @param {App} app */
async function fill(root, app) {
  const { wants: found, refused } = await loadWants();
  wants = [...found].sort((one, other) => compare(one.created, other.created));
  const guides = await opened(app, found);
  const rows = wants.map((want) => {
    const { id, note } = want;
    return { id, note, say: say(want, app, guides), lost: isHere(want, app) ? "" : LOST };
  });
  view.fillWants(root, rows, refused);
  view.fillLacking(root, lacking(app));
}

/** @param {Want} want @param {App} app @param {Map<string, Guide>} guides */
function say(want, { cards }, guides) {
  const card = cards.find(({ id }) => id === want.guide);
  const known = guides.get(want.guide) ?? null;
  return wantSay(want, card ?? { title: want.guide, anything: false }, known);
}

/** @param {Want} want @param {App} app */
const isHere = ({ guide }, { cards }) => cards.some(({ id }) => id === guide);

/**
 * The guides of these wants, as far as they can be opened: without one, its members go
 * by their ids.
 * @param {App} app @param {readonly Want[]} all
 */
async function opened({ cards, opened }, all) {
  const ids = cards.map(({ id }) => id).filter((id) => all.some(({ guide }) => guide === id));
  const found = await Promise.allSettled(ids.map((id) => opened(id)));
  const there = found.flatMap((each) => (each.status === "fulfilled" ? [each.value.guide] : []));
  return new Map(there.map((guide) => [guide.id, guide]));
}

/** What the set that lies open lacks and is not wanted yet. @param {App} app */
function lacking(app) {
  const desk = app.desk();
  const missing = desk ? unwanted(desk.verdict, wants) : [];
  return desk && missing.length ? `The set that lies open lacks ${several(desk.guide, missing)}.` : "";
}

/** Offers the years and members of the guide that is chosen. @param {HTMLElement} root @param {App} app */
async function offer(root, app) {
  const { guide: id } = view.typedIn(root);
  if (!id) return;
  const { guide } = await app.opened(id);
  // Another may have been chosen meanwhile.
  if (view.typedIn(root).guide === id) view.fillChoices(root, guide);
}

/** @param {HTMLElement} root @param {App} app */
async function keep(root, app) {
  const { told, wrong } = read(/** @type {any} */ (view.typedIn(root)));
  view.showWrong(root, wrong);
  if (Object.keys(wrong).length) return view.sayWant(root, "This want is not kept yet.");
  const now = new Date().toISOString();
  const made = { id: changing?.id ?? newId(), ...told, created: changing?.created ?? now, changed: now };
  const want = checked(made);
  await changeWants((kept) => withWants(kept, [want]));
  await begin(root, app);
  await fill(root, app);
  view.sayWant(root, KEPT);
}

/** The form for one more, of the same guide and currency. @param {HTMLElement} root @param {App} app */
async function begin(root, app) {
  const { guide, currency } = view.typedIn(root);
  changing = null;
  view.showForm(root, false);
  view.showWrong(root, {});
  view.typeIn(root, { ...EMPTY, guide, currency });
  await offer(root, app);
}

/** @param {HTMLElement} root @param {App} app @param {string} id */
async function change(root, app, id) {
  const want = wants.find((each) => each.id === id);
  if (!want) return;
  if (!isHere(want, app)) return view.sayWant(root, LOST);
  changing = want;
  const typed = written(want);
  view.showForm(root, true);
  view.showWrong(root, {});
  view.typeIn(root, { guide: want.guide });
  await offer(root, app);
  view.typeIn(root, typed);
  view.sayWant(root, "");
  view.toForm(root);
}

/** @param {HTMLElement} root @param {App} app */
async function leave(root, app) {
  await begin(root, app);
  view.sayWant(root, "It stays as it was.");
}

/** @param {HTMLElement} root @param {App} app @param {string} id */
async function remove(root, app, id) {
  removed = wants.find((each) => each.id === id) ?? null;
  await changeWants((kept) => withoutWant(kept, id));
  if (changing?.id === id) await begin(root, app);
  await fill(root, app);
  view.sayWant(root, "The want is deleted.", true);
  slot(root, "undo").focus();
}

/** @param {HTMLElement} root @param {App} app */
async function bringBack(root, app) {
  if (!removed) return;
  const want = removed;
  removed = null;
  await changeWants((kept) => withWants(kept, [want]));
  await fill(root, app);
  view.sayWant(root, "The want is back.");
  slot(root, "title").focus();
}

/** @param {HTMLElement} root @param {App} app */
async function addMissing(root, app) {
  const desk = app.desk();
  if (!desk) return;
  const added = await wantMissing(desk.verdict);
  await fill(root, app);
  view.sayWant(root, added.length === 1 ? "1 want is added." : `${added.length} wants are added.`);
  slot(root, "title").focus();
}
