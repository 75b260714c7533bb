/** Drafts between the store and the desk: every event kept, all taken up at the start. */

import { draft, restore } from "./session.js";
import { FORMAT } from "./draft.js";
import { opened } from "./shelf.js";
import { loadDrafts, saveDraft, setAside } from "./store.js";

/** @typedef {import("./session.js").Draft} Draft */

const LAST = "fieldid-last";

/**
 * Keeps the session of a desk.
 * @param {import("./desk.js").Desk} desk
 */
export function keep({ session, stamp }) {
  return saveDraft(draft(session, stamp));
}

/**
 * The sessions kept on this phone with their guides; what cannot be read is set aside
 * and told, and the rest goes on.
 * @param {string[]} guides the guides in this bundle
 * @param {(error: Error) => void} failed
 */
export async function taken(guides, failed) {
  const drafts = await kept(failed);
  const known = drafts.filter(({ guide }) => guides.includes(guide));
  const all = await Promise.all(known.map((each) => takeUp(each, failed)));
  return all.filter((each) => each !== null);
}

/** @param {(error: Error) => void} failed @returns {Promise<Draft[]>} */
async function kept(failed) {
  try {
    return /** @type {Draft[]} */ (await loadDrafts());
  } catch (error) {
    failed(/** @type {Error} */ (error));
    return [];
  }
}

/** @param {Draft} kept @param {(error: Error) => void} failed */
async function takeUp(kept, failed) {
  try {
    const shelved = await opened(kept.guide);
    return { shelved, ...restore(kept, shelved.guide, shelved.stamp) };
  } catch (error) {
    const reason = /** @type {Error} */ (error);
    failed(reason);
    // A newer format has its own place; anything else makes room for a new find.
    if (reason.name === "DraftError" && !(kept.format > FORMAT))
      await setAside(kept).catch(failed);
    return null;
  }
}

/** Remembers which guide was open last, where a browser lets pages remember. @param {string} guide */
export function rememberLast(guide) {
  try {
    localStorage.setItem(LAST, guide);
  } catch {
    return;
  }
}

/** The guide that was open last, if it is known. */
export function last() {
  try {
    return localStorage.getItem(LAST);
  } catch {
    return null;
  }
}
