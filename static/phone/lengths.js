/** Lengths: their units, and which of them a photo tells. A leaf. */

/** Millimetres in the units of length that guides use. @type {ReadonlyMap<string, number>} */
export const MILLIMETRES = new Map([
  ["mm", 1],
  ["cm", 10],
  ["in", 25.4],
]);

/**
 * The longest in millimetres that a photo tells: what lies farther from a card than that
 * allows is not measured by it (scale/card.js).
 */
export const LONGEST = 500;
