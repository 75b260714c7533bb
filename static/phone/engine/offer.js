/**
 * What to offer for a find: its worth, a walk-away price, and whether to look again.
 *
 * Model page: "The offer". The door to `worth`, `value`, `trial` and `deal`.
 */

import { what } from "./advice.js";
import { weigh_all } from "./claim.js";
import { advice, advice_say, amount, note, range_say, walk_away } from "./deal.js";
import { counted } from "./judge.js";
import { round9 } from "./special.js";
import { perfect, trials } from "./trial.js";
import { amounts, quantile, scenes } from "./value.js";
import { figure } from "./words.js";
import { hundredths, sheet } from "./worth.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Deal, Terms } from "./deal.js" */
/** @import { Find, Item } from "./find.js" */
/** @import { Guide, Prices } from "./guide.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Bargain, Trial } from "./trial.js" */
/** @import { Amounts, Scene } from "./value.js" */
/** @import { Sheet } from "./worth.js" */

// Where the range of the worth begins and ends: the 10th and the 90th percentile.
export const LOW = 0.1;
export const HIGH = 0.9;
// Nobody stoops for less than this share of the price asked, where no hour has a price.
export const STOOP = 0.01;
export const UNPRICED = "Say first what each model year is worth to you.";
export const UNASKED =
  "Say what is asked, to see whether another look is worth its time.";

/**
 * A clue that can still be looked at, what one reading of it is worth to the
 * decision, in all and a minute, what the time for it costs, and whether it pays.
 * @typedef {object} Look
 * @property {string | null} member
 * @property {string} clue
 * @property {string} what
 * @property {number} worth
 * @property {number} per_minute
 * @property {number} time
 * @property {boolean} pays
 * @property {string} say
 */

/**
 * The answer, in money and in words. `advice` is buy, offer or walk, and empty
 * without prices. `perfect` is what it would be worth to know everything about the
 * find, null while no price is asked; `looks` begin with what is worth most a minute.
 * @typedef {object} Offer
 * @property {string} currency
 * @property {number} expected
 * @property {number} low
 * @property {number} high
 * @property {string} range_say
 * @property {number} walk
 * @property {"buy" | "offer" | "walk" | ""} advice
 * @property {string} say
 * @property {number | null} perfect
 * @property {string} perfect_say
 * @property {readonly Look[]} looks
 * @property {string} looks_say
 * @property {string} note
 */

/**
 * What to offer for the find's one object, or for its set.
 *
 * `away`, `without` and `photos` limit what to look at next, as for `judge`.
 * @param {Tables} tables
 * @param {Find} find
 * @param {{prices: Prices, deal: Deal, away?: boolean,
 *   without?: readonly string[], photos?: boolean}} by
 * @returns {Offer}
 */
export function offer(
  tables,
  find,
  { prices, deal, away = false, without = [], photos = false },
) {
  const items = find.items.map((item) => counted(tables, item));
  const posterior = weigh_all(tables, items);
  const listed = sheet(tables.guide, items, { prices, condition: deal.condition });
  const left = scenes(tables, items, posterior);
  const known = amounts(tables, listed, left);
  const terms = _terms(prices, deal, known);
  const limits = /** @type {const} */ ([away, without, photos]);
  const looks = _looks(tables, items, posterior, terms, listed, left, limits);
  const knowing = deal.asked === null ? null : perfect(known, _bargain(terms)) / 100;
  const priced = listed.whole.some((x) => x > 0);
  return Object.freeze({
    currency: prices.currency,
    expected: terms.expected,
    low: terms.low,
    high: terms.high,
    range_say: priced ? range_say(terms) : "",
    walk: terms.walk,
    advice: priced ? advice(terms) : "",
    say: priced ? advice_say(terms) : UNPRICED,
    perfect: knowing,
    perfect_say: _perfect_say(terms, knowing),
    looks,
    looks_say: _looks_say(terms, looks),
    note: note(tables.guide, prices),
  });
}

/**
 * The guide's own prices to start from; without them nothing has a price yet.
 * @param {Guide} guide
 * @returns {Prices}
 */
export function starting(guide) {
  return (
    guide.prices ?? {
      currency: "",
      date: "",
      source: "",
      worth: [],
      other: 0,
      condition: [],
      parts: [],
      set: null,
    }
  );
}

/**
 * What is known of the worth, less what the find will cost besides.
 * @param {Prices} prices
 * @param {Deal} deal
 * @param {Amounts} known
 * @returns {Terms}
 */
