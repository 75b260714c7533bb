/** The offer: what is asked and what it is worth to the person, and what follows from it. */

import { UNDEALT, dealOf, noteDeal } from "../kept/dealt.js";
import { lastCurrency } from "../kept/keep.js";
import { attempt, sentence } from "../kept/sentence.js";
import { prices as takenPrices } from "../log/prices.js";
import { loadWants } from "../log/wantsbook.js";
import { route } from "../routes.js";
import { listen } from "../view/dom.js";
import { fillOwn, showTaken, showWrong, unsaved } from "../view/entryown.js";
import * as view from "../view/offer.js";
import { drawDeal, drawPrices, fillPrices, forgetWrong, markWrong, openPrices } from "../view/offerfields.js";
import { wantedLimit } from "../view/wantssay.js";
import { FIELDS, isHabit, NO_HABITS } from "./dealsfields.js";
import { left, untilDone } from "./left.js";
import { answer, leaveAnswer } from "./offeranswer.js";
import { askedIn, begun, check, pricesOf, standing, termsOf } from "./offershown.js";
import { readAt, trouble, withTyped } from "./offertyped.js";
import { gradesOf, lost } from "./prices.js";
import { habits, keepHabits, keepPrices, ownPrices } from "./pricesbook.js";
import { sections } from "./pricesfields.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/prices.js").OwnPrices} OwnPrices */
/** @typedef {import("../view/entryown.js").Control} Control */
/** @typedef {import("./offershown.js").Shown} Shown */

/** @type {Shown | null} */
let shown = null;
/** So long nobody types on before it is answered; a set takes its time. */
const PAUSE = 300;
const SET_PAUSE = 800;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let typing;
/** Changes are made one after the other, each to what the one before has left. */
let turn = Promise.resolve();

/** @param {HTMLElement} root @param {App} app */
export function startOffer(root, app) {
  root.addEventListener("input", ({ target }) => {
    const control = /** @type {Control} */ (target);
    if (control.dataset.own) soon(() => preview(root, control));
  });
  root.addEventListener("change", ({ target }) => {
    const control = /** @type {Control} */ (target);
    if (control.dataset.own) take(root, app, control);
  });
  listen(root, {
    "to-prices": () => openPrices(root),
    "reset-prices": () => inTurn(root, app, (now) => changeAll(root, now, null, true)),
    "undo-prices": () =>
      inTurn(root, app, (now) => changeAll(root, now, now.before?.own ?? null, false)),
  });
  window.addEventListener("hashchange", () => {
    if (isHere()) return;
    takeTyped(root, app);
    clearTimeout(typing);
    leaveAnswer();
  });
  window.addEventListener("pagehide", () => takeTyped(root, app));
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) return takeTyped(root, app);
    // Another page may have changed the prices.
    if (isHere()) app.redraw();
  });
}

/** @param {HTMLElement} root @param {import("../routes.js").Route} wanted @param {App} app */
export function drawOffer(root, wanted, app) {
  const desk = /** @type {Desk} */ (app.desk());
  const guide = `${desk.guide.id} ${desk.stamp}`;
  if (shown?.guide !== guide) {
    shown = begun(guide, desk);
    root.replaceChildren(view.frame());
  }
  shown.desk = desk;
  inTurn(root, app, (now) => load(root, app, now));
}

const isHere = () => route(location.hash).screen === "offer";

/**
 * Does it once what came before is done, to what is shown then as it is now.
 * @param {HTMLElement} root @param {App} app @param {(now: Shown) => Promise<void>} work
 */
function inTurn(root, app, work) {
  const now = /** @type {Shown} */ (shown);
  const say = (/** @type {string} */ why) => view.sayIn(root, why);
  turn = turn.then(() => attempt(() => work(now), say, app.failed));
  return turn;
}

/** Reads what is kept, and fills the screen. @param {HTMLElement} root @param {App} app @param {Shown} now */
async function load(root, app, now) {
  const { desk } = now;
  const { guide } = desk;
  const { own, unread } = await orElse(root, ownPrices(guide.id), now);
  const dealt = await orElse(root, dealOf(desk), UNDEALT);
  const mine = await orElse(root, habits(), NO_HABITS);
  const currency = await orElse(root, lastCurrency(), now.currency);
  const wants = await orElse(root, loadWants().then((kept) => kept.wants), [...now.wants]);
  if (shown !== now || now.desk !== desk) return;
  Object.assign(now, { own, unread, currency, wants });
  now.deal = { ...mine, condition: dealt.condition, costs: dealt.costs, asked: askedIn(now, dealt) };
  const isNew = !now.deals.size;
  if (isNew) drawFields(root, now);
  fill(root, now);
  if (isNew) takeLeft(root, app, now);
}

/** Takes what a page before this one could not keep in time. @param {HTMLElement} root @param {App} app @param {Shown} now */
function takeLeft(root, app, now) {
  const ofFind = (/** @type {string} */ key) => now.deals.has(key) && !isHabit(key);
  for (const [key, typed] of left(now.desk, ofFind)) {
    const control = root.querySelector(`[data-own="${CSS.escape(key)}"]`);
    if (!control) continue;
    /** @type {Control} */ (control).value = typed;
    take(root, app, /** @type {Control} */ (control));
  }
}

/**
 * What is read, or something else in its place with the reason said.
 * @template T @param {HTMLElement} root @param {Promise<T>} reading @param {T} instead
 */
function orElse(root, reading, instead) {
  return reading.catch((error) => {
    view.sayIn(root, sentence(error));
    return instead;
  });
}

