/** Which guides came from files: what must be known before the script that keeps them is there. */

import { asked, here, SETTINGS } from "../database.js";

/** The setting that lists them. */
export const LISTED = "guests";

/**
 * Their ids. What lies open with one of these waits for it.
 * @returns {Promise<string[]>}
 */
export async function guestIds() {
  try {
    const row = await here.within("readonly", [SETTINGS], ([s]) => asked(s.get(LISTED)));
    return (row?.value ?? []).map((/** @type {{id: string}} */ { id }) => id);
  } catch (error) {
    // Where nothing can be read, the drafts say so.
    if (error instanceof DOMException) return [];
    throw error;
  }
}
