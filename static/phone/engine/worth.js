/**
 * What a find is worth in each model year, and what may come off: prices to amounts.
 *
 * Model page: "The offer". All amounts here are whole hundredths, so that adding them
 * up is exact and both languages reach the same ones.
 */

import { missing, often_apart } from "./members.js";
import { round9 } from "./special.js";

/** @import { Item } from "./find.js" */
/** @import { Guide, Off, Prices, SetPrices } from "./guide.js" */
/** @import { World } from "./parts.js" */

/** A set's worth has at most so many of the steps in which losses are counted. */
export const STEPS = 1000;

/** What is less probable than this is left out of the sums over amounts. */
export const RARE = 1e-15;

/**
 * What may come off, least first, and how probable each amount is.
 * @typedef {readonly (readonly [number, number])[]} Losses
 */

/**
 * What may come off one item: either, as a stray, one amount, or what each tree of
 * its parts takes off, which are independent of each other; see `within`.
 * @typedef {object} Taken
 * @property {number} stray
 * @property {number} share
 * @property {readonly Losses[]} trees
 */

/**
 * Amounts by place: one a model year, and a last one for outside.
 *
 * `whole` is the worth of the find with every part original and no stray, `step` what
 * losses are counted in, `portion` what one item counts for, and the most that comes
 * off it. `parts` is by place what each part takes off an item on which it is
 * replaced, `stray` what a stray takes off; a member that was often bought apart takes
 * off nothing.
 * @typedef {object} Sheet
 * @property {readonly number[]} whole
 * @property {readonly number[]} step
 * @property {readonly number[]} portion
 * @property {readonly (readonly number[])[]} parts
 * @property {readonly number[]} stray
 */

/**
 * The amounts for one object, or for a set of several.
 * @param {Guide} guide
 * @param {readonly Item[]} items
 * @param {{prices: Prices, condition: string}} by
 * @returns {Sheet}
 */
export function sheet(guide, items, { prices, condition }) {
  const many = items.length > 1 ? prices.set : null;
  const absent = missing(guide, items).filter((m) => !often_apart(guide, m));
  const offs = many ? absent.map(() => many.missing) : [];
  offs.push(new Map(prices.condition).get(condition) ?? { amount: 0, share: 0 });
  const whole = _worth(guide, prices, many, items.length).map((price) => {
    const x = hundredths(price);
    return Math.max(offs.reduce((left, off) => left - taken(off, x), x), 0);
  });
  const step = whole.map((x) => (items.length > 1 ? _step(x) : 1));
  const portions = whole.map(
    (x, y) => Math.floor(Math.floor(x / items.length) / step[y]) * step[y],
  );
  return Object.freeze({
    whole,
    step,
    portion: portions,
    parts: portions.map((portion, y) => _parts(guide, prices, portion, step[y])),
    stray: portions.map((portion, y) =>
      many ? _counted(taken(many.stray, portion), step[y]) : 0,
    ),
  });
}

/**
 * An amount of money in whole hundredths.
 * @param {number} x
 */
export function hundredths(x) {
  return _nearest(100 * x);
}

/**
 * What is taken off a worth, never more than all of it.
 * @param {Off} off
 * @param {number} worth
 */
export function taken(off, worth) {
  return Math.min(hundredths(off.amount) + _nearest(off.share * worth), worth);
}

/**
 * What replaced parts may take off one item in a cell of a world, by tree of parts.
 *
 * `said` is what the item says of each part there, original and replaced. From the
 * followers up, what a part and all that follow it take off is added to what the
 * others do: exact for any forest.
 * @param {World} world
 * @param {readonly (readonly [number, number])[]} said
 * @param {readonly number[]} parts
 * @returns {Losses[]}
 */
export function trees(world, said, parts) {
  const { order, parent: parents, rates } = world.forest;
  /** @type {Losses[][]} */
  const below = said.map(([original, replaced], p) => [
    [[0, original]],
    [[parts[p], replaced]],
  ]);
  const roots = [];
  for (const p of [...order].reverse()) {
    const parent = parents[p];
    const [first, second] = world.whole[p] ? [1, 1] : rates[p];
    if (parent === null) {
      roots.push(_shares(_either(below[p], first)));
    } else {
      const [original, replaced] = below[parent];
      below[parent] = [
        both(original, _either(below[p], first)),
        both(replaced, _either(below[p], second)),
      ];
    }
  }
  return roots;
}

/**
 * What two things take off together that are independent of each other.
 * @param {Losses} a
 * @param {Losses} b
 * @returns {Losses}
 */
export function both(a, b) {
  return _gathered(
    a.flatMap(([x, p]) =>
      b.map(([y, q]) => /** @type {[number, number]} */ ([x + y, p * q])),
    ),
  );
}

/**
 * What trees may take off an item that counts for `most`: the same trees, or where
 * together they could take off more, one in which they take off all of it.
 * @param {readonly Losses[]} several
 * @param {number} most
 * @returns {readonly Losses[]}
 */
export function within(several, most) {
  if (several.reduce((all, tree) => all + tree[tree.length - 1][0], 0) <= most) {
    return several;
  }
  return [_gathered(_in_all(several, 1).map(([x, p]) => [Math.min(x, most), p]))];
}

