/** In place of phone/failing.js: the same, where nothing is kept. */

import { notify } from "../phone/view/banner.js";
import { at } from "../phone/view/dom.js";

/** @param {string} sentence */
export function say(sentence) {
  notify(at("[data-banner]"), sentence);
}

/** @param {Error} error */
export function failed(error) {
  if (error?.name === "ShelfError") return say(error.message);
  const reason = error?.message ?? "no reason was given";
  say(
    `Something went wrong here (${reason}). Copy the verdict as text if you need it: ` +
      "if it does not go on, the file has to be opened again, and begins anew.",
  );
}
