/**
 * The guides that came from files, as they are kept on this phone: among the settings, so
 * that they have the log's second copy, and an update of the app leaves them alone. Each
 * is checked again, with the checks of today, before it is used.
 */

import { wholeLog } from "../log/book.js";
import { checked, GivenError, hash } from "./file.js";
import { LISTED } from "./known.js";

/** @typedef {import("./file.js").Given} Given */
/**
 * A guide in the list. `over` is the day of the app's own guide of the same name, whose
 * place it was given; null where there was none.
 * @typedef {{id: string, title: string, added: string, over: string | null}} Listed
 */
/**
 * A guide that is kept; `given` is null where it cannot be used, and `why` says it.
 * @typedef {Listed & {given: Given | null, why: string}} Guest
 */

const GONE = "It is no longer on this phone as it was added.";

/** @param {string} id */
const at = (id) => `guest/${id}`;

/** All of them, in the order in which they were added. @returns {Promise<Guest[]>} */
export async function kept() {
  return Promise.all((await listed()).map(guest));
}

/** @returns {Promise<Listed[]>} */
const listed = async () => (await wholeLog.loadSetting(LISTED)) ?? [];

/** @param {Listed} row @returns {Promise<Guest>} */
async function guest(row) {
  const held = await wholeLog.loadSetting(at(row.id));
  if (typeof held?.text !== "string" || (await hash(held.text)) !== held.sha256) return { ...row, given: null, why: GONE };
  try {
    return { ...row, given: checked(held.text), why: "" };
  } catch (error) {
    if (!(error instanceof GivenError)) throw error;
    return { ...row, given: null, why: error.message };
  }
}

/**
 * Keeps a guide in place of any other of its name: the text first, so that the list
 * names none that is not there.
 * @param {Given} given @param {{added: string, over: string | null}} told
 */
export async function keep({ text, guide: { id, title } }, told) {
  await wholeLog.saveSetting(at(id), { text, sha256: await hash(text) });
  const others = (await listed()).filter((row) => row.id !== id);
  await wholeLog.saveSetting(LISTED, [...others, { id, title, ...told }]);
}

/** @param {string} id */
export async function remove(id) {
  await wholeLog.saveSetting(LISTED, (await listed()).filter((row) => row.id !== id));
  await wholeLog.saveSetting(at(id), null);
}
