/**
 * What objects show: the reading of a clue to expect in some cells, and its words.
 *
 * Model page: "A claim", for a cited clue that was not read.
 */

import { UNREADABLE, code_dates } from "./code.js";
import { measured } from "./find.js";
import { largest, round9, sum } from "./special.js";
import { figure } from "./words.js";

/** @import { ChoiceTable } from "./choice.js" */
/** @import { CodeTable } from "./code.js" */
/** @import { Measured, Reading } from "./find.js" */
/** @import { Clue } from "./guide.js" */
/** @import { LayoutTable } from "./layout.js" */
/** @import { MeasureTable } from "./measure.js" */
/** @import { NumberTable } from "./number.js" */
/** @import { ClueTable, Tables } from "./prepare.js" */
/** @import { Vector } from "./special.js" */

/** A field of a code is read if more than this share of the objects shows the same. */
export const MOST = 0.5;
/** The smallest error that is told, since sizes are told in hundredths. */
export const LEAST_SAID = 0.01;

/**
 * The reading to expect in the cells from `start` up to `stop`; null where the
 * guide does not say.
 * @param {Tables} tables
 * @param {ClueTable} table
 * @param {number} start
 * @param {number} stop
 * @returns {Reading}
 */
export function typical(tables, table, start, stop) {
  const spread = tables.cells.slice(start, stop).map((cell) => cell.spread);
  switch (table.name) {
    case "choice":
      return _option(table, spread, start);
    case "measure":
      return _size(table, spread, start);
    case "code":
      return _code(table, spread, start);
    case "number":
      return _number(table, spread, start);
  }
}

/**
 * How often the cells from `start` up to `stop` show, as made, a reading that is
 * as likely as `orig` in each.
 * @param {Tables} tables
 * @param {Vector} orig
 * @param {number} start
 * @param {number} stop
 */
export function common(tables, orig, start, stop) {
  const spread = tables.cells.slice(start, stop).map((cell) => cell.spread);
  return _shown(orig, spread, start) / sum(spread);
}

/**
 * A reading that is not null in words: label, size, code or number.
 * @param {Clue} clue
 * @param {Reading | undefined} reading
 */
export function shown(clue, reading) {
  const kind = clue.kind;
  switch (kind.name) {
    case "choice":
      return String(kind.options.find((o) => o.id === reading)?.label);
    case "measure":
      return _size_say(measured(reading), kind.unit);
    case "number":
      return String(Number(reading));
    case "code":
      return String(reading);
  }
}

/**
 * A reading in words: the clue's name and what it showed.
 * @param {Clue} clue
 * @param {Reading | undefined} reading
 */
export function told(clue, reading) {
  return `${clue.name} (${shown(clue, reading)})`;
}

/**
 * A size with its unit, and with its error if it has one.
 * @param {Measured} size
 * @param {string} unit
 */
function _size_say(size, unit) {
  const said = `${figure(size.value)} ${unit}`;
  if (size.error === 0) {
    return said;
  }
  return `${said}, give or take ${figure(Math.max(size.error, LEAST_SAID))}`;
}

/**
 * The likeliest option; null if all are as likely.
 * @param {ChoiceTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _option(table, spread, start) {
  const shares = table.likelihoods.map(({ orig }) =>
    round9(_shown(orig, spread, start)),
  );
  const most = Math.max(...shares);
  return most === Math.min(...shares) ? null : table.ids[shares.indexOf(most)];
}

/**
 * The size of most cells less the usual wear, as people write it down.
 * @param {MeasureTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _size(table, spread, start) {
  const kind = table.measure;
  /** @type {Map<number, number>} */
  const classes = new Map();
  for (const [i, w] of spread.entries()) {
    const k = table.which[start + i];
    classes.set(k, (classes.get(k) ?? 0) + w);
  }
  const [k] = _prevailing(classes);
  if (k === kind.sizes.length) {
    return null;
  }
  const size = Math.floor(100 * (kind.sizes[k].mean - kind.wear) + 0.5) / 100;
  return Math.min(Math.max(size, kind.low), kind.high);
}

/**
 * What most have in each field of the usual layout; unread where they differ too
 * much.
 * @param {CodeTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _code(table, spread, start) {
  const dates = code_dates(table, spread, start);
  const shares = table.weights.map((weights) => dates.map((x, d) => x * weights[d]));
  const [best] = _prevailing(new Map(shares.map((share, l) => [l, sum(share)])));
  const layout = table.layouts[best];
  let reading = "";
  for (const [f, field] of layout.fields.entries()) {
    const [place, weight] = _prevailing(_weighed(layout, f, shares[best]));
    const texts = layout.texts[f][place];
    const same = round9(weight / sum(spread)) > MOST;
    const alone = texts?.length === 1 ? texts[0] : null;
    reading += (same ? alone : null) || UNREADABLE.repeat(field.width);
  }
  return [...reading].every((a) => a === UNREADABLE) ? null : reading;
}

/**
 * The first number of the year whose numbers most have.
 * @param {NumberTable} table
 * @param {Vector} spread
 * @param {number} start
 */
function _number(table, spread, start) {
  /** @type {Map<number, number>} */
  const years = new Map(table.counts.map((_, i) => [i, 0]));
  for (const [c, w] of spread.entries()) {
    for (const [i, share] of table.rows[table.which[start + c]].entries()) {
      years.set(i, (years.get(i) ?? 0) + w * share);
    }
  }
  const [i, weight] = _prevailing(years);
  const same = round9(weight / sum(spread)) > MOST;
  return same ? table.number.first[i][1] : null;
}

/**
 * How much each thing weighs that field `f` of the layout should read.
 * @param {LayoutTable} layout
 * @param {number} f
 * @param {Vector} dates
 * @returns {Map<number, number>}
 */
function _weighed(layout, f, dates) {
  const weights = new Map(layout.texts[f].map((_, place) => [place, 0]));
  for (const [d, w] of dates.entries()) {
    for (const [share, places] of layout.rows[layout.which[d]]) {
      weights.set(places[f], (weights.get(places[f]) ?? 0) + w * share);
    }
  }
  return weights;
}

/**
 * What weighs most, the first if several do, and its weight.
 * @param {Map<number, number>} weights
 * @returns {[number, number]}
 */
function _prevailing(weights) {
  return largest([...weights], ([, w]) => round9(w));
}

/**
 * @param {Vector} orig
 * @param {Vector} spread
 * @param {number} start
 */
function _shown(orig, spread, start) {
  let total = 0;
  for (let i = 0; i < spread.length; i++) {
    total += spread[i] * orig[start + i];
  }
  return total;
}
