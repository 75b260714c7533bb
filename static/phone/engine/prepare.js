/** What follows from the guide alone, worked out once: Guide to Tables. */

import { cells, stretches } from "./cells.js";
import { choice_likelihood, choice_table } from "./choice.js";
import { code_likelihood, code_table } from "./code.js";
import {
  measure_for,
  measure_likelihood,
  measure_outcomes,
  measure_table,
} from "./measure.js";
import { forest } from "./parts.js";

/** @import { Cell } from "./cells.js" */
/** @import { ChoiceTable } from "./choice.js" */
/** @import { CodeTable } from "./code.js" */
/** @import { Reading } from "./find.js" */
/** @import { Clue, Guide } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { MeasureTable } from "./measure.js" */
/** @import { Forest } from "./parts.js" */
/** @import { Vector } from "./special.js" */

/** @typedef {ChoiceTable | MeasureTable | CodeTable} ClueTable */

/**
 * A guide with all that judging needs.
 *
 * `prior` has one entry a cell and a last one for outside; `stretches` says which
 * cells are each model year's. `clues[m]` are the tables for the member at place
 * `m` of `members`, which begins with null, the member that is not known.
 * @typedef {object} Tables
 * @property {Guide} guide
 * @property {readonly Cell[]} cells
 * @property {readonly (readonly [number, number])[]} stretches
 * @property {Vector} prior
 * @property {Forest} forest
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
  const all_cells = cells(guide);
  const members = [null, ...(guide.members ? guide.members.all : [])];
  const part_places = guide.parts.map((part) => part.id);
  const unknown = guide.clues.map((clue) => _table(guide, clue, all_cells, null));
  return Object.freeze({
    guide,
    cells: all_cells,
    stretches: stretches(guide),
    prior: [
      ...all_cells.map((cell) => (1 - guide.outside) * cell.spread),
      guide.outside,
    ],
    forest: forest(guide),
    part_of: guide.clues.map((clue) => part_places.indexOf(clue.part)),
    places: new Map(guide.clues.map((clue, k) => [clue.id, k])),
    members,
    clues: members.map((member) =>
      guide.clues.map((clue, k) =>
        _table_for(guide, clue, unknown[k], all_cells, member),
      ),
    ),
  });
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
      return measure_likelihood(table, Number(reading));
    case "code":
      return code_likelihood(table, String(reading));
  }
}

/**
 * Likelihoods of the readings that the clue may give; what they leave over is
 * any other reading. The arguments are as for `measure_outcomes`.
 * @param {ClueTable} table
 * @param {Vector} original
 * @param {number} replaced
 * @param {number} outside
 * @returns {readonly Likelihood[]}
 */
export function outcomes(table, original, replaced, outside) {
  switch (table.name) {
    case "choice":
      return table.likelihoods;
    case "measure":
      return measure_outcomes(table, original, replaced, outside);
    case "code":
      return table.clean;
  }
}

/**
 * The clue's table for a set member, from the one for a member not known.
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {ClueTable} table
 * @param {readonly Cell[]} all_cells
 * @param {string | null} member
 * @returns {ClueTable}
 */
function _table_for(guide, clue, table, all_cells, member) {
  if (!_differs(clue)) {
    return table;
  }
  if (table.name === "measure") {
    return measure_for(table, all_cells, member);
  }
  return _table(guide, clue, all_cells, member);
}

/**
 * Whether the clue is made differently for some set members.
 * @param {Clue} clue
 */
function _differs(clue) {
  const kind = clue.kind;
  switch (kind.name) {
    case "choice":
      return kind.options
        .flatMap((option) => option.seen)
        .some((span) => span.members.length > 0 || span.excluded.length > 0);
    case "measure":
      return kind.sizes.some(
        (size) => size.members.length > 0 || size.excluded.length > 0,
      );
    case "code":
      return false;
  }
}

/**
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {readonly Cell[]} all_cells
 * @param {string | null} member
 * @returns {ClueTable}
 */
function _table(guide, clue, all_cells, member) {
  const kind = clue.kind;
  switch (kind.name) {
    case "choice":
      return choice_table(guide, clue, kind, all_cells, member);
    case "measure":
      return measure_table(clue, kind, all_cells, member);
    case "code":
      return code_table(clue, kind, all_cells);
  }
}
