/** The circle through some points, and whether they go round it. A leaf but for points. */

import { distance, middle } from "./plane.js";

/** @typedef {import("./plane.js").Point} Point */

/**
 * The circle that fits points all round it best, by the squares of what they are off
 * (Kåsa, A circle fitting procedure and its error analysis, 1976).
 * @param {readonly Point[]} points
 * @returns {{centre: Point, radius: number}}
 */
export function circle(points) {
  const [mx, my] = middle(points);
  let [xx, xy, yy, xz, yz, z] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const [x, y] = [px - mx, py - my];
    const square = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * square;
    yz += y * square;
    z += square;
  }
  const size = 2 * (xx * yy - xy * xy);
  const u = (xz * yy - yz * xy) / size;
  const v = (yz * xx - xz * xy) / size;
  const radius = Math.sqrt(u * u + v * v + z / points.length);
  return { centre: [mx + u, my + v], radius };
}

/** How far each point is off the circle, as a share of its radius. @param {readonly Point[]} points */
export function offCircle(points) {
  const { centre, radius } = circle(points);
  return points.map((point) => distance(point, centre) / radius - 1);
}

/** The widest angle without a point, seen from the middle of all. @param {readonly Point[]} points */
export function gap(points) {
  const [x, y] = middle(points);
  const angles = points.map(([u, v]) => Math.atan2(v - y, u - x)).sort((a, b) => a - b);
  const next = [...angles.slice(1), angles[0] + 2 * Math.PI];
  return Math.max(...angles.map((angle, i) => next[i] - angle));
}
