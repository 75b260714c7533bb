/** Which entry of the log the find that lies open was kept as, under each guide. */

import { FORMAT } from "../draft.js";
import { book } from "../log/book.js";
import { isTouched } from "../scope.js";
import { loadDrafts } from "../store.js";
import { counted } from "../view/reading.js";
import { dropDeal, noteDeal, UNDEALT } from "./dealt.js";
import { ofOpen } from "./ofopen.js";

/** @typedef {import("./ofopen.js").Open} Open */
/** @typedef {import("../engine/find.js").Item} Item */
/** @typedef {import("../log/record.js").Entry} Entry */

// Another find must never be taken for one that is in the log: that would be written over.
const memory = ofOpen("open", { unread: false });

/** The find that lies open under the guide is another one now. @param {string} guide */
export async function begunAnew(guide) {
  await Promise.all([memory.forget(guide), dropDeal(guide)]);
}

/** The id of the entry that the open find was kept as. @param {Open} open */
export async function entryOf(open) {
  const known = await memory.of(open);
  return /** @type {string | null} */ (known?.entry ?? null);
}

/** What lies open is kept as this entry from now on. @param {Open} open @param {string} entry */
export const remember = (open, entry) => memory.keep(open, { entry });

/** An entry is laid open, with the price that was asked. @param {Open} open @param {Entry} entry */
export async function reopened(open, { id, asked, currency }) {
  await Promise.all([remember(open, id), noteDeal(open, { ...UNDEALT, asked, currency })]);
}

/**
 * What would be forgotten if this entry were laid open, as "3 readings"; nothing if all
 * that lies open under its guide is in the log.
 * @param {Entry} entry
 */
export async function unkept({ guide }) {
  const { items, entry } = await lying(guide);
  return items.length === 0 || entry ? "" : counted(items);
}

/**
 * What was read of the find that lies open under the guide, and the entry of the log that
 * says all of it.
 * @param {string} guide
 * @returns {Promise<{items: Item[], entry: Entry | undefined}>}
 */
export async function lying(guide) {
  const drafts = /** @type {import("../session.js").Draft[]} */ (await loadDrafts());
  const open = drafts.find((draft) => draft.guide === guide && draft.format === FORMAT);
  const items = open?.session.items.filter(isTouched) ?? [];
  const { entries } = await book.list();
  const kept = entries.filter(({ find }) => find.guide === guide && isSame(find.items, items));
  return { items, entry: items.length ? kept[0] : undefined };
}

/** @param {readonly Item[]} some @param {readonly Item[]} others */
function isSame(some, others) {
  const [one, other] = [some, others].map((items) => JSON.stringify(items.map(inOrder).sort()));
  return one === other;
}

/** What was read off an item, in one order: a session has its own. @param {Item} item */
const inOrder = ({ member, readings, gone }) =>
  JSON.stringify([member, readings.map((pair) => JSON.stringify(pair)).sort(), [...gone].sort()]);
