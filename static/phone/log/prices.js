/**
 * A person's own prices for a guide: their shape, from whatever lies in a setting or a
 * file, built anew from known fields alone. Pure.
 */

import * as take from "./fields.js";

/** @typedef {import("../engine/guide.js").Off} Off */
/** @typedef {import("../engine/guide.js").PartPrice} PartPrice */
/** @typedef {import("../engine/guide.js").Prices} Prices */
/** @typedef {import("../engine/guide.js").SetPrices} SetPrices */
/** @typedef {Prices & {changed: string}} OwnPrices With the time of the last change. */

const YEARS = 1000;
const NAMES = 500;

/** The setting that holds the prices for a guide. @param {string} guide */
export const pricesKey = (guide) => `prices/${guide}`;

/**
 * The prices, or a RecordError that says why they are none.
 * @param {unknown} json
 * @returns {OwnPrices}
 */
export function prices(json) {
  const of = take.table(json, "table of prices");
  return {
    changed: take.time(of("changed"), "time of the prices"),
    currency: take.currency(of("currency"), "currency"),
    date: take.day(of("date"), "date of the prices"),
    source: take.text(of("source"), "source of the prices"),
    worth: worths(of("worth")),
    other: take.price(of("other"), "price of any other year"),
    condition: grades(of("condition")),
    parts: parts(of("parts")),
    set: take.maybe(set)(of("set"), "table of prices for a set"),
  };
}

/** @param {unknown} json @param {string} what @returns {SetPrices} */
function set(json, what) {
  const of = take.table(json, what);
  return {
    worth: worths(of("worth")),
    other: take.price(of("other"), "price of any other set"),
    missing: off(of("missing"), "what a missing member takes off"),
    stray: off(of("stray"), "what a stray takes off"),
  };
}

/** @param {unknown} json @returns {(readonly [number, number])[]} */
function worths(json) {
  const found = take.list(json, "prices of model years", worth, YEARS);
  take.assertApart(found.map(([year]) => year), "model year");
  return found;
}

/** @param {unknown} json @param {string} what @returns {readonly [number, number]} */
function worth(json, what) {
  const [year, price] = pair(json, what);
  return [take.whole(year, "model year"), take.price(price, "price of a model year")];
}

/** @param {unknown} json @returns {(readonly [string, Off])[]} */
function grades(json) {
  const found = take.list(json, "grades of condition", grade, NAMES);
  take.assertApart(found.map(([name]) => name), "grade of condition");
  return found;
}

/** @param {unknown} json @param {string} what @returns {readonly [string, Off]} */
function grade(json, what) {
  const [name, taken] = pair(json, what);
  return [take.short(name, "grade of condition"), off(taken, "what a grade takes off")];
}

/** @param {unknown} json @returns {PartPrice[]} */
function parts(json) {
  const found = take.list(json, "prices of parts", part, NAMES);
  take.assertApart(found.map((each) => each.part), "part");
  return found;
}

/** @param {unknown} json @param {string} what @returns {PartPrice} */
function part(json, what) {
  const of = take.table(json, what);
  return {
    part: take.id(of("part"), "part"),
    off: off(of("off"), "what a part takes off"),
    put_right: take.maybe(take.price)(of("put_right"), "cost of putting a part right"),
  };
}

/** @param {unknown} json @param {string} what @returns {Off} */
function off(json, what) {
  const of = take.table(json, what);
  return { amount: take.price(of("amount"), what), share: take.share(of("share"), what) };
}

/** What is missing from it, its half refuses. @param {unknown} json @param {string} what */
function pair(json, what) {
  return take.list(json, what, (each) => each, 2);
}
