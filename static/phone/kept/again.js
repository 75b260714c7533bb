/** A find of the log under the guide of today: judged anew, or laid open again. */

import { laid } from "../desk.js";
import { differences } from "../log/differences.js";
import { summed } from "../log/record.js";
import { draft, reopened, restore } from "../session.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../log/record.js").Entry} Entry */

/**
 * What was read, laid out with today's guide, and a sentence for each reading that this
 * guide does not know.
 * @param {Entry} entry
 * @param {import("../shelf.js").Opened} opened
 * @returns {{desk: Desk, lost: string[]}}
 */
export function today({ find }, opened) {
  const { guide, stamp } = opened;
  const { session, lost } = restore(draft(reopened(find), stamp), guide, stamp);
  return { desk: laid(opened, session), lost };
}

/**
 * What has changed in the verdict since the find was judged; none if nothing has.
 * @param {Entry} entry
 * @param {Desk} desk
 */
export const changes = ({ verdict }, desk) => differences(verdict, summed(desk.verdict));
