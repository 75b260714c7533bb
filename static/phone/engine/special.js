/**
 * What one language or the other lacks: erfc, its scaled tail, the rescale. A leaf.
 *
 * Model page: "measure" and "Numbers that must survive". The algorithms are written
 * out so that both languages run the same ones.
 */

/** @typedef {readonly number[]} Vector */

/**
 * A vector, and how often it was multiplied by `2**500` to stay in sight.
 * @typedef {readonly [Vector, number]} Scaled
 */

export const SERIES_BELOW = 2.5;
// From 2.5 upwards forty steps of the continued fraction leave an error near 1e-19.
export const FRACTION_STEPS = 40;
export const TINY = 2 ** -500;
export const HUGE = 2 ** 500;
export const LOG_HUGE = 500 * Math.log(2);

/**
 * Scaled tail `exp(u * u) * erfc(u)` for `u >= 0`.
 *
 * A series of positive terms below 2.5, Laplace's continued fraction above
 * (Abramowitz and Stegun, 1964, 7.1.6 and 7.1.14).
 * @param {number} u
 */
export function erfcx(u) {
  if (u < SERIES_BELOW) {
    let term = (2 * u) / Math.sqrt(Math.PI);
    let total = term;
    let n = 1;
    while (term > 1e-17 * total) {
      term *= (2 * u * u) / (2 * n + 1);
      total += term;
      n += 1;
    }
    return Math.exp(u * u) - total;
  }
  let tail = u;
  for (let k = FRACTION_STEPS; k > 0; k--) {
    tail = u + k / 2 / tail;
  }
  return 1 / (tail * Math.sqrt(Math.PI));
}

/**
 * Complementary error function, for any `u`.
 * @param {number} u
 * @returns {number}
 */
export function erfc(u) {
  if (u < 0) {
    return 2 - erfc(-u);
  }
  return Math.exp(-u * u) * erfcx(u);
}

/**
 * Probability that a standard normal variable is at most `z`.
 * @param {number} z
 */
export function phi(z) {
  return erfc(-z / Math.sqrt(2)) / 2;
}

/**
 * The vectors times `2**500` as often as it takes, and how often that was.
 *
 * They keep their ratios exactly, since only exponents change.
 * @param {Vector[]} vectors
 * @returns {[Vector[], number]}
 */
export function rescale(vectors) {
  let scaled = vectors;
  let count = 0;
  while (!scaled.some(_is_in_sight) && scaled.some((vector) => vector.some((x) => x))) {
    scaled = scaled.map((vector) => vector.map((x) => x * HUGE));
    count += 1;
  }
  return [scaled, count];
}

/**
 * Whether an entry is large enough to be multiplied further.
 * @param {Vector} vector
 */
function _is_in_sight(vector) {
  for (let i = 0; i < vector.length; i++) {
    if (vector[i] >= TINY) {
      return true;
    }
  }
  return false;
}

/**
 * Sum of the products of two vectors, as far as the shorter one goes.
 * @param {Vector} a
 * @param {Vector} b
 */
export function dot(a, b) {
  const stop = Math.min(a.length, b.length);
  let total = 0;
  for (let i = 0; i < stop; i++) {
    total += a[i] * b[i];
  }
  return total;
}

/**
 * `start` times all the factors, and times all but each one of them.
 *
 * Nothing is divided, since a factor may hold a 0.
 * @param {Vector} start
 * @param {readonly Vector[]} factors
 * @returns {[Scaled, Scaled[]]}
 */
export function products(start, factors) {
  /** @type {Scaled[]} */
  const before = [[start, 0]];
  for (const [i, factor] of factors.entries()) {
    before.push(multiplied(before[i], [factor, 0]));
  }
  /** @type {Scaled} */
  let after = [start.slice().fill(1), 0];
  /** @type {Scaled[]} */
  const others = [];
  for (let i = factors.length - 1; i >= 0; i--) {
    others.push(multiplied(before[i], after));
    after = multiplied([factors[i], 0], after);
  }
  return [before[factors.length], others.reverse()];
}

/**
 * The product of two vectors, entry by entry.
 * @param {Scaled} a
 * @param {Scaled} b
 * @returns {Scaled}
 */
export function multiplied(a, b) {
  const [[x, first], [y, second]] = [a, b];
  const product = x.slice();
  for (let i = 0; i < product.length; i++) {
    product[i] *= y[i];
  }
  const [[vector], count] = rescale([product]);
  return [vector, first + second + count];
}

/**
 * The vectors lifted equally often, and how often that is.
 * @param {readonly Scaled[]} vectors
 * @returns {[Vector[], number]}
 */
export function aligned(vectors) {
  const counts = vectors.filter(([vector]) => vector.some((x) => x > 0));
  const least = Math.min(...counts.map(([, count]) => count));
  // One that holds nothing but 0 may have been lifted less often; so it stays.
  const even = vectors.map(([vector, count]) =>
    count > least ? vector.map((x) => x * TINY ** (count - least)) : vector,
  );
  return [even, least];
}

/**
 * `x` at nine places, the same in both languages; what rankings sort by.
 * @param {number} x
 */
export function round9(x) {
  return Math.floor(x * 1e9 + 0.5) / 1e9;
}

/**
 * Sum of `numbers` from place `start` up to `stop`.
 * @param {Vector} numbers
 */
export function sum(numbers, start = 0, stop = numbers.length) {
  let total = 0;
  for (let i = start; i < stop; i++) {
    total += numbers[i];
  }
  return total;
}

/**
 * The first of the things for which `size` is largest; undefined if there is none.
 * @template T
 * @param {readonly T[]} things
 * @param {(thing: T) => number} size
 */
export function largest(things, size) {
  let best = things[0];
  let most = -Infinity;
  for (const thing of things) {
    const own = size(thing);
    if (own > most) {
      [best, most] = [thing, own];
    }
  }
  return best;
}

/**
 * All pairs of things, each in the order of the things.
 * @template T
 * @param {readonly T[]} things
 * @returns {[T, T][]}
 */
export function pairs(things) {
  return things.flatMap((first, i) =>
    things.slice(i + 1).map((second) => /** @type {[T, T]} */ ([first, second])),
  );
}
