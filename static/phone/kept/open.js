/** Which entry of the log the find that lies open was kept as, under each guide. */

import { FORMAT } from "../draft.js";
import { book } from "../log/book.js";
import { isTouched } from "../scope.js";
import { loadDrafts } from "../store.js";
import { counted } from "../view/reading.js";

/** @typedef {Pick<import("../desk.js").Desk, "guide" | "session">} Open */
/** @typedef {import("../engine/find.js").Item} Item */
/** @typedef {import("../session.js").Session} Session */
/**
 * The entry, and the first that was read of the find: by that it is known again.
 * @typedef {{entry: string, first: string}} Known
 */

/** The setting that outlives this page. */
const OPEN = "open";

/** What this page knows; null where a find was begun anew. @type {Map<string, string | null>} */
const here = new Map();

/** The find that lies open under the guide is another one now. @param {string} guide */
export function begunAnew(guide) {
  here.set(guide, null);
}

/** The id of the entry that the open find was kept as. @param {Open} open */
export async function entryOf({ guide, session }) {
  const id = here.get(guide.id);
  return id === undefined ? remembered(guide.id, session) : id;
}

/** What was kept before this page was opened. @param {string} guide @param {Session} session */
async function remembered(guide, session) {
  /** @type {Map<string, Known>} */
  const all = new Map(await book.setting(OPEN));
  const known = all.get(guide);
  // Nothing says that it is the same find but what was read first.
  return known?.first && states(session).includes(known.first) ? known.entry : null;
}

/** What lies open is kept as this entry from now on. @param {Open} open @param {string} entry */
export async function remember({ guide, session }, entry) {
  here.set(guide.id, entry);
  /** @type {Map<string, Known>} */
  const all = new Map(await book.setting(OPEN));
  all.set(guide.id, { entry, first: states(session)[0] ?? "" });
  await book.set(OPEN, [...all]);
}

/**
 * What would be forgotten if this entry were laid open, as "3 readings"; nothing if all
 * that lies open under its guide is in the log.
 * @param {import("../log/record.js").Entry} entry
 */
export async function unkept({ guide }) {
  const drafts = /** @type {import("../session.js").Draft[]} */ (await loadDrafts());
  const open = drafts.find((draft) => draft.guide === guide && draft.format === FORMAT);
  const items = open?.session.items.filter(isTouched) ?? [];
  const { entries } = await book.list();
  const kept = entries.some(({ find }) => find.guide === guide && isSame(find.items, items));
  return items.length === 0 || kept ? "" : counted(items);
}

/** @param {readonly Item[]} some @param {readonly Item[]} others */
function isSame(some, others) {
  const [one, other] = [some, others].map((items) => JSON.stringify(items.map(inOrder).sort()));
  return one === other;
}

/** What was read off an item, in one order: a session has its own. @param {Item} item */
const inOrder = ({ member, readings, gone }) =>
  JSON.stringify([member, readings.map((pair) => JSON.stringify(pair)).sort(), [...gone].sort()]);

/** All that was ever read in a session, step by step. @param {Session} session */
function states(session) {
  const read = [...session.past, session].filter(({ items }) => items.some(isTouched));
  return read.map(({ items }) => JSON.stringify(items));
}
