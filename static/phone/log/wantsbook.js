/** A person's wants and prices as they are kept beside the log, in settings of their own. */

import { book } from "./book.js";
import { RecordError } from "./fields.js";
import { prices, pricesKey } from "./prices.js";
import { readWants, WANTS, withWants } from "./wants.js";

/** @typedef {import("./owned.js").GuidePrices} GuidePrices */
/** @typedef {import("./ownedmerge.js").OwnedHere} OwnedHere */
/** @typedef {import("./wants.js").Read} Read */
/**
 * What is kept, with a sentence for each row that cannot be read.
 * @typedef {OwnedHere & {refused: string[]}} OwnedBook
 */

const LOCK = "fieldid-wants";

/** @returns {Promise<Read>} */
export const loadWants = async () => readWants(await book.setting(WANTS));

/**
 * Changes the list that is kept, and gives what is there then. No other page changes it
 * meanwhile; an old browser has no locks.
 * @param {(kept: unknown) => readonly unknown[]} change
 * @returns {Promise<Read>}
 */
export async function changeWants(change) {
  const changing = async () => {
    const rows = change(await book.setting(WANTS));
    await book.set(WANTS, rows);
    return readWants(rows);
  };
  return navigator.locks ? navigator.locks.request(LOCK, changing) : changing();
}

/**
 * All wants, and the prices for these guides.
 * @param {Iterable<string>} guides
 * @returns {Promise<OwnedBook>}
 */
export async function loadOwned(guides) {
  const { wants, refused, unread } = await loadWants();
  /** @type {OwnedBook} */
  const here = { prices: [], wants, refused, unread: { prices: [], wants: unread } };
  /** @type {GuidePrices[]} */
  const priced = [];
  for (const guide of new Set(guides)) {
    const kept = await book.setting(pricesKey(guide));
    if (kept === null) continue;
    try {
      priced.push({ guide, ...prices(kept) });
    } catch (error) {
      if (!(error instanceof RecordError)) throw error;
      refused.push(error.message);
      here.unread = { ...here.unread, prices: [...here.unread.prices, guide] };
    }
  }
  return { ...here, prices: priced };
}

/**
 * Keeps what an import brings of them.
 * @param {import("./ownedmerge.js").OwnedPlan} plan
 */
export async function takeInOwned({ prices: priced, wants }) {
  const news = [...wants.added, ...wants.changed];
  if (news.length) await changeWants((kept) => withWants(kept, news));
  for (const { guide, ...own } of [...priced.added, ...priced.changed]) {
    await book.set(pricesKey(guide), own);
  }
}
