/** A file that is ready to be saved or handed on. */

import { element, piece, set, slot } from "./dom.js";

const MEGABYTE = 1e6;

/**
 * Draws what can be done with the file.
 * @param {HTMLElement} root
 * @param {{file: File, left: readonly string[], shareable: boolean, printable: boolean}} ready
 */
export function drawFile(root, { file, left, shareable, printable }) {
  dropFile(root);
  const made = piece("finds-file", {
    name: `${file.name}, ${size(file.size)}`,
    left: left.map((say) => element("li", "", say)),
  });
  const link = set(slot(made, "save"), { download: file.name });
  link.href = URL.createObjectURL(file);
  if (!shareable) slot(made, "share").remove();
  if (!printable) slot(made, "print").remove();
  slot(root, "file").replaceChildren(made);
  // Asked for from the top of a long list, it would be out of sight.
  link.focus();
}

/** Has the file and what is said of it stand below the button that asks for it. @param {HTMLElement} root @param {string} act */
export function standBelow(root, act) {
  // The reminder above the list asks for a file, too.
  const asking = root.querySelector(`.log__side p:has([data-act=${act}])`);
  const [file, out] = [slot(root, "file"), slot(root, "out")];
  // What is read aloud when it changes should not be moved without need.
  if (asking?.nextElementSibling !== file) asking?.after(file, out);
}

/** Takes the file from the page, and gives back its memory. @param {HTMLElement} root */
export function dropFile(root) {
  const link = root.querySelector("[data-act=save-file]");
  if (!(link instanceof HTMLAnchorElement)) return;
  URL.revokeObjectURL(link.href);
  slot(root, "file").replaceChildren();
  sayOut(root, "");
}

/** What the list of the collection is to tell. @param {HTMLElement} root */
export function ticked(root) {
  const [all, place] = ["list-all", "list-place"].map((name) => slot(root, name).checked);
  return { all, place };
}

/** What has become of it. @param {HTMLElement} root @param {string} say */
export function sayOut(root, say) {
  slot(root, "out").textContent = say;
}

/** @param {number} bytes */
function size(bytes) {
  if (bytes < MEGABYTE) return `${Math.max(1, Math.round(bytes / 1000))}\u00a0kB`;
  return `${(bytes / MEGABYTE).toFixed(1)}\u00a0MB`;
}
