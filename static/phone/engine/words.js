/**
 * Numbers to words and whole percents, lists to phrases, and what a member is called.
 *
 * A number is rounded to nine places before a bound is held against it: on the bound
 * the last bit, which differs between languages, must not choose the word.
 *
 * Probabilities: the calibrated terms of the IPCC's guidance note for authors
 * (Mastrandrea and others, 2010, table 1 and its note). Factors: Kass and Raftery,
 * "Bayes factors", Journal of the American Statistical Association 90 (1995), 777.
 */

import { round9 } from "./special.js";

/** @typedef {readonly (readonly [number, string])[]} Bounds */

// The narrowest published term that holds, looked up from above.
/** @type {Bounds} */
export const AT_LEAST = [
  [0.99, "virtually certain"],
  [0.95, "extremely likely"],
  [0.9, "very likely"],
  [0.66, "likely"],
];
/** @type {Bounds} */
export const AT_MOST = [
  [0.01, "exceptionally unlikely"],
  [0.05, "extremely unlikely"],
  [0.1, "very unlikely"],
];
export const BARE = 3;
export const BARELY = "barely worth a mention";
/** @type {Bounds} */
export const FACTORS = [
  [150, "very strong"],
  [20, "strong"],
  [BARE, "positive"],
];
// Below this a factor is not worth a word at all (our own choice).
export const NOTHING = 1.25;
/** From so much up money is written in whole units. */
export const WHOLE = 100;
export const MINUS = "−";
export const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/**
 * A probability as it is told, in whole per cents.
 * @param {number} p
 */
export function hundredth(p) {
  return Math.floor(100 * round9(p) + 0.5) / 100;
}

/**
 * Whether two probabilities are at most one per cent point apart as they are told.
 * @param {number} p
 * @param {number} q
 */
export function within_a_point(p, q) {
  return Math.abs(Math.round(100 * hundredth(p)) - Math.round(100 * hundredth(q))) <= 1;
}

/**
 * The word for a probability, by the figure that stands beside it.
 * @param {number} p
 */
export function likely(p) {
  p = hundredth(p);
  for (const [bound, word] of AT_LEAST) {
    if (p >= bound) {
      return word;
    }
  }
  if (p > 0.5) {
    return "more likely than not";
  }
  for (const [bound, word] of AT_MOST) {
    if (p <= bound) {
      return word;
    }
  }
  return p >= 0.33 ? "about as likely as not" : "unlikely";
}

/**
 * A probability as a whole percent that never claims certainty.
 * @param {number} p
 */
export function percent(p) {
  const whole = Math.round(100 * hundredth(p));
  if (whole >= 100) {
    return "over 99 %";
  }
  return whole < 1 ? "under 1 %" : `${whole} %`;
}

/**
 * The word for a Bayes factor, for or against alike.
 * @param {number} factor
 */
export function strength(factor) {
  const size = _size(factor);
  for (const [bound, word] of FACTORS) {
    if (size > bound) {
      return word;
    }
  }
  return BARELY;
}

/**
 * What a factor is for or against a model year, or several in words.
 * @param {number} factor
 * @param {number | string} year
 */
export function evidence(factor, year) {
  const side = `${factor > 1 ? "for" : "against"} ${year}`;
  const word = strength(factor);
  return word === BARELY ? `evidence ${side} ${word}` : `${word} evidence ${side}`;
}

/**
 * Whether a factor is too near to one to be worth a word.
 * @param {number} factor
 */
export function tells_nothing(factor) {
  return _size(factor) < NOTHING;
}

/**
 * How many times, in figures that a person can say.
 * @param {number} factor
 */
export function times(factor) {
  const size = _size(factor);
  if (size > 1000) {
    return "over 1000 times";
  }
  if (size < 3) {
    return `${figure(Math.floor(10 * size + 0.5) / 10)} times`;
  }
  return `${Math.floor(size + 0.5)} times`;
}

/**
 * A number with at most two decimals, none of them idle.
 * @param {number} x
 */
export function figure(x) {
  const hundredths = Math.floor(100 * Math.abs(x) + 0.5);
  const sign = x < 0 && hundredths > 0 ? "-" : "";
  const whole = Math.floor(hundredths / 100);
  const rest = String(hundredths % 100).padStart(2, "0");
  return `${sign}${whole}.${rest}`.replace(/\.?0+$/, "");
}

/**
 * An amount in whole units from a hundred up, in hundredths below.
 * @param {number} x
 * @param {string} currency
 */
export function money(x, currency) {
  const hundredths = Math.floor(100 * round9(Math.abs(x)) + 0.5);
  const sign = x < 0 && hundredths > 0 ? MINUS : "";
  const whole = Math.floor(hundredths / 100);
  const rest = String(hundredths % 100).padStart(2, "0");
  const amount =
    whole >= WHOLE ? Math.floor(round9(Math.abs(x)) + 0.5) : `${whole}.${rest}`;
  return `${sign}${amount} ${currency}`.trimEnd();
}

/**
 * A build month in words.
 * @param {number} t
 */
export function month(t) {
  return `${MONTHS[t % 12]} ${Math.floor(t / 12)}`;
}

/**
 * A day as people write it.
 * @param {string} iso
 */
export function day(iso) {
  const [year, month, date] = iso.split("-").map(Number);
  return `${date} ${MONTHS[month - 1]} ${year}`;
}

/**
 * Rising years with runs drawn together.
 * @param {readonly number[]} numbers
 */
export function years(numbers) {
  /** @type {number[][]} */
  const runs = [];
  for (const year of numbers) {
    const run = runs[runs.length - 1];
    if (run && year === run[run.length - 1] + 1) {
      run.push(year);
    } else {
      runs.push([year]);
    }
  }
  return listed(
    runs.map((run) =>
      run.length > 1 ? `${run[0]}-${run[run.length - 1]}` : String(run[0]),
    ),
  );
}

/**
 * Things with commas and an "and".
 * @param {readonly string[]} things
 */
export function listed(things) {
  if (things.length < 2) {
    return things.join("");
  }
  return `${things.slice(0, -1).join(", ")} and ${things[things.length - 1]}`;
}

/**
 * What a member of a set is called in a sentence: its name, or its id.
 * @param {import("./guide.js").Guide} guide
 * @param {string} member
 */
export function called(guide, member) {
  return new Map(guide.members ? guide.members.names : []).get(member) ?? member;
}

/**
 * The sentence with a capital first letter, the rest left alone.
 * @param {string} sentence
 */
export function capital(sentence) {
  const [first = "", ...rest] = sentence;
  return first.toUpperCase() + rest.join("");
}

/**
 * How far a factor is from one, for or against alike.
 * @param {number} factor
 */
function _size(factor) {
  return round9(Math.max(factor, 1 / factor));
}
