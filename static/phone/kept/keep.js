/**
 * Keeping what lies open: as a new entry of the log, or in place of what was kept of the
 * same find before, so that there are no doubles.
 */

import { book, newId } from "../log/book.js";
import { askToLast } from "../log/lasting.js";
import { made } from "../log/record.js";
import { toEntry } from "../routes.js";
import { listen, screenOf } from "../view/dom.js";
import { allowKeeping, showKept, showKeptAs } from "../view/keep.js";
import { dealOf } from "./dealt.js";
import { guidesOf } from "./guides.js";
import { begunAnew, entryOf, remember } from "./open.js";
import { sayNext } from "./said.js";
import { attempt } from "./sentence.js";
import { today } from "./today.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../kept.js").App} App */

const NEW = "It is in your finds now. What you add here is saved as you go.";
const AGAIN = "It was in your finds already, and is brought up to date.";

/** Listens for what keeps a find, and for what begins another. @param {App} app */
export function startKeep(app) {
  const verdict = screenOf("verdict");
  let busy = false;
  listen(verdict, {
    keep: () => {
      const desk = app.desk();
      if (!desk || busy) return;
      busy = true;
      // A browser that asks the person wants to see the tap that it is for.
      askToLast();
      const tell = (/** @type {string} */ why) => showKept(verdict, why);
      attempt(() => keepAndShow(desk, app), tell, app.failed).finally(() => (busy = false));
    },
  });
  listen(screenOf("home"), { start: ({ guide = "" }) => void begunAnew(guide).catch(app.failed) });
  allowKeeping(verdict);
  app.onVerdict((root, desk) => void tellKept(root, desk, app).catch(app.failed));
}

/**
 * Says under a verdict that its find is in the log already.
 * @param {HTMLElement} root @param {Desk} desk @param {App} app
 */
async function tellKept(root, desk, app) {
  const entry = await entryInLog(desk).catch((error) => {
    // Where nothing can be read, the tap that would keep it says why.
    if (error.name !== "StoreError") throw error;
  });
  // Another may lie open meanwhile.
  if (!entry || app.desk()?.session !== desk.session) return;
  showKeptAs(root, { name: guidesOf(app).named(entry), href: toEntry(entry.id) });
}

/** @param {Desk} desk @param {App} app */
async function keepAndShow(desk, app) {
  const known = await entryInLog(desk);
  const { id } = known ? await broughtUp(known.id, desk) : await added(desk);
  remember(desk, id).catch(app.failed);
  sayNext(known ? AGAIN : NEW);
  location.hash = toEntry(id);
}

/** @param {Desk} desk */
async function added(desk) {
  const { asked, currency } = await dealOf(desk);
  const own = { date: today(), asked, currency: (asked !== null && currency) || (await lastCurrency()) };
  return book.add(made(desk, { id: newId(), now: new Date().toISOString() }, own));
}

/** The entry with today's verdict, and the price that was asked since. @param {string} id @param {Desk} desk */
async function broughtUp(id, desk) {
  const entry = await book.judgeAgain(id, desk);
  const { asked, currency } = await dealOf(desk);
  const isOther = entry.currency && entry.currency !== currency;
  // A price that stands in the entry was written there by hand.
  if (asked === null || entry.asked !== null || isOther) return entry;
  return book.change(id, { asked, currency });
}

/** Whoever buys here buys in the currency of the last time. */
export async function lastCurrency() {
  const { entries } = await book.list();
  const told = entries.filter(({ currency }) => currency);
  const latest = told.reduce((one, other) => (other.changed > one.changed ? other : one), told[0]);
  return latest?.currency ?? "";
}

/** The entry that the open find was kept as, if it is in the log still. @param {Desk} desk */
async function entryInLog(desk) {
  const id = await entryOf(desk);
  const { entries } = await book.list();
  return entries.find((entry) => entry.id === id);
}
