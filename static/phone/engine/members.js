/** Members of a set in words, and what a set was sold as. */

import { called, listed } from "./words.js";

/** @import { Item } from "./find.js" */
/** @import { Guide } from "./guide.js" */

/** So many members in a row are told by the first and the last. */
export const RUN = 3;
export const ENDINGS = ["s", "x", "z", "ch", "sh"];

/**
 * Members as a phrase, those called alike drawn together: "the 5 and 6 irons".
 * @param {Guide} guide
 * @param {readonly string[]} members
 */
export function several(guide, members) {
  /** @type {Map<string, string[]>} */
  const groups = new Map();
  for (const member of members) {
    const name = called(guide, member);
    const space = name.lastIndexOf(" ");
    const own = name.slice(0, Math.max(space, 0));
    const kind = own && name.slice(space + 1);
    groups.set(kind, [...(groups.get(kind) ?? []), own || name]);
  }
  return listed([...groups].map(([kind, own]) => _group(kind, own)));
}

/**
 * Members as a phrase, or that they are all of the items.
 * @param {Guide} guide
 * @param {readonly Item[]} items
 * @param {readonly string[]} members
 */
export function whose(guide, items, members) {
  if (members.length === items.length && items.length > 1) {
    return "the whole set";
  }
  return several(guide, members);
}

/**
 * Whether the member is a stray more often than others: it was bought apart.
 * @param {Guide} guide
 * @param {string} member
 */
export function often_apart(guide, member) {
  if (guide.members === null) {
    return false;
  }
  return (new Map(guide.members.stray_for).get(member) ?? 0) > guide.members.stray;
}

/**
 * The members that a set was sold with and the items lack, in guide order.
 * @param {Guide} guide
 * @param {readonly Item[]} items
 */
export function missing(guide, items) {
  const present = items.map((item) => item.member);
  return _usual(guide).filter((m) => !present.includes(m));
}

/**
 * The members among the items that a set was not sold with, in guide order.
 * @param {Guide} guide
 * @param {readonly Item[]} items
 */
export function surplus(guide, items) {
  if (guide.members === null || guide.members.usual.length === 0) {
    return [];
  }
  const present = items.map((item) => item.member);
  const { all, usual } = guide.members;
  return all.filter((m) => present.includes(m) && !usual.includes(m));
}

/**
 * What a set was sold as, as "3 to 9"; empty if the guide does not say.
 * @param {Guide} guide
 */
export function sold_as(guide) {
  const usual = _usual(guide);
  if (guide.members === null || usual.length === 0) {
    return "";
  }
  const start = guide.members.all.indexOf(usual[0]);
  const run = guide.members.all.slice(start, start + usual.length);
  if (usual.length >= RUN && usual.every((m, i) => m === run[i])) {
    return `${usual[0]} to ${usual[usual.length - 1]}`;
  }
  return listed(usual);
}

/**
 * The items against what a set was sold as; empty if the guide does not say.
 * @param {Guide} guide
 * @param {readonly Item[]} items
 */
export function set_say(guide, items) {
  const sold = sold_as(guide);
  const absent = missing(guide, items);
  const beside = surplus(guide, items);
  if (!sold) {
    return "";
  }
  let say = `Sold as ${sold}: complete`;
  if (absent.length > 0) {
    const verb = absent.length === 1 ? "is" : "are";
    say = `Sold as ${sold}: ${several(guide, absent)} ${verb} missing`;
  }
  if (beside.length > 0) {
    say += `; ${several(guide, beside)} came beside`;
  }
  return `${say}.`;
}

/**
 * What a set was sold as, in the order of all members.
 * @param {Guide} guide
 * @returns {readonly string[]}
 */
function _usual(guide) {
  if (guide.members === null) {
    return [];
  }
  const { all, usual } = guide.members;
  return all.filter((m) => usual.includes(m));
}

/**
 * Members of one kind, as "the 5 iron" or "the 5 and 6 irons".
 * @param {string} kind
 * @param {readonly string[]} own
 */
function _group(kind, own) {
  if (!kind) {
    return `the ${listed(own)}`;
  }
  if (own.length === 1) {
    return `the ${own[0]} ${kind}`;
  }
  const ending = ENDINGS.some((end) => kind.endsWith(end)) ? "es" : "s";
  return `the ${listed(own)} ${kind}${ending}`;
}
