/**
 * A length beside a coin: what a round rim gives away, and what it does not.
 *
 * A tilted coin is seen as an ellipse, which tells how far the photo is tilted only
 * roughly if that is little, and never which side is the nearer one. So no tilt is picked:
 * every one is tried, weighed with how round it makes the rim and how people hold a
 * phone, and the length is the mean over all of them. That they differ is part of its
 * error. Where tilt matters, a card is the better scale.
 */

import { circle, gap, offCircle } from "./circle.js";
import { distance, middle } from "./plane.js";
import { ScaleError } from "./refusal.js";
import { spread } from "./spread.js";
import { flattened, stepFor, tilts } from "./tilt.js";

/** @typedef {import("./card.js").Ends} Ends */
/** @typedef {import("./objects.js").Coin} Coin */
/** @typedef {import("./plane.js").Point} Point */
/** @typedef {import("./tilt.js").Photo} Photo */
/** @typedef {import("./tilt.js").Tilt} Tilt */
/** @typedef {{tilt: Tilt, off: number, weight: number}} Tried */

/** A circle has three numbers and its tilt two. */
export const LEAST_POINTS = 5;
/** The widest arc of the rim without a point, in radians: 135 degrees. */
const WIDEST_GAP = 0.75 * Math.PI;
/** A radius of fewer pointing errors than this gives no scale to speak of. */
const LEAST_RADIUS = 20;
/** No rim is rounder in a photo: its edge is not sharp, and the lens not perfect. Ours. */
const ROUND = 0.004;
/** How far from the coin the ends may lie, in diameters. */
const REACH = 5;
/** The tilt beyond which a coin will not do, in degrees. */
const MOST_DEGREES = 20;

/**
 * The length between two ends in the coin's plane, and its standard error from that of
 * all points and from the tilt.
 * @param {Coin} coin @param {readonly Point[]} rim @param {Ends} ends
 * @param {Photo} photo @param {number} pointing
 */
export function besideCoin(coin, rim, ends, photo, pointing) {
  const radius = fit(coin, rim, ends, pointing);
  const off = Math.hypot(pointing / radius, ROUND);
  const tried = weighed(photo, rim, off);
  refuseOdd(tried, rim.length);
  const best = tried.reduce((one, other) => (other.weight > one.weight ? other : one));
  const lengths = tried.map(({ tilt }) => length(coin, photo, tilt, [...ends, ...rim]));
  const mean = average(tried, (i) => lengths[i]);
  const varied = average(tried, (i) => (lengths[i] - mean) ** 2);
  const pointed = spread(
    (moved) => length(coin, photo, best.tilt, moved),
    [...ends, ...rim],
    pointing,
  );
  return { length: mean, error: Math.hypot(Math.sqrt(varied), pointed) };
}

/** @param {Coin} coin @param {Photo} photo @param {Tilt} tilt @param {readonly Point[]} points The ends, then the rim. */
function length({ diameter }, photo, tilt, points) {
  const [from, to, ...rim] = points.map(flattened(photo, tilt));
  return (distance(from, to) / (2 * circle(rim).radius)) * diameter;
}

/**
 * Every tilt with its weight, those without any left out; `off` sums the squares of what
 * the rim is off a circle, in standard errors.
 * @param {Photo} photo @param {readonly Point[]} rim @param {number} error @returns {Tried[]}
 */
function weighed(photo, rim, error) {
  const all = tilts(stepFor(error, rim.length)).map(({ tilt, common }) => {
    const shares = offCircle(rim.map(flattened(photo, tilt)));
    const off = shares.reduce((sum, share) => sum + (share / error) ** 2, 0);
    return { tilt, off, common };
  });
  const least = Math.min(...all.map(({ off }) => off));
  return all
    .map(({ tilt, off, common }) => {
      return { tilt, off, weight: common * Math.exp((least - off) / 2) };
    })
    .filter(({ weight }) => weight > 1e-9);
}

/** @param {readonly Tried[]} tried @param {(i: number) => number} of */
function average(tried, of) {
  let [sum, total] = [0, 0];
  for (const [i, { weight }] of tried.entries()) {
    sum += weight * of(i);
    total += weight;
  }
  return sum / total;
}

/**
 * The radius of the rim in pixels, if the points are fit for one.
 * @param {Coin} coin @param {readonly Point[]} rim @param {Ends} ends @param {number} pointing
 */
function fit({ name }, rim, ends, pointing) {
  if (rim.length < LEAST_POINTS) {
    throw new ScaleError(`A coin needs ${LEAST_POINTS} points on its rim or more.`);
  }
  if (gap(rim) > WIDEST_GAP) {
    throw new ScaleError("Put the points all around the coin's rim, not on one side.");
  }
  const centre = middle(rim);
  const radius = rim.reduce((sum, p) => sum + distance(p, centre), 0) / rim.length;
  if (radius < LEAST_RADIUS * pointing) {
    throw new ScaleError("The coin is too small in this photo; take one from nearer.");
  }
  if (ends.some((end) => distance(end, centre) > 2 * REACH * radius)) {
    throw new ScaleError(
      `This lies too far from the coin (${name}) to be measured by it; lay it nearer.`,
    );
  }
  return radius;
}

/** @param {readonly Tried[]} tried @param {number} count How many points the rim has. */
function refuseOdd(tried, count) {
  const least = Math.min(...tried.map(({ off }) => off));
  // The sum of squares of so many errors is hardly ever larger, as chi-square goes.
  const free = count - LEAST_POINTS;
  if (least > free + 4 * Math.sqrt(2 * free) + 6) {
    throw new ScaleError("These points are not the rim of one round coin; look again.");
  }
  const steep = average(tried, (i) => Math.hypot(...tried[i].tilt));
  if (steep > Math.tan((MOST_DEGREES * Math.PI) / 180)) {
    throw new ScaleError(
      "The photo is taken from too far aside for a coin; hold the phone straight above, " +
        "or use a card.",
    );
  }
}
