/** The head of a report: what it is, and what the person says of it. Pure. */

import { called, capital } from "../engine/words.js";
import { priced } from "../price.js";
import { runs } from "../view/names.js";
import { day } from "../view/reading.js";
import { summed } from "./record.js";
import { line, node } from "./reportnodes.js";
import { nameOf } from "./title.js";

/** @typedef {import("./report.js").Told} Told */

const INVENTED = "Invented for demonstration: no such object exists.";
const ESTIMATE =
  "This is an estimate from what was read, not an authentication or an appraisal.";

/**
 * What the report is of, by the verdict that it tells.
 * @param {Pick<Told, "entry" | "guide" | "verdict">} told
 */
export const named = ({ entry, guide, verdict }) =>
  nameOf({ ...entry, verdict: summed(verdict) }, guide.title);

/** What it is. @param {Told} told */
export function head(told) {
  const { guide, entry } = told;
  return node(
    "header",
    {},
    guide.fiction && node("p", { class: "invented" }, INVENTED),
    node("h1", { dir: "auto" }, named(told)),
    node("p", { class: "estimate" }, ESTIMATE),
    node("dl", {}, facts(told).map(fact)),
    entry.note && node("p", { class: "note", dir: "auto" }, entry.note),
  );
}

/** @param {Told} told @returns {[string, string][]} those without a text are left out */
function facts({ guide, entry, with: ticked }) {
  const { find, date, place, asked, paid, currency } = entry;
  return [
    ["What", guide.title],
    ["Maker", guide.maker],
    whichOf(guide, find),
    ["Found", date && day(date)],
    ["Place", ticked.place ? place : ""],
    ["Asked", ticked.prices ? paidIn(asked, currency) : ""],
    ["Paid", ticked.prices ? paidIn(paid, currency) : ""],
  ];
}

/** @param {[string, string]} fact */
function fact([name, text]) {
  if (!text) return null;
  return node("div", {}, node("dt", {}, name), node("dd", { dir: "auto" }, text));
}

/**
 * @param {Told["guide"]} guide @param {Told["entry"]["find"]} find
 * @returns {[string, string]}
 */
function whichOf(guide, { items }) {
  const [{ member }] = items;
  if (items.length === 1) return ["Member", member ? capital(called(guide, member)) : ""];
  return ["Set", `${items.length}: ${runs(guide, items.map(({ member }) => member))}`];
}

/**
 * To the hundredth: what was paid is not rounded.
 * @param {number | null} amount @param {string} currency
 */
export function paidIn(amount, currency) {
  return amount === null ? "" : `${priced(amount)} ${currency}`.trim();
}
