/**
 * Which model year comes next, so that what one gets wrong comes back sooner: the boxes
 * of S. Leitner ("So lernt man lernen", 1972), with a card a model year. Pure.
 *
 * A card that was right goes one box on, one that was wrong back into the first. His
 * boxes are 1, 2, 5, 8 and 14 cm long and come up when they are full, so a card waits
 * the longer the longer its box is; ours wait two rounds a centimetre. That is fixed
 * here, and two rounds are the least, so that no year follows at once on itself.
 *
 * What is due comes in every second round on average, and any year in the others: whoever
 * remembers what went wrong must not know the answer by that.
 */

import { among } from "../engine/lot.js";

/** How many rounds a card waits in each box: one of the first is due in the second round from now. */
export const GAPS = [2, 4, 10, 16, 28];

/** @typedef {{year: number, box: number, due: number}} Card Due from this round on; the first round is round 0. */
/** @typedef {readonly {year: number, said: number}[]} Rounds That were played, in their order. */

/**
 * A card a model year, after all rounds. A year that was never asked lies in the first
 * box and is due; a round of a year that the guide no longer has leaves no card.
 * @param {readonly number[]} years
 * @param {Rounds} rounds
 * @returns {Card[]}
 */
export function cards(years, rounds) {
  const found = new Map(years.map((year) => [year, { year, box: 0, due: 0 }]));
  for (const [round, { year, said }] of rounds.entries()) {
    const card = found.get(year);
    if (!card) continue;
    card.box = said === year ? Math.min(card.box + 1, GAPS.length - 1) : 0;
    card.due = round + GAPS[card.box];
  }
  return [...found.values()];
}

/**
 * The cards of which one is drawn in this round, all alike: those that are due, or that
 * which is due soonest. Never the year before once more, while there is another.
 * @param {readonly Card[]} all
 * @param {Rounds} rounds those before
 */
export function due(all, rounds) {
  const last = rounds.at(-1)?.year;
  const others = all.filter(({ year }) => year !== last);
  const open = others.length ? others : all;
  const soonest = Math.min(...open.map((card) => card.due));
  return open.filter((card) => card.due <= Math.max(rounds.length, soonest));
}

/** The share of the rounds in which a card comes that is due. */
const BY_BOX = 0.5;

/**
 * The model year of the next round.
 * @param {readonly number[]} years
 * @param {Rounds} rounds
 * @param {import("../engine/lot.js").Draw} draw
 */
export function next(years, rounds, draw) {
  const last = rounds.at(-1)?.year;
  const others = years.filter((year) => year !== last);
  const waiting = due(cards(years, rounds), rounds).map(({ year }) => year);
  // One lot for both, so that whoever draws on begins at the same place.
  const lot = draw();
  const isBox = lot < BY_BOX || !others.length;
  const rest = lot < BY_BOX ? lot / BY_BOX : (lot - BY_BOX) / (1 - BY_BOX);
  const open = isBox ? waiting : others;
  return open[among(() => rest, open.length)];
}
