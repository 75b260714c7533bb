/** Entries searched by words and put in order. Pure. */

import { nameOf } from "./title.js";

/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {"date" | "title" | "paid" | "guide"} Order */
/**
 * What a guide is called, by its id; of one that is not in this bundle, its id.
 * @typedef {(guide: string) => string} Titles
 */

const ACCENTS = /\p{Mark}/gu;
/** So much of a time is its day. */
const DAY = 10;
/** Whatever has no price comes last. */
const UNPAID = -1;

/**
 * Made when names are first put in order: making it holds up a start more than all else.
 * @type {Intl.Collator | undefined}
 */
let alphabet;

/**
 * What an entry is searched in; it is the same as long as the entry is.
 * @type {WeakMap<Entry, string>}
 */
const known = new WeakMap();

/**
 * The entries that hold every word, each in any field; accents and capitals do not count.
 * @param {readonly Entry[]} entries
 * @param {string} typed
 * @param {Titles} [titles]
 */
export function search(entries, typed, titles = (guide) => guide) {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  return entries.filter((entry) => {
    const text = `${textOf(entry)} ${plain(titles(entry.guide))}`;
    return words.every((word) => text.includes(word));
  });
}

/**
 * The entries in order: the newest day, the first title, the highest price paid or the
 * first guide on top. Prices go by their figure, for no rate of exchange is known.
 * @param {readonly Entry[]} entries
 * @param {Order} order
 * @param {Titles} [titles]
 */
export function sort(entries, order, titles = (guide) => guide) {
  const names = new Map(entries.map((entry) => [entry, nameOf(entry, titles(entry.guide))]));
  /** @param {Entry} one @param {Entry} other */
  const byTitle = (one, other) => inAlphabet(names.get(one) ?? "", names.get(other) ?? "");
  const orders = {
    /** @param {Entry} one @param {Entry} other */
    date: (one, other) => compare(day(other), day(one)),
    title: byTitle,
    /** @param {Entry} one @param {Entry} other */
    paid: (one, other) => (other.paid ?? UNPAID) - (one.paid ?? UNPAID),
    /** @param {Entry} one @param {Entry} other */
    guide: (one, other) =>
      inAlphabet(titles(one.guide), titles(other.guide)) || byTitle(one, other),
  };
  const latest = (/** @type {Entry} */ one, /** @type {Entry} */ other) =>
    compare(other.created, one.created) || compare(one.id, other.id);
  return [...entries].sort((one, other) => orders[order](one, other) || latest(one, other));
}

/** The day that the person names, or the day of keeping. @param {Entry} entry */
const day = ({ date, created }) => date || created.slice(0, DAY);

/** @param {string} one @param {string} other */
const compare = (one, other) => Number(one > other) - Number(one < other);

/** @param {Entry} entry */
function textOf(entry) {
  const text = known.get(entry) ?? plain([...told(entry)].join(" "));
  known.set(entry, text);
  return text;
}

/** All that an entry says, in words and figures. @param {Entry} entry */
function* told(entry) {
  const { find, verdict, ...own } = entry;
  // What its guide is called is searched beside it.
  yield* [nameOf(entry, ""), own.note, own.place, own.date, own.guide, own.currency];
  yield* [own.asked, own.paid].filter((price) => price !== null);
  yield* [verdict.say, ...verdict.flags];
  if (find.claim) yield find.claim.model_year;
  for (const { member, readings, gone } of find.items) {
    yield* [member ?? "", ...readings.map(([, reading]) => figure(reading)), ...gone];
  }
}

/** @param {import("../engine/find.js").Reading} reading */
const figure = (reading) =>
  typeof reading === "object" ? (reading?.value ?? "") : reading;

/** @param {string} text */
const plain = (text) => text.normalize("NFKD").replace(ACCENTS, "").toLowerCase();

/** @param {string} one @param {string} other */
function inAlphabet(one, other) {
  alphabet ??= new Intl.Collator("en", { numeric: true });
  return alphabet.compare(one, other);
}
