// What would become of the log if a file's finds were taken in: the dry run of an
// import. Pure; nothing is written by it.

import { capital, listed } from "../engine/words.js";
import { MOST } from "./entry.js";
import { mergedOwned, NOTHING_HERE } from "./ownedmerge.js";
import { isTable, writtenEntry } from "./written.js";

/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./entries.js").Photo} Photo */
/** @typedef {import("./importing.js").Incoming} Incoming */
/** @typedef {import("./importing.js").Opened} Opened */
/** @typedef {import("./importing.js").Refused} Refused */
/** @typedef {import("./ownedmerge.js").OwnedHere} OwnedHere */
/** @typedef {import("./ownedmerge.js").OwnedPlan} OwnedPlan */
/** @typedef {"added" | "changed" | "same" | "older"} Fate */
/**
 * What else lies here: the ids of finds that cannot be read, and what a person owns.
 * @typedef {object} Here
 * @property {readonly string[]} [unread]
 * @property {OwnedHere} [own]
 */
/**
 * An entry that would be kept, with its photos as far as they are in the file or here.
 * @typedef {{entry: Entry, photos: () => Promise<Photo[]>}} Taken
 */
/**
 * `same` and `older` stay as they are here; `left` has a sentence for each find of which
 * photos are neither in the file nor here.
 * @typedef {object} Plan
 * @property {Taken[]} added
 * @property {Taken[]} changed
 * @property {Entry[]} same
 * @property {Entry[]} older
 * @property {Refused[]} refused
 * @property {string[]} left
 * @property {OwnedPlan} own
 */

const STOLEN = "A photo of another find in the log has the same id.";
const FULL = `The log has room for ${MOST.entries} finds.`;
const TORN =
  "It differs from the find in the log, and both were changed at the same moment: " +
  "the one in the log stays.";

const UNREAD =
  "A find with the same id lies in the log and cannot be read here: it is left as it is.";

/** What follows the number of those with each fate. */
/** @type {readonly (readonly ["refused" | Fate, string, string])[]} */
const WORDS = [
  ["added", "is new.", "are new."],
  [
    "changed",
    "is newer than here, and takes its place.",
    "are newer than here, and take their places.",
  ],
  ["same", "is here already.", "are here already."],
  ["older", "is newer here, and stays.", "are newer here, and stay."],
  ["refused", "cannot be taken.", "cannot be taken."],
];

/**
 * What is new, newer, the same, older or refused; finds are told apart by their ids, and
 * of two with the same id the one that was changed last is right.
 * @param {readonly Entry[]} log
 * @param {Opened} file
 * @param {Here} [here]
 * @returns {Plan}
 */
export function merged(log, { incoming, refused, own }, { unread = [], own: mine } = {}) {
  /** @type {Plan} */
  const plan = {
    ...{ added: [], changed: [], same: [], older: [], refused: [...refused], left: [] },
    own: mergedOwned(mine ?? NOTHING_HERE, own),
  };
  const here = new Map(log.map((entry) => [entry.id, entry]));
  const owners = new Map(log.flatMap(({ id, photos }) => photos.map((one) => [one.id, id])));
  for (const found of incoming) {
    const known = here.get(found.entry.id);
    const entry = within(found, known);
    const why =
      kept(found.entry.id, unread) ||
      (known ? "" : full(here.size + unread.length + plan.added.length)) ||
      against(found.entry, known, owners);
    if (why) plan.refused.push({ place: found.place, name: nameOf(entry), why });
    else put(plan, fate(entry, known), { ...found, lacks: lacking(found, entry), entry });
  }
  plan.refused.sort((one, other) => one.place - other.place);
  return plan;
}

/** What this version cannot read it never writes over. @param {string} id @param {readonly string[]} unread */
const kept = (id, unread) => (unread.includes(id) ? UNREAD : "");

/** @param {number} count */
const full = (count) => (count >= MOST.entries ? FULL : "");

/**
 * The entry with the photos that are in the file or here.
 * @param {Incoming} found @param {Entry} [known]
 */
function within({ entry, held }, known) {
  const isThere = (/** @type {Entry["photos"][number]} */ { id, bytes }) =>
    held.includes(id) || known?.photos.some((one) => one.id === id && one.bytes === bytes);
  return { ...entry, photos: entry.photos.filter(isThere) };
}

