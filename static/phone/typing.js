/**
 * What is being typed into the question that is shown: a measure, a code or a number.
 * Pure: an old entry and an event in, a new entry out.
 */

import * as counting from "./counting.js";
import { reading } from "./scope.js";
import * as spelling from "./spelling.js";
import { parse, unfit } from "./view/measure.js";

/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {Exclude<Clue["kind"], {name: "choice"}>} Typed A kind of clue that is typed. */
/** @typedef {import("./engine/find.js").Reading} Reading */
/** @typedef {import("./session.js").Kept} Kept */
/**
 * @typedef {object} Entry
 * @property {string} whose the clue and the places that it is typed for
 * @property {string} typed
 * @property {string} wrong what is wrong with it, once it was to be taken
 * @property {import("./swing.js").Swing} [swing] what a swing weight is worked out from
 */

/** @type {Entry} */
export const NOTHING = Object.freeze({ whose: "", typed: "", wrong: "" });

/**
 * The entry into a question: the same one, or into another what was read of it before.
 * @param {Entry} entry
 * @param {{clue: Clue | null, places: readonly number[]}} question
 * @param {readonly Kept[]} items
 * @returns {Entry}
 */
export function into(entry, { clue, places }, items) {
  const whose = `${clue?.id ?? ""} ${places.join()}`;
  if (entry.whose === whose) return entry;
  const item = items[places[0]];
  const read = (clue && item && reading(item, clue.id)) ?? "";
  // Of a size with an error the size alone is shown; as long as it stays, so does the error.
  return { whose, typed: String(typeof read === "object" ? read.value : read), wrong: "" };
}

/**
 * Whether something was typed into a question and not handed in.
 * @param {Entry} entry
 * @param {{clue: Clue | null, places: readonly number[]}} question
 * @param {readonly Kept[]} items
 */
export function isLeft(entry, question, items) {
  const before = into(NOTHING, question, items);
  return entry.typed !== "" && entry.whose === before.whose && entry.typed !== before.typed;
}

/**
 * The entry after a key; a measure has keys of its own.
 * @param {Entry} entry @param {Clue["kind"]} kind @param {string} key @returns {Entry}
 */
export function pressed(entry, kind, key) {
  if (kind.name === "code") return typing(entry, spelling.press(kind, entry.typed, key));
  if (kind.name !== "number") return entry;
  const typed = counting.press(entry.typed, key);
  // What no further digit can mend is told at once.
  const wrong = counting.isBeyond(kind, typed) ? counting.unfit(kind, typed) : "";
  return { ...entry, typed, wrong };
}

/** The entry with another text. @param {Entry} entry @param {string} typed @returns {Entry} */
export const typing = (entry, typed) => ({ ...entry, typed, wrong: "" });

/**
 * The reading that was typed, or what is wrong with it.
 * @param {Typed} kind @param {string} typed
 * @param {Reading} [before] what stands there already
 * @returns {{wrong: string, reading: Reading}}
 */
export function meant(kind, typed, before) {
  switch (kind.name) {
    case "code":
      return { wrong: spelling.missing(kind, typed), reading: typed };
    case "number":
      return { wrong: counting.unfit(kind, typed), reading: Number(typed) };
    case "measure":
      return { wrong: unfit(kind, typed), reading: sameOr(before, parse(kind, typed)) };
  }
}

/** A size that was left as it stood keeps its error. @param {Reading | undefined} before @param {number | null} size */
const sameOr = (before, size) =>
  before && typeof before === "object" && before.value === size ? before : size;
