/**
 * A plane before a phone's camera, and how it may be tilted.
 *
 * A tilt is the slope of the plane's depth across and down the photo. What is assumed of
 * the camera: square pixels, the photo not cut, and a field of view as phones have it.
 */

/** @typedef {import("./plane.js").Point} Point */
/** @typedef {readonly [number, number]} Tilt */
/** @typedef {{width: number, height: number}} Photo In pixels. */

/**
 * The focal length in long sides of the photo: that of a 27 mm lens on 36 mm film, which
 * the main cameras of phones lie within a sixth of. Ours.
 */
const FOCAL = 0.75;
/** How people hold a phone above a table that mean to: off by so much each way. Ours. */
const HELD = Math.tan((8 * Math.PI) / 180);
/** What a coin can still be used at, and some room beyond it. */
const MOST = Math.tan((30 * Math.PI) / 180);

/**
 * The plane with a tilt as it is seen through the photo, in a measure of its own.
 * @param {Photo} photo @param {Tilt} tilt @returns {(point: Point) => Point}
 */
export function flattened({ width, height }, [a, b]) {
  const focal = FOCAL * Math.max(width, height);
  // Two ways in the plane, square to one another and of length 1.
  const [first, steep] = [Math.hypot(1, a), Math.hypot(1, a, b)];
  return ([x, y]) => {
    const [u, v] = [(x - width / 2) / focal, (y - height / 2) / focal];
    const near = 1 + a * u + b * v;
    return [
      (u - a) / (first * near),
      ((1 + a * a) * v - b * (a * u + 1)) / (first * steep * near),
    ];
  };
}

/**
 * All tilts to think of, as a grid with a step, each with how common it is.
 * @param {number} step @returns {{tilt: Tilt, common: number}[]}
 */
export function tilts(step) {
  const count = Math.ceil(MOST / step);
  const along = Array.from({ length: 2 * count + 1 }, (_, i) => (i - count) * step);
  return along.flatMap((a) =>
    along
      .filter((b) => Math.hypot(a, b) <= MOST)
      .map((b) => ({ tilt: [a, b], common: Math.exp(-(a * a + b * b) / (2 * HELD ** 2)) })),
  );
}

/**
 * A step fine enough where a rim of `count` points, each off by a share `off` of the
 * radius, gives the tilt away best. A rim that is tilted by `t` is off a circle by
 * `t² / 4` twice around, which so many points tell with the error `off √(2 / count)`.
 * @param {number} off @param {number} count
 */
export const stepFor = (off, count) =>
  Math.min(0.03, (2 * off * Math.sqrt(2 / count)) / MOST);
