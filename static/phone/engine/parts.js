/**
 * The forest of parts: who follows whom, and how often each is replaced.
 *
 * Model page: "Parts: original or replaced".
 */

/** @import { Guide } from "./guide.js" */

/**
 * Parts by their place in the guide.
 *
 * `rates[p]` is the share replaced while the parent is original and while it is
 * replaced (twice the same for a root); `order` has parents before followers.
 * @typedef {object} Forest
 * @property {readonly (number | null)[]} parent
 * @property {readonly (readonly [number, number])[]} rates
 * @property {readonly number[]} order
 */

/**
 * The forest of a guide whose parts follow in no circle.
 * @param {Guide} guide
 * @returns {Forest}
 */
export function forest(guide) {
  const place = new Map(guide.parts.map((part, p) => [part.id, p]));
  const parent = guide.parts.map((part) =>
    part.follows === null ? null : /** @type {number} */ (place.get(part.follows)),
  );
  const rates = guide.parts.map((part) => {
    const after =
      part.follows === null ? part.replaced : Math.max(part.share, part.replaced);
    return /** @type {[number, number]} */ ([part.replaced, after]);
  });
  /** @type {number[]} */
  const order = [];
  while (order.length < parent.length) {
    const ready = parent.flatMap((above, p) =>
      !order.includes(p) && (above === null || order.includes(above)) ? [p] : [],
    );
    order.push(...ready);
  }
  return Object.freeze({ parent, rates, order });
}

/**
 * Prior of two parts' states: both original, only `q` replaced, only `p`, both.
 * @param {Forest} forest
 * @param {number} p
 * @param {number} q
 * @returns {[number, number, number, number]}
 */
export function pair(forest, p, q) {
  if (p === q) {
    const replaced = _replaced(forest, p);
    return [1 - replaced, 0, 0, replaced];
  }
  /** @type {[number, number, number, number]} */
  const joined = [0, 0, 0, 0];
  const above = _line(forest, p);
  const line = [...above, ..._line(forest, q).filter((a) => !above.includes(a))];
  for (let states = 0; states < 2 ** line.length; states++) {
    const state = new Map(line.map((a, i) => [a, (states >> i) & 1]));
    const both = 2 * (state.get(p) ?? 0) + (state.get(q) ?? 0);
    joined[both] += _prior(forest, state);
  }
  return joined;
}

/**
 * Probability of the states (0 original, 1 replaced) of parts and ancestors.
 * @param {Forest} forest
 * @param {Map<number, number>} state
 */
function _prior(forest, state) {
  let share = 1;
  for (const p of forest.order) {
    if (state.has(p)) {
      const parent = forest.parent[p];
      const rate = forest.rates[p][parent === null ? 0 : (state.get(parent) ?? 0)];
      share *= state.get(p) ? rate : 1 - rate;
    }
  }
  return share;
}

/**
 * @param {Forest} forest
 * @param {number} p
 * @returns {number}
 */
function _replaced(forest, p) {
  const parent = forest.parent[p];
  const [original, replaced] = forest.rates[p];
  if (parent === null) {
    return original;
  }
  const above = _replaced(forest, parent);
  return (1 - above) * original + above * replaced;
}

/**
 * The part and those that it follows, the root first.
 * @param {Forest} forest
 * @param {number} p
 * @returns {number[]}
 */
function _line(forest, p) {
  const parent = forest.parent[p];
  return parent === null ? [p] : [..._line(forest, parent), p];
}
