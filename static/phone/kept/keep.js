/**
 * Keeping what lies open: as a new entry of the log, or in place of what was kept of the
 * same find before, so that there are no doubles.
 */

import { book, newId } from "../log/book.js";
import { askToLast } from "../log/lasting.js";
import { made } from "../log/record.js";
import { toEntry } from "../routes.js";
import { listen, screenOf } from "../view/dom.js";
import { allowKeeping, showKept } from "../view/keep.js";
import { dealOf } from "./dealt.js";
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
}

/** @param {Desk} desk @param {App} app */
async function keepAndShow(desk, app) {
  const known = await inLog(desk);
  const { id } = known ? await broughtUp(known, desk) : await added(desk);
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
async function inLog(desk) {
  const id = await entryOf(desk);
  const { entries } = await book.list();
  return entries.some((entry) => entry.id === id) ? id : null;
}
