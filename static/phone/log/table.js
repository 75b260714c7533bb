// The log as a table for spreadsheets (RFC 4180): UTF-8 with its mark, so that they know
// the letters, and text that stays text. Pure.

import { nameOf as clueName, textOf } from "./readingtext.js";
import { nameOf } from "./title.js";
import { leads } from "../view/ribbon.js";

/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("../engine/find.js").Item} Item */
/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {string | number | null} Cell */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {(guide: string) => string} Titles */
/** What is known of an entry's guide, which is null where it is not on this phone. @typedef {{title: string, guide: Guide | null}} Known */

const MARK = "\uFEFF";
const LINE = "\r\n";
/** What a spreadsheet may take for the beginning of a formula, in full width too. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;
const SPECIAL = /[",\r\n]/;
/** So many digits of a share: more say nothing, and a spreadsheet shows them all. */
const DIGITS = 4;

/** What each column is called, and what stands in it. */
/** @type {readonly (readonly [string, (entry: Entry, known: Known) => Cell])[]} */
const COLUMNS = [
  ["date", ({ date }) => date],
  ["title", (entry, { title }) => nameOf(entry, title)],
  ["guide", (_, { title }) => title],
  ["guide id", ({ guide }) => guide],
  ["objects", ({ find }) => find.items.length],
  ["members", ({ find }) => find.items.flatMap(({ member }) => member ?? []).join(", ")],
  ["verdict", ({ verdict }) => verdict.say],
  ["model year", ({ verdict }) => (verdict.range || leads(verdict) ? verdict.leading : null)],
  ["probability", ({ verdict }) => Number(verdict.probability.toFixed(DIGITS))],
  ["red flags", ({ verdict }) => verdict.flags.join(" ")],
  ["claimed", ({ find }) => find.claim && find.claim.model_year],
  ["asked", ({ asked }) => asked],
  ["paid", ({ paid }) => paid],
  ["currency", ({ currency }) => currency],
  ["place", ({ place }) => place],
  ["note", ({ note }) => note],
  ["readings", ({ find }, { guide }) => find.items.map((item) => itemTold(guide, item)).join("\n")],
  ["photos", ({ photos }) => photos.length],
  ["judged", ({ judged }) => judged],
  ["guide of", ({ version }) => version.updated],
  ["id", ({ id }) => id],
  ["reading ids", ({ find }) => find.items.map(itemText).join("; ")],
];

/**
 * The entries as a CSV text, in their order.
 * @param {readonly Entry[]} entries
 * @param {Titles} [titles] what a guide is called, by its id
 * @param {ReadonlyMap<string, Guide>} [guides] those on this phone, by their ids
 */
export function table(entries, titles = (guide) => guide, guides = new Map()) {
  const heads = COLUMNS.map(([head]) => head);
  const rows = entries.map((entry) => {
    const known = { title: titles(entry.guide), guide: guides.get(entry.guide) ?? null };
    return COLUMNS.map(([, cell]) => cell(entry, known));
  });
  return MARK + [heads, ...rows].map((row) => row.map(written).join(",") + LINE).join("");
}

/** What was read off one object, in words. @param {Guide | null} guide @param {Item} item */
function itemTold(guide, { member, readings, gone }) {
  const read = readings.map(
    ([clue, reading]) => `${clueName(guide, clue)}: ${textOf({ guide, clue, reading })}`,
  );
  const lost = gone.map((id) => `${guide?.parts.find((part) => part.id === id)?.name ?? id}: gone`);
  const told = [...read, ...lost].join("; ");
  return member === null ? told : `${member}: ${told}`;
}

/** What was read off one object, by the ids of its guide. @param {Item} item */
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
