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
 * replaced (of a root the first counts); `order` has parents before followers.
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
 * What was replaced on the whole set, how probable that was beforehand, and how
 * often the other parts are then replaced, member by member.
 *
 * In `forest` a part that was replaced on the whole set stands alone, and a follower
 * of such a part falls back to its own rate.
 * @typedef {object} World
 * @property {readonly boolean[]} whole
 * @property {number} prior
 * @property {Forest} forest
 */

/**
 * Every choice of parts that can have been replaced on a whole set together.
 * @param {Guide} guide
 * @param {Forest} forest
 * @returns {World[]}
 */
export function worlds(guide, forest) {
  /** @type {[boolean[], number][]} */
  let found = [[guide.parts.map(() => false), 1]];
  for (const p of forest.order) {
    const part = guide.parts[p];
    const parent = forest.parent[p];
    /** @type {[boolean[], number][]} */
    const longer = [];
    for (const [whole, prior] of found) {
      const follows = parent !== null && whole[parent];
      const rate = follows ? Math.max(part.share, part.whole_set) : part.whole_set;
      if (rate > 0) {
        longer.push([whole.map((was, q) => was || q === p), prior * rate]);
      }
      if (rate < 1) {
        longer.push([whole, prior * (1 - rate)]);
      }
    }
    found = longer;
  }
  return found.map(([whole, prior]) =>
    Object.freeze({ whole, prior, forest: _apart(forest, whole) }),
  );
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
 * The forest cut above and below the parts that were replaced on a whole set.
 * @param {Forest} forest
 * @param {readonly boolean[]} whole
 * @returns {Forest}
 */
function _apart(forest, whole) {
  const parent = forest.parent.map((above, p) =>
    above === null || whole[p] || whole[above] ? null : above,
  );
  return Object.freeze({ parent, rates: forest.rates, order: forest.order });
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
