/**
 * Practice in settings. What cannot be kept counts all the same, as long as the page is
 * open; what lies there and cannot be read is told, and set aside before anything is kept.
 */

import { book } from "../log/book.js";
import { joined, NONE, practised, practiceKey, withBegun, withRound, written } from "./kept.js";

/** @typedef {import("./kept.js").Begun} Begun */
/** @typedef {import("./kept.js").Practised} Practised */
/** @typedef {import("./kept.js").Round} Round */
/** What is known, and why what lies there cannot be read. @typedef {{kept: Practised, unread: string}} Known */

const LOCK = "fieldid-practice";
/** @param {string} guide */
const asideKey = (guide) => `unread-practice/${guide}`;

/** What could not be kept yet, by guide. @type {Map<string, Practised>} */
const unkept = new Map();
/** Changes are made one after the other, each to what the one before has left. @type {Promise<unknown>} */
let turn = Promise.resolve();

/** @param {string} guide @returns {Promise<Known>} */
export async function known(guide) {
  await turn;
  return read(guide);
}

/** What counts while nothing can be read from the phone. @param {string} guide @returns {Practised} */
export const inMemory = (guide) => unkept.get(guide) ?? NONE;

/** Keeps a round that goes on. @param {string} guide @param {Begun} begun */
export const keepBegun = (guide, begun) => change(guide, (now) => withBegun(now, begun));

/** Keeps a round that was played. @param {string} guide @param {Round} round @param {Begun} answered */
export const keepRound = (guide, round, answered) => change(guide, (now) => withRound(now, round, answered));

/**
 * Changes what is kept, which another page may have changed too.
 * @param {string} guide
 * @param {(now: Practised) => Practised} make
 * @returns {Promise<void>}
 */
function change(guide, make) {
  const changing = turn.then(() => alone(() => changed(guide, make)));
  turn = changing.catch(() => {});
  return changing;
}

/** An old browser has no locks; two pages at once are then the person's to avoid. @param {() => Promise<void>} work */
const alone = async (work) => (navigator.locks ? navigator.locks.request(LOCK, work) : work());

/** @param {string} guide @param {(now: Practised) => Practised} make */
async function changed(guide, make) {
  const { kept, unread } = await read(guide).catch((error) => {
    // It counts before it is said that it cannot be kept.
    unkept.set(guide, make(inMemory(guide)));
    throw error;
  });
  const next = make(kept);
  unkept.set(guide, next);
  if (unread) await setAside(guide);
  await book.set(practiceKey(guide), written(next));
  unkept.delete(guide);
}

/** @param {string} guide */
async function setAside(guide) {
  const aside = (await book.setting(asideKey(guide))) ?? [];
  await book.set(asideKey(guide), [...aside, await book.setting(practiceKey(guide))]);
}

/** @param {string} guide @returns {Promise<Known>} */
async function read(guide) {
  const { kept, unread } = taken(await book.setting(practiceKey(guide)));
  const own = unkept.get(guide);
  return { kept: own ? joined(kept, own) : kept, unread };
}

/** @param {unknown} json @returns {Known} */
function taken(json) {
  try {
    return { kept: json === null ? NONE : practised(json), unread: "" };
  } catch (error) {
    const { name, message } = /** @type {Error} */ (error);
    if (name !== "RecordError") throw error;
    return { kept: NONE, unread: message };
  }
}
