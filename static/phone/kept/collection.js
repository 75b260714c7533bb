/** The list of the collection: which finds, each with one small photo, made on demand. */

import { book } from "../log/book.js";
import { collection, page } from "../log/collection.js";
import { STYLE } from "../log/collectionstyle.js";
import { makeThumb } from "../log/photo.js";
import { print } from "../log/reporthand.js";
import { sort } from "../log/search.js";
import { ticked } from "../view/findsout.js";
import { guidesOf } from "./guides.js";
import { sentence } from "./sentence.js";
import { today } from "./today.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/collection.js").Asked} Asked */
/** @typedef {import("../log/collection.js").Row} Row */
/** @typedef {import("../log/record.js").Entry} Entry */

/** Some 20 MB of file, and a minute or two of a phone's time. */
const MOST_PHOTOS = 1000;
/** So often it is said how far it is. */
const STEP = 20;
export const UNPAID =
  "No find has a price paid yet. Tick “Also finds without a price paid”, or fill in what you paid.";

/**
 * The finds that the list is of; null where there is none.
 * @param {HTMLElement} root @param {App} app
 */
async function chosen(root, app) {
  const { all } = ticked(root);
  const { entries } = await book.list();
  const { titled } = guidesOf(app);
  return sort(entries, "guide", titled).filter(({ paid }) => all || paid !== null);
}

/**
 * The list as a file with a way to print it, and a sentence for each photo that is not
 * in it; null if it is for no find, or no longer wanted.
 * @param {HTMLElement} root
 * @param {App} app
 * @param {{tell: (say: string) => void, wanted: () => boolean}} on
 */
export async function madeList(root, app, { tell, wanted }) {
  const entries = await chosen(root, app);
  if (!entries.length) return null;
  /** @type {string[]} */
  const left = [];
  /** @type {Row[]} */
  const rows = [];
  const { titled, named, invented } = guidesOf(app);
  let photos = 0;
  for (const [i, entry] of entries.entries()) {
    if (!wanted()) return null;
    if (i % STEP === 0 && i) tell(`Making the list: ${i} of ${entries.length} finds…`);
    const name = named(entry);
    const has = entry.photos.length > 0;
    const photo = has && photos < MOST_PHOTOS ? await thumb(entry, name, left) : null;
    photos += photo ? 1 : 0;
    const { guide } = entry;
    rows.push({ entry, name, guide: titled(guide), invented: invented(guide), photo });
  }
  const lost = entries.filter(({ photos }) => photos.length > 0).length - photos;
  if (lost > left.length) left.push(tooMany(lost - left.length));
  const { place } = ticked(root);
  /** @type {Asked} */
  const asked = { rows, place, left: lost, today: today() };
  return { ...files(asked), left };
}

/** @param {Asked} asked */
function files(asked) {
  const name = `fieldid-collection-${asked.today}.html`;
  return {
    file: new File([collection(asked)], name, { type: "text/html" }),
    print: () => print({ page: (source) => page(asked, source), style: STYLE }),
  };
}

/** @param {number} count */
const tooMany = (count) =>
  `The photos of ${count} more finds are left out: a list takes ${MOST_PHOTOS}.`;

/**
 * The first photo of a find, small; one that cannot be drawn is left out with a sentence.
 * @param {Entry} entry @param {string} name @param {string[]} left
 */
async function thumb(entry, name, left) {
  const [first] = await book.photosOf(entry);
  try {
    if (first) return new Uint8Array((await makeThumb(first.bytes)).bytes);
    left.push(`The photo of “${name}” is left out: it is not on this phone.`);
  } catch (error) {
    left.push(`The photo of “${name}” is left out. ${sentence(error)}`);
  }
  return null;
}
