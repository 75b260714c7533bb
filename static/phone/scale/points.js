/**
 * The points that are put on a photo: which are where, which one is moved, and the way
 * back. Pure; who draws them and who moves them is another's business.
 */

/** @typedef {import("./plane.js").Point} Point */
/** @typedef {import("./tilt.js").Photo} Photo */
/**
 * @typedef {object} Points
 * @property {Photo} photo
 * @property {readonly Point[]} points In pixels of the photo, never outside it.
 * @property {number} active The place of the one that is moved.
 * @property {string} run What goes on: moves of one run are undone together.
 * @property {readonly (readonly Point[])[]} past
 */

const MOST_UNDO = 100;
/** Pixels that an arrow key moves a point by, and with another key held. */
const NEAR = 1;
const FAR = 10;
/** @type {ReadonlyMap<string, Point>} */
const ARROWS = new Map([
  ["ArrowLeft", [-1, 0]],
  ["ArrowRight", [1, 0]],
  ["ArrowUp", [0, -1]],
  ["ArrowDown", [0, 1]],
]);

/** @param {Photo} photo @param {readonly Point[]} points @returns {Points} */
export function begin(photo, points) {
  const inside = points.map((point) => within(photo, point));
  return { photo, points: inside, active: 0, run: "", past: [] };
}

/**
 * Corners to begin with: a card across the middle of the photo, a third as wide.
 * @param {Photo} photo @param {{width: number, height: number}} card @returns {Point[]}
 */
export function corners({ width, height }, card) {
  const along = width / 6;
  const across = (along * card.height) / card.width;
  const [x, y] = [width / 2, height / 2];
  return [
    [x - along, y - across],
    [x + along, y - across],
    [x + along, y + across],
    [x - along, y + across],
  ];
}

/**
 * Points around a rim to begin with, in the middle of the photo, the first on top.
 * @param {Photo} photo @param {number} count @returns {Point[]}
 */
export function rim({ width, height }, count) {
  const radius = Math.min(width, height) / 8;
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [width / 2 + radius * Math.sin(angle), height / 2 - radius * Math.cos(angle)];
  });
}

/** The point at this place taken hold of; its moves from now on are one run. @param {Points} state @param {number} place */
export const grab = (state, place) => ({ ...state, active: place, run: "" });

/** The next point in turn, or with -1 the one before. @param {Points} state @param {1 | -1} by */
export function turn(state, by) {
  const count = state.points.length;
  return grab(state, (state.active + by + count) % count);
}

/** The active point at another spot. @param {Points} state @param {Point} spot @returns {Points} */
export const drag = (state, spot) => moved(state, "drag", spot);

/**
 * The active point moved by an arrow key; the same state for any other key.
 * @param {Points} state @param {string} key @param {boolean} far @returns {Points}
 */
export function nudge(state, key, far) {
  const arrow = ARROWS.get(key);
  if (!arrow) return state;
  const [x, y] = state.points[state.active];
  const by = far ? FAR : NEAR;
  return moved(state, "keys", [x + by * arrow[0], y + by * arrow[1]]);
}

/** The state before the last run; as it is if nothing was moved. @param {Points} state @returns {Points} */
export function undo(state) {
  const points = state.past.at(-1);
  return points ? { ...state, points, run: "", past: state.past.slice(0, -1) } : state;
}

/** @param {Points} state @param {string} run @param {Point} spot @returns {Points} */
function moved(state, run, spot) {
  const { photo, points, active } = state;
  const [was, now] = [points[active], within(photo, spot)];
  if (now[0] === was[0] && now[1] === was[1]) return state;
  const past = run === state.run ? state.past : [...state.past, points].slice(-MOST_UNDO);
  return { ...state, points: points.map((p, i) => (i === active ? now : p)), run, past };
}

/** @param {Photo} photo @param {Point} point @returns {Point} */
const within = ({ width, height }, [x, y]) => [
  Math.min(Math.max(x, 0), width),
  Math.min(Math.max(y, 0), height),
];
