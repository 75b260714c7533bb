/**
 * The fields of an entry that a person fills in: saved while one types, when a field is
 * left, and on the way out.
 */

import { book } from "../log/book.js";
import { route } from "../routes.js";
import { sayOn } from "../view/entry.js";
import { ownOf, showKept, showTaken, showWrong, unsaved } from "../view/entryown.js";
import { NAMES, read, written } from "./own.js";
import { attempt } from "./sentence.js";
import { isSeen } from "./shown.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../view/entryown.js").Control} Control */
/** @typedef {import("./shown.js").Shown} Shown */
/** @typedef {import("./own.js").Field} Field */
/**
 * Where a field stands, and whether it is being typed in still: half a price is no
 * mistake then, and what stands in the field is left as it is.
 * @typedef {object} Place
 * @property {App} app
 * @property {Shown} shown
 * @property {boolean} typing
 */

/** Whoever has not typed for so many milliseconds has come to rest. */
const REST = 800;
/** The screens that show what is kept of an entry. */
const SHOWN_BY = ["finds", "entry"];

/**
 * @param {HTMLElement} root
 * @param {App} app
 * @param {() => Shown | null} now what is shown
 */
export function startFields(root, app, now) {
  let resting = 0;
  /** @param {Control} control @param {boolean} typing */
  const keep = (control, typing) => {
    const shown = now();
    if (shown?.entry) save(control, { app, shown, typing });
  };
  /** What was left is saved, and the find that is shown now is another. @param {Control} control */
  const rest = (control) => control.isConnected && keep(control, true);
  root.addEventListener("input", ({ target }) => {
    const control = ownOf(target);
    clearTimeout(resting);
    if (control) resting = window.setTimeout(rest, REST, control);
  });
  root.addEventListener("change", ({ target }) => {
    const control = ownOf(target);
    clearTimeout(resting);
    if (control) keep(control, false);
  });
  // The phone may end a page that is out of sight, without a word.
  document.addEventListener("visibilitychange", () => {
    unsaved(root).forEach((control) => keep(control, true));
  });
}

/**
 * Saves what no tap elsewhere has ended yet, of an entry that leaves the screen.
 * @param {Shown} shown
 * @param {App} app
 */
export function saveLeft(shown, app) {
  if (!shown.entry) return;
  unsaved(shown.frame).forEach((control) => save(control, { app, shown, typing: false }));
}

/**
 * Saves what stands in a field, or says why it cannot be saved: beside it, as long as it
 * is there.
 * @param {Control} control
 * @param {Place} place
 */
function save(control, place) {
  const { value: typed, dataset, validity } = control;
  const field = /** @type {Field} */ (dataset.own);
  const { own, wrong } = read(field, typed, validity);
  if (wrong && place.typing) return;
  const refuse = (/** @type {string} */ why) => refused(control, why, place);
  if (wrong) return refuse(wrong);
  attempt(
    async () => {
      const entry = await book.change(place.shown.id, own);
      taken(control, { typed, written: written(entry, field) }, place);
      place.shown.entry = entry;
    },
    refuse,
    place.app.failed,
  );
}

/** @param {Control} control @param {string} why @param {Place} place */
function refused(control, why, { app, shown }) {
  const say = `The ${NAMES[/** @type {Field} */ (control.dataset.own)]} is not saved.`;
  if (!isSeen(shown)) return app.say(`${say} ${why}`);
  showWrong(shown.frame, control, why);
  sayOn(shown.frame, say);
}

/**
 * @param {Control} control
 * @param {{typed: string, written: string}} text what stood there, and what the log has
 * @param {Place} place
 */
function taken(control, { typed, written }, { app, shown, typing }) {
  if (!isSeen(shown)) {
    // The list may have been drawn before, or this very find, by whoever came back.
    if (SHOWN_BY.includes(route(location.hash).screen)) app.redraw();
    return;
  }
  // What was typed meanwhile is on its own way.
  if (control.value === typed) (typing ? showKept : showTaken)(control, written);
  showWrong(shown.frame, control, "");
  sayOn(shown.frame, `The ${NAMES[/** @type {Field} */ (control.dataset.own)]} is saved.`);
  // Whoever types is not to be disturbed.
  if (!typing) app.redraw();
}
