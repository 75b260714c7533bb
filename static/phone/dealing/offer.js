/** The offer: what is asked and what it is worth to the person, and what follows from it. */

import { UNDEALT, dealOf, noteDeal } from "../kept/dealt.js";
import { lastCurrency } from "../kept/keep.js";
import { attempt, sentence } from "../kept/sentence.js";
import { prices as takenPrices } from "../log/prices.js";
import { route } from "../routes.js";
import { listen } from "../view/dom.js";
import { fillOwn, showTaken, showWrong, unsaved } from "../view/entryown.js";
import * as view from "../view/offer.js";
import { drawDeal, drawPrices, fillPrices, openPrices } from "../view/offerfields.js";
import { FIELDS, isHabit, NO_HABITS } from "./dealsfields.js";
import { answer, leaveAnswer } from "./offeranswer.js";
import { beginning, gradesOf, lost } from "./prices.js";
import { habits, keepHabits, keepPrices, ownPrices } from "./pricesbook.js";
import { sections } from "./pricesfields.js";
import { read, written } from "./pricestyped.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../engine/deal.js").Deal} Deal */
/** @typedef {import("../engine/guide.js").Prices} Prices */
/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/prices.js").OwnPrices} OwnPrices */
/** @typedef {import("../view/entryown.js").Control} Control */
/**
 * What is shown.
 * @typedef {object} Shown
 * @property {string} guide with its version
 * @property {Desk} desk
 * @property {OwnPrices | null} own
 * @property {string} unread why the person's prices cannot be read
 * @property {string} currency of the last find
 * @property {Deal} deal
 * @property {{own: OwnPrices | null} | null} before what a change of many prices put away
 * @property {Map<string, import("./dealsfields.js").Field>} deals
 * @property {Map<string, import("./pricesfields.js").Field>} prices none until they were read
 */

/** @type {Shown | null} */
let shown = null;
/** Changes are made one after the other, each to what the one before has left. */
let turn = Promise.resolve();

/** @param {HTMLElement} root @param {App} app */
export function startOffer(root, app) {
  root.addEventListener("change", ({ target }) => {
    const control = /** @type {Control} */ (target);
    if (control.dataset.own) take(root, app, control);
  });
  listen(root, {
    "to-prices": () => openPrices(root),
    "reset-prices": () => inTurn(root, app, (now) => change(root, now, null, true)),
    "undo-prices": () =>
      inTurn(root, app, (now) => change(root, now, now.before?.own ?? null, false)),
  });
  window.addEventListener("hashchange", () => {
    if (isHere()) return;
    takeTyped(root, app);
    leaveAnswer();
  });
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
  inTurn(root, app, (now) => load(root, now));
}

/** @param {string} guide @param {Desk} desk @returns {Shown} */
function begun(guide, desk) {
  const deal = { ...UNDEALT, ...NO_HABITS };
  const said = { own: null, unread: "", currency: "", deal, before: null };
  return { guide, desk, ...said, deals: new Map(), prices: new Map() };
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
}

/** Reads what is kept, and fills the screen. @param {HTMLElement} root @param {Shown} now */
async function load(root, now) {
  const { desk } = now;
  const { guide } = desk;
  const { own, unread } = await orElse(root, ownPrices(guide.id), now);
  const dealt = await orElse(root, dealOf(desk), UNDEALT);
  const mine = await orElse(root, habits(), NO_HABITS);
  const currency = await orElse(root, lastCurrency(), now.currency);
  if (shown !== now || now.desk !== desk) return;
  Object.assign(now, { own, unread, currency });
  now.deal = { ...mine, condition: dealt.condition, costs: dealt.costs, asked: askedIn(now, dealt) };
  if (!now.deals.size) drawFields(root, now);
  fill(root, now);
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

/** A price in other money says nothing here. @param {Shown} now @param {import("../kept/dealt.js").Dealt} dealt */
function askedIn(now, { asked, currency }) {
  const own = pricesOf(now).currency;
  return currency && own && currency !== own ? null : asked;
}

/** What counts now: the person's own, or the guide's. @param {Shown} now @returns {Prices} */
const pricesOf = ({ own, desk, currency }) => own ?? beginning(desk.guide, currency);

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
  const { deal } = now;
  answer(now.desk, { prices, deal }, (found) =>
    view.steady(() => view.fillAnswer(root, found, deal.asked)),
  );
}

/** What stands in a field. @param {Shown} now @param {string} key */
function standing(now, key) {
  const deal = now.deals.get(key);
  if (deal) return written(deal.kind, deal.get(now.deal));
  const field = now.prices.get(key);
  return field ? written(field.kind, field.get(pricesOf(now)) ?? null) : "";
}

/**
 * Takes what stands in a field, or says beside it what is wrong.
 * @param {HTMLElement} root @param {App} app @param {Control} control
 */
function take(root, app, control) {
  const { own: key = "" } = control.dataset;
  const { deals, prices } = /** @type {Shown} */ (shown);
  const field = deals.get(key) ?? prices.get(key);
  if (!field) return;
  const typed = control.value;
  const { value, wrong } = read(field.kind, typed);
  showWrong(root, control, wrong);
  if (wrong) return;
  // Until it is taken in its turn, nothing else may be written there.
  control.defaultValue = typed;
  inTurn(root, app, async (now) => {
    const deal = deals.get(key);
    if (deal) await changeDeal(root, now, deal, value);
    else await changePrices(root, now, /** @type {any} */ (field), value);
    if (control.value === typed) showTaken(control, standing(now, key));
  });
}

/** Takes what no tap elsewhere has ended yet. @param {HTMLElement} root @param {App} app */
function takeTyped(root, app) {
  const control = shown && unsaved(root);
  if (control) take(root, app, control);
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