/**
 * By how much trees are expected to exceed the most that can come off.
 * @param {readonly Losses[]} several
 * @param {number} most
 */
export function beyond(several, most) {
  let sum = 0;
  for (const [x, p] of _in_all(several, 1)) {
    if (x > most) {
      sum += (x - most) * p;
    }
  }
  return sum;
}

/**
 * What comes off in all, if the items are independent of each other; `chance` is
 * that of all the amounts together.
 * @param {readonly Taken[]} several
 * @param {number} step
 * @param {number} chance
 * @returns {Losses}
 */
export function added(several, step, chance) {
  if (several.length === 1) {
    // One object is no stray.
    return _in_all(several[0].trees, chance);
  }
  let run = [chance];
  for (const { stray, share, trees } of several) {
    let made = run.map((x) => (1 - share) * x);
    for (const tree of trees) {
      made = _moved(made, tree, step);
    }
    const strayed = _moved(run, [[stray, share]], step);
    const [longer, other] =
      made.length < strayed.length ? [strayed, made] : [made, strayed];
    for (let i = 0; i < other.length; i++) {
      longer[i] += other[i];
    }
    run = longer;
  }
  /** @type {[number, number][]} */
  const found = [];
  for (let i = 0; i < run.length; i++) {
    if (run[i] > RARE) {
      found.push([step * i, run[i]]);
    }
  }
  return found;
}

/**
 * What several trees take off together.
 * @param {readonly Losses[]} several
 * @param {number} chance
 */
function _in_all(several, chance) {
  /** @type {Losses} */
  let found = [[0, chance]];
  for (const tree of several) {
    found = both(found, tree);
  }
  return found;
}

/**
 * The worth at each place; items of a set without a price of its own are worth
 * what they are one by one.
 * @param {Guide} guide
 * @param {Prices} prices
 * @param {SetPrices | null} many
 * @param {number} count
 */
function _worth(guide, prices, many, count) {
  const { worth, other } = many ?? prices;
  const known = new Map(worth);
  const times = many ? 1 : count;
  const by_year = guide.years.map(({ year }) => times * (known.get(year) ?? other));
  return [...by_year, times * other];
}

/**
 * What each part takes off an item by itself.
 * @param {Guide} guide
 * @param {Prices} prices
 * @param {number} portion
 * @param {number} step
 */
function _parts(guide, prices, portion, step) {
  const known = new Map(prices.parts.map((each) => [each.part, each]));
  return guide.parts.map((part) => {
    const each = known.get(part.id);
    const off = each ? taken(each.off, portion) : 0;
    const right = each?.put_right ?? null;
    return _counted(right === null ? off : Math.min(off, hundredths(right)), step);
  });
}

/**
 * @param {number} x
 * @param {number} step
 */
function _counted(x, step) {
  return _nearest(x / step) * step;
}

/**
 * The nearest whole number, of halves the one above, in both languages.
 * @param {number} x
 */
function _nearest(x) {
  return Math.floor(round9(x) + 0.5);
}

/**
 * The least of 1, 2, 5, 10, 20, 50 and so on of which there are few enough.
 * @param {number} whole
 */
function _step(whole) {
  let step = 1;
  let turn = 0;
  while (whole > STEPS * step) {
    step = turn % 3 === 1 ? (step * 5) / 2 : step * 2;
    turn += 1;
  }
  return step;
}

/**
 * Losses of a part that is replaced with a rate, by its two states.
 * @param {readonly Losses[]} states
 * @param {number} rate
 * @returns {Losses}
 */
function _either(states, rate) {
  const [original, replaced] = states;
  /** @type {[number, number][]} */
  const found = [];
  for (const [loss, p] of original) {
    found.push([loss, (1 - rate) * p]);
  }
  for (const [loss, p] of replaced) {
    found.push([loss, rate * p]);
  }
  return _gathered(found);
}

/**
 * The same with each amount once, the least first; what cannot be is left out.
 * @param {readonly (readonly [number, number])[]} found
 * @returns {Losses}
 */
function _gathered(found) {
  /** @type {Map<number, number>} */
  const total = new Map();
  for (const [loss, p] of found) {
    if (p > 0) {
      total.set(loss, (total.get(loss) ?? 0) + p);
    }
  }
  return [...total].sort(([a], [b]) => a - b);
}

/**
 * The same with probabilities that sum to one; nothing comes off where the
 * readings cannot be, since such a cell weighs nothing.
 * @param {Losses} found
 * @returns {Losses}
 */
function _shares(found) {
  const total = found.reduce((all, [, p]) => all + p, 0);
  return total > 0 ? found.map(([loss, p]) => [loss, p / total]) : [[0, 1]];
}

/**
 * The probabilities of each number of steps, after these losses too.
 * @param {readonly number[]} run
 * @param {Losses} losses
 * @param {number} step
 * @returns {number[]}
 */
function _moved(run, losses, step) {
  const [most] = losses[losses.length - 1];
  const longer = Array(run.length + Math.floor(most / step)).fill(0);
  for (const [loss, p] of losses) {
    const start = Math.floor(loss / step);
    for (let i = 0; i < run.length; i++) {
      longer[start + i] += p * run[i];
    }
  }
  return longer;
}
