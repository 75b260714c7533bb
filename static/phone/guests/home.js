/** The guides that came from files, on Home and on the shelf. */

import { ownText, shelve, ShelfError } from "../shelf.js";
import { at } from "../view/dom.js";
import { cardOf, drawGuest, drawReadyGuests, takeCardOff } from "../view/guestcard.js";
import { stands } from "./adding.js";
import { kept } from "./shelved.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("./shelved.js").Guest} Guest */
/**
 * A guest, and whether it is in use: the app's own may have become the newer one.
 * @typedef {Guest & {used: boolean}} Shown
 */

/** Those that are on Home now. @type {Shown[]} */
let shown = [];

/** What is kept on this phone, as it was shown last. */
export const guests = () => shown;

/**
 * Reads what is kept and shows what has changed.
 * @param {App} app
 */
export async function showGuests(app) {
  const before = shown;
  shown = await Promise.all((await kept()).map(used));
  drawReadyGuests(at("[data-ready]"), shown.length, shown.filter(({ given }) => given).length);
  for (const old of before) if (!shown.some((each) => isSame(each, old))) await takeOff(old, app);
  for (const each of shown) if (!before.some((old) => isSame(each, old))) await putUp(each, app);
}

/** @param {Shown} one @param {Shown} other */
const isSame = (one, other) =>
  one.id === other.id && one.added === other.added && one.used === other.used && one.given?.text === other.given?.text;

/** @param {Guest} guest @returns {Promise<Shown>} */
async function used(guest) {
  if (!guest.given) return { ...guest, used: false };
  return { ...guest, used: stands(guest.given.guide, guest.over, await ownGuide(guest.id)) };
}

/** The guides that came with the app, by id. @param {string} id */
export async function ownGuide(id) {
  if (!owns(id)) return null;
  try {
    return /** @type {import("../shelf.js").Guide} */ (JSON.parse(await ownText(id)));
  } catch (error) {
    // It was never fetched, and there is no signal: it stands in nobody's way.
    if (error instanceof ShelfError) return null;
    throw error;
  }
}

/** @param {Shown} guest @param {App} app */
async function putUp({ id, used, added, given }, app) {
  if (!used || !given) return;
  shelve(id, given.text);
  drawGuest(given.guide, added);
  await app.changed(id, cardOf(given.guide));
}

/** @param {Shown} guest @param {App} app */
async function takeOff({ id, used }, app) {
  if (!used) return;
  shelve(id, null);
  await app.changed(id, takeCardOff(id));
}

/** Ids of the guides that came with the app, learned before any guest is put up. @type {Set<string> | null} */
let own = null;

/** @param {string} id */
const owns = (id) => own?.has(id) ?? false;

/** @param {App} app */
export function learnOwn({ cards }) {
  own ??= new Set(cards.map((card) => card.id));
}

/** Titles of the guides that came with the app, by id. @param {App} app */
export const ownCards = ({ cards }) => cards.filter(({ id }) => owns(id));
