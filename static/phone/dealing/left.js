/**
 * What was typed and is not on the disk yet, in the one storage that a page can write
 * before it goes: to keep a price takes longer than to reload.
 */

/** @typedef {import("../desk.js").Desk} Desk */
/** What stood in the field of this key, and the find that lay open. @typedef {{key: string, typed: string, find: string}} Left */

const LEFT = "fieldid-typed/";

/**
 * Notes it until it is done, however that ends: if it cannot be kept, that is said.
 * @param {Desk} desk @param {string} key @param {string} typed @param {Promise<void>} done
 */
export function untilDone(desk, key, typed, done) {
  const { id } = desk.guide;
  const mine = { key, typed, find: told(desk) };
  write(id, [...read(id).filter((each) => each.key !== key), mine]);
  const isMine = (/** @type {Left} */ each) => each.key === key && each.typed === typed;
  done.finally(() => write(id, read(id).filter((each) => !isMine(each))));
}

/**
 * What an earlier page left, by the key of its field.
 * @param {Desk} desk @param {(key: string) => boolean} ofFind whether it is said of the
 *   find that lies open and of no other
 * @returns {[string, string][]}
 */
export function left(desk, ofFind) {
  const find = told(desk);
  const ours = read(desk.guide.id).filter((each) => each.find === find || !ofFind(each.key));
  return ours.map(({ key, typed }) => [key, typed]);
}

/** @param {Desk} desk */
const told = ({ session }) => JSON.stringify(session.items);

/** @param {string} guide @returns {Left[]} */
function read(guide) {
  try {
    return JSON.parse(localStorage.getItem(LEFT + guide) ?? "[]");
  } catch {
    return [];
  }
}

/** @param {string} guide @param {Left[]} all */
function write(guide, all) {
  try {
    if (all.length) localStorage.setItem(LEFT + guide, JSON.stringify(all));
    else localStorage.removeItem(LEFT + guide);
  } catch {
    // Where a browser lets pages remember nothing, it is kept a moment later or not at all.
    return;
  }
}
