/** The sentences of a verdict, the same for one object and for a set. */

import { what } from "./advice.js";
import { EVEN, is_outside, is_replaced, replaced, untold } from "./flags.js";
import { WORTHWHILE, separator } from "./gain.js";
import { ranked } from "./one.js";
import { brackets, covered, named, run } from "./range.js";
import { largest, round9 } from "./special.js";
import { NOTHING, hundredth, likely, month, percent, within_a_point } from "./words.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Item, PartState } from "./find.js" */
/** @import { Prospect } from "./gain.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

/** A leading year that is less likely than this is not leaned to. */
export const CANNOT_TELL = 0.33;
export const SETTLED = 0.9;
export const UNSEEN = "not looked at";
export const SEEN_ONCE = "looked at on one of them alone";
export const USUAL = "such parts are usually replaced";
/**
 * The likeliest build month is named if it is so many times as likely as the mean month
 * of its stretch.
 */
export const STANDS_OUT = 2;
/** What the stretch of build months leaves out at each end. */
export const TAILS = 0.05;

/**
 * Probability of each model year, or of each build month.
 * @typedef {readonly (readonly [number, number])[]} Shares
 */

/**
 * What a verdict is told from; `first` and `second` are the places of the two
 * likeliest model years, `found` what can still be looked at.
 * @typedef {object} Case
 * @property {Tables} tables
 * @property {readonly Item[]} items
 * @property {Weighed} posterior
 * @property {readonly Prospect[]} found
 * @property {number} first
 * @property {number | null} second
 */

/**
 * Probability of every model year, in the guide's order.
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @returns {Shares}
 */
export function year_shares(tables, posterior) {
  return tables.guide.years.map(({ year }, y) => [year, posterior.years[y]]);
}

/**
 * Probability of every build month, whatever the model year, in their order.
 * @param {Tables} tables
 * @param {Vector} cells
 * @returns {Shares}
 */
export function month_shares(tables, cells) {
  /** @type {Map<number, number>} */
  const share = new Map();
  for (const [i, cell] of tables.cells.entries()) {
    share.set(cell.t, (share.get(cell.t) ?? 0) + cells[i]);
  }
  return [...share].sort(([t], [u]) => t - u);
}

/**
 * The first of the likeliest years or months.
 * @param {Shares} shares
 */
export function likeliest(shares) {
  return largest(shares, ([, p]) => round9(p))[0];
}

/**
 * The leading model year; none where none of them is the likeliest answer.
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @param {number} first
 */
export function leading(tables, posterior, first) {
  return is_outside(posterior) ? null : tables.guide.years[first].year;
}

/**
 * Each part's probability of being replaced, in words.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @returns {PartState[]}
 */
export function part_states(tables, item, posterior) {
  const seen = seen_parts(tables, [item]);
  return tables.guide.parts.map(({ id }, p) => {
    const probability = replaced(posterior, p);
    const say = _part(tables, item, p, probability, seen.includes(id));
    return Object.freeze({ part: id, probability, say });
  });
}

/**
 * The parts that anything was read on; a part may stand there more than once.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 */
export function seen_parts(tables, items) {
  const readings = items.flatMap((item) => item.readings);
  const read = readings
    .filter(([, reading]) => reading !== null)
    .map(([clue]) => clue);
  const clues = tables.guide.clues.filter(({ id }) => read.includes(id));
  return clues.map(({ part }) => part);
}

/**
 * On how many items the part was read, or is gone.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {number} p
 */
