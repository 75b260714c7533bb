/** The message to the seller: the engine's words, or what the person made of them. */

import { message } from "./engine/index.js";
import { listen, listenChanges } from "./view/dom.js";
import { markText, showSaid, showTyped } from "./view/seller.js";

/** @typedef {import("./desk.js").Desk} Desk */
/**
 * @typedef {object} Letter
 * @property {string} text
 * @property {string} fresh what the engine says now
 * @property {boolean} short for a text message
 * @property {boolean} edited
 * @property {boolean} stale whether what the person wrote no longer fits the verdict
 */

/**
 * What the person wrote, and in place of which words, by guide and length.
 * @type {Map<string, {text: string, fresh: string}>}
 */
const written = new Map();
let short = false;

const CANNOT_SHARE = "This phone could not share it. Copy it instead.";

/**
 * The message as it stands: the person's own, until the engine would say something else.
 * @param {Desk} desk
 * @returns {Letter}
 */
export function letter({ guide, tables, find, verdict }) {
  const fresh = message(tables, find, verdict)[short ? "short" : "long"];
  const kept = written.get(key(guide.id));
  const edited = kept?.fresh === fresh;
  const text = kept && edited ? kept.text : fresh;
  return { text, fresh, short, edited, stale: kept !== undefined && !edited };
}

/** @param {string} guide */
const key = (guide) => `${guide} ${short ? "short" : "long"}`;

/**
 * Listens to what is done with the message.
 * @param {HTMLElement} root
 * @param {() => Desk} desk the one that is open
 * @param {() => void} redraw
 */
export function startSeller(root, desk, redraw) {
  root.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLTextAreaElement)) return;
    const { fresh } = letter(desk());
    written.set(key(desk().guide.id), { text: target.value, fresh });
    showTyped(root, target.value);
  });
  listenChanges(root, {
    short: (_, on) => {
      short = on;
      redraw();
    },
  });
  listen(root, {
    copy: () => void copy(root, letter(desk()).text),
    share: () => void share(root, letter(desk()).text),
    anew: () => {
      written.delete(key(desk().guide.id));
      redraw();
    },
  });
}

/** @param {HTMLElement} root @param {string} text */
async function copy(root, text) {
  try {
    await navigator.clipboard.writeText(text);
    showSaid(root, "Copied.");
  } catch {
    markText(root);
  }
}

/** @param {HTMLElement} root @param {string} text */
async function share(root, text) {
  try {
    await navigator.share({ text });
    showSaid(root, "Handed on.");
  } catch (error) {
    const { name } = /** @type {Error} */ (error);
    showSaid(root, name === "AbortError" ? "It was not shared." : CANNOT_SHARE);
  }
}
