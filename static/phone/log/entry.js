/**
 * An entry of the log: its shape, its limits, and how one is made from whatever lies in
 * a file or a database. What comes out is built anew from known fields alone. Pure.
 */

import * as take from "./fields.js";
import { kept } from "./keptfind.js";

/** @typedef {import("../engine/find.js").Find} Find */
/** @typedef {import("../engine/find.js").Range} Range */
/**
 * The verdict in short; `probability` is that of what it says: of the leading year, of
 * the range, or of none of these where no year leads.
 * @typedef {object} Summary
 * @property {string} say
 * @property {number | null} leading
 * @property {number} probability
 * @property {number} outside
 * @property {Range | null} range
 * @property {readonly string[]} flags
 */
/**
 * What an entry says of a photo of its own; `bytes` is how many there are.
 * @typedef {object} PhotoNote
 * @property {string} id
 * @property {string | null} clue
 * @property {number} width
 * @property {number} height
 * @property {number} bytes
 */
/**
 * A find that is kept. `verdict` is the one at the time, by that version of the guide.
 * @typedef {object} Entry
 * @property {number} format
 * @property {string} id
 * @property {string} guide
 * @property {Find} find
 * @property {{stamp: string, updated: string}} version
 * @property {Summary} verdict
 * @property {string} judged
 * @property {string} title
 * @property {string} note
 * @property {string} place
 * @property {string} date A day as "2026-11-25", or empty.
 * @property {number | null} asked
 * @property {number | null} paid
 * @property {string} currency Three capital letters, or empty.
 * @property {readonly PhotoNote[]} photos
 * @property {string} created
 * @property {string} changed
 */

export const FORMAT = 1;
/** What the log takes at most; sizes are in bytes, texts in characters. */
export const MOST = Object.freeze({
  text: take.MOST_TEXT,
  short: take.MOST_SHORT,
  photos: 6,
  entries: 5000,
  photo: 5_000_000,
  json: 10_000_000,
  file: 200_000_000,
});
const FLAGS = 200;
const PIXELS = 100_000;

/**
 * The entry, or a RecordError that says why it is none.
 * @param {unknown} json
 * @returns {Entry}
 */
export function entry(json) {
  const of = take.table(json, "find");
  assertFormat(of("format"));
  const guide = take.id(of("guide"), "guide");
  const version = take.table(of("version"), "guide's version");
  return {
    format: FORMAT,
    id: take.uuid(of("id"), "find's id"),
    guide,
    find: kept(of("find"), guide),
    version: {
      stamp: take.short(version("stamp"), "guide's stamp"),
      updated: take.day(version("updated"), "guide's day"),
    },
    verdict: summary(of("verdict")),
    judged: take.time(of("judged"), "time of the verdict"),
    title: take.short(of("title"), "title"),
    note: take.text(of("note"), "note"),
    place: take.short(of("place"), "place"),
    date: take.day(of("date"), "date"),
    asked: take.maybe(take.price)(of("asked"), "price asked"),
    paid: take.maybe(take.price)(of("paid"), "price paid"),
    currency: take.currency(of("currency"), "currency"),
    photos: photos(of("photos")),
    created: take.time(of("created"), "time of keeping"),
    changed: take.time(of("changed"), "time of the last change"),
  };
}

/** @param {unknown} format */
function assertFormat(format) {
  if (format === FORMAT) return;
  if (Number.isInteger(format) && Number(format) > FORMAT) {
    throw new take.RecordError(
      "This find was written by a newer version of the app " +
        `(format ${format}; this one reads ${FORMAT}): update when online.`,
    );
  }
  take.refuse(format, "find's format", `${FORMAT} is needed`);
}

/** @param {unknown} json @returns {Summary} */
function summary(json) {
  const of = take.table(json, "verdict");
  return {
    say: take.text(of("say"), "verdict's sentence"),
    leading: take.maybe(take.whole)(of("leading"), "leading model year"),
    probability: take.share(of("probability"), "verdict's probability"),
    outside: take.share(of("outside"), "probability of none of these"),
    range: take.maybe(range)(of("range"), "range"),
    flags: take.list(of("flags"), "red flags", take.text, FLAGS),
  };
}

/** @param {unknown} json @param {string} what @returns {Range} */
function range(json, what) {
  const of = take.table(json, what);
  return {
    since: take.whole(of("since"), "range's first year"),
    until: take.whole(of("until"), "range's last year"),
    probability: take.share(of("probability"), "range's probability"),
    say: take.text(of("say"), "range in words"),
    start_say: take.text(of("start_say"), "range's start in words"),
    stop_say: take.text(of("stop_say"), "range's end in words"),
  };
}

/** @param {unknown} json @returns {PhotoNote[]} */
function photos(json) {
  const found = take.list(json ?? [], "photos", photo, MOST.photos);
  take.assertApart(found.map(({ id }) => id), "photo");
  return found;
}

/** @param {unknown} json @returns {PhotoNote} */
function photo(json) {
  const of = take.table(json, "photo");
  return {
    id: take.uuid(of("id"), "photo's id"),
    clue: take.maybe(take.id)(of("clue"), "photo's clue"),
    width: take.whole(of("width"), "photo's width", 1, PIXELS),
    height: take.whole(of("height"), "photo's height", 1, PIXELS),
    bytes: take.whole(of("bytes"), "photo's number of bytes", 1, MOST.photo),
  };
}
