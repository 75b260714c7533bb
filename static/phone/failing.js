/** Sentences over the page, and what is said of an error that nobody foresaw. */

import { notify } from "./view/banner.js";
import { at } from "./view/dom.js";

/** Errors whose message is a whole sentence for the user. */
const SPOKEN = ["DraftError", "ShelfError", "StoreError"];

/** What was said of the store; each of its sentences is said once. @type {Set<string>} */
const told = new Set();

/** @param {string} sentence */
export function say(sentence) {
  notify(at("[data-banner]"), sentence);
}

/** @param {Error} error */
export function failed(error) {
  if (error?.name === "StoreError" && told.has(error.message)) return;
  told.add(error?.message);
  if (SPOKEN.includes(error?.name)) return say(error.message);
  const reason = error?.message ?? "no reason was given";
  say(
    `Something went wrong here (${reason}). Your readings are kept. ` +
      "If it does not go on, close the app and open it again.",
  );
}
