// What a file of finds carries beside them: the person's own prices and wants. They are
// written a row a line, and read back row by row, each built anew or refused. Pure.

import * as take from "./fields.js";
import { TransferError } from "./json.js";
import { prices } from "./prices.js";
import { MOST_WANTS, want } from "./wants.js";
import { isTable } from "./written.js";

/** @typedef {import("./wants.js").Want} Want */
/** @typedef {import("./prices.js").OwnPrices & {guide: string}} GuidePrices */
/** @typedef {{prices: readonly GuidePrices[], wants: readonly Want[]}} Owned */
/** @typedef {"prices" | "wants"} Kind */
/**
 * A row that cannot be taken; `name` is the guide that it is for, as far as it says so.
 * @typedef {{kind: Kind, name: string, why: string}} RefusedRow
 */
/** @typedef {Owned & {refused: RefusedRow[]}} OwnedRead */

/** @type {Owned} */
export const NOTHING = Object.freeze({ prices: [], wants: [] });
const MOST_PRICES = 200;
const SHOWN = 60;
const TWICE = "Another row in this file is for the same.";

/** What makes each kind of rows, how many there may be, and what tells them apart. */
const KINDS = {
  prices: { one: guidePrices, most: MOST_PRICES, key: keyOfPrices },
  wants: { one: want, most: MOST_WANTS, key: keyOfWant },
};

/** Prices are one's own for a guide. @param {{guide: string}} row */
export function keyOfPrices({ guide }) {
  return guide;
}

/** @param {{id: string}} row */
export function keyOfWant({ id }) {
  return id;
}

/** @param {Owned} own */
export const isNothing = ({ prices, wants }) => prices.length + wants.length === 0;

/** As it stands in a file behind the finds; nothing where there is nothing. @param {Owned} own */
export function ownedText(own) {
  if (isNothing(own)) return "";
  const rows = (/** @type {readonly unknown[]} */ all) =>
    `[\n${all.map((row) => JSON.stringify(row)).join(",\n")}\n]`;
  return `,"own":{"prices":${rows(own.prices)},"wants":${rows(own.wants)}}`;
}

/**
 * The rows of a file; a file without them has none.
 * @param {unknown} json
 * @returns {OwnedRead}
 */
export function owned(json) {
  if (json === undefined) return { ...NOTHING, refused: [] };
  if (!isTable(json)) throw new TransferError("The prices and wants in this file are no table.");
  const [priced, wanted] = [rowsOf(json, "prices"), rowsOf(json, "wants")];
  return {
    prices: /** @type {GuidePrices[]} */ (priced.taken),
    wants: /** @type {Want[]} */ (wanted.taken),
    refused: [...priced.refused, ...wanted.refused],
  };
}

/** @param {import("./written.js").Table} json @param {Kind} kind */
function rowsOf(json, kind) {
  const { one, most, key } = KINDS[kind];
  const rows = json[kind] ?? [];
  if (!Array.isArray(rows)) throw new TransferError(`The ${kind} in this file are no list.`);
  if (rows.length > most) {
    throw new TransferError(
      `This file holds ${rows.length} ${kind}; at most ${most} can be read.`,
    );
  }
  /** @type {any[]} */
  const read = [];
  /** @type {RefusedRow[]} */
  const refused = [];
  for (const row of rows) {
    try {
      read.push(one(row));
    } catch (error) {
      if (!(error instanceof take.RecordError)) throw error;
      refused.push({ kind, name: nameOf(row), why: error.message });
    }
  }
  const keys = read.map(key);
  // Which of several is right cannot be known.
  const [once, twice] = [true, false].map((wanted) =>
    read.filter((row) => (keys.indexOf(key(row)) === keys.lastIndexOf(key(row))) === wanted),
  );
  const whys = twice.map((row) => ({ kind, name: nameOf(row), why: TWICE }));
  return { taken: once, refused: [...refused, ...whys] };
}

/** What a person may know a refused row by. @param {unknown} row */
export function nameOf(row) {
  const { guide } = isTable(row) ? row : {};
  return typeof guide === "string" ? guide.slice(0, SHOWN) : "";
}

/** @param {unknown} json @returns {GuidePrices} */
function guidePrices(json) {
  const of = take.table(json, "table of prices");
  return { guide: take.id(of("guide"), "guide of the prices"), ...prices(json) };
}
