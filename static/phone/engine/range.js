/**
 * A guide that brackets: its answer is a range of model years, and its two ends are
 * set by readings.
 *
 * Model page: "Ranges".
 */

import { alone } from "./claim.js";
import { ranked, read } from "./one.js";
import { round9, sum } from "./special.js";
import { told } from "./typical.js";
import { listed } from "./words.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Item, Range } from "./find.js" */
/** @import { Guide } from "./guide.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

/** A year is outside the range from this share of the likeliest year down. */
export const FAINT = 0.1;
/** An end is hard if the year beyond it has less than this share of the likeliest. */
export const HARD = 0.05;
/** An end so many years beyond those of all readings is set by none of them. */
export const NEAR = 3;

/**
 * The first and the last of some model years, by place.
 * @typedef {readonly [number, number]} Run
 */

/**
 * Each reading in words, and the probability of each year by it alone.
 * @typedef {readonly (readonly [string, Vector])[]} Own
 */

/**
 * Whether the guide's answer is a range.
 * @param {Pick<Guide, "verdict">} guide
 */
export function brackets(guide) {
  return guide.verdict === "range";
}

/**
 * The years that lead: the likeliest one, or the range.
 * @param {Tables} tables
 * @param {Vector} years
 * @returns {Run}
 */
export function lead(tables, years) {
  const [first] = ranked(years);
  return brackets(tables.guide) ? run(years) : [first, first];
}

/**
 * From the first to the last year that is more than a tenth as probable as the
 * likeliest.
 * @param {Vector} years
 * @returns {Run}
 */
export function run(years) {
  const least = round9(FAINT * Math.max(...years));
  const inside = [...years.keys()].filter((y) => round9(years[y]) > least);
  return inside.length ? [inside[0], inside[inside.length - 1]] : [0, years.length - 1];
}

/**
 * The years in words; an end that is the guide's own is open.
 * @param {Guide} guide
 * @param {Run} found
 */
export function named(guide, found) {
  const [first, last] = found.map((y) => guide.years[y].year);
  const early = found[0] === 0;
  const late = found[1] === guide.years.length - 1;
  if (found[0] === found[1]) {
    return `${first}`;
  }
  if (early && late) {
    return `any year from ${first} to ${last}`;
  }
  if (late) {
    return `${first} or later`;
  }
  return early ? `${last} or earlier` : `${first} to ${last}`;
}

/**
 * The range, how probable it is, and which readings set its ends; null if the
 * guide's answer is a year.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @returns {Range | null}
 */
export function ends(tables, item, posterior) {
  const { guide } = tables;
  if (!brackets(guide)) {
    return null;
  }
  const found = run(posterior.years);
  const own = _own(tables, item);
  return Object.freeze({
    since: guide.years[found[0]].year,
    until: guide.years[found[1]].year,
    probability: covered(posterior, found),
    say: named(guide, found),
    start_say: _start(guide, own, found[0]),
    stop_say: _stop(guide, own, found[1]),
  });
}

/**
 * How probable it is that the object is of one of the years.
 * @param {Weighed} posterior
 * @param {Run} found
 */
export function covered(posterior, found) {
  return sum(posterior.years.slice(found[0], found[1] + 1));
}

/**
 * The probability of each decade, under its name.
 * @param {readonly (readonly [number, number])[]} model_years
 * @returns {readonly (readonly [string, number])[]}
 */
export function decades(model_years) {
  /** @type {Map<string, number>} */
  const found = new Map();
  for (const [year, p] of model_years) {
    const name = `${Math.floor(year / 10)}0s`;
    found.set(name, (found.get(name) ?? 0) + p);
  }
  return [...found];
}

/**
 * Whether two runs have a year in common.
 * @param {Run} one
 * @param {Run} other
 */
export function meet(one, other) {
  return one[0] <= other[1] && other[0] <= one[1];
}

/**
 * The range by the reading of the clue at place `k` alone.
 * @param {Tables} tables
 * @param {Item} item
 * @param {number} k
 */
export function own_run(tables, item, k) {
  return run(alone(tables, item, tables.guide.clues[k].id).years);
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Own}
 */
function _own(tables, item) {
  const readings = new Map(item.readings);
  const clues = [...read(tables, item).keys()].map((k) => tables.guide.clues[k]);
  return clues.map((clue) => [
    `the ${told(clue, readings.get(clue.id))}`,
    alone(tables, item, clue.id).years,
  ]);
}

/**
 * What sets the start: the latest of the starts that lie there or just before.
 * @param {Guide} guide
 * @param {Own} own
 * @param {number} since
 */
function _start(guide, own, since) {
  const starts = own.map(([, years]) => run(years)[0]);
  const latest = Math.max(0, ...starts.filter((y) => since - NEAR <= y && y <= since));
  if (latest === 0) {
    return "";
  }
  const by = own.filter((_, i) => starts[i] === latest);
  return `${_hardness(by, latest - 1)} before ${guide.years[since].year}: ${_by(by)}.`;
}

/**
 * What sets the end: the earliest of the ends that lie there or just behind.
 * @param {Guide} guide
 * @param {Own} own
 * @param {number} until
 */
function _stop(guide, own, until) {
  const last = guide.years.length - 1;
  const stops = own.map(([, years]) => run(years)[1]);
  const earliest = Math.min(last, ...stops.filter((y) => until <= y && y <= until + NEAR));
  if (earliest === last) {
    return "";
  }
  const by = own.filter((_, i) => stops[i] === earliest);
  return `${_hardness(by, earliest + 1)} after ${guide.years[until].year}: ${_by(by)}.`;
}

/**
 * How surely the year beyond an end is ruled out by one of its readings.
 * @param {Own} by
 * @param {number} beyond
 */
function _hardness(by, beyond) {
  const shares = by.map(([, years]) => round9(years[beyond] / Math.max(...years)));
  return Math.min(...shares) < HARD ? "Not" : "Hardly";
}

/** @param {Own} by */
function _by(by) {
  return listed(by.map(([what]) => what));
}
