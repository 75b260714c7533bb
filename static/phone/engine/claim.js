/**
 * A claim weighed: Bayes factors, and what each cited clue is worth taken alone.
 *
 * Model page: "A claim".
 */

import { weigh } from "./one.js";
import { likelihood, tables_for } from "./prepare.js";
import { weigh_set } from "./sets.js";
import { sum, TINY } from "./special.js";
import { MOST, common, shown, typical } from "./typical.js";
import { BARE, evidence, strength, tells_nothing, times, years } from "./words.js";

/** @import { Cited, Claim, ClaimVerdict, Item } from "./find.js" */
/** @import { Clue } from "./guide.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { SetPosterior } from "./sets.js" */
/** @import { Vector } from "./special.js" */

// A hair under a half, so that the last bit never decides what fits half as well.
export const HALF = 0.5 - 1e-9;

/** @typedef {Posterior | SetPosterior} Weighed */

/**
 * What everything that was read, and each cited clue, says of the claim.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @param {Claim} said
 * @returns {ClaimVerdict}
 */
export function claim(tables, items, posterior, said) {
  const y = place(tables, said.model_year);
  const weighed = factor(tables, posterior, y);
  return Object.freeze({
    model_year: said.model_year,
    bayes_factor: weighed,
    words: strength(weighed),
    say: _say(weighed, said.model_year),
    cited: said.cites.map((clue) => _cited(tables, items, clue, y)),
  });
}

/**
 * Where the model year stands in the guide.
 * @param {Tables} tables
 * @param {number} year
 */
export function place(tables, year) {
  return tables.guide.years.findIndex((y) => y.year === year);
}

/**
 * Bayes factor of the model year at place `y` against all the rest.
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @param {number} y
 */
export function factor(tables, posterior, y) {
  return odds(tables, [...posterior.years, posterior.outside], [y, y]);
}

/**
 * Odds of the years from one place to another after the readings over odds before.
 *
 * `shares` are the probabilities of the model years, and last of outside, which the
 * rest includes. What is ruled out altogether counts as next to nothing, so that
 * the factor is a number.
 * @param {Tables} tables
 * @param {Vector} shares
 * @param {readonly [number, number]} lead
 */
export function odds(tables, shares, lead) {
  const [first, last] = lead;
  const before = sum(tables.prior, tables.stretches[first][0], tables.stretches[last][1]);
  const rest_before = sum(tables.prior) - before;
  const inside = sum(shares, first, last + 1);
  const rest = sum(shares, 0, first) + sum(shares, last + 1);
  return Math.max(inside, TINY) / Math.max(rest, TINY) / (before / rest_before);
}

/**
 * What the readings say of one object, or of a set.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @returns {Weighed}
 */
export function weigh_all(tables, items) {
  return items.length === 1 ? weigh(tables, items[0]) : weigh_set(tables, items);
}

/**
 * What one reading says by itself.
 * @param {Tables} tables
 * @param {Item} item
 * @param {string} clue
 */
export function alone(tables, item, clue) {
  const only = item.readings.filter(([read]) => read === clue);
  return weigh(tables, { readings: only, gone: [], member: item.member });
}

/**
 * The model years that the readings fit at least half as well as the best one,
 * however many of each were made.
 * @param {Tables} tables
 * @param {Vector} shares
 */
export function fitting(tables, shares) {
  const fits = tables.stretches.map(
    ([start, stop], y) => shares[y] / sum(tables.prior, start, stop),
  );
  const best = Math.max(...fits);
  return tables.guide.years
    .filter((_, y) => fits[y] >= HALF * best)
    .map((year) => year.year);
}

/**
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {string} cite
 * @param {number} y
 * @returns {Cited}
 */
