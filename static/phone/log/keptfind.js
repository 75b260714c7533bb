/**
 * A find from whatever the log holds, built anew: the shape alone is looked at, for the
 * guide may be another one today. Pure.
 */

import * as take from "./fields.js";

/** @typedef {import("../engine/find.js").Claim} Claim */
/** @typedef {import("../engine/find.js").Find} Find */
/** @typedef {import("../engine/find.js").Item} Item */
/** @typedef {import("../engine/find.js").Reading} Reading */

const ITEMS = 100;
const IDS = 500;

/**
 * The find, if it belongs to the guide.
 * @param {unknown} json
 * @param {string} guide
 * @returns {Find}
 */
export function kept(json, guide) {
  const of = take.table(json, "find's readings");
  const own = take.id(of("guide"), "guide of the readings");
  if (own !== guide) take.refuse(own, "guide of the readings", `"${guide}" is needed`);
  const items = take.list(of("items"), "items", item, ITEMS);
  assertTold(items);
  return { guide, items, claim: take.maybe(claim)(of("claim"), "claim") };
}

/** @param {unknown} json @param {string} what @returns {Item} */
function item(json, what) {
  const of = take.table(json, what);
  const readings = take.list(of("readings"), "readings", pair, IDS);
  take.assertApart(readings.map(([clue]) => clue), "clue");
  return {
    member: take.maybe(take.short)(of("member"), "member"),
    readings,
    gone: take.list(of("gone") ?? [], "parts that are gone", take.id, IDS),
  };
}

/** One object, or several that can be told apart. @param {readonly Item[]} items */
function assertTold(items) {
  if (items.length === 0) take.refuse(items, "items", "one at least is needed");
  if (items.length === 1) return;
  const members = items.map(({ member }) => member);
  if (members.includes(null)) take.refuse(null, "member", "each item of a set names its own");
  take.assertApart(members, "member");
}

/** @param {unknown} json @returns {readonly [string, Reading]} */
function pair(json) {
  const [clue, read] = take.list(json, "reading", (each) => each, 2);
  return [take.id(clue, "clue"), reading(read)];
}

/** @param {unknown} value @returns {Reading} */
function reading(value) {
  if (value === null) return null;
  if (typeof value === "number") return take.number(value, "reading");
  if (typeof value === "string") return take.short(value, "reading");
  const of = take.table(value, "reading");
  return {
    value: take.number(of("value"), "measure"),
    error: take.number(of("error"), "measure's error", 0),
  };
}

/** @param {unknown} json @param {string} what @returns {Claim} */
function claim(json, what) {
  const of = take.table(json, what);
  return {
    model_year: take.whole(of("model_year"), "model year claimed"),
    cites: take.list(of("cites") ?? [], "clues cited", take.id, IDS),
  };
}
