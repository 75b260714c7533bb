/** What the page does by itself, whatever is shown: its notices, its folds, its way past the head. */

import { dismiss } from "./view/banner.js";
import { at, listen, revealOpened } from "./view/dom.js";

/** Listens from then on. */
export function startPage() {
  listen(at("[data-banner]"), { close: (_, event) => dismiss(at("[data-banner]"), event) });
  revealOpened(at("main"));
  at("[data-skip]").addEventListener("click", (event) => {
    // Its address would be taken for a screen.
    event.preventDefault();
    at("#main").focus();
  });
}
