/**
 * The entry: Home can be used at once, and what a find needs comes while Home is read.
 * What is needed only then must not be imported from here.
 */

import { startDevice } from "./device.js";
import { failed } from "./failing.js";
import { startPage } from "./page.js";
import { screenOf } from "./view/dom.js";

/** Keeps the find that lies open; until the script of a find is there, none does. */
let keepOpen = async () => {};

async function start() {
  startPage();
  startDevice(screenOf("home"), () => keepOpen()).catch(failed);
  // The page says so itself if a script does not arrive.
  const lost = () => void window.dispatchEvent(new Event("fieldid-lost"));
  const finding = await import("./finding.js").catch(lost);
  if (!finding) return;
  keepOpen = finding.keepOpen;
  await finding.start();
}

window.addEventListener("error", ({ error }) => error && failed(error));
window.addEventListener("unhandledrejection", ({ reason }) => failed(reason));
start().catch(failed);
