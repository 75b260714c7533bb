/** Drafts on this phone, one a guide and format; what cannot be read is set aside. */

import { ASIDE, asked, DRAFTS, here } from "./database.js";
import { spoken } from "./storeerror.js";

export { StoreError } from "./storeerror.js";

/** @typedef {import("./session.js").Draft} Draft */

const WORDS = {
  lost: "the last step",
  still: "The questionnaire works; keep this page open",
};

export const { saveDraft, loadDrafts, setAside } = storeIn(here);

/**
 * The drafts in a database; every failure is a sentence to show.
 * @param {import("./database.js").Database} database
 */
export function storeIn(database) {
  const within = spoken(database, WORDS);

  return {
    /** Resolves when the draft is on the disk. @param {Draft} draft */
    saveDraft: (draft) =>
      within("readwrite", [DRAFTS], ([drafts]) => asked(drafts.put(draft))),

    /** All drafts, readable or not. @returns {Promise<unknown[]>} */
    loadDrafts: () => within("readonly", [DRAFTS], ([drafts]) => asked(drafts.getAll())),

    /** Makes room beside a draft that cannot be read. @param {Draft} draft */
    setAside: (draft) =>
      within("readwrite", [DRAFTS, ASIDE], ([drafts, aside]) => {
        aside.add(draft);
        return asked(drafts.delete([draft.guide, draft.format]));
      }),
  };
}
