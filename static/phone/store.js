/** Drafts on this phone, one a guide and format; what cannot be read is set aside. */

import { ASIDE, asked, DRAFTS, here, PROBE } from "./database.js";
import { FORMAT } from "./draft.js";
import { said, spoken } from "./storeerror.js";

export { StoreError } from "./storeerror.js";

/** @typedef {import("./session.js").Draft} Draft */

const WORDS = {
  lost: "the last step",
  still: "The questionnaire works; keep this page open",
};

export const { saveDraft, loadDrafts, dropDraft, setAside, health } = storeIn(here);

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

    /** Drops the guide's draft of this format alone. @param {string} guide */
    dropDraft: (guide) =>
      within("readwrite", [DRAFTS], ([drafts]) => asked(drafts.delete([guide, FORMAT]))),

    /** Makes room beside a draft that cannot be read. @param {Draft} draft */
    setAside: (draft) =>
      within("readwrite", [DRAFTS, ASIDE], ([drafts, aside]) => {
        aside.add(draft);
        return asked(drafts.delete([draft.guide, draft.format]));
      }),

    /**
     * Keeps, reads and deletes something.
     * @returns {Promise<{works: boolean, why: string}>}
     */
    async health() {
      try {
        const back = await within("readwrite", [PROBE], ([probe]) => {
          probe.put("kept", 0);
          const request = probe.get(0);
          probe.delete(0);
          return asked(request);
        });
        if (back !== "kept") throw said(new DOMException("", "Forgetful"), WORDS);
        return { works: true, why: "" };
      } catch (error) {
        return { works: false, why: /** @type {Error} */ (error).message };
      }
    },
  };
}
