/**
 * A round: an invented specimen, what was looked at on it, and the time that this took.
 * Pure: everything follows from the guide and from what is kept of a round.
 */

import { among, lots } from "../engine/lot.js";
import { specimen } from "../engine/specimen.js";
import { next } from "./boxes.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../engine/find.js").Item} Item */
/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {import("../engine/lot.js").Draw} Draw */
/** @typedef {import("../engine/prepare.js").Tables} Tables */
/**
 * A round that was begun: the seed that its specimen is drawn from, its model year, and
 * the clues that were looked at, in their order.
 * @typedef {object} Begun
 * @property {number} seed
 * @property {number} year
 * @property {readonly string[]} looks
 */
/**
 * What a round is about.
 * @typedef {object} Laid
 * @property {import("../engine/specimen.js").Specimen} specimen
 * @property {ReadonlyMap<string, Reading>} readings
 * @property {Draw} draw goes on where the specimen ended
 */

/** The seconds of a round: a few good looks, and not all of them. */
export const BUDGET = 60;

/**
 * The next round.
 * @param {Guide} guide
 * @param {import("./boxes.js").Rounds} rounds those before
 * @param {number} seed
 * @returns {Begun}
 */
export function begin(guide, rounds, seed) {
  const years = guide.years.map(({ year }) => year);
  return { seed, year: next(years, rounds, lots(seed)), looks: [] };
}

/**
 * The round's specimen; of a set, one of those that it was sold as.
 * @param {Tables} tables
 * @param {Pick<Begun, "seed" | "year">} begun
 * @returns {Laid}
 */
export function laid(tables, { seed, year }) {
  const { years, members } = tables.guide;
  const draw = lots(seed);
  // The first lot was the year's.
  draw();
  const usual = members?.usual ?? [];
  const member = usual.length ? usual[among(draw, usual.length)] : null;
  const y = years.findIndex((each) => each.year === year);
  const drawn = specimen(tables, draw, { y, member });
  return { specimen: drawn, readings: new Map(drawn.readings), draw };
}

/**
 * The tables as practice has them: each model year as likely as any other, since each
 * has one card, and nothing from outside the guide.
 * @param {Tables} tables
 * @returns {Tables}
 */
export function evenly(tables) {
  const { cells, stretches } = tables;
  const prior = Array(cells.length + 1).fill(0);
  for (const [start, stop] of stretches) {
    prior.fill(1 / stretches.length / (stop - start), start, stop);
  }
  return Object.freeze({ ...tables, prior });
}

/**
 * The object as far as these looks have shown it.
 * @param {Laid} laid
 * @param {readonly string[]} looks
 * @returns {Item}
 */
export function shown({ specimen: { member }, readings }, looks) {
  const seen = looks.map((clue) => /** @type {const} */ ([clue, readings.get(clue) ?? null]));
  return { readings: seen, gone: [], member };
}

/** The seconds that are left. @param {Guide} guide @param {readonly string[]} looks */
export function left({ clues }, looks) {
  const taken = clues.filter(({ id }) => looks.includes(id));
  return taken.reduce((seconds, clue) => seconds - clue.seconds, BUDGET);
}

/** The clues that there is still time for. @param {Guide} guide @param {readonly string[]} looks */
export function open(guide, looks) {
  const seconds = left(guide, looks);
  return guide.clues.filter((clue) => !looks.includes(clue.id) && clue.seconds <= seconds);
}

/**
 * The round after one look more; the same where that is not possible.
 * @param {Guide} guide
 * @param {Begun} begun
 * @param {string} clue
 */
export function look(guide, begun, clue) {
  const possible = open(guide, begun.looks).some(({ id }) => id === clue);
  return possible ? { ...begun, looks: [...begun.looks, clue] } : begun;
}
