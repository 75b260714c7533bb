/**
 * The find kept in the log, as a file that a computer reads, and the verdict as text
 * that a friend reads.
 */

import { at, element, piece, set, slot } from "./dom.js";
import { story } from "./story.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../engine/find.js").Find} Find */

const FORMAT = 1;
const ALREADY =
  "It is in your finds already. The button puts what is read now, and its verdict, in place " +
  "of what is kept there: ";

/** Whether the script that knows the log is there. */
let able = false;

/** Lets the find be kept, now and wherever it is drawn later. @param {HTMLElement} root */
export function allowKeeping(root) {
  able = true;
  const button = root.querySelector("[data-act=keep]");
  if (button) set(button, { disabled: false });
}

/**
 * The section that keeps the find; one of a set is kept with the others.
 * @param {{find: Find, member: string | null}} data
 */
export function drawKeep({ find, member }) {
  const made = piece("keep");
  set(slot(made, "keep"), { disabled: !able });
  // Only where pages can be added by hand alone does this name exist, false in a tab.
  if (/** @type {any} */ (navigator).standalone !== false) slot(made, "apart").remove();
  if (member) slot(made, "log").remove();
  const file = new Blob([findText(find)], { type: "application/json" });
  const link = set(slot(made, "file"), { download: `find-${find.guide}.json` });
  link.href = URL.createObjectURL(file);
  link.dataset.file = "";
  return made;
}

/**
 * Says that the find is in the log already, and what the button does then; one of a set is
 * kept with the others.
 * @param {HTMLElement} root
 * @param {{name: string, href: string}} entry
 */
export function showKeptAs(root, { name, href }) {
  const about = root.querySelector("[data-about-keeping]");
  if (!about) return;
  const link = set(element("a", "link", name), { href });
  about.replaceChildren(ALREADY, link);
  at("[data-act=keep]").textContent = "Bring it up to date";
}

/** Says why it was not kept. @param {HTMLElement} root @param {string} why */
export function showKept(root, why) {
  slot(root, "kept").textContent = why;
}

/** Gives back the memory of the last file. @param {HTMLElement} root */
export function dropFile(root) {
  const link = root.querySelector("[data-file]");
  if (link instanceof HTMLAnchorElement) URL.revokeObjectURL(link.href);
}

/**
 * The find as one JSON text.
 * @param {Find} find
 */
function findText(find) {
  const items = find.items.map(({ member, readings, gone }) => ({
    ...(member ? { member } : {}),
    readings: Object.fromEntries(readings),
    gone,
  }));
  const { guide, claim } = find;
  return `${JSON.stringify({ format: FORMAT, guide, items, ...(claim ? { claim } : {}) }, null, 1)}\n`;
}

/**
 * Copies the verdict; where a browser refuses, shows the text to be copied by hand.
 * @param {HTMLElement} root
 * @param {Desk} desk
 */
export async function copyStory(root, desk) {
  const said = /** @type {HTMLElement} */ (root.querySelector("[data-copied]"));
  const text = /** @type {HTMLTextAreaElement} */ (root.querySelector("[data-text]"));
  try {
    await navigator.clipboard.writeText(story(desk));
    said.textContent = "Copied.";
  } catch {
    text.hidden = false;
    text.value = story(desk);
    text.select();
    said.textContent =
      "This browser does not copy by itself: the text is below, marked for you.";
  }
}
