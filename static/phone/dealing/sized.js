/** What the points on a photo come to for a question: a size to take, or why none. Pure. */

import { due, left, names, sized } from "../scale/marked.js";
import { range, sizeSaid, written } from "../view/measure.js";

/** @typedef {import("../engine/find.js").Measured} Measured */
/** @typedef {import("../engine/guide.js").Measure} Measure */
/** @typedef {import("../scale/marked.js").Marked} Marked */
/** @typedef {import("../scale/objects.js").Card | import("../scale/objects.js").Coin} Scale */
/**
 * @typedef {object} Result
 * @property {string} todo what has yet to be done
 * @property {string} say the size
 * @property {string} wrong why there is none, or why it cannot be taken
 * @property {Measured | null} reading that the question takes
 */

/** @type {Result} */
export const NONE = Object.freeze({ todo: "", say: "", wrong: "", reading: null });

const PUT = "All points are put: drag one that is off, or push it with the buttons.";
const ALL = "Put each point where it belongs; the size appears then.";

/** @param {Marked} state @param {Scale} scale @param {Measure} kind @returns {Result} */
export function result(state, scale, kind) {
  const count = left(state);
  if (count) return { ...NONE, todo: count === state.points.length ? ALL : still(count) };
  try {
    return judged(sized(state, scale, kind.unit), kind);
  } catch (error) {
    const { name, message } = /** @type {Error} */ (error);
    if (name !== "ScaleError") throw error;
    return { ...NONE, wrong: message };
  }
}

/** What a tap on the photo does now. @param {Marked} state @param {Scale} scale */
export function tapped(state, scale) {
  const place = due(state);
  return place === undefined ? PUT : `The next tap puts ${names(scale)[place]}.`;
}

/** @param {Measured | null} reading @param {Measure} kind @returns {Result} */
function judged(reading, kind) {
  if (!reading) return { ...NONE, wrong: `A photo does not tell ${kind.unit}.` };
  const { value, error } = reading;
  const say = `${sizeSaid(kind, reading)} ${kind.unit}`;
  const within = `${range(kind)} that this question takes`;
  if (value < kind.low || value > kind.high) {
    const wrong = `${written(kind, value)} is outside the ${within}. Look at the points again.`;
    return { ...NONE, say, wrong };
  }
  // A guide takes no error that is wider than its own range.
  if (error > kind.high - kind.low) {
    const wrong = `That is too uncertain for the ${within}; take a photo from nearer.`;
    return { ...NONE, say, wrong };
  }
  return { ...NONE, say, reading };
}

/** @param {number} count */
const still = (count) =>
  count === 1
    ? "One point is still where it began."
    : `${count} points are still where they began.`;