function _terms(prices, deal, known) {
  const mean = known.reduce((all, [x, p]) => all + x * p, 0);
  const expected = mean / 100 - deal.costs;
  const keep = 1 - deal.margin / 100;
  return {
    deal,
    currency: prices.currency,
    expected,
    low: quantile(known, LOW) / 100 - deal.costs,
    high: quantile(known, HIGH) / 100 - deal.costs,
    keep,
    walk: walk_away(keep, expected),
  };
}

/**
 * The deal in hundredths. What the find will cost besides comes off its worth, so
 * that `keep` of it is as good as paid.
 * @param {Terms} terms
 * @returns {Bargain}
 */
function _bargain(terms) {
  const price = (terms.deal.asked ?? 0) + terms.keep * terms.deal.costs;
  return { keep: terms.keep, price: 100 * price };
}

/**
 * What can still be looked at once a price is asked, best first.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @param {Terms} terms
 * @param {Sheet} listed
 * @param {readonly Scene[]} left
 * @param {readonly [boolean, readonly string[], boolean]} limits
 * @returns {Look[]}
 */
function _looks(tables, items, posterior, terms, listed, left, limits) {
  if (terms.deal.asked === null) {
    return [];
  }
  const [away, without, photos] = limits;
  const found = trials(tables, items, posterior, {
    sheet: listed,
    scenes: left,
    bargain: _bargain(terms),
    away,
    without,
    photos,
  });
  const looks = found.map((trial) => _look(tables, items, terms, trial));
  return looks.sort((a, b) => round9(b.per_minute) - round9(a.per_minute));
}

/**
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Terms} terms
 * @param {Trial} trial
 * @returns {Look}
 */
function _look(tables, items, terms, trial) {
  const clue = tables.guide.clues[trial.k];
  const named = what(tables, items, [trial.k, trial.item]);
  const worth = trial.worth / 100;
  const time = (terms.deal.hour * clue.seconds) / 3600;
  return Object.freeze({
    member: items[trial.item].member,
    clue: clue.id,
    what: named,
    worth,
    per_minute: (60 * worth) / clue.seconds,
    time,
    pays: _pays(terms, worth, time),
    say: _look_say(terms, named, worth, time, figure(clue.seconds)),
  });
}

/**
 * What no look, and nothing else that could be learned, is worth more than.
 * @param {Terms} terms
 * @param {number | null} knowing
 */
function _perfect_say(terms, knowing) {
  if (knowing === null) {
    return "";
  }
  if (hundredths(knowing) === 0) {
    return "If you knew everything about it, you would hardly decide otherwise.";
  }
  const most = amount(terms, knowing);
  return `To know everything about it would be worth ${most} to this decision.`;
}

/**
 * What a look is worth, held against its time if an hour has a price.
 * @param {Terms} terms
 * @param {string} named
 * @param {number} worth
 * @param {number} time
 * @param {string} seconds
 */
function _look_say(terms, named, worth, time, seconds) {
  if (hundredths(worth) === 0) {
    return `Whatever ${named} shows, you would hardly decide otherwise.`;
  }
  const say = `Reading ${named} is worth ${amount(terms, worth)} to this decision`;
  if (terms.deal.hour === 0) {
    return `${say} and takes ${seconds} seconds.`;
  }
  const pays = _pays(terms, worth, time) ? "worth" : "not worth";
  const cost = amount(terms, time);
  return `${say}: ${pays} its ${seconds} seconds, which cost you ${cost}.`;
}

/**
 * Whether to look again before deciding, and where.
 * @param {Terms} terms
 * @param {readonly Look[]} looks
 */
function _looks_say(terms, looks) {
  if (terms.deal.asked === null) {
    return UNASKED;
  }
  if (looks.length === 0) {
    return "There is nothing more to look at: decide now.";
  }
  for (const look of looks) {
    if (look.pays) {
      return `Look at ${look.what} before you decide.`;
    }
  }
  if (looks.every((look) => hundredths(look.worth) === 0)) {
    return "What is left to look at would hardly change what you decide.";
  }
  if (terms.deal.hour === 0) {
    return "What is left to look at is worth little to this decision: decide now.";
  }
  return "Nothing left to look at is worth its time: decide now.";
}

/**
 * Whether a look is worth more than its time, or without a price of time, than
 * somebody would stoop for; less than a hundredth is nothing.
 * @param {Terms} terms
 * @param {number} worth
 * @param {number} time
 */
function _pays(terms, worth, time) {
  const { deal } = terms;
  const least = deal.hour > 0 ? time : STOOP * (deal.asked ?? 0);
  return hundredths(worth) > 0 && round9(worth) > round9(least);
}
