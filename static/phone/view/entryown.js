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

/** The field that holds something that was not taken yet. @param {HTMLElement} root */
export function unsaved(root) {
  return controls(root).find((each) => each.value !== each.defaultValue) ?? null;
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
  if (wrong) place.scrollIntoView({ block: "nearest" });
}

/** @param {HTMLElement} root */
function controls(root) {
  return /** @type {Control[]} */ ([...root.querySelectorAll("[data-own]")]);
}