/**
 * Why the entry cannot be taken; empty if it can.
 * @param {Entry} entry @param {Entry | undefined} known @param {Map<string, string>} owners
 */
function against(entry, known, owners) {
  if (entry.photos.some(({ id }) => (owners.get(id) ?? entry.id) !== entry.id)) return STOLEN;
  if (!known || known.changed !== entry.changed) return "";
  return whole(known) === whole(entry) && has(entry, known.photos) ? "" : TORN;
}

/** @param {Entry} entry @param {Entry} [known] @returns {Fate} */
function fate(entry, known) {
  if (!known) return "added";
  if (entry.changed < known.changed) return "older";
  // At the same moment only photos can differ that were left out of another file.
  return entry.changed > known.changed || !has(known, entry.photos) ? "changed" : "same";
}

/** @param {Entry} entry @param {Entry["photos"]} photos */
function has(entry, photos) {
  const ids = entry.photos.map(({ id }) => id);
  return photos.every(({ id }) => ids.includes(id));
}

/** All that an entry says, its photos aside, in one order. @param {Entry} entry */
function whole(entry) {
  return JSON.stringify(writtenEntry({ ...entry, photos: [] }), (_, value) =>
    isTable(value) ? Object.fromEntries(Object.entries(value).sort()) : value,
  );
}

/** @param {Plan} plan @param {Fate} become @param {Incoming & {lacks: number}} found */
function put(plan, become, { entry, lacks, photos }) {
  if (become === "same" || become === "older") plan[become].push(entry);
  else {
    plan[become].push({ entry, photos });
    if (lacks) plan.left.push(leftOut(entry, lacks));
  }
}

/** @param {Incoming} found @param {Entry} within */
const lacking = ({ entry }, within) => entry.photos.length - within.photos.length;

/** @param {Entry} entry @param {number} count */
function leftOut(entry, count) {
  const photos = count === 1 ? "1 photo" : `${count} photos`;
  return `${photos} of "${nameOf(entry)}" cannot be taken: this file has finds alone.`;
}

/** @param {Entry} entry */
const nameOf = ({ title, guide }) => title || guide;

/**
 * The plan as sentences for the screen, before a person says yes or no to it.
 * @param {Plan} plan
 */
export function inWords(plan) {
  const { prices, wants, refused } = plan.own;
  const of = (/** @type {string} */ wanted) => refused.filter(({ kind }) => kind === wanted);
  const counted = [
    ...told(plan, finds),
    ...told({ ...wants, refused: of("wants") }, wantsFor),
    ...told({ ...prices, refused: of("prices") }, pricesFor, true),
  ];
  return counted.length ? [...counted, ...plan.left] : ["There is no find in this file."];
}

/** @param {number} n */
const finds = (n) => (n === 1 ? "1 find" : `${n} finds`);

/** @param {number} n */
const wantsFor = (n) => (n === 1 ? "1 want" : `${n} wants`);

/** @param {number} n */
const pricesFor = (n) => `your prices for ${n === 1 ? "1 guide" : `${n} guides`}`;

/**
 * A sentence for each fate that any has.
 * @param {Record<"refused" | Fate, readonly unknown[]>} fates
 * @param {(count: number) => string} named
 * @param {boolean} [always] whether even one is spoken of as several
 */
function told(fates, named, always = false) {
  return WORDS.flatMap(([fate, one, many]) => {
    const { length } = fates[fate];
    return length ? [capital(`${named(length)} ${length === 1 && !always ? one : many}`)] : [];
  });
}

/** What was taken in once the plan is carried out. @param {Plan} plan */
export function takenInWords({ added, changed, own: { prices, wants } }) {
  const found = added.length + changed.length;
  const [wanted, priced] = [wants, prices].map((all) => all.added.length + all.changed.length);
  const all = [
    found || !(wanted + priced) ? finds(found) : "",
    wanted ? wantsFor(wanted) : "",
    priced ? pricesFor(priced) : "",
  ].filter(Boolean);
  const isOne = all.length === 1 && found + wanted === 1 && !priced;
  return `${capital(listed(all))} ${isOne ? "was" : "were"} taken in.`;
}
