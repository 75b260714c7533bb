/**
 * Code clues: stamped or printed strings of fixed-width fields, ? for unreadable.
 *
 * Model page: "code". What they should read is in `layout`.
 */

import { layouts } from "./guide.js";
import { on_later, staying } from "./later.js";
import { clean_of, fits, layout_table, layout_weights } from "./layout.js";
import { blend, halves } from "./likelihood.js";

/** @import { Cell } from "./cells.js" */
/** @import { Clue, Code, Field } from "./guide.js" */
/** @import { LayoutTable, Row, Texts } from "./layout.js" */
/** @import { Likelihood } from "./likelihood.js" */
/** @import { Vector } from "./special.js" */

export const LOOK_ALIKES = Object.freeze([
  "0OQDC",
  "1IL7T",
  "2Z",
  "5S",
  "6G",
  "8B3",
  "UVY",
  "MNWH",
  "4A",
  "9GQ",
  "EF",
  "PR",
  "KX",
]);
/**
 * The characters that each is easily taken for, with itself.
 * @type {Record<string, string>}
 */
export const ALIKE = Object.freeze(
  Object.fromEntries(
    [...LOOK_ALIKES.join("")].map((a) => [
      a,
      LOOK_ALIKES.filter((group) => group.includes(a)).join(""),
    ]),
  ),
);
export const LOOK_ALIKE = 5;
export const UNREADABLE = "?";
/** The model year of a month in which marks were given to all. */
export const NO_MODEL = 0;

/**
 * What each layout should read at each date, how often the code is laid out so,
 * and the likelihoods of the clean readings.
 *
 * Dates are the cells, or of a code that means not-before all months in which its
 * marks were given, up to the last cell's: `which` is where each cell stands among
 * them. The sources of a replaced part are the cells, and a last one that shows
 * anything.
 * @typedef {object} CodeTable
 * @property {"code"} name
 * @property {Code} code
 * @property {number} misread
 * @property {Vector} sources
 * @property {readonly number[]} which
 * @property {readonly LayoutTable[]} layouts
 * @property {readonly Vector[]} weights
 * @property {readonly Likelihood[]} clean
 */

/**
 * What each text in a field tells of the texts that should be there: many clean
 * readings have the same one.
 * @typedef {Map<string, Vector>} Read
 */

/**
 * The table of a code clue.
 * @param {Clue} clue
 * @param {Code} kind
 * @param {readonly Cell[]} cells
 * @returns {Generator<void, CodeTable, void>}
 */
export function* code_table(clue, kind, cells) {
  const made = kind.means === "made";
  const dates = made ? cells : _months(kind, cells);
  const known = layouts(kind);
  /** @type {CodeTable} */
  const bare = {
    name: "code",
    code: kind,
    misread: clue.misread,
    sources: halves(cells.map((cell) => cell.spread)),
    which: _which(kind, cells, dates),
    layouts: known.map((layout) => layout_table(layout, dates)),
    // Where a code was laid out in no way that is known, no marks were given.
    weights: layout_weights(known, dates, clue.misread, { silent: made ? 1 : 0 }),
    clean: [],
  };
  yield;
  const read = known.map(() => new Map());
  const clean = [];
  for (const [reading, of] of clean_of(bare.layouts, UNREADABLE)) {
    clean.push(_likelihood(bare, reading, of, read));
    yield;
  }
  return Object.freeze({ ...bare, clean });
}

/**
 * Likelihood of a reading that fits one of the code's layouts, or several.
 * @param {CodeTable} table
 * @param {string} reading
 * @returns {Likelihood}
 */
export function code_likelihood(table, reading) {
  const places = [...table.layouts.keys()];
  const read = places.map(() => new Map());
  return _likelihood(table, reading, places, read);
}

/**
 * How much each date weighs on objects of the cells from `start` on, which have
 * these weights.
 * @param {CodeTable} table
 * @param {Vector} spread
 * @param {number} start
 * @returns {Vector}
 */
export function code_dates(table, spread, start) {
  const dates = Array(table.weights[0].length).fill(0);
  for (const [k, w] of spread.entries()) {
    const i = table.which[start + k];
    if (i >= 0) {
      dates[i] += w;
    }
  }
  if (table.code.means === "made") {
    return dates;
  }
  return on_later(dates.reverse(), staying(12 * table.code.lag)).reverse();
}

/**
 * Likelihood of a reading of one of the layouts at some places; `read` has what is
 * known of each layout's fields.
 * @param {CodeTable} table
 * @param {string} reading
 * @param {readonly number[]} of
 * @param {readonly Read[]} read
 * @returns {Likelihood}
 */
