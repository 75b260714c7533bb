/** Points in a photo and in the flat thing that it shows: the homography of four corners. */

/** @typedef {readonly [number, number]} Point */
/** @typedef {readonly [Point, Point, Point, Point]} Corners In order around. */
/** @typedef {readonly number[]} Homography Nine numbers, row by row. */

/**
 * From the photo to a rectangle of the given sides, whose corners the four points are in
 * order: the first two along the width.
 *
 * Four corners settle it, so nothing is fitted: the way from the unit square to four
 * points is known in closed form (Heckbert, Fundamentals of Texture Mapping and Image
 * Warping, 1989, section 2.2.3), and here it is turned round. It needs corners of which
 * no three lie in a line.
 * @param {Corners} corners @param {{width: number, height: number}} sides
 * @returns {Homography}
 */
export function homography(corners, { width, height }) {
  const [a, b, c, d, e, f, g, h, i] = inverse(fromSquare(corners));
  return [a * width, b * width, c * width, d * height, e * height, f * height, g, h, i];
}

/**
 * The point of the plane that is seen at a point of the photo; null if that is on the
 * horizon of the plane or beyond it.
 * @param {Homography} map @param {Point} point @returns {Point | null}
 */
export function mapped([a, b, c, d, e, f, g, h, i], [x, y]) {
  const nearness = g * x + h * y + i;
  if (!(nearness > 0)) return null;
  return [(a * x + b * y + c) / nearness, (d * x + e * y + f) / nearness];
}

/** @param {Point} one @param {Point} other */
export const distance = ([x, y], [u, v]) => Math.hypot(x - u, y - v);

/** Twice the area that two ways span, positive for a turn from x to y. @param {Point} one @param {Point} other */
export const cross = ([x, y], [u, v]) => x * v - y * u;

/** The way from one point to another. @param {Point} from @param {Point} to @returns {Point} */
export const way = ([x, y], [u, v]) => [u - x, v - y];

/** The mean of some points. @param {readonly Point[]} points @returns {Point} */
export function middle(points) {
  const [x, y] = points.reduce(([u, v], [x, y]) => [u + x, v + y], [0, 0]);
  return [x / points.length, y / points.length];
}

/** From the unit square to the corners; what is nearer is scaled by more. @param {Corners} corners @returns {Homography} */
function fromSquare([p, q, r, s]) {
  const [right, left] = [way(r, q), way(r, s)];
  /** @type {Point} */
  const bent = [p[0] - q[0] + r[0] - s[0], p[1] - q[1] + r[1] - s[1]];
  const area = cross(right, left);
  const g = cross(bent, left) / area;
  const h = cross(right, bent) / area;
  const [across, down] = [way(p, q), way(p, s)];
  return [
    ...[across[0] + g * q[0], down[0] + h * s[0], p[0]],
    ...[across[1] + g * q[1], down[1] + h * s[1], p[1]],
    ...[g, h, 1],
  ];
}

/** @param {Homography} matrix @returns {Homography} */
function inverse([a, b, c, d, e, f, g, h, i]) {
  const size = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    ...[e * i - f * h, c * h - b * i, b * f - c * e],
    ...[f * g - d * i, a * i - c * g, c * d - a * f],
    ...[d * h - e * g, b * g - a * h, a * e - b * d],
  ].map((x) => x / size);
}
