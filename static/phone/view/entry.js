/** One find of the log: its verdict at the time, and what can be done with it. */

import { capital } from "../engine/words.js";
import { whichSay } from "../log/which.js";
import { element, joined, piece, slot } from "./dom.js";
import { day } from "./reading.js";

/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("./findsrow.js").Shelf & {isHere: boolean}} Known */

/** So much of a time is its day. */
const DAY = 10;
const SAME = "Today’s guide says the same, to a whole percent.";

/** The screen without its find: drawn once for each, and filled from then on. */
export const entryFrame = () => piece("entry");

/** The screen of a find that is not there. */
export const drawNoEntry = () => piece("no-entry");

/**
 * Fills in the verdict at the time, and what goes with the find if it is deleted.
 * @param {HTMLElement} root
 * @param {Entry} entry
 * @param {Known} known whether its guide is on this phone, and how it is called
 */
export function fillEntry(root, entry, { titled, named, invented, isHere }) {
  const { guide, verdict, photos } = entry;
  slot(root, "heading").textContent = named(entry);
  slot(root, "invented").hidden = !invented(guide);
  slot(root, "say").textContent = joined(`${capital(verdict.say)}.`);
  slot(root, "flags").replaceChildren(...verdict.flags.map((say) => element("li", "", say)));
  slot(root, "flagged").hidden = verdict.flags.length === 0;
  slot(root, "judged").textContent = judged(entry, titled(guide));
  slot(root, "guide-ways").hidden = !isHere;
  slot(root, "no-guide").hidden = isHere;
  slot(root, "loss").textContent = loss(photos.length);
}

/**
 * Which member it is, or which members, whatever the find is called.
 * @param {HTMLElement} root
 * @param {Entry["find"]} find
 * @param {import("../shelf.js").Guide | null} guide once it is there
 */
export function fillWhich(root, find, guide) {
  const say = whichSay(find, guide);
  slot(root, "which").hidden = !say;
  slot(root, "which").textContent = capital(say);
}

/** @param {Entry} entry @param {string} guide */
function judged({ judged, version }, guide) {
  const known = version.updated ? `, as known on ${day(version.updated)}` : "";
  return `Judged on ${day(judged.slice(0, DAY))} with the guide “${guide}”${known}.`;
}

/** @param {number} photos */
function loss(photos) {
  const many = photos === 1 ? " and its photo" : photos ? ` and its ${photos} photos` : "";
  return `This deletes the find${many} for good.`;
}

/**
 * Asks before another find that lies open is forgotten; nothing to lose ends the question.
 * @param {HTMLElement} root
 * @param {string} loss
 */
export function askOver(root, loss) {
  const say =
    `Another find lies open with this guide (${loss}), and it is not in your finds. ` +
    "To open this one here is to forget that one.";
  slot(root, "over").replaceChildren(...(loss ? [piece("entry-over", { say })] : []));
  if (loss) slot(root, "over-say").focus();
  else slot(root, "reopen").focus();
}

/**
 * What today's guide says, beside what was said at the time.
 * @param {HTMLElement} root
 * @param {object} today
 * @param {string} today.say
 * @param {string} today.updated
 * @param {readonly string[]} today.changes
 * @param {readonly string[]} today.lost
 */
export function fillAgain(root, { say, updated, changes, lost }) {
  const listed = [...changes, ...lost].map((each) => element("li", "", each));
  const made = piece("entry-again", {
    today: `${capital(say)}.`,
    of: updated ? `By the guide as known on ${day(updated)}.` : null,
    same: changes.length ? null : SAME,
    changes: listed,
  });
  slot(root, "again").replaceChildren(made);
  slot(made, "title").focus();
}

/** @param {HTMLElement} root */
export const dropAgain = (root) => slot(root, "again").replaceChildren();

/**
 * What has happened, and the way back where there is one.
 * @param {HTMLElement} root
 * @param {string} say
 * @param {boolean} [undo]
 */
export function sayOn(root, say, undo = false) {
  slot(root, "said").textContent = say;
  slot(root, "undo").hidden = !undo;
}