/** @param {HTMLElement} root @param {Shown} now */
function drawFields(root, now) {
  const { guide } = now.desk;
  const grades = gradesOf(guide, pricesOf(now));
  const fields = FIELDS.filter(({ key }) => key !== "condition" || grades.length > 0);
  const parts = sections(guide, pricesOf(now));
  now.deals = new Map(fields.map((field) => [field.key, field]));
  now.prices = new Map(parts.flatMap((part) => part.fields).map((field) => [field.key, field]));
  drawDeal(root, fields, grades);
  drawPrices(root, parts);
  const { worth, other } = pricesOf(now);
  if (!worth.length && !other) openPrices(root, false);
}

/** Writes all that is known onto the screen. @param {HTMLElement} root @param {Shown} now */
function fill(root, now) {
  if (shown !== now) return;
  const prices = pricesOf(now);
  const { guide } = now.desk;
  view.steady(() => {
    fillOwn(root, (key) => standing(now, key));
    fillPrices(root, {
      guide,
      own: now.own,
      unread: now.unread,
      lost: lost(guide, prices),
      undo: now.before !== null,
      differ: [...now.prices.values()].filter((each) => each.get(prices) === undefined).map(({ key }) => key),
    });
  });
  reply(root, now);
}

/**
 * Answers to what is kept and to what is being typed; not as long as any of it cannot be
 * read.
 * @param {HTMLElement} root @param {Shown} now
 */
function reply(root, now) {
  const [wrong] = now.wrong;
  if (wrong !== undefined) {
    leaveAnswer();
    return view.steady(() => view.fillTrouble(root, trouble(now, wrong)));
  }
  const terms = unsaved(root).reduce(
    (made, { dataset, value }) => withTyped(now, dataset.own ?? "", value, made),
    termsOf(now),
  );
  const { asked } = terms.deal;
  const limit = wantedLimit(now.desk, now.wants, { asked, currency: terms.prices.currency });
  answer(now.desk, terms, (found) =>
    view.steady(() => view.fillAnswer(root, found, { asked, limit })),
  );
}

/** Does it once nobody types on. @param {() => void} work */
function soon(work) {
  clearTimeout(typing);
  const isSet = /** @type {Shown} */ (shown).desk.find.items.length > 1;
  typing = setTimeout(work, isSet ? SET_PAUSE : PAUSE);
}

/** Answers to what stands in a field before it is left. @param {HTMLElement} root @param {Control} control */
function preview(root, control) {
  const now = /** @type {Shown} */ (shown);
  markWrong(root, control, check(now, control));
  reply(root, now);
}

/**
 * Takes what stands in a field, or says beside it what is wrong.
 * @param {HTMLElement} root @param {App} app @param {Control} control
 */
function take(root, app, control) {
  const { own: key = "" } = control.dataset;
  const here = /** @type {Shown} */ (shown);
  const typed = control.value;
  clearTimeout(typing);
  const wrong = check(here, control);
  showWrong(root, control, wrong);
  if (wrong) return reply(root, here);
  // Until it is taken in its turn, nothing else may be written there.
  control.defaultValue = typed;
  const { value } = readAt(here, key, typed, termsOf(here));
  const done = inTurn(root, app, async (now) => {
    const deal = now.deals.get(key);
    if (deal) await changeDeal(root, now, deal, value);
    else await changePrices(root, now, /** @type {any} */ (now.prices.get(key)), value);
    if (control.value === typed) showTaken(control, standing(now, key));
  });
  untilDone(here.desk, key, typed, done);
}

/** Takes what no tap elsewhere has ended yet. @param {HTMLElement} root @param {App} app */
function takeTyped(root, app) {
  if (!shown) return;
  for (const control of unsaved(root)) take(root, app, control);
}

/**
 * @param {HTMLElement} root @param {Shown} now
 * @param {import("./dealsfields.js").Field} field @param {any} value
 */
async function changeDeal(root, now, field, value) {
  now.deal = field.put(now.deal, value);
  fill(root, now);
  view.sayIn(root, "");
  await (isHabit(field.key) ? keepHabits(now.deal) : note(now));
}

/** Notes the deal with the find that lies open. @param {Shown} now */
function note(now) {
  const { asked, condition, costs } = now.deal;
  return noteDeal(now.desk, { asked, condition, costs, currency: pricesOf(now).currency });
}

/**
 * @param {HTMLElement} root @param {Shown} now
 * @param {import("./pricesfields.js").Field} field @param {any} value
 */
async function changePrices(root, now, field, value) {
  // Another page may have changed others of them; without a storage these are the last.
  const { own, unread } = await orElse(root, ownPrices(now.desk.guide.id), now);
  Object.assign(now, { own, unread });
  const next = field.put(pricesOf(now), value);
  const changed = new Date().toISOString();
  // From now on they are the person's own, whatever they began with.
  await change(root, now, takenPrices({ ...next, date: "", source: "", changed }), Boolean(field.all));
  if (field.key === "currency" && now.deal.asked !== null) await note(now);
}

/**
 * All prices anew, whatever stood there and could not be read.
 * @param {HTMLElement} root @param {Shown} now
 * @param {OwnPrices | null} own
 * @param {boolean} many
 */
function changeAll(root, now, own, many) {
  const refused = [...now.wrong].filter((key) => now.prices.has(key));
  forgetWrong(root, refused);
  for (const key of refused) now.wrong.delete(key);
  return change(root, now, own, many);
}

/**
 * Other prices count from now on, or the guide's again.
 * @param {HTMLElement} root @param {Shown} now
 * @param {OwnPrices | null} own
 * @param {boolean} many whether it is a change to be taken back in one go
 */
async function change(root, now, own, many) {
  now.before = many ? { own: now.own } : null;
  now.own = own;
  fill(root, now);
  view.sayIn(root, "");
  await keepPrices(now.desk.guide.id, own);
  now.unread = "";
  fill(root, now);
}
