/** What an open set lacks, kept as wants. */

import { newId } from "../log/book.js";
import { readWants, withWants } from "../log/wants.js";
import { changeWants } from "../log/wantsbook.js";
import { unwanted, wantsFor } from "./wantsmissing.js";

/**
 * Keeps a want for each member that the set lacks and that is not wanted yet; the members.
 * @param {import("../engine/find.js").Verdict} verdict
 */
export async function wantMissing(verdict) {
  /** @type {readonly string[]} */
  let added = [];
  await changeWants((kept) => {
    added = unwanted(verdict, readWants(kept).wants);
    const made = wantsFor(verdict, added, { newId, now: new Date().toISOString() });
    return withWants(kept, made);
  });
  return added;
}
