/** A size off a photo: points on a scale and on an object in, a measure's reading out. */

import { MILLIMETRES } from "../lengths.js";
import { besideCard } from "./card.js";
import { besideCoin } from "./coin.js";
import { ScaleError } from "./refusal.js";

/** @typedef {import("./objects.js").Card} Card */
/** @typedef {import("./objects.js").Coin} Coin */
/** @typedef {import("./plane.js").Point} Point */
/** @typedef {import("./card.js").Ends} Ends */
/** @typedef {import("../engine/find.js").Measured} Measured */
/** @typedef {{length: number, error: number}} Size In millimetres. */

/**
 * How far a finger under a magnifier is off, across as well as down, in pixels of a photo
 * of 1600. Ours; it is a standard error, so one point in three is further off.
 */
export const POINTING = 1.5;

/** A length that is not so many times its error is none. */
const LEAST_LENGTH = 3;

/**
 * The length between two ends that lie in one plane with a card or a coin, and its
 * standard error: from the pointing error of all points, from the scale's own size, and
 * beside a coin from the tilt. That the scale lies lower or higher than the object is not
 * in it: of two things a tenth of the camera's distance apart, the nearer looks a ninth
 * too large.
 *
 * `marks` are the four corners of the card, the first two along a long side, or at least
 * five points around the rim of the coin. `photo` is the whole photo in pixels, not cut.
 * A ScaleError says why there is no size.
 * @param {object} asked
 * @param {Card | Coin} asked.scale
 * @param {readonly Point[]} asked.marks
 * @param {Ends} asked.ends
 * @param {import("./tilt.js").Photo} asked.photo
 * @param {number} [asked.pointing]
 * @returns {Size}
 */
export function size({ scale, marks, ends, photo, pointing = POINTING }) {
  const { length, error } =
    scale.shape === "card"
      ? besideCard(scale, marks, ends, pointing)
      : besideCoin(scale, marks, ends, photo, pointing);
  const whole = scale.shape === "card" ? scale.width : scale.diameter;
  const sure = Math.hypot(error, (length * scale.doubt) / whole);
  if (length < LEAST_LENGTH * sure) {
    throw new ScaleError(
      "The two ends are too near to one another for this photo; take one from nearer.",
    );
  }
  return { length, error: sure };
}

/**
 * The size as a measure's reading: the error with two figures, the value as fine.
 * Null if the unit is none of length.
 * @param {Size} size @param {string} unit @returns {Measured | null}
 */
export function reading({ length, error }, unit) {
  const millimetres = MILLIMETRES.get(unit);
  if (!millimetres) return null;
  const places = 1 - Math.floor(Math.log10(error / millimetres));
  /** @param {number} mm */
  const rounded = (mm) => Number((mm / millimetres).toFixed(Math.min(Math.max(places, 0), 9)));
  return { value: rounded(length), error: rounded(error) };
}
