/**
 * An option as one object bears it: with its own number, and without a code that another
 * clue is there to read. Pure.
 */

/** @typedef {import("../shelf.js").Guide} Guide */

/**
 * The option's drawing on this member; its usual one where all bear it alike.
 * @param {Pick<Guide, "own">} guide
 * @param {string} clue
 * @param {Pick<import("../engine/guide.js").Option, "id" | "picture">} option
 * @param {string | null} member
 */
export function borne({ own }, clue, { id, picture }, member) {
  const rows = own.filter((row) => row[0] === clue && row[1] === id);
  const of = (/** @type {string | null} */ whose) => rows.find((row) => row[2] === whose)?.[3];
  return of(member) ?? of(null) ?? picture;
}
