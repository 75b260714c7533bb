/**
 * On Home, a find that lies open and is kept in the log: that starting anew loses nothing.
 */

import { drawKept } from "../view/finds.js";
import { screenOf } from "../view/dom.js";
import { counted } from "../view/reading.js";
import { lying } from "./open.js";

/** @param {import("../kept.js").App} app */
export function startOpenKept(app) {
  const home = screenOf("home");
  const tell = (/** @type {ParentNode} */ among) => {
    for (const draft of among.querySelectorAll(".draft")) {
      if (draft instanceof HTMLElement) tellKept(draft).catch(app.failed);
    }
  };
  // Home draws its drafts anew without asking who has looked at them.
  const watching = new MutationObserver((changes) => {
    for (const { target, addedNodes } of changes) {
      if (addedNodes.length && target instanceof HTMLElement && "draft" in target.dataset) tell(target);
    }
  });
  watching.observe(home, { childList: true, subtree: true });
  tell(home);
}

/** @param {HTMLElement} draft */
async function tellKept(draft) {
  const guide = draft.querySelector("[data-guide]")?.getAttribute("data-guide") ?? "";
  const { entry } = await lying(guide).catch((error) => {
    // Where nothing can be read, Home says so beside the count of finds.
    if (error.name !== "StoreError") throw error;
    return { entry: undefined };
  });
  if (entry) drawKept(draft, { many: counted(entry.find.items), say: entry.verdict.say });
}
