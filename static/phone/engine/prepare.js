/** What follows from the guide alone, worked out once: Guide to Tables. */

import { cells, stretches } from "./cells.js";
import { choice_likelihood, choice_table } from "./choice.js";
import { code_likelihood, code_table } from "./code.js";
import { applies } from "./likelihood.js";
import {
  measure_for,
  measure_likelihood,
  measure_outcomes,
  measure_table,
} from "./measure.js";
import { number_likelihood, number_outcomes, number_table } from "./number.js";
import { forest, worlds } from "./parts.js";

/** @import { Cell } from "./cells.js" */
/** @import { ChoiceTable } from "./choice.js" */
/** @import { CodeTable } from "./code.js" */
/** @import { Reading } from "./find.js" */
/** @import { Clue, Guide } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { MeasureTable } from "./measure.js" */
/** @import { NumberTable } from "./number.js" */
/** @import { Forest, World } from "./parts.js" */
/** @import { Vector } from "./special.js" */

/** @typedef {ChoiceTable | MeasureTable | CodeTable | NumberTable} ClueTable */

/**
 * A guide with all that judging needs.
 *
 * `prior` has one entry a cell and a last one for outside; `stretches` says which
 * cells are each model year's; `worlds` is what can have been replaced on a whole
 * set. `clues[m]` are the tables for the member at place `m` of `members`, which
 * begins with null, the member that is not known.
 * @typedef {object} Tables
 * @property {Guide} guide
 * @property {readonly Cell[]} cells
 * @property {readonly (readonly [number, number])[]} stretches
 * @property {Vector} prior
 * @property {Forest} forest
 * @property {readonly World[]} worlds
 * @property {readonly number[]} part_of
 * @property {ReadonlyMap<string, number>} places
 * @property {readonly (string | null)[]} members
 * @property {readonly (readonly ClueTable[])[]} clues
 */

/**
 * Tables of a guide without problems.
 * @param {Guide} guide
 * @returns {Tables}
 */
export function prepare(guide) {
  return ended(preparing(guide));
}

/**
 * The same step by step, so that a page can answer in between.
 * @param {Guide} guide
 * @returns {Generator<void, Tables, void>}
 */
export function* preparing(guide) {
  const all_cells = cells(guide);
  const members = [null, ...(guide.members ? guide.members.all : [])];
  const part_places = guide.parts.map((part) => part.id);
  const trees = forest(guide);
  /** @type {(readonly ClueTable[])[]} */
  const by_clue = [];
  for (const clue of guide.clues) {
    by_clue.push(yield* _by_member(guide, clue, all_cells, members));
  }
  return Object.freeze({
    guide,
    cells: all_cells,
    stretches: stretches(guide),
    prior: [
      ...all_cells.map((cell) => (1 - guide.outside) * cell.spread),
      guide.outside,
    ],
    forest: trees,
    worlds: worlds(guide, trees),
    part_of: guide.clues.map((clue) => part_places.indexOf(clue.part)),
    places: new Map(guide.clues.map((clue, k) => [clue.id, k])),
    members,
    clues: members.map((_, m) => by_clue.map((rows) => rows[m])),
  });
}

/**
 * What steps come to, all taken at once.
 * @template T
 * @param {Generator<void, T, void>} steps
 * @returns {T}
 */
export function ended(steps) {
  for (;;) {
    const { done, value } = steps.next();
    if (done) {
      return value;
    }
  }
}

/**
 * The clue tables of one set member.
 * @param {Tables} tables
 * @param {string | null} member
 */
export function tables_for(tables, member) {
  return tables.clues[tables.members.indexOf(member)];
}

/**
 * Likelihood of a reading that is not null and fits its clue.
 * @param {ClueTable} table
 * @param {Reading} reading
 */
export function likelihood(table, reading) {
  switch (table.name) {
    case "choice":
      return choice_likelihood(table, String(reading));
    case "measure":
      return measure_likelihood(table, reading);
    case "code":
      return code_likelihood(table, String(reading));
    case "number":
      return number_likelihood(table, Number(reading));
  }
}

/**
 * Likelihoods of the readings that the clue may give; what they leave over is
 * any other reading. The arguments are as for `measure_outcomes`.
 * @param {ClueTable} table
 * @param {Vector} original
 * @param {number} replaced
 * @param {number} outside
 * @param {Vector} whole
 * @returns {readonly Likelihood[]}
 */
export function outcomes(table, original, replaced, outside, whole = []) {
  switch (table.name) {
    case "choice":
      return table.likelihoods;
    case "measure":
      return measure_outcomes(table, original, replaced, outside, whole);
    case "code":
      return table.clean;
    case "number":
      return number_outcomes(table, original, replaced, outside, whole);
  }
}

/**
 * The clue's table for each member; those for whom the same counts share one.
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {readonly Cell[]} all_cells
 * @param {readonly (string | null)[]} members
 * @returns {Generator<void, readonly ClueTable[], void>}
 */
function* _by_member(guide, clue, all_cells, members) {
  /** @type {Map<string, ClueTable>} */
  const known = new Map();
  /** @type {ClueTable[]} */
  const found = [];
  for (const member of members) {
    const counts = _limits(clue)
      .map((limits) => Number(applies(...limits, member)))
      .join("");
    const table =
      known.get(counts) ??
      (found[0]?.name === "measure"
        ? measure_for(found[0], all_cells, member)
        : yield* _table(guide, clue, all_cells, member));
    known.set(counts, table);
    found.push(table);
    yield;
  }
  return found;
}

/**
 * For whom alone, or for whom not, each span or size of the clue counts.
 * @param {Clue} clue
 * @returns {[readonly string[], readonly string[]][]}
 */
function _limits(clue) {
  const kind = clue.kind;
  switch (kind.name) {
    case "choice":
      return kind.options
        .flatMap((option) => option.seen)
        .map((span) => [span.members, span.excluded]);
    case "measure":
      return kind.sizes.map((size) => [size.members, size.excluded]);
    case "code":
    case "number":
      return [];
  }
}

/**
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {readonly Cell[]} all_cells
 * @param {string | null} member
 * @returns {Generator<void, ClueTable, void>}
 */
function* _table(guide, clue, all_cells, member) {
  const kind = clue.kind;
  switch (kind.name) {
    case "choice":
      return choice_table(guide, clue, kind, all_cells, member);
    case "measure":
      return yield* measure_table(clue, kind, all_cells, member);
    case "code":
      return yield* code_table(clue, kind, all_cells);
    case "number":
      return number_table(clue, kind, all_cells);
  }
}
