/** Members of a set in words: one by its name, several as runs of their numbers. */

import { called, listed } from "../engine/words.js";

/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Kept} Kept */

/** From so many in a row on, the ones between are left out. */
const RUN = 3;

/** A member as a sentence names it; the object where its number is not known. @param {Guide} guide @param {string | null} member */
export function the(guide, member) {
  return member === null ? "the object" : `the ${called(guide, member)}`;
}

/**
 * Several members by their ids: 3 to 9 and W.
 * @param {Guide} guide
 * @param {readonly (string | null)[]} members
 */
export function runs(guide, members) {
  const all = guide.members?.all ?? [];
  /** @type {string[][]} */
  const found = [];
  for (const [place, id] of all.entries()) {
    if (!members.includes(id)) continue;
    const run = found.at(-1);
    if (run && run.at(-1) === all[place - 1] && numbered(id)) run.push(id);
    else found.push([id]);
  }
  return listed(found.flatMap((run) => (run.length < RUN ? run : [`${run[0]} to ${run.at(-1)}`])));
}

/** Only numbers are counted on. @param {string} id */
const numbered = (id) => /^\d+$/.test(id);

/** Whether a member is often apart from its set, so that a stray is no alarm. @param {Guide} guide @param {string} member */
export function isOftenApart({ members }, member) {
  const share = new Map(members?.stray_for ?? []).get(member) ?? 0;
  return share > (members?.stray ?? 0);
}
