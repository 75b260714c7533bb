/**
 * Red flags of one object, each with the question to put to the seller.
 *
 * The sentences are neutral: a flag is something to ask about, never an accusation.
 */

import { UNREADABLE } from "./code.js";
import { measured } from "./find.js";
import { pair } from "./parts.js";
import { brackets, lead } from "./range.js";
import { said } from "./reasons.js";
import { round9, sum } from "./special.js";
import { BARE, likely, percent } from "./words.js";

/** @import { Weighed } from "./claim.js" */
/** @import { ClaimVerdict, Flag, Item, Reading } from "./find.js" */
/** @import { Condition } from "./guide.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Run } from "./range.js" */
/** @import { Conflict } from "./reasons.js" */

export const EVEN = 0.5;
// From here on the readings speak against a claim with a word of weight.
export const AGAINST = 1 / BARE;
export const MIXED = "It may be made up of two objects, repaired, issued again, or a copy.";

/**
 * A flag that does not say yet whose it is: the owner stands between the two
 * pieces of `say` and of `ask`. `share` is how probable a replaced part is.
 * @typedef {object} Raised
 * @property {string} kind
 * @property {readonly string[]} about
 * @property {readonly [string, string]} say
 * @property {readonly [string, string]} ask
 * @property {number} share
 */

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
  const best = lead(tables, posterior.years);
  return [
    ...overall(posterior, weighed),
    ...raised(tables, item, posterior, clashes, best).map(
      ({ kind, about, say, ask }) => flag(kind, about, say.join(""), ask.join("")),
    ),
  ];
}

/**
 * The red flags of the answer as a whole, of one object or of a set.
 * @param {Weighed} posterior
 * @param {ClaimVerdict | null} weighed
 */
export function overall(posterior, weighed) {
  const found = [];
  if (is_outside(posterior)) {
    found.push(_outside(posterior.outside));
  }
  if (weighed && weighed.bayes_factor < AGAINST) {
    found.push(_claim(weighed));
  }
  return found;
}

/**
 * The red flags of one object's own; `best` is the years that lead.
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {readonly Conflict[]} clashes
 * @param {Run} best
 * @returns {Raised[]}
 */
