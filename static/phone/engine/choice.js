/**
 * Choice clues: drawn answers, each made in certain years and months.
 *
 * Model page: "choice".
 */

import { applies } from "./likelihood.js";
import { dot, sum } from "./special.js";

/** @import { Cell } from "./cells.js" */
/** @import { Choice, Clue, Guide, Option, Span } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Vector } from "./special.js" */

export const LOOK_ALIKE = 5;

/**
 * The likelihood of every option, in guide order; and the sources of a replaced
 * part, which are the options with the weights `R`.
 * @typedef {object} ChoiceTable
 * @property {"choice"} name
 * @property {readonly string[]} ids
 * @property {readonly Likelihood[]} likelihoods
 * @property {Vector} sources
 */

/**
 * Likelihoods of the options for a set member (null: not known).
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {Choice} kind
 * @param {readonly Cell[]} cells
 * @param {string | null} member
 * @returns {ChoiceTable}
 */
export function choice_table(guide, clue, kind, cells, member) {
  const common = cells.map((cell) => _shares(guide, kind, cell, null));
  const shares =
    member === null ? common : cells.map((cell) => _shares(guide, kind, cell, member));
  const later = _replacement(guide, kind, cells, common);
  const seen = _misreading(kind.options, clue.misread);
  const by_option = kind.options.map((_, a) => seen.map((row) => row[a]));
  return Object.freeze({
    name: "choice",
    ids: kind.options.map((option) => option.id),
    likelihoods: by_option.map((by_source) =>
      Object.freeze({
        orig: shares.map((row) => dot(row, by_source)),
        rep: dot(later, by_source),
        out: 1 / kind.options.length,
        by_source,
      }),
    ),
    sources: later,
  });
}

/**
 * Likelihood of reading the option with id `a`.
 * @param {ChoiceTable} table
 * @param {string} a
 */
export function choice_likelihood(table, a) {
  return table.likelihoods[table.ids.indexOf(a)];
}

/**
 * `w`: the largest share of the option's spans that cover the cell.
 * @param {Option} option
 * @param {Cell} cell
 * @param {string | null} member
 */
export function weight(option, cell, member) {
  let most = 0;
  for (const span of option.seen) {
    most = Math.max(most, _covers(span, cell, member));
  }
  return most;
}

/**
 * @param {Span} span
 * @param {Cell} cell
 * @param {string | null} member
 */
function _covers(span, cell, member) {
  if (!applies(span.members, span.excluded, member)) {
    return 0;
  }
  if (span.years && !(span.years[0] <= cell.year && cell.year <= span.years[1])) {
    return 0;
  }
  const before = span.since === null ? 0 : span.since - cell.t;
  const after = span.until === null ? 0 : cell.t - span.until;
  const distance = Math.max(before, after, 0);
  if (distance > span.fade) {
    return 0;
  }
  return span.share * (1 - distance / (span.fade + 1));
}

/**
 * `A(o|c)` of every option; uniform where the guide is silent.
 * @param {Guide} guide
 * @param {Choice} kind
 * @param {Cell} cell
 * @param {string | null} member
 * @returns {Vector}
 */
function _shares(guide, kind, cell, member) {
  const raised = kind.options.map((o) => weight(o, cell, member) + guide.floor);
  const total = sum(raised);
  return raised.map((w) => w / total);
}

/**
 * `R(o)`: what a replaced part shows.
 * @param {Guide} guide
 * @param {Choice} kind
 * @param {readonly Cell[]} cells
 * @param {Vector[]} common
 * @returns {Vector}
 */
function _replacement(guide, kind, cells, common) {
  const options = kind.options;
  if (kind.replacement.length > 0) {
    const given = new Map(kind.replacement);
    const raised = options.map((o) => (given.get(o.id) ?? 0) + guide.floor);
    const total = sum(raised);
    return raised.map((w) => w / total);
  }
  return options.map((_, o) => {
    const shown = cells.reduce((total, c, i) => total + c.spread * common[i][o], 0);
    return 0.5 * shown + 0.5 / options.length;
  });
}

/**
 * `M(a|o)` as rows by the true option `o`.
 * @param {readonly Option[]} options
 * @param {number} m
 * @returns {Vector[]}
 */
function _misreading(options, m) {
  if (options.length === 1) {
    return [[1]];
  }
  return options.map((o) => {
    const pull = options.map((a) => {
      if (a === o) {
        return 0;
      }
      return o.like.includes(a.id) || a.like.includes(o.id) ? LOOK_ALIKE : 1;
    });
    const total = sum(pull);
    return pull.map((x, a) => (options[a] === o ? 1 - m : (m * x) / total));
  });
}
