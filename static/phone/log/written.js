// A find and an entry as they stand in a file (rules/README.md, "A find"), and back.
// Pure. What comes back is still to be held against entry.js.

import { TransferError } from "./json.js";

/** @typedef {import("../engine/find.js").Find} Find */
/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {Readonly<Record<string, unknown>>} Table */

const FORMAT = 1;

/**
 * The find as a file has it: readings as a table, what is unknown left out.
 * @param {Find} find
 */
export function writtenFind({ guide, items, claim }) {
  return {
    format: FORMAT,
    guide,
    items: items.map(({ member, readings, gone }) => ({
      ...(member === null ? {} : { member }),
      readings: Object.fromEntries(readings),
      gone,
    })),
    ...(claim ? { claim } : {}),
  };
}

/** The entry as a file has it. @param {Entry} entry */
export function writtenEntry(entry) {
  return { ...entry, find: writtenFind(entry.find) };
}

/**
 * What a file has for an entry, with its find as the log holds one; anything else comes
 * back as it is.
 * @param {unknown} json
 */
export function unwritten(json) {
  if (!isTable(json) || !isTable(json.find)) return json;
  const { format, items, ...find } = json.find;
  if (format !== FORMAT) {
    const said = typeof format === "number" ? `format ${format}` : "no format";
    throw new TransferError(`What was read is of ${said}; this version reads ${FORMAT}.`);
  }
  return { ...json, find: { ...find, items: Array.isArray(items) ? items.map(item) : items } };
}

/** @param {unknown} json */
function item(json) {
  if (!isTable(json)) return json;
  const { readings = {}, ...rest } = json;
  return { ...rest, readings: isTable(readings) ? Object.entries(readings) : readings };
}

/** @param {unknown} json @returns {json is Table} */
export const isTable = (json) =>
  typeof json === "object" && json !== null && !Array.isArray(json);
