/**
 * What is marked in a photo: the points of a scale, then the two ends of a length; how
 * each is called, and the reading that comes of them all. Pure.
 */

import { middle } from "./plane.js";
import { begin, corners, drag, grab, rim } from "./points.js";
import { POINTING, reading, size } from "./size.js";

/** @typedef {import("./objects.js").Card} Card */
/** @typedef {import("./objects.js").Coin} Coin */
/** @typedef {import("./plane.js").Point} Point */
/** @typedef {import("./points.js").Points} Points */
/** @typedef {import("./tilt.js").Photo} Photo */
/** @typedef {Points & {began: readonly Point[]}} Marked With where each point began. */

/** One more than a coin needs; with many more there is too much to move. */
const RIM_POINTS = 6;
const ENDS = 2;
/** The long side of the photo that `POINTING` is told for. */
const LONG_SIDE = 1600;
/** No point is told better than by a pixel, however few of them a photo has. */
const LEAST_POINTING = 1;
const CARD_NAMES = [
  "the first corner of the card, at a long side",
  "the second corner of the card, at the other end of that side",
  "the third corner of the card, next round",
  "the fourth corner of the card",
];
const END_NAMES = ["one end of the length", "the other end of the length"];

/**
 * Points to begin with: the scale in the middle of the photo, the length below it.
 * @param {Photo} photo @param {Card | Coin} scale @returns {Marked}
 */
export function begun(photo, scale) {
  const y = 0.8 * photo.height;
  /** @type {Point[]} */
  const ends = [
    [0.3 * photo.width, y],
    [0.7 * photo.width, y],
  ];
  const state = begin(photo, [...marksOf(photo, scale), ...ends]);
  return { ...state, began: state.points };
}

/** @param {Photo} photo @param {Card | Coin} scale */
const marksOf = (photo, scale) =>
  scale.shape === "card" ? corners(photo, scale) : rim(photo, RIM_POINTS);

/** What each point is. @param {Card | Coin} scale @returns {string[]} */
export function names(scale) {
  const rimNames = Array.from(
    { length: RIM_POINTS },
    (_, i) => `point ${i + 1} of ${RIM_POINTS} on the coin’s rim`,
  );
  return [...(scale.shape === "card" ? CARD_NAMES : rimNames), ...END_NAMES];
}

/** Those of the scale. @param {Pick<Points, "points">} state */
export const marks = ({ points }) => points.slice(0, -ENDS);

/** Those of the length. @param {Pick<Points, "points">} state @returns {readonly [Point, Point]} */
export function ends({ points }) {
  const [from, to] = points.slice(-ENDS);
  return [from, to];
}

/** Whether the point at this place is still where it began. @param {Marked} state @param {number} place */
export function isStill({ points, began }, place) {
  return points[place][0] === began[place][0] && points[place][1] === began[place][1];
}

/** How many have not been moved yet. @param {Marked} state */
export const left = (state) => state.points.filter((_, place) => isStill(state, place)).length;

/**
 * Which point the next tap puts: the chosen one, or the next after it that has not been
 * moved yet; none if all have.
 * @param {Marked} state @returns {number | undefined}
 */
export function due(state) {
  const count = state.points.length;
  const places = state.points.map((_, i) => (state.active + i) % count);
  return places.find((place) => isStill(state, place));
}

/**
 * The point that is due at a spot. It stays the chosen one, so that it can be pushed to
 * where it belongs.
 * @param {Marked} state @param {Point} spot @returns {Marked}
 */
export function put(state, spot) {
  const place = due(state);
  return place === undefined ? state : { ...state, ...drag(grab(state, place), spot) };
}

/**
 * The card with its other side as the long one. One of which no corner was moved is
 * turned in the photo; else the corners stay and change their names. What was moved
 * before cannot be undone then.
 * @param {Marked} state @returns {Marked}
 */
export function turned(state) {
  const untouched = marks(state).every((_, place) => isStill(state, place));
  const change = untouched ? quarter : renamed;
  const [points, began] = [state.points, state.began].map((all) => [
    ...change(marks({ points: all })),
    ...ends({ points: all }),
  ]);
  const { points: inside } = begin(state.photo, points);
  const first = untouched ? inside : began;
  return { ...state, points: inside, began: first, run: "", past: [] };
}

/** @param {readonly Point[]} corners @returns {Point[]} */
const renamed = ([first, ...others]) => [...others, first];

/** @param {readonly Point[]} corners @returns {Point[]} */
function quarter(corners) {
  const [x, y] = middle(corners);
  return corners.map(([u, v]) => [x + y - v, y + u - x]);
}

/**
 * The length that is marked, as a measure's reading in a unit of length. A ScaleError
 * says why there is none.
 * @param {Pick<Points, "photo" | "points">} state @param {Card | Coin} scale
 * @param {string} unit
 */
export function sized(state, scale, unit) {
  const { photo } = state;
  const pointing = pointingIn(photo);
  return reading(size({ scale, marks: marks(state), ends: ends(state), photo, pointing }), unit);
}

/**
 * How far a finger is off, in the photo's own pixels: by the same share of any photo.
 * @param {Photo} photo
 */
export function pointingIn({ width, height }) {
  return Math.max((POINTING * Math.max(width, height)) / LONG_SIDE, LEAST_POINTING);
}