function _cited(tables, items, cite, y) {
  const clue = tables.guide.clues[tables.places.get(cite) ?? -1];
  /** @type {Item[]} */
  const readers = [];
  for (const { readings, member } of items) {
    const reading = new Map(readings).get(cite) ?? null;
    if (reading !== null) {
      readers.push({ readings: [[cite, reading]], gone: [], member });
    }
  }
  const read = readers.length > 0;
  const [weighed, say] = read
    ? _worth(tables, readers, y, `Taken alone, the ${clue.name}`)
    : _unread(tables, items, clue, y);
  return Object.freeze({ clue: cite, read, factor: weighed, say });
}

/**
 * What a clue would be worth that nobody has read yet.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Clue} clue
 * @param {number} y
 * @returns {[number, string]}
 */
function _unread(tables, items, clue, y) {
  const able = items.filter((item) => !item.gone.includes(clue.part));
  if (able.length === 0) {
    const part = tables.guide.parts.find(({ id }) => id === clue.part)?.name;
    return [1, `With the ${part} went the ${clue.name}.`];
  }
  const supposed = _supposed(tables, able, clue, y);
  if (supposed.length === 0) {
    const year = tables.guide.years[y].year;
    return [1, `The guide does not say what the ${clue.name} of a ${year} shows.`];
  }
  const opening = `${_if_read(tables, supposed, clue, y)}, the ${clue.name} alone`;
  return _worth(tables, supposed, y, opening);
}

/**
 * The factor of one clue's readings alone, and a sentence that opens as given.
 * @param {Tables} tables
 * @param {readonly Item[]} readers
 * @param {number} y
 * @param {string} opening
 * @returns {[number, string]}
 */
function _worth(tables, readers, y, opening) {
  const posterior = weigh_all(tables, readers);
  const weighed = factor(tables, posterior, y);
  const told = evidence(weighed, tables.guide.years[y].year);
  const fits = fitting(tables, posterior.years);
  const shared = years(fits);
  if (tells_nothing(weighed) || (weighed > 1 && weighed <= BARE)) {
    const why = fits.length > 1 ? `any of ${shared}` : `it fits ${shared} best`;
    return [weighed, `${opening} would prove next to nothing: ${why}.`];
  }
  if (weighed < 1) {
    return [weighed, `${opening} would be ${told} and point to ${shared}.`];
  }
  return [weighed, `${opening} would be ${told}.`];
}

/**
 * The items with what the model year at place `y` mostly shows, where the guide
 * says it, and nothing else.
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Clue} clue
 * @param {number} y
 */
function _supposed(tables, items, clue, y) {
  const k = tables.places.get(clue.id) ?? -1;
  /** @type {Item[]} */
  const found = [];
  for (const { member } of items) {
    const table = tables_for(tables, member)[k];
    const reading = typical(tables, table, ...tables.stretches[y]);
    if (reading !== null) {
      found.push({ readings: [[clue.id, reading]], gone: [], member });
    }
  }
  return found;
}

/**
 * What is supposed, in words; the reading only if all have the same.
 * @param {Tables} tables
 * @param {readonly Item[]} supposed
 * @param {Clue} clue
 * @param {number} y
 */
function _if_read(tables, supposed, clue, y) {
  const readings = [...new Set(supposed.map((item) => item.readings[0][1]))];
  const k = tables.places.get(clue.id) ?? -1;
  const table = tables_for(tables, supposed[0].member)[k];
  const { orig } = likelihood(table, readings[0]);
  let how = "usual on";
  if (clue.kind.name !== "measure") {
    const most = common(tables, orig, ...tables.stretches[y]) > MOST;
    how = most ? "on most" : "most often on";
  }
  const where = supposed.length > 1 ? " on all of them" : "";
  const what = readings.length === 1 ? ` (${shown(clue, readings[0])})` : "";
  return `If read${where} as ${how} ${tables.guide.years[y].year}s${what}`;
}

/**
 * @param {number} weighed
 * @param {number} year
 */
function _say(weighed, year) {
  if (tells_nothing(weighed)) {
    return `What was read so far speaks neither for nor against ${year}.`;
  }
  const way = weighed > 1 ? "better" : "worse";
  return (
    `What was read is ${evidence(weighed, year)}: ` +
    `that year fits ${times(weighed)} ${way} than the rest.`
  );
}