export function looked_on(tables, items, p) {
  const part = tables.guide.parts[p].id;
  return items.filter(
    (item) => item.gone.includes(part) || seen_parts(tables, [item]).includes(part),
  ).length;
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {number} p
 * @param {number} share
 * @param {boolean} seen
 */
function _part(tables, item, p, share, seen) {
  if (item.gone.includes(tables.guide.parts[p].id)) {
    return "gone";
  }
  // How often such a part is original or replaced says nothing of this one.
  if (untold(tables, item, p)) {
    return `${UNSEEN}; ${USUAL}`;
  }
  if (is_replaced(share)) {
    return `replaced: ${likely(share)}, ${percent(share)}`;
  }
  if (!seen) {
    return UNSEEN;
  }
  return `original: ${likely(1 - share)}, ${percent(1 - share)}`;
}

/**
 * Whether the items say anything at all.
 * @param {readonly Item[]} items
 */
export function is_read(items) {
  return items.some(
    ({ readings, gone }) =>
      gone.length > 0 || readings.some(([, reading]) => reading !== null),
  );
}

/**
 * Which year it is, and how sure that is; `found` can still be looked at.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @param {readonly Prospect[]} found
 */
export function answer(tables, items, posterior, found) {
  const [first] = ranked(posterior.years);
  const p = round9(posterior.years[first]);
  const year = tables.guide.years[first].year;
  if (is_outside(posterior)) {
    const outside = posterior.outside;
    return `looks like none of these: ${likely(outside)}, ${percent(outside)}`;
  }
  if (!is_read(items)) {
    return "nothing read yet";
  }
  if (brackets(tables.guide)) {
    return _bracketed(tables, posterior);
  }
  const alike = level(posterior);
  if (alike.length > 2) {
    return _many(posterior, alike, found);
  }
  if (alike.length) {
    return _either(tables, posterior, alike, found);
  }
  if (p < CANNOT_TELL) {
    return `${_cannot(found)}: ${year} leads with ${percent(p)}`;
  }
  if (hundredth(p) < EVEN) {
    return `leaning to ${year}: ${percent(p)}, so more likely another`;
  }
  const lead = p >= SETTLED ? `${year}` : `leaning to ${year}`;
  return `${lead}: ${likely(p)}, ${percent(p)}`;
}

/**
 * The places of the likeliest years that are told as equally likely; none where one
 * leads.
 * @param {Weighed} posterior
 * @returns {number[]}
 */
export function level(posterior) {
  const { years } = posterior;
  const best = Math.max(...years);
  // Of many years each has so little that a point is much of it.
  const alike = [...years.keys()].filter(
    (y) => within_a_point(best, years[y]) && best < NOTHING * years[y],
  );
  return alike.length > 1 ? alike : [];
}

/**
 * @param {readonly Prospect[]} found
 */
function _cannot(found) {
  return `cannot tell${_yet(found)}`;
}

/**
 * @param {readonly Prospect[]} found
 */
function _yet(found) {
  return worthwhile(found).length ? " yet" : "";
}

/**
 * How many years are level, none of which leads.
 * @param {Weighed} posterior
 * @param {readonly number[]} alike
 * @param {readonly Prospect[]} found
 */
function _many(posterior, alike, found) {
  const { years } = posterior;
  if (alike.length === years.length) {
    return `nothing tells the years apart${_yet(found)}`;
  }
  const shares = alike.map((y) => years[y]);
  const most = percent(Math.max(...shares));
  const about = percent(Math.min(...shares)) === most ? "" : " or just below";
  return `${_cannot(found)}: ${alike.length} years are level at ${most}${about}`;
}

/**
 * That it is one of two years, neither of which leads.
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @param {readonly number[]} both
 * @param {readonly Prospect[]} found
 */
function _either(tables, posterior, both, found) {
  const name = both.map((y) => tables.guide.years[y].year).join(" or ");
  const pair = both.map((y) => posterior.years[y]);
  const [first, second] = pair.map(percent);
  const shares = first === second ? `${first} each` : `${first} and ${second}`;
  if (Math.max(...pair.map(round9)) < CANNOT_TELL) {
    return `${_cannot(found)}: ${name} with ${shares}`;
  }
  const settled = round9(pair[0] + pair[1]) >= SETTLED;
  return settled ? `${name}: ${shares}` : `leaning to ${name}: ${shares}`;
}

/**
 * Which range of years it is, and how sure that is.
 * @param {Tables} tables
 * @param {Weighed} posterior
 */
function _bracketed(tables, posterior) {
  const found = run(posterior.years);
  const name = named(tables.guide, found);
  const p = covered(posterior, found);
  if (found[0] === 0 && found[1] === posterior.years.length - 1) {
    return `${name} so far`;
  }
  return `${name}: ${likely(p)}, ${percent(p)}`;
}

/**
 * The second year, and what worth a look would best tell it from the first; before it
 * none of these, where that is more likely, or the first, where none of these leads. A
 * range has none, nor have years that are level.
 * @param {Case} told
 */
export function runner_up(told) {
  const { tables, items, posterior } = told;
  if (told.second === null || brackets(tables.guide)) {
    return "";
  }
  const [first, second] = [told.first, told.second].map(
    (y) => tables.guide.years[y].year,
  );
  const [most, share] = [told.first, told.second].map((y) => posterior.years[y]);
  const outside = posterior.outside;
  const lost = is_outside(posterior);
  const likelier = round9(share) < round9(outside) && !lost;
  const none = likelier ? [`none of these, ${percent(outside)}`] : [];
  if (level(posterior).length) {
    return none.join("");
  }
  const before = lost ? [`${first}, ${percent(most)}`] : none;
  const say = [...before, `${second}, ${percent(share)}`].join(", then ");
  const best = separator(tables, worthwhile(told.found), told.first, told.second);
  if (best === null && _told_apart(told)) {
    return say;
  }
  if (best === null) {
    return `${say}; no clue left would tell ${second} from ${first}`;
  }
  const named = what(tables, items, [best.k, best.item]);
  return `${say}; ${named} would best tell ${second} from ${first}`;
}

/**
 * The stretch of months that leaves out 5 % at each end, and the likeliest of them if
 * it stands out.
 *
 * Empty where every month is ruled out.
 * @param {Shares} months
 */
export function built(months) {
  const inside = months.reduce((total, [, p]) => total + p, 0);
  if (inside === 0) {
    return "";
  }
  let run = 0;
  let [[since]] = months;
  let until = since;
  for (const [t, p] of months) {
    const before = run;
    run += p / inside;
    if (round9(before) <= TAILS) {
      since = t;
    }
    if (round9(before) < 1 - TAILS) {
      until = t;
    }
  }
  if (since === until) {
    return `built about ${month(since)}`;
  }
  const say = `built between ${month(since)} and ${month(until)}`;
  const stretch = months.filter(([t]) => since <= t && t <= until);
  const [best, share] = largest(stretch, ([, p]) => round9(p));
  const mean = stretch.reduce((total, [, p]) => total + p, 0) / stretch.length;
  if (round9(share / mean) < STANDS_OUT) {
    return say;
  }
  return `${say}, most likely about ${month(best)}`;
}

/**
 * What is still worth a look.
 * @param {readonly Prospect[]} found
 */
export function worthwhile(found) {
  return found.filter(({ bits }) => bits >= WORTHWHILE);
}

/**
 * Whether something left would tell the two likeliest years apart, worth it or not.
 * @param {Case} told
 */
function _told_apart(told) {
  const second = told.second ?? told.first;
  return separator(told.tables, told.found, told.first, second) !== null;
}

/**
 * Why there is nothing left to look at; empty while something can gain.
 * @param {Case} told
 */
export function exhausted(told) {
  const { tables, posterior, first, second } = told;
  if (worthwhile(told.found).length) {
    return "";
  }
  if (second === null || round9(posterior.years[first]) >= SETTLED) {
    return "Nothing left to look at would change this.";
  }
  if (brackets(tables.guide)) {
    return "Nothing left to look at would narrow this.";
  }
  if (_told_apart(told)) {
    return "Nothing left to look at would change this.";
  }
  if (level(posterior).length > 2) {
    return "The clues cannot tell these years apart any further.";
  }
  const years = [first, second].map((y) => tables.guide.years[y].year);
  return `The clues cannot tell ${Math.min(...years)} from ${Math.max(...years)} any further.`;
}
