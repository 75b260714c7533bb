/** How far a figure is off when the points that it is worked out from are. A leaf. */

/** @typedef {import("./plane.js").Point} Point */

/** Small beside a pixel, and large beside what doubles lose at a few thousand of them. */
const STEP = 1e-3;

/**
 * The standard error of what comes of some points, each of which is off by `pointing`
 * pixels both across and down, all independent: the root of the sum of squares of what
 * each coordinate moves it by.
 * @param {(points: readonly Point[]) => number} figure
 * @param {readonly Point[]} points @param {number} pointing
 */
export function spread(figure, points, pointing) {
  /** @param {number} i @param {Point} by */
  const after = (i, [x, y]) =>
    figure(points.map((point, k) => (k === i ? [point[0] + x, point[1] + y] : point)));
  const slopes = points.flatMap((_, i) => [
    (after(i, [STEP, 0]) - after(i, [-STEP, 0])) / (2 * STEP),
    (after(i, [0, STEP]) - after(i, [0, -STEP])) / (2 * STEP),
  ]);
  return pointing * Math.hypot(...slopes);
}
