/**
 * A claim weighed: Bayes factors, and each cited clue's reading taken alone.
 *
 * Model page: "A claim".
 */

import { weigh } from "./one.js";
import { sum, TINY } from "./special.js";
import { BARE, evidence, strength, tells_nothing, times, years } from "./words.js";

/** @import { Cited, Claim, ClaimVerdict, Item } from "./find.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */

// A hair under a half, so that the last bit never decides what fits half as well.
export const HALF = 0.5 - 1e-9;

/**
 * What everything that was read, and each cited clue, says of the claim.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {Claim} said
 * @returns {ClaimVerdict}
 */
export function claim(tables, item, posterior, said) {
  const y = place(tables, said.model_year);
  const weighed = factor(tables, posterior, y);
  return Object.freeze({
    model_year: said.model_year,
    bayes_factor: weighed,
    words: strength(weighed),
    say: _say(weighed, said.model_year),
    cited: said.cites.map((clue) => _cited(tables, item, clue, y)),
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
 *
 * Odds after the readings over odds before; the rest includes outside. What is
 * ruled out altogether counts as next to nothing, so that the factor is a number.
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @param {number} y
 */
export function factor(tables, posterior, y) {
  const [start, stop] = tables.stretches[y];
  const before = sum(tables.prior, start, stop);
  const after = posterior.years[y];
  const rest_before = sum(tables.prior) - before;
  const rest_after =
    sum(posterior.years, 0, y) + sum(posterior.years, y + 1) + posterior.outside;
  return Math.max(after, TINY) / Math.max(rest_after, TINY) / (before / rest_before);
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
 * @param {Posterior} posterior
 * @param {Tables} tables
 */
export function fitting(posterior, tables) {
  const fits = tables.stretches.map(
    ([start, stop], y) => posterior.years[y] / sum(tables.prior, start, stop),
  );
  const best = Math.max(...fits);
  return tables.guide.years
    .filter((_, y) => fits[y] >= HALF * best)
    .map((year) => year.year);
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {string} clue
 * @param {number} y
 * @returns {Cited}
 */
function _cited(tables, item, clue, y) {
  const name = tables.guide.clues[tables.places.get(clue) ?? -1].name;
  if ((new Map(item.readings).get(clue) ?? null) === null) {
    const say = `Still to be read: the ${name}.`;
    return Object.freeze({ clue, factor: 1, say });
  }
  const posterior = alone(tables, item, clue);
  const weighed = factor(tables, posterior, y);
  const told = evidence(weighed, tables.guide.years[y].year);
  const shared = years(fitting(posterior, tables));
  let say;
  if (tells_nothing(weighed) || (weighed > 1 && weighed <= BARE)) {
    say = `Taken alone, the ${name} would prove next to nothing: any of ${shared}.`;
  } else if (weighed < 1) {
    say = `Taken alone, the ${name} would be ${told} and point to ${shared}.`;
  } else {
    say = `Taken alone, the ${name} would be ${told}.`;
  }
  return Object.freeze({ clue, factor: weighed, say });
}

/**
 * @param {number} weighed
 * @param {number} year
 */
function _say(weighed, year) {
  if (tells_nothing(weighed)) {
    return `What was read so far speaks neither for nor against ${year}.`;
  }
  const way = weighed > 1 ? "higher" : "lower";
  return (
    `What was read is ${evidence(weighed, year)}: ` +
    `its odds are ${times(weighed)} ${way} than before looking.`
  );
}
