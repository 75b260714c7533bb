/**
 * Number clues: serial, patent and registration numbers, with the first of each year.
 *
 * Model page: "number", and "What to look at next" for the cut into runs of years.
 */

import { staying } from "./later.js";
import { blend, gathered, halves } from "./likelihood.js";
import { dot, round9, sum } from "./special.js";

/** @import { Cell } from "./cells.js" */
/** @import { Clue, Counted } from "./guide.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Vector } from "./special.js" */

/** A table of more years than this is cut into about so many runs for the ranking. */
export const CUTS = 20;

/**
 * Cells by the year of building: `years` are these, `which` is each cell's place
 * among them.
 *
 * `counts` is how many numbers each year of the guide's table has; `rows` is, for each
 * year of building, the probability of a number of each of those years. The sources of
 * a replaced part are the years of building, and a last one that shows anything.
 * @typedef {object} NumberTable
 * @property {"number"} name
 * @property {Counted} number
 * @property {number} misread
 * @property {readonly number[]} years
 * @property {readonly number[]} which
 * @property {Vector} sources
 * @property {readonly number[]} counts
 * @property {readonly Vector[]} rows
 */

/**
 * The table of a number clue.
 * @param {Clue} clue
 * @param {Counted} kind
 * @param {readonly Cell[]} cells
 * @returns {NumberTable}
 */
export function number_table(clue, kind, cells) {
  const built = cells.map((cell) => Math.floor(cell.t / 12));
  const years = [...new Set(built)].sort((a, b) => a - b);
  const which = built.map((year) => years.indexOf(year));
  const share = Array(years.length).fill(0);
  for (const [c, k] of which.entries()) {
    share[k] += cells[c].spread;
  }
  const starts = kind.first.map(([, n]) => n);
  const stops = [...starts.slice(1), kind.last + 1];
  return Object.freeze({
    name: "number",
    number: kind,
    misread: clue.misread,
    years,
    which,
    sources: halves(share),
    counts: starts.map((n, i) => stops[i] - n),
    rows: years.map((year) => _row(kind, year)),
  });
}

/**
 * Likelihood of reading the number `n`, which is one of the table's.
 * @param {NumberTable} table
 * @param {number} n
 */
export function number_likelihood(table, n) {
  const i = table.number.first.findLastIndex(([, first]) => first <= n);
  const count = table.counts[i];
  return _likelihood(
    table,
    table.rows.map((row) => row[i] / count),
    1,
  );
}

/**
 * Likelihoods of a number of each year of the table, or of each run of years if
 * they are many, cut where the prediction has another part of all. The arguments are
 * as for `measure_outcomes`.
 * @param {NumberTable} table
 * @param {Vector} original
 * @param {number} replaced
 * @param {number} outside
 * @param {Vector} whole
 */
export function number_outcomes(table, original, replaced, outside, whole = []) {
  const { which, sources } = table;
  const mass = gathered(which, sources, original, replaced, outside, whole);
  const many = table.counts.length > CUTS;
  /** @type {Likelihood[]} */
  const outcomes = [];
  let start = 0;
  let run = 0;
  for (const [i, p] of _predicted(table, mass).entries()) {
    run += p;
    const enough = !many || round9(run) >= (outcomes.length + 1) / CUTS;
    if (enough || i + 1 === table.counts.length) {
      const by_year = table.rows.map((row) => sum(row, start, i + 1));
      const count = sum(table.counts, start, i + 1);
      outcomes.push(_likelihood(table, by_year, count));
      start = i + 1;
    }
  }
  return outcomes;
}

/**
 * How likely something built in the year has a number of each of the years.
 * @param {Counted} kind
 * @param {number} year
 * @returns {Vector}
 */
function _row(kind, year) {
  if (kind.means === "made") {
    return kind.first.map(([given]) => (given === year ? 1 : 0));
  }
  const q = staying(kind.lag);
  return kind.first.map(([given]) =>
    given <= year ? (1 - q) * q ** (year - given) : 0,
  );
}

/**
 * How probable a number of each year is, by mass of the sources.
 * @param {NumberTable} table
 * @param {Vector} mass
 */
function _predicted(table, mass) {
  const m = table.misread;
  const last = mass.length - 1;
  const lot = (m * sum(mass, 0, last) + mass[last]) / _all(table);
  return table.counts.map((count, i) => {
    const column = table.rows.map((row) => row[i]);
    return (1 - m) * dot(column, mass) + lot * count;
  });
}

/**
 * How many numbers there are in all.
 * @param {NumberTable} table
 */
function _all(table) {
  return sum(table.counts);
}

/**
 * Likelihood of any of `count` numbers, whose clean probabilities are given.
 * @param {NumberTable} table
 * @param {Vector} by_year
 * @param {number} count
 * @returns {Likelihood}
 */
function _likelihood(table, by_year, count) {
  const out = count / _all(table);
  const read = by_year.map((g) => (1 - table.misread) * g + table.misread * out);
  const orig = table.which.map((k) => read[k]);
  const by_source = [...read, out];
  return Object.freeze({ orig, rep: blend(table.sources, by_source), out, by_source });
}
