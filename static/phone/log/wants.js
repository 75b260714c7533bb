/**
 * What a person is after: the shape of a want, from whatever lies in a setting or a file,
 * built anew from known fields alone; and a list of wants as it is kept. Pure.
 */

import * as take from "./fields.js";

/**
 * Objects of a guide that a person is after; a year that is null sets no bound.
 * @typedef {object} Want
 * @property {string} id
 * @property {string} guide
 * @property {number | null} since
 * @property {number | null} until
 * @property {string | null} member
 * @property {number | null} most
 * @property {string} currency Three capital letters, or empty.
 * @property {string} note
 * @property {string} created
 * @property {string} changed
 */
/**
 * The wants that can be read, and why others cannot; those stay where they are.
 * @typedef {{wants: Want[], refused: string[], unread: string[]}} Read
 */

/** The setting that holds them. */
export const WANTS = "wants";
export const MOST_WANTS = 500;
const FORMAT = 1;
const LAST = 9999;

const UNREADABLE =
  "Your wants are kept in a form that this version cannot read, and are left as they are: " +
  "update when online.";
const TAKEN = "A want with the same id cannot be read here, and is left as it is.";
const FULL = `There is room for ${MOST_WANTS} wants: delete what you no longer look for.`;
const GONE = "This want is no longer there.";

/**
 * The want, or a RecordError that says why it is none.
 * @param {unknown} json
 * @returns {Want}
 */
export function want(json) {
  const of = take.table(json, "want");
  assertFormat(of("format"));
  const since = take.maybe(year)(of("since"), "first year wanted");
  const until = take.maybe(year)(of("until"), "last year wanted");
  if (since !== null && until !== null && until < since)
    take.refuse(until, "last year wanted", `${since} or later is needed`);
  return {
    id: take.uuid(of("id"), "want's id"),
    guide: take.id(of("guide"), "guide of the want"),
    since,
    until,
    member: take.maybe(take.short)(of("member"), "member wanted"),
    most: take.maybe(take.price)(of("most"), "most that you would pay"),
    currency: take.currency(of("currency"), "currency"),
    note: take.text(of("note"), "note"),
    created: take.time(of("created"), "time of the want"),
    changed: take.time(of("changed"), "time of the last change"),
  };
}

/** @param {unknown} value @param {string} what */
const year = (value, what) => take.whole(value, what, 1, LAST);

/** A want has no format of its own until there is a second. @param {unknown} format */
function assertFormat(format) {
  if (format === undefined || format === FORMAT) return;
  if (Number.isInteger(format) && Number(format) > FORMAT) {
    throw new take.RecordError(
      "This want was written by a newer version of the app " +
        `(format ${format}; this one reads ${FORMAT}): update when online.`,
    );
  }
  take.refuse(format, "want's format", `${FORMAT} is needed`);
}

/**
 * What can be read of the list that is kept.
 * @param {unknown} kept
 * @returns {Read}
 */
export function readWants(kept) {
  /** @type {Read} */
  const read = { wants: [], refused: [], unread: [] };
  if (!isList(kept)) return { ...read, refused: [UNREADABLE] };
  for (const row of kept ?? []) {
    try {
      read.wants.push(want(row));
    } catch (error) {
      if (!(error instanceof take.RecordError)) throw error;
      read.refused.push(error.message);
      read.unread.push(idOf(row));
    }
  }
  return read;
}

/**
 * The list with these wants in it, each in the place of the one with its id; rows that
 * cannot be read stay as they are.
 * @param {unknown} kept
 * @param {readonly Want[]} wants
 */
export function withWants(kept, wants) {
  const rows = [...rowsOf(kept)];
  const { unread } = readWants(rows);
  for (const one of wants) {
    if (unread.includes(one.id)) throw new take.RecordError(TAKEN);
    const place = rows.findIndex((row) => idOf(row) === one.id);
    if (place < 0) rows.push(one);
    else rows[place] = one;
  }
  if (rows.length > MOST_WANTS && rows.length > rowsOf(kept).length)
    throw new take.RecordError(FULL);
  return rows;
}

/** The list without the want. @param {unknown} kept @param {string} id */
export function withoutWant(kept, id) {
  const rows = rowsOf(kept);
  const left = rows.filter((row) => idOf(row) !== id || !isReadable(row));
  if (left.length === rows.length) throw new take.RecordError(GONE);
  return left;
}

/** @param {unknown} row */
const isReadable = (row) => readWants([row]).wants.length === 1;

/** @param {unknown} kept @returns {readonly unknown[]} */
function rowsOf(kept) {
  if (isList(kept)) return kept ?? [];
  throw new take.RecordError(UNREADABLE);
}

/** A list, or nothing yet. @param {unknown} kept @returns {kept is unknown[] | null | undefined} */
const isList = (kept) => Array.isArray(kept) || (kept ?? null) === null;

/** The id of whatever a row is, as far as it has one. @param {unknown} row */
function idOf(row) {
  const { id } = /** @type {{id?: unknown}} */ (row ?? {});
  return typeof id === "string" ? id.toLowerCase() : "";
}
