// The log as a table for spreadsheets (RFC 4180): UTF-8 with its mark, so that they know
// the letters, and text that stays text. Pure.

import { nameOf } from "./title.js";

/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("../engine/find.js").Item} Item */
/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {string | number | null} Cell */
/** @typedef {(guide: string) => string} Titles */

const MARK = "\uFEFF";
const LINE = "\r\n";
/** What a spreadsheet may take for the beginning of a formula, in full width too. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;
const SPECIAL = /[",\r\n]/;

/** What each column is called, and what stands in it. */
/** @type {readonly (readonly [string, (entry: Entry, titles: Titles) => Cell])[]} */
const COLUMNS = [
  ["date", ({ date }) => date],
  ["title", (entry, titles) => nameOf(entry, titles(entry.guide))],
  ["guide", ({ guide }) => guide],
  ["verdict", ({ verdict }) => verdict.say],
  ["model year", ({ verdict }) => verdict.leading],
  ["probability", ({ verdict }) => verdict.probability],
  ["red flags", ({ verdict }) => verdict.flags.join(" ")],
  ["claimed", ({ find }) => find.claim && find.claim.model_year],
  ["asked", ({ asked }) => asked],
  ["paid", ({ paid }) => paid],
  ["currency", ({ currency }) => currency],
  ["place", ({ place }) => place],
  ["note", ({ note }) => note],
  ["readings", ({ find }) => find.items.map(itemText).join("; ")],
  ["photos", ({ photos }) => photos.length],
  ["judged", ({ judged }) => judged],
  ["guide of", ({ version }) => version.updated],
  ["id", ({ id }) => id],
];

/**
 * The entries as a CSV text, in their order.
 * @param {readonly Entry[]} entries
 * @param {Titles} [titles] what a guide is called, by its id
 */
export function table(entries, titles = (guide) => guide) {
  const heads = COLUMNS.map(([head]) => head);
  const rows = entries.map((entry) => COLUMNS.map(([, cell]) => cell(entry, titles)));
  return MARK + [heads, ...rows].map((row) => row.map(written).join(",") + LINE).join("");
}

/** What was read off one object. @param {Item} item */
function itemText({ member, readings, gone }) {
  const read = readings.map(([clue, reading]) => `${clue}=${readingText(reading)}`);
  const lost = gone.map((part) => `${part} gone`);
  const told = [...read, ...lost].join(", ");
  return member === null ? told : `${member}: ${told}`;
}

/** @param {Reading} reading */
function readingText(reading) {
  if (reading === null) return "?";
  return typeof reading === "object" ? `${reading.value} ± ${reading.error}` : reading;
}

/** @param {Cell} cell */
function written(cell) {
  if (typeof cell !== "string") return String(cell ?? "");
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return SPECIAL.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
