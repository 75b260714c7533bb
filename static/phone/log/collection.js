/**
 * The finds as a list on one page that needs nothing else, for oneself or an insurer.
 * Pure: the same finds, ticks and day give the same text.
 */

import { capital, listed, percent } from "../engine/words.js";
import { day } from "../view/reading.js";
import { STYLE } from "./collectionstyle.js";
import { examine } from "./exif.js";
import { paidIn } from "./reporthead.js";
import { line, list, node, section, table } from "./reportnodes.js";
import { figureOf, withinPage } from "./reportphotos.js";
import { sheet } from "./reportsheet.js";
import { whichSay } from "./which.js";

/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./reportnodes.js").Node} Node */
/** @typedef {import("./reportphotos.js").Source} Source */
/**
 * A find of the list; `photo` is a small one, a bare JPEG file, if there is any.
 * @typedef {object} Row
 * @property {Entry} entry
 * @property {string} name what it is called
 * @property {string} guide what its guide is called
 * @property {boolean} invented
 * @property {Uint8Array<ArrayBuffer> | null} photo
 */
/**
 * @typedef {object} Asked
 * @property {readonly Row[]} rows in their order
 * @property {boolean} place whether the places are told
 * @property {number} left how many photos are not in the list
 * @property {string} today as "2026-11-25"
 */

const TITLE = "My collection";
const CAUTION =
  "This list is its owner’s own. What was paid is not what a thing is worth: it is no " +
  "appraisal, and an insurer may ask for one.";
const ABOUT = [
  "Each verdict is the one of the day when the find was judged: an estimate from what was " +
    "read, not an authentication.",
  "Prices are added up by currency, for no rate of exchange is known here.",
];

/** The list as a file's text. @param {Asked} asked */
export const collection = (asked) =>
  sheet({ title: TITLE, style: STYLE, page: page(asked, withinPage) });

/** The list as nodes, with images where `source` says. @param {Asked} asked @param {Source} source */
export function page(asked, source) {
  const { rows } = asked;
  return node(
    "main",
    { class: "report" },
    node(
      "header",
      {},
      node("h1", {}, TITLE),
      node("p", { class: "estimate" }, CAUTION),
      node("dl", {}, facts(asked).map(fact)),
    ),
    table(
      "finds",
      ["Find", "What it is", "Photo", "Price paid"],
      rows.map((row) => cells(row, asked, source)),
    ),
    section("What this list is", "about", list("says", ABOUT)),
  );
}

/** @param {Asked} asked @returns {[string, string][]} */
function facts({ rows, left, today }) {
  const photos = rows.filter(({ photo }) => photo).length;
  return [
    ["Day of the list", day(today)],
    ["Finds", found(rows)],
    ...objects(rows),
    ["Paid in all", sums(rows.map(({ entry }) => entry)) || "no price is known"],
    ["Photos", left ? `${photos}; ${left} more are left out` : String(photos)],
  ];
}

/** How many things there are, where a find is of several. @param {readonly Row[]} rows @returns {[string, string][]} */
function objects(rows) {
  const count = rows.reduce((sum, { entry }) => sum + entry.find.items.length, 0);
  return count === rows.length ? [] : [["Objects in them", String(count)]];
}

/** @param {readonly Row[]} rows */
function found(rows) {
  const priced = rows.filter(({ entry }) => entry.paid !== null).length;
  return priced === rows.length ? String(priced) : `${rows.length}, ${priced} with a price paid`;
}

/** What was paid by currency, that without any last. @param {readonly Entry[]} entries */
export function sums(entries) {
  /** @type {Map<string, number>} */
  const cents = new Map();
  for (const { paid, currency } of entries) {
    if (paid === null) continue;
    cents.set(currency, (cents.get(currency) ?? 0) + Math.round(100 * paid));
  }
  const known = [...cents.keys()].filter(Boolean).sort();
  const all = cents.has("") ? [...known, ""] : known;
  return listed(
    all.map((currency) => {
      const sum = (cents.get(currency) ?? 0) / 100;
      return paidIn(sum, currency || (known.length ? "without a currency" : ""));
    }),
  );
}

/** @param {[string, string]} fact */
const fact = ([name, text]) =>
  node("div", {}, node("dt", {}, name), node("dd", { dir: "auto" }, text));

/** @param {Row} row @param {Asked} asked @param {Source} source */
function cells({ entry, name, guide, invented, photo }, asked, source) {
  return [
    [
      node("p", { dir: "auto" }, name),
      // Its name says so, where nobody has given it one.
      entry.title.trim() && soft(guide),
      soft(capital(whichSay(entry.find))),
      invented && soft("invented"),
    ],
    [line(told(entry)), soft(entry.date && day(entry.date)), asked.place && soft(entry.place)],
    photo && pictured(photo, name, source),
    entry.paid === null ? "" : paidIn(entry.paid, entry.currency),
  ];
}

/** The verdict at the time, which mostly says itself how sure it is. @param {Entry} entry */
function told({ verdict: { say, probability } }) {
  return `${capital(say)}${say.includes("%") ? "" : `: ${percent(probability)}`}`;
}

/** @param {string} text */
const soft = (text) => text && node("p", { class: "soft", dir: "auto" }, text);

/** @param {Uint8Array<ArrayBuffer>} photo @param {string} name @param {Source} source */
function pictured(photo, name, source) {
  const { width, height } = examine(photo);
  return figureOf({ source: source(photo), width, height }, `Photo of ${name}`);
}
