/**
 * Red flags, each with the question to put to the seller: the engine's, the guide's.
 *
 * The sentences are neutral: a flag is something to ask about, never an accusation.
 */

import { UNREADABLE } from "./code.js";
import { ranked } from "./one.js";
import { said } from "./reasons.js";
import { round9, sum } from "./special.js";
import { BARE, likely, percent } from "./words.js";

/** @import { ClaimVerdict, Flag, Item, Reading } from "./find.js" */
/** @import { Condition } from "./guide.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Conflict } from "./reasons.js" */

export const EVEN = 0.5;
// From here on the readings speak against a claim with a word of weight.
export const AGAINST = 1 / BARE;

/**
 * All red flags: none of these, the claim, disagreements, parts, the guide's.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {readonly Conflict[]} clashes
 * @param {ClaimVerdict | null} weighed
 * @returns {Flag[]}
 */
export function flags(tables, item, posterior, clashes, weighed) {
  const found = [];
  if (is_outside(posterior)) {
    found.push(_outside(posterior.outside));
  }
  if (weighed && weighed.bayes_factor < AGAINST) {
    found.push(_claim(weighed));
  }
  found.push(...clashes.map((clash) => _conflict(tables, item, clash)));
  found.push(..._parts(tables, item, posterior));
  for (const flag of tables.guide.flags) {
    if (flag.when.every((c) => _holds(tables, item, posterior, c))) {
      found.push(_flag("guide", _about(flag.when), flag.say, flag.ask));
    }
  }
  return found;
}

/**
 * Probability that part `p` is replaced.
 * @param {Posterior} posterior
 * @param {number} p
 */
export function replaced(posterior, p) {
  return sum(posterior.replaced[p]);
}

/**
 * Whether the object is more likely none of these than one of them.
 * @param {Posterior} posterior
 */
export function is_outside(posterior) {
  return round9(posterior.outside) > EVEN;
}

/**
 * Whether a part with this probability is more likely replaced than original.
 * @param {number} share
 */
export function is_replaced(share) {
  return round9(share) > EVEN;
}

/**
 * @param {number} p
 */
function _outside(p) {
  return _flag(
    "outside",
    [],
    `It looks like none of these years: ${likely(p)}, ${percent(p)}. ` +
      "It may be another line, a year that the guide lacks, or a copy.",
    "What do you know about where it comes from?",
  );
}

/**
 * @param {ClaimVerdict} weighed
 */
function _claim(weighed) {
  const year = weighed.model_year;
  return _flag(
    "claim",
    [String(year)],
    weighed.say,
    `How do you know that it is a ${year}?`,
  );
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {Conflict} clash
 */
function _conflict(tables, item, clash) {
  const places = [clash.first, clash.second];
  const [first, second] = places.map((k) => said(tables, item, k));
  const [one, other] = places.map((k) => _part(tables, k));
  return _flag(
    "disagree",
    places.map((k) => tables.guide.clues[k].id),
    `Two readings disagree: ${first}, ${second}.`,
    one === other
      ? `Has the ${one} ever been worked on?`
      : `Has the ${one} or the ${other} ever been worked on?`,
  );
}

/**
 * @param {Tables} tables
 * @param {number} k
 */
function _part(tables, k) {
  return tables.guide.parts[tables.part_of[k]].name;
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 */
function _parts(tables, item, posterior) {
  const found = [];
  for (const [p, part] of tables.guide.parts.entries()) {
    const share = replaced(posterior, p);
    if (item.gone.includes(part.id)) {
      found.push(
        _flag(
          "gone",
          [part.id],
          `The ${part.name} is gone, so it can no longer speak for a year.`,
          `Do you still have the ${part.name}?`,
        ),
      );
    } else if (is_replaced(share)) {
      found.push(
        _flag(
          "replaced",
          [part.id],
          `The ${part.name} is probably not the original: ` +
            `${likely(share)}, ${percent(share)}.`,
          `Was the ${part.name} ever replaced, and when?`,
        ),
      );
    }
  }
  return found;
}

/**
 * @param {readonly Condition[]} when
 */
function _about(when) {
  return when.flatMap((c) => c.clue || c.part || []);
}

/**
 * Whether one condition of a guide's flag holds.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {Condition} c
 */
function _holds(tables, item, posterior, c) {
  if (c.clue !== null) {
    return _reads(new Map(item.readings).get(c.clue) ?? null, c);
  }
  if (c.part !== null && c.replaced_over !== null) {
    const p = tables.guide.parts.findIndex((part) => part.id === c.part);
    const share = round9(replaced(posterior, p));
    return item.gone.includes(c.part) || share > c.replaced_over;
  }
  if (c.years !== null) {
    const leading = tables.guide.years[ranked(posterior)[0]].year;
    return c.years[0] <= leading && leading <= c.years[1];
  }
  return false;
}

/**
 * @param {Reading} reading
 * @param {Condition} c
 */
function _reads(reading, c) {
  if (reading === null) {
    return false;
  }
  if (typeof reading === "string") {
    return c.among.some((pattern) => _matches(reading, pattern));
  }
  return (
    (c.over === null || reading > c.over) && (c.under === null || reading < c.under)
  );
}

/**
 * Whether a reading is the pattern, where ? stands for any readable character.
 * @param {string} reading
 * @param {string} pattern
 */
function _matches(reading, pattern) {
  const wanted = [...pattern];
  const read = [...reading];
  return (
    read.length === wanted.length &&
    read.every((a, i) => {
      const b = wanted[i];
      return a === b || (b === UNREADABLE && a !== UNREADABLE);
    })
  );
}

/**
 * @param {string} kind
 * @param {string[]} about
 * @param {string} say
 * @param {string} ask
 * @returns {Flag}
 */
function _flag(kind, about, say, ask) {
  return Object.freeze({ kind, about, say, ask });
}
