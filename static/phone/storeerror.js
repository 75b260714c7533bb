/** What is said when nothing can be kept or read: always a whole sentence. */

/** What a connection throws that died while the app slept; a new one may do. */
export const LOST = ["InvalidStateError", "AbortError", "UnknownError"];

/** @type {ReadonlyMap<string, string>} */
const REASONS = new Map([
  ["Absent", "this browser has no storage for pages"],
  ["Blocked", "another page of this app holds an older storage open: close that page"],
  ["SecurityError", "this browser forbids pages to keep anything"],
  ["TimeoutError", "the storage does not answer"],
  ...LOST.map(
    (name) => /** @type {const} */ ([name, "the storage broke off twice: start the app again"]),
  ),
]);

/**
 * What a failure means for whoever it meets.
 * @typedef {object} Words
 * @property {string} lost What is not kept if the phone is full.
 * @property {string} still What works all the same, as the beginning of a sentence.
 */

/** What could not be kept or read; the message is a sentence to show. */
export class StoreError extends Error {
  name = "StoreError";
}

/**
 * The database, failing in sentences.
 * @param {import("./database.js").Database} database
 * @param {Words} words
 * @returns {import("./database.js").Database["within"]}
 */
export function spoken({ within }, words) {
  return (mode, names, work) =>
    within(mode, names, work).catch((error) => {
      throw said(error, words);
    });
}

/**
 * What happened and what still works; what is no failure of the storage stays as it is.
 * @param {Error} error
 * @param {Words} words
 */
export function said(error, { lost, still }) {
  if (!(error instanceof DOMException)) return error;
  const { name, message } = error;
  const why = REASONS.get(name) ?? `${name}: ${message}`;
  const special = new Map([
    [
      "QuotaExceededError",
      `The storage of this phone is full, so ${lost} is not kept. ${still} and make room.`,
    ],
    [
      "VersionError",
      "What is kept on this phone was written by a newer version of the app and is " +
        `left as it is, so nothing can be added. ${still}, and update when online.`,
    ],
  ]);
  const nothing = `Nothing can be kept on this phone right now (${why}). ${still}.`;
  return new StoreError(special.get(name) ?? nothing, { cause: error });
}
