/**
 * A message to the seller: the questions that are open and the photos still missing.
 *
 * Polite and neutral: it asks, and says nothing of what an answer may mean.
 */

import { WORTHWHILE } from "./gain.js";
import { judge } from "./judge.js";
import { several, whose } from "./members.js";
import { is_read } from "./saying.js";
import { round9 } from "./special.js";
import { called, listed } from "./words.js";

/** @import { Find, Item, Next, Verdict } from "./find.js" */
/** @import { Tables } from "./prepare.js" */

export const MOST_PHOTOS = 5;
/** Characters of a short message. */
export const SHORT = 320;
/** What is called by more characters is not named in a short message. */
export const LONG_NAME = 80;
export const ANYTHING = "What can you tell me about where it comes from?";

/**
 * What to send, as a letter and as a text message.
 * @typedef {object} Message
 * @property {string} long
 * @property {string} short
 */

/**
 * A photo to ask for: what it is to show, in the guide's words and in few.
 * @typedef {object} Photo
 * @property {string} show
 * @property {string} brief
 */

/**
 * What to ask the seller after the verdict on a find.
 * @param {Tables} tables
 * @param {Find} find
 * @param {Verdict} verdict
 * @returns {Message}
 */
export function message(tables, find, verdict) {
  let asks = [...new Set(verdict.flags.flatMap(({ ask }) => ask || []))];
  const wanted = photos(tables, find);
  if (asks.length === 0 && wanted.length === 0) {
    asks = [ANYTHING];
  }
  const about = _about(tables, find.items);
  return Object.freeze({
    long: _long(about, asks, wanted, _unseen(tables, find.items)),
    short: _short(about, asks, wanted),
  });
}

/**
 * The photos that would tell most, the best first: of each clue that has a photo
 * and was not read, or could not be told from what there is.
 * @param {Tables} tables
 * @param {Find} find
 * @returns {Photo[]}
 */
export function photos(tables, find) {
  const items = find.items.map((item) => ({
    ...item,
    readings: item.readings.filter(([, reading]) => reading !== null),
  }));
  /** @type {Map<string, Next[]>} */
  const groups = new Map();
  for (const each of judge(tables, { ...find, items }, { photos: true }).next) {
    if (round9(each.bits) >= WORTHWHILE) {
      const { photo } = tables.guide.clues[tables.places.get(each.clue) ?? -1];
      groups.set(photo, [...(groups.get(photo) ?? []), each]);
    }
  }
  const most = (/** @type {Next[]} */ nexts) =>
    Math.max(...nexts.map(({ bits }) => round9(bits)));
  const best = [...groups].sort(([, a], [, b]) => most(b) - most(a));
  return best
    .slice(0, MOST_PHOTOS)
    .map(([photo, nexts]) => _photo(tables, items, photo, nexts));
}

/**
 * One photo for all that it is to show.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {string} photo
 * @param {readonly Next[]} nexts
 * @returns {Photo}
 */
function _photo(tables, items, photo, nexts) {
  const named = nexts.map(({ clue }) => clue);
  const clues = tables.guide.clues.filter(({ id }) => named.includes(id));
  const brief = listed(clues.map(({ name }) => `the ${name}`));
  const wanted = nexts.map(({ member }) => member);
  const members = items.map(({ member }) => member).filter((m) => wanted.includes(m));
  if (items.length === 1) {
    return Object.freeze({ show: photo, brief });
  }
  const owner = whose(tables.guide, items, members.map(String));
  return Object.freeze({ show: `${photo} (${owner})`, brief: `${brief} of ${owner}` });
}

/**
 * What is for sale.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 */
function _about(tables, items) {
  const [{ member }] = items;
  if (items.length === 1 && member !== null) {
    return `your ${called(tables.guide, member)}`;
  }
  return `your ${tables.guide.kind}`;
}

/**
 * The members of which nothing was seen yet, if others were seen.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 */
function _unseen(tables, items) {
  const unseen = items.filter((item) => !is_read([item])).map(({ member }) => String(member));
  return unseen.length < items.length ? several(tables.guide, unseen) : "";
}

/**
 * @param {string} about
 * @param {readonly string[]} asks
 * @param {readonly Photo[]} wanted
 * @param {string} unseen
 */
function _long(about, asks, wanted, unseen) {
  const paragraphs = ["Hello,", `I am interested in ${about}.`];
  if (asks.length > 0) {
    paragraphs.push("May I ask you something?");
    paragraphs.push(_listing(asks));
  }
  if (wanted.length > 0) {
    const more = wanted.length > 1 ? " The first would help most." : "";
    paragraphs.push(`Could you send me photos that show this?${more}`);
    paragraphs.push(_listing(wanted.map(({ show }) => show)));
  }
  if (unseen) {
    paragraphs.push(`May I also see ${unseen}?`);
  }
  paragraphs.push("Thank you very much, and kind regards");
  return `${paragraphs.join("\n\n")}\n`;
}

/**
 * As many questions and photos as fit, one of each in turn, photos first.
 * @param {string} about
 * @param {readonly string[]} asks
 * @param {readonly Photo[]} wanted
 */
function _short(about, asks, wanted) {
  const named = [...about].length <= LONG_NAME ? about : "what you offer";
  /** @type {string[]} */
  const shown = [];
  /** @type {string[]} */
  const asked = [];
  const briefs = wanted.map(({ brief }) => brief);
  for (let turn = 0; turn < Math.max(asks.length, briefs.length); turn++) {
    for (const own of [shown, asked]) {
      const told = own === shown ? briefs : asks;
      own.push(...told.slice(turn, turn + 1));
      if ([..._text(named, asked, shown)].length > SHORT) {
        own.pop();
      }
    }
  }
  return _text(named, asked, shown);
}

/**
 * A text message with these questions and photos.
 * @param {string} about
 * @param {readonly string[]} asked
 * @param {readonly string[]} shown
 */
function _text(about, asked, shown) {
  const sentences = [`Hello, I am interested in ${about}.`, ...asked];
  if (shown.length > 0) {
    const what = shown.length === 1 ? "a photo" : "photos";
    sentences.push(`Could you send me ${what} of ${listed(shown)}?`);
  }
  return [...sentences, "Thank you!"].join(" ");
}

/**
 * @param {readonly string[]} lines
 */
function _listing(lines) {
  return lines.map((line) => `- ${line}`).join("\n");
}
