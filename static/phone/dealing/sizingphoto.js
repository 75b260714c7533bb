/** The photo to measure in: taken or chosen, made upright and small, and never kept. */

import { book } from "../log/book.js";
import { takePhoto } from "../log/photo.js";
import { attempt } from "../kept/sentence.js";
import { listen, slot } from "../view/dom.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/photo.js").Photo} Photo */

/** The setting that says for what the camera was opened. */
const AWAITED = "sizing";
const WORKING = "Working on the photo…";

/**
 * Listens to the ways to a photo.
 * @param {HTMLElement} root
 * @param {App} app
 * @param {object} on
 * @param {() => string} on.name what it is to measure
 * @param {(sentence: string) => void} on.say
 * @param {() => (photo: Photo) => void} on.taking what to do with the photo that is about
 *   to be made
 */
export function startPhoto(root, app, { name, say, taking }) {
  listen(root, {
    camera: () => void openCamera(root, app, name()),
    gallery: () => slot(root, "from-gallery").click(),
  });
  root.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== "file") return;
    const [file] = target.files ?? [];
    target.value = "";
    awaitNoMore().catch(app.failed);
    if (!file) return;
    const taken = taking();
    say(WORKING);
    void attempt(async () => taken(await takePhoto(file)), say, app.failed);
  });
  // The camera was closed without a photo.
  root.addEventListener("cancel", () => awaitNoMore().catch(app.failed));
  sayMissed(app).catch(app.failed);
}

/**
 * The phone may end this page while its camera is open; that a photo was meant is on the
 * disk before. Where nothing can be stored, the camera opens all the same.
 * @param {HTMLElement} root @param {App} app @param {string} name
 */
async function openCamera(root, app, name) {
  await book.set(AWAITED, { name }).catch(app.failed);
  slot(root, "from-camera").click();
}

const awaitNoMore = () => book.set(AWAITED, null);

/** The page was ended while its camera was open. @param {App} app */
async function sayMissed(app) {
  const awaited = /** @type {any} */ (await book.setting(AWAITED));
  if (typeof awaited?.name !== "string") return;
  app.say(
    `The phone closed this page while its camera was open, so the photo to measure the ` +
      `${awaited.name} did not arrive. What was read before is kept. Take it again, or choose ` +
      "it, if the phone has saved it.",
  );
  await awaitNoMore();
}
