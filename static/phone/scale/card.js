/** A length beside a card: its four corners give the plane, tilt and all. */

import { cross, distance, homography, mapped, way } from "./plane.js";
import { ScaleError } from "./refusal.js";
import { spread } from "./spread.js";

/** @typedef {import("./objects.js").Card} Card */
/** @typedef {import("./plane.js").Corners} Corners */
/** @typedef {import("./plane.js").Point} Point */
/** @typedef {readonly [Point, Point]} Ends */

/** A side of fewer pointing errors than this gives no scale to speak of. */
const LEAST_SIDE = 30;
/** Corners that are nearer to one another, in pointing errors, are one. */
const SAME = 3;
/** The sine of the smallest corner that is one, six degrees. */
const LEAST_SINE = 0.1;
/** How far from the middle of the card the ends may lie, in long sides. */
const REACH = 3;

/**
 * The length between two ends in the card's plane, and its standard error from that of
 * all six points.
 *
 * The corners go around the card, the first two along a long side. A card has round
 * corners: its corner is where its straight sides would meet.
 * @param {Card} card @param {readonly Point[]} marks @param {Ends} ends
 * @param {number} pointing
 */
export function besideCard(card, marks, ends, pointing) {
  const corners = fit(card, marks, pointing);
  refuseFar(card, corners, ends);
  const points = [...corners, ...ends];
  const error = spread((moved) => length(card, moved), points, pointing);
  return { length: length(card, points), error };
}

/** @param {Card} card @param {readonly Point[]} points The corners, then the ends. */
function length(card, [a, b, c, d, from, to]) {
  const map = homography([a, b, c, d], card);
  const [one, other] = [mapped(map, from), mapped(map, to)];
  return one && other ? distance(one, other) : Infinity;
}

/**
 * The marks as corners of a card, or why they cannot be.
 * @param {Card} card @param {readonly Point[]} marks @param {number} pointing @returns {Corners}
 */
function fit(card, marks, pointing) {
  const wrong =
    marks.length === 4 ? unfit(card, marks, pointing) : "A card needs its four corners.";
  if (wrong) throw new ScaleError(wrong);
  return /** @type {any} */ (marks);
}

/** @param {Card} card @param {readonly Point[]} corners @param {number} pointing */
function unfit(card, corners, pointing) {
  const sides = corners.map((corner, i) => way(corner, corners[(i + 1) % 4]));
  const lengths = sides.map(([x, y]) => Math.hypot(x, y));
  const diagonals = [0, 1].map((i) => distance(corners[i], corners[i + 2]));
  if (Math.min(...lengths, ...diagonals) < SAME * pointing) {
    return "Two of the corners lie on one another; put one on each corner of the card.";
  }
  const turns = sides.map((side, i) => {
    const next = (i + 1) % 4;
    return cross(side, sides[next]) / (lengths[i] * lengths[next]);
  });
  if (turns.some((sine) => Math.abs(sine) < LEAST_SINE)) {
    return "Three of the corners lie in a line; put one on each corner of the card.";
  }
  const right = turns.filter((sine) => sine > 0).length;
  if (right === 2) {
    return "The corners are crossed; go round the card from one to the next.";
  }
  if (right % 4) {
    return "One corner lies between the other three, as on no card; move it out.";
  }
  if (Math.min(...lengths) < LEAST_SIDE * pointing) {
    return "The card is too small in this photo; take one from nearer.";
  }
  return turned(card, lengths);
}

/**
 * A long side that looks like a short one, or the other way round: the card was marked
 * from the wrong corner, or is seen from more than 51 degrees aside. The two look alike.
 * @param {Card} card @param {readonly number[]} lengths
 */
function turned({ width, height }, [along, across, back, home]) {
  const ratio = (along + back) / (across + home);
  if (1 <= ratio && ratio <= (width / height) ** 2) return "";
  return (
    "The card is marked from the wrong corner, or seen from too far aside; " +
    "begin along a long side, with the phone above the card."
  );
}

/** @param {Card} card @param {Corners} corners @param {Ends} ends */
function refuseFar(card, corners, ends) {
  const map = homography(corners, card);
  /** @type {Point} */
  const centre = [card.width / 2, card.height / 2];
  for (const end of ends) {
    const place = mapped(map, end);
    if (!place || distance(place, centre) > REACH * card.width) {
      throw new ScaleError(
        "This lies too far from the card to be measured by it; lay the card nearer.",
      );
    }
  }
}
