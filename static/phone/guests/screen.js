/** Guides from files: what is asked, what is done, and what is said of it. */

import { attempt } from "../kept/sentence.js";
import { today } from "../kept/today.js";
import { ownText } from "../shelf.js";
import { listen } from "../view/dom.js";
import { drawFile, dropFile, sayOut } from "../view/findsout.js";
import { drawAsked, dropAsked, fillGuests, guestsFrame, sayGuests } from "../view/guests.js";
import { plan } from "./adding.js";
import { taken, written } from "./file.js";
import { guests, learnOwn, ownCards, ownGuide, showGuests } from "./home.js";
import { keep, remove } from "./shelved.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("./file.js").Given} Given */

const READING = "Reading the file…";
const LEFT = "Nothing was changed.";
const SAVED = "Look into your downloads: the file should be there now.";
const SHARED = "Handed on.";
const NOT_SHARED = "It was not shared.";
const CANNOT_SHARE = "This phone could not share it. Save it instead.";

/** What is asked about: a guide to add, with what it would stand over, or one to remove. @type {{given: Given, over: string | null} | {id: string} | null} */
let asking = null;
/** The file that is ready to be given. @type {File | null} */
let ready = null;

/** @param {HTMLElement} root @param {App} app */
export function startGuests(root, app) {
  learnOwn(app);
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, (why) => sayGuests(framed(root), why), app.failed);
  root.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== "file") return;
    const [chosen] = target.files ?? [];
    if (chosen) doing(() => read(root, chosen));
    // The same file can be chosen again.
    target.value = "";
  });
  listen(root, {
    "add-guest": () => doing(() => add(root, app)),
    "remove-guest": ({ id = "" }) => askToRemove(root, id),
    "remove-now": () => doing(() => removeNow(root, app)),
    "leave-guest": () => leave(root, LEFT),
    give: ({ id = "", guest }) => doing(() => give(root, id, guest !== undefined)),
    "save-file": () => sayOut(root, SAVED),
    "share-file": () => void share(root),
  });
  window.addEventListener("hashchange", () => {
    if (!root.firstElementChild) return;
    leave(root, "");
    ready = null;
    dropFile(root);
  });
  doing(() => showGuests(app).then(app.redraw));
}

/** The screen, with its frame. @param {HTMLElement} root */
function framed(root) {
  if (!root.firstElementChild) root.append(guestsFrame());
  return root;
}

/**
 * @param {HTMLElement} root
 * @param {import("../routes.js").Route} _
 * @param {App} app
 */
export function drawGuests(root, _, app) {
  fillGuests(framed(root), guests(), ownCards(app));
}

/** @param {HTMLElement} root @param {string} say */
function leave(root, say) {
  asking = null;
  dropAsked(root);
  sayGuests(root, say);
}

/** @param {HTMLElement} root @param {File} chosen */
async function read(root, chosen) {
  leave(root, READING);
  const given = await taken(chosen);
  const { guide } = given;
  const guest = guests().find(({ id }) => id === guide.id)?.given?.guide ?? null;
  const own = await ownGuide(guide.id);
  asking = { given, over: own && own.updated };
  sayGuests(root, "");
  const { says, take } = plan(guide, { guest, own });
  drawAsked(root, { heading: guide.title, says, take, act: "add-guest", leave: "Leave it" });
}

/** @param {HTMLElement} root @param {App} app */
async function add(root, app) {
  if (!asking || !("given" in asking)) return;
  const { given, over } = asking;
  leave(root, "");
  await keep(given, { added: today(), over });
  await showGuests(app);
  app.redraw();
  sayGuests(root, `“${given.guide.title}” was added. It stands on the page of all guides.`);
}

/** @param {HTMLElement} root @param {string} id */
function askToRemove(root, id) {
  const guest = guests().find((each) => each.id === id);
  if (!guest) return;
  leave(root, "");
  asking = { id };
  const says = ["Finds that were made with it stay; without it they cannot be judged anew. Its file can be added again."];
  drawAsked(root, { heading: `Remove “${guest.title}”?`, says, take: "Remove it", act: "remove-now", leave: "Keep it" });
}

/** @param {HTMLElement} root @param {App} app */
async function removeNow(root, app) {
  if (!asking || !("id" in asking)) return;
  const { id } = asking;
  leave(root, "");
  await remove(id);
  await showGuests(app);
  app.redraw();
  sayGuests(root, "It was removed.");
}

/** Makes the file of a guide: one that was added, or the app's own. @param {HTMLElement} root @param {string} id @param {boolean} guest */
async function give(root, id, guest) {
  leave(root, "");
  const added = guest && guests().find((each) => each.id === id)?.given?.text;
  ready = await written(id, added || (await ownText(id)));
  // Which files may be shared is known of the very file alone.
  const shareable = navigator.canShare?.({ files: [ready] }) ?? false;
  drawFile(root, { file: ready, left: [], shareable, printable: false });
}

/** @param {HTMLElement} root */
async function share(root) {
  if (!ready) return;
  try {
    // With a title beside it, some phones share the title alone.
    await navigator.share({ files: [ready] });
  } catch (error) {
    const { name } = /** @type {Error} */ (error);
    return sayOut(root, name === "AbortError" ? NOT_SHARED : CANNOT_SHARE);
  }
  sayOut(root, SHARED);
}