export function raised(tables, item, posterior, clashes, best) {
  return [
    ..._conflicts(tables, item, clashes),
    ..._parts(tables, item, posterior),
    ...tables.guide.flags
      .filter(({ when }) => when.every((c) => _holds(tables, item, posterior, c, best)))
      .map(({ when, say, ask }) => _raised("guide", _about(when), ["", say], ["", ask])),
  ];
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
 * @param {Weighed} posterior
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
 * Whether all that is known of part `p` is that such parts are usually replaced.
 * @param {Tables} tables
 * @param {Item} item
 * @param {number} p
 */
export function untold(tables, item, p) {
  const read = item.readings.filter(([, reading]) => reading !== null);
  if (read.some(([clue]) => tables.part_of[tables.places.get(clue) ?? -1] === p)) {
    return false;
  }
  const [original] = pair(tables.forest, p, p);
  return is_replaced(1 - original);
}

/**
 * @param {number} p
 */
function _outside(p) {
  return flag(
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
  return flag(
    "claim",
    [String(year)],
    weighed.say,
    `How do you know that it is a ${year}?`,
  );
}

/**
 * One flag for all disagreements that ask the same.
 * @param {Tables} tables
 * @param {Item} item
 * @param {readonly Conflict[]} clashes
 */
function _conflicts(tables, item, clashes) {
  /** @type {Map<string, Conflict[]>} */
  const groups = new Map();
  for (const clash of clashes) {
    const asked = _asked(tables, clash);
    groups.set(asked, [...(groups.get(asked) ?? []), clash]);
  }
  return [...groups].map(([asked, group]) => _conflict(tables, item, asked, group));
}

/**
 * The question that a disagreement raises, without its end.
 * @param {Tables} tables
 * @param {Conflict} clash
 */
function _asked(tables, clash) {
  if (brackets(tables.guide)) {
    return "Is all of it of one age, or was something added or renewed later";
  }
  const { part_of } = tables;
  const clues = [clash.first, clash.second].sort((a, b) => part_of[a] - part_of[b]);
  const parts = new Set(clues.map((k) => _part(tables, k)));
  return `Did anyone ever work on the ${[...parts].join(" or the ")}`;
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {string} asked
 * @param {readonly Conflict[]} clashes
 */
function _conflict(tables, item, asked, clashes) {
  const places = [...new Set(clashes.flatMap(({ first, second }) => [first, second]))];
  const about = places.map((k) => tables.guide.clues[k].id);
  const pairs = _pairs(tables, item, clashes);
  const many = clashes.length > 1;
  if (brackets(tables.guide)) {
    const say = ` do not go together: ${pairs}. ${MIXED}`;
    return _raised("disagree", about, [many ? "Marks" : "Two marks", say], [asked, "?"]);
  }
  const who = many ? "Readings" : "Two readings";
  return _raised("disagree", about, [who, ` disagree: ${pairs}.`], [asked, "?"]);
}

/**
 * The readings that disagree; one that disagrees with several is told once.
 * @param {Tables} tables
 * @param {Item} item
 * @param {readonly Conflict[]} clashes
 */
function _pairs(tables, item, clashes) {
  const told = (/** @type {number} */ k) => said(tables, item, k);
  const pairs = clashes.map(({ first, second }) => [first, second]);
  const one = pairs[0].find((k) => pairs.every((pair) => pair.includes(k)));
  if (pairs.length > 1 && one !== undefined) {
    const others = pairs.map(([first, second]) => (first === one ? second : first));
    return `${told(one)}, against ${others.map(told).join("; ")}`;
  }
  return pairs.map((pair) => pair.map(told).join(", ")).join("; ");
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
      if (!tables.part_of.includes(p)) {
        // It never spoke for a year.
        continue;
      }
      const why = _goes_with(tables, p);
      found.push(
        _raised(
          "gone",
          [part.id],
          [
            `With the ${part.name}`,
            ` gone, nothing there can speak for a year any more${why}.`,
          ],
          [`Do you still have the ${part.name}`, "?"],
        ),
      );
    } else if (is_replaced(share) && !untold(tables, item, p)) {
      const sure = `${likely(share)}, ${percent(share)}`;
      found.push(
        _raised(
          "replaced",
          [part.id],
          [`Someone probably replaced the ${part.name}`, `: ${sure}.`],
          [`Did anyone ever replace the ${part.name}`, ", and when?"],
          share,
        ),
      );
    }
  }
  return found;
}

/**
 * What else was often renewed where part `p` is gone; empty if nothing.
 * @param {Tables} tables
 * @param {number} p
 */
function _goes_with(tables, p) {
  const parent = tables.forest.parent[p];
  if (parent === null || tables.guide.parts[p].share < EVEN) {
    return "";
  }
  const { name } = tables.guide.parts[parent];
  return `; who lost this often renewed the ${name} too`;
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
 * @param {Run} best
 */
function _holds(tables, item, posterior, c, best) {
  if (c.clue !== null) {
    return _reads(new Map(item.readings).get(c.clue) ?? null, c);
  }
  if (c.part !== null && c.replaced_over !== null) {
    const p = tables.guide.parts.findIndex((part) => part.id === c.part);
    const share = round9(replaced(posterior, p));
    if (item.gone.includes(c.part)) {
      return true;
    }
    return share > c.replaced_over && !untold(tables, item, p);
  }
  if (c.years !== null) {
    const [first, last] = best.map((y) => tables.guide.years[y].year);
    return c.years[0] <= first && last <= c.years[1];
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
  const size = measured(reading).value;
  return (c.over === null || size > c.over) && (c.under === null || size < c.under);
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
 * @param {readonly string[]} about
 * @param {string} say
 * @param {string} ask
 * @param {readonly string[]} [members]
 * @returns {Flag}
 */
export function flag(kind, about, say, ask, members = []) {
  return Object.freeze({ kind, about, say, ask, members });
}

/**
 * @param {string} kind
 * @param {readonly string[]} about
 * @param {readonly [string, string]} say
 * @param {readonly [string, string]} ask
 * @returns {Raised}
 */
function _raised(kind, about, say, ask, share = 1) {
  return Object.freeze({ kind, about, say, ask, share });
}
