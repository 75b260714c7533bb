/**
 * Red flags of a set: its own, and those of its members drawn together.
 *
 * The sentences are neutral, as those of `flags`.
 */

import { flag, is_replaced, overall, raised } from "./flags.js";
import { missing, often_apart, several, sold_as, whose } from "./members.js";
import { ranked } from "./one.js";
import { looked_on } from "./saying.js";
import { largest, round9 } from "./special.js";
import { is_stray, stray_say } from "./strays.js";
import { called, likely, percent } from "./words.js";

/** @import { ClaimVerdict, Flag } from "./find.js" */
/** @import { Raised } from "./flags.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Conflict } from "./reasons.js" */
/** @import { Case } from "./saying.js" */
/** @import { SetPosterior } from "./sets.js" */

/**
 * What an item says alone, and which of its readings disagree.
 * @typedef {readonly [Posterior, readonly Conflict[]]} Apart
 */
/**
 * One flag as it was raised on each of some members.
 * @typedef {[string, Raised][]} Owned
 */

/**
 * All red flags of a set: the answer's, strays, what its members raise, what
 * happened to the whole set, and who is missing.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {readonly Apart[]} apart
 * @param {ClaimVerdict | null} weighed
 * @returns {Flag[]}
 */
export function set_flags(told, whole, apart, weighed) {
  const own = _drawn_together(told, whole, apart);
  return [
    ...overall(whole, weighed),
    ..._strays(told, whole),
    ...own.filter(({ kind }) => kind === "disagree"),
    ..._whole_set(told, whole),
    ...own.filter(({ kind }) => ["gone", "replaced"].includes(kind)),
    ..._missing(told),
    ...own.filter(({ kind }) => kind === "guide"),
  ];
}

/**
 * Of each part whether it is said to have been replaced on the whole set; who has
 * looked at one member alone is told nothing of the others.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @returns {boolean[]}
 */
export function at_once(told, whole) {
  return whole.whole_set.map(
    (share, p) => is_replaced(share) && looked_on(told.tables, told.items, p) > 1,
  );
}

/**
 * Strays, without those that were often bought apart: they are no alarm.
 * @param {Case} told
 * @param {SetPosterior} whole
 */
function _strays(told, whole) {
  const guide = told.tables.guide;
  const found = [];
  for (const [i, item] of told.items.entries()) {
    const member = String(item.member);
    if (is_stray(told, whole, i) && !often_apart(guide, member)) {
      const say = stray_say(told, whole, i);
      const ask = `Has the ${called(guide, member)} always been with this set?`;
      found.push(flag("stray", [], say, ask, [member]));
    }
  }
  return found;
}

/**
 * @param {Case} told
 * @param {SetPosterior} whole
 */
function _whole_set(told, whole) {
  const members = told.items.map((item) => String(item.member));
  const found = [];
  const said = at_once(told, whole);
  for (const [p, part] of told.tables.guide.parts.entries()) {
    const share = whole.whole_set[p];
    if (said[p]) {
      const sure = `${likely(share)}, ${percent(share)}`;
      const say = `Someone probably replaced the ${part.name} on the whole set at once: ${sure}.`;
      const ask = `Did anyone replace the ${part.name} on the whole set, and when?`;
      found.push(flag("whole-set", [part.id], say, ask, members));
    }
  }
  return found;
}

/**
 * One flag for all that are missing, without those that were often bought apart.
 * @param {Case} told
 */
function _missing(told) {
  const guide = told.tables.guide;
  const absent = missing(guide, told.items).filter((m) => !often_apart(guide, m));
  if (absent.length === 0) {
    return [];
  }
  const names = several(guide, absent);
  const verb = absent.length === 1 ? "is" : "are";
  const say = `A set was sold as ${sold_as(guide)}, and ${names} ${verb} not among these.`;
  return [flag("missing", [], say, `Do you still have ${names}?`, absent)];
}

/**
 * The flags of all members, equal ones as one that names them all.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {readonly Apart[]} apart
 */
function _drawn_together(told, whole, apart) {
  /** @type {Map<string, Owned>} */
  const groups = new Map();
  for (const [i, item] of told.items.entries()) {
    for (const each of _of_member(told, whole, i, apart[i])) {
      // A part may be replaced more probably on one member than on the next.
      const same = each.kind === "replaced" ? "" : each.say.join("");
      const key = JSON.stringify([each.kind, each.about, same]);
      groups.set(key, [...(groups.get(key) ?? []), [String(item.member), each]]);
    }
  }
  return [...groups.values()].map((owned) => _drawn(told, owned));
}

/**
 * A member's flags, without what is explained by a replacement on the whole set,
 * and with its worst disagreement alone.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {number} i
 * @param {Apart} apart
 */
function _of_member(told, whole, i, apart) {
  const [posterior, clashes] = apart;
  const tables = told.tables;
  const said = at_once(told, whole);
  const unexplained = clashes.filter(
    ({ first, second }) =>
      !said[tables.part_of[first]] && !said[tables.part_of[second]],
  );
  const explained = tables.guide.parts.filter((_, p) => said[p]).map(({ id }) => id);
  const y = is_stray(told, whole, i) ? ranked(posterior.years)[0] : told.first;
  return raised(tables, told.items[i], posterior, unexplained.slice(0, 1), [y, y]).filter(
    (each) => each.kind !== "replaced" || !explained.includes(each.about[0]),
  );
}

/**
 * One flag of the members that raised it.
 * @param {Case} told
 * @param {Owned} owned
 */
function _drawn(told, owned) {
  const members = owned.map(([member]) => member);
  const owner = whose(told.tables.guide, told.items, members);
  const flags = owned.map(([, each]) => each);
  // Of parts that are replaced more or less probably, what holds for all of them.
  const least = largest(flags, (each) => -round9(each.share));
  const [before, after] = least.say;
  const [asked, ending] = least.ask;
  if (least.kind === "guide") {
    const asks = ending ? `${ending} (${owner})` : "";
    return flag("guide", least.about, `On ${owner}: ${after}`, asks, members);
  }
  const differ = flags.some((each) => each.say[1] !== after);
  return flag(
    least.kind,
    least.about,
    `${before} of ${owner}${differ ? after.replace(/\.$/, ", or more.") : after}`,
    `${asked} of ${owner}${ending}`,
    members,
  );
}
