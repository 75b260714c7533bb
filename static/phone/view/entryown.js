/** The fields of a find that a person fills in. */

import { set, slot } from "./dom.js";

/** @typedef {HTMLInputElement | HTMLTextAreaElement} Control */

/**
 * Writes into the fields, but never over what is just being typed or was refused.
 * @param {HTMLElement} root
 * @param {(field: string) => string} written
 */
export function fillOwn(root, written) {
  for (const control of controls(root)) {
    const { own = "" } = control.dataset;
    const isRefused = control.getAttribute("aria-invalid") === "true";
    if (isRefused || control === document.activeElement) continue;
    control.value = control.defaultValue = written(own);
  }
}

/** The fields that hold something that was not taken yet. @param {HTMLElement} root */
export function unsaved(root) {
  return controls(root).filter((each) => each.value !== each.defaultValue || each.validity.badInput);
}

/** The field that an event is of, if it is one of these. @param {EventTarget | null} target */
export function ownOf(target) {
  const isOwn = target instanceof HTMLElement && target.dataset.own !== undefined;
  return isOwn ? /** @type {Control} */ (target) : null;
}

/** What is in the field is taken, and stays as it was typed. @param {Control} control */
export function showKept(control) {
  control.defaultValue = control.value;
}

/** What is in the field is taken. @param {Control} control @param {string} written */
export function showTaken(control, written) {
  control.defaultValue = written;
  control.value = written;
}

/**
 * Says beside a field what is wrong with it; nothing if all is well.
 * @param {HTMLElement} root
 * @param {Control} control
 * @param {string} wrong
 */
export function showWrong(root, control, wrong) {
  const place = slot(root, `${control.dataset.own}-wrong`);
  place.textContent = wrong;
  set(control, { "aria-invalid": wrong ? "true" : null });
  // Whoever has scrolled elsewhere is about to tap something there.
  if (wrong && isInSight(control)) place.scrollIntoView({ block: "nearest" });
}

/** @param {HTMLElement} control */
function isInSight(control) {
  const { top, bottom } = control.getBoundingClientRect();
  return bottom > 0 && top < innerHeight;
}

/** @param {HTMLElement} root */
function controls(root) {
  return /** @type {Control[]} */ ([...root.querySelectorAll("[data-own]")]);
}