function _likelihood(table, reading, of, read) {
  const m = table.misread;
  const by_date = Array(table.weights[0].length).fill(0);
  let out = 0;
  for (const place of of) {
    const layout = table.layouts[place];
    const weights = table.weights[place];
    if (fits(reading, layout.fields, UNREADABLE)) {
      const [uniform, by_row] = _layout(layout, reading, m, read[place]);
      for (let d = 0; d < by_date.length; d++) {
        by_date[d] += weights[d] * by_row[layout.which[d]];
      }
      out += uniform / table.layouts.length;
    }
  }
  let orig = by_date;
  if (table.code.means !== "made") {
    const later = on_later(by_date, staying(12 * table.code.lag));
    orig = table.which.map((i) => (1 - m) * (i >= 0 ? later[i] : 0) + m * out);
  }
  const by_source = [...orig, out];
  return Object.freeze({ orig, rep: blend(table.sources, by_source), out, by_source });
}

/**
 * The months in which marks were given, and those up to the last cell's, in which
 * they may still have been in use.
 * @param {Code} kind
 * @param {readonly Cell[]} cells
 * @returns {Cell[]}
 */
function _months(kind, cells) {
  const built = cells.map((cell) => Math.floor(cell.t / 12));
  const [opens, closes] = [Math.min(...built), Math.max(...built)];
  const spans = layouts(kind).map((layout) => layout.years ?? [opens, closes]);
  const first = Math.min(...spans.map(([a]) => a));
  const last = Math.max(closes, ...spans.map(([, b]) => b));
  const months = [];
  for (let t = 12 * first; t < 12 * last + 12; t++) {
    months.push({ year: NO_MODEL, t, spread: 0 });
  }
  return months;
}

/**
 * Where each cell stands among the dates; below 0 if it is before them all.
 * @param {Code} kind
 * @param {readonly Cell[]} cells
 * @param {readonly Cell[]} dates
 */
function _which(kind, cells, dates) {
  if (kind.means === "made") {
    return cells.map((_, c) => c);
  }
  return cells.map((cell) => Math.max(cell.t - dates[0].t, -1));
}

/**
 * Probability of a reading laid out so: drawn by lot, and for each row.
 * @param {LayoutTable} layout
 * @param {string} reading
 * @param {number} m
 * @param {Read} read
 * @returns {[number, Vector]}
 */
function _layout(layout, reading, m, read) {
  const characters = [...reading];
  let out = 1;
  let start = 0;
  /** @type {Vector[]} */
  const by_field = [];
  for (const [f, field] of layout.fields.entries()) {
    const text = characters.slice(start, start + field.width);
    start += field.width;
    const uniform = _uniform(field, text);
    const place = `${f} ${text.join("")}`;
    const likes =
      read.get(place) ??
      layout.texts[f].map((right) => _field(field, text, right, uniform, m));
    read.set(place, likes);
    out *= uniform;
    by_field.push(likes);
  }
  return [out, layout.rows.map((row) => _row(row, by_field, out))];
}

/**
 * Probability of a reading where the layout should read one of these, or, if it
 * should not be there at all, anything.
 * @param {Row} row
 * @param {readonly Vector[]} by_field
 * @param {number} out
 */
function _row(row, by_field, out) {
  if (row.length === 0) {
    return out;
  }
  let total = 0;
  // Asked so often that taking pairs apart would be most of it.
  for (let i = 0; i < row.length; i++) {
    const places = row[i][1];
    let product = row[i][0];
    for (let f = 0; f < by_field.length; f++) {
      product *= by_field[f][places[f]];
    }
    total += product;
  }
  return total;
}

/**
 * Probability of what was read if every character were drawn by lot.
 * @param {Field} field
 * @param {string[]} text
 */
function _uniform(field, text) {
  const size = [...field.alphabet].length;
  let share = 1;
  for (const a of text) {
    if (a !== UNREADABLE) {
      share /= size;
    }
  }
  return share;
}

/**
 * Likelihood of one field where it should read any of `right`.
 * @param {Field} field
 * @param {string[]} text
 * @param {Texts} right
 * @param {number} uniform
 * @param {number} m
 */
function _field(field, text, right, uniform, m) {
  if (right === null) {
    return uniform;
  }
  let exact = 0;
  for (const each of right) {
    let product = 1;
    for (const [i, o] of [...each].entries()) {
      product *= character(field.alphabet, text[i], o, m);
    }
    exact += product;
  }
  return ((1 - field.odd) * exact) / right.length + field.odd * uniform;
}

/**
 * Probability of reading `a` where `o` stands.
 * @param {Iterable<string>} alphabet
 * @param {string} a
 * @param {string} o
 * @param {number} m
 */
export function character(alphabet, a, o, m) {
  if (a === UNREADABLE) {
    return 1;
  }
  if (a === o) {
    return 1 - m;
  }
  const alike = ALIKE[o] ?? "";
  let total = 0;
  for (const b of alphabet) {
    if (b !== o) {
      total += alike.includes(b) ? LOOK_ALIKE : 1;
    }
  }
  return (m * (alike.includes(a) ? LOOK_ALIKE : 1)) / total;
}
