/**
 * How a code is laid out, and what each layout should read at each date.
 *
 * Model page: "code". A date is a cell, or a month in which a mark was given. Strings
 * are spread before they are counted, since a character may be more than one of the
 * units that JavaScript's strings count in.
 */

import { sum } from "./special.js";
import { days_in, week } from "./weeks.js";

/** @import { Cell } from "./cells.js" */
/** @import { Field, Layout } from "./guide.js" */
/** @import { Vector } from "./special.js" */

/** Of more clean readings than this the months are left unread in the ranking. */
export const MANY = 200;
/** Fields that tell the part of a year alone, and many of them: never in the ranking. */
export const IN_YEAR = Object.freeze(["week", "day"]);
/**
 * What a field should read, each text as often; null where nothing is said.
 * @typedef {readonly string[] | null} Texts
 */
/**
 * What a layout should read at a date: shares, each with a place among the texts of
 * every field; empty where the layout was not in use.
 * @typedef {readonly (readonly [number, readonly number[]])[]} Row
 */

/**
 * One layout: for each field the distinct things that it should read, the distinct
 * rows of these, and which row each date has.
 * @typedef {object} LayoutTable
 * @property {readonly Field[]} fields
 * @property {readonly (readonly Texts[])[]} texts
 * @property {readonly Row[]} rows
 * @property {readonly number[]} which
 */

/**
 * What the layout should read at all dates.
 * @param {Layout} layout
 * @param {readonly Cell[]} dates
 * @returns {LayoutTable}
 */
export function layout_table(layout, dates) {
  /** @type {Map<string, [number, Texts]>[]} */
  const texts = layout.fields.map(() => new Map());
  /** @type {Map<string, [number, Row]>} */
  const rows = new Map();
  const which = dates.map((date) =>
    _place(rows, used(layout, date) ? _row(layout, date, texts) : []),
  );
  return Object.freeze({
    fields: layout.fields,
    texts: texts.map((known) => [...known.values()].map(([, right]) => right)),
    rows: [...rows.values()].map(([, row]) => row),
    which,
  });
}

/**
 * How often the code is laid out in each way, date by date: all ways in use alike,
 * the others as often as a reading is wrong. At a date with none in use each weighs
 * as much as `silent`: nothing, or as if any might have been.
 * @param {readonly Layout[]} known
 * @param {readonly Cell[]} dates
 * @param {number} m
 * @param {{silent: number}} rest
 * @returns {readonly Vector[]}
 */
export function layout_weights(known, dates, m, { silent }) {
  /** @type {number[][]} */
  const found = known.map(() => []);
  for (const date of dates) {
    const in_use = known.map((layout) => used(layout, date));
    const rest = in_use.includes(true) ? m : silent;
    const pull = in_use.map((each) => (each ? 1 : rest));
    const total = sum(pull) || 1;
    for (const [i, x] of pull.entries()) {
      found[i].push(x / total);
    }
  }
  return found;
}

/**
 * Whether the layout was in use.
 * @param {Layout} layout
 * @param {Cell} date
 */
export function used(layout, date) {
  if (layout.years === null) {
    return true;
  }
  const year = Math.floor(date.t / 12);
  return layout.years[0] <= year && year <= layout.years[1];
}

/**
 * Whether a text, with `blank` for what was not read, can be read of the fields.
 * @param {string} reading
 * @param {readonly Field[]} fields
 * @param {string} blank
 */
export function fits(reading, fields, blank) {
  const characters = [...reading];
  const alphabets = fields.flatMap((field) => Array(field.width).fill(field.alphabet));
  return (
    characters.length === alphabets.length &&
    characters.every((a, i) => a === blank || alphabets[i].includes(a))
  );
}

/**
 * The distinct readings without a mistake, layout by layout, in order of the dates,
 * each with the places of the layouts that it may be of; `blank` stands for each
 * character that stays unread.
 *
 * They must not overlap, so that a layout which can be taken for another before it
 * has none of its own. Months, too, stay unread where there are many.
 * @param {readonly LayoutTable[]} tables
 * @param {string} blank
 */
export function clean_of(tables, blank) {
  /** @type {[string, number[]][]} */
  const found = [];
  for (const [place, table] of tables.entries()) {
    const family = _family(tables, place);
    let own = _clean(table, IN_YEAR, blank);
    if (own.length > MANY) {
      own = _clean(table, [...IN_YEAR, "month"], blank);
    }
    const before = found.filter(([, others]) => others.includes(place));
    const alike = family.map((i) => tables[i]);
    if (!own.some((a) => before.some(([b]) => _overlap(a, b, alike, blank)))) {
      for (const reading of own) {
        found.push([reading, family]);
      }
    }
  }
  return found;
}

/**
 * The place of a value among the known ones, where it is noted if it is new.
 * @template T
 * @param {Map<string, [number, T]>} known
 * @param {T} value
 */
function _place(known, value) {
  const key = JSON.stringify(value);
  const [place] = known.get(key) ?? [known.size];
  known.set(key, [place, value]);
  return place;
}

/**
 * The date's row, with what its fields should read noted among the texts.
 * @param {Layout} layout
 * @param {Cell} date
 * @param {Map<string, [number, Texts]>[]} texts
 * @returns {Row}
 */
function _row(layout, date, texts) {
  const days = days_in(date.t);
  return _weeks(layout.fields, date.t).map(([year, number, held]) => {
    const places = layout.fields.map((field, f) =>
      _place(texts[f], _right(field, date, year, number, held)),
    );
    return [held.length / days, places];
  });
}

/**
 * The weeks of a month, each with its year and its days in the month; the whole
 * month as one of its own year, if no field tells a week.
 * @param {readonly Field[]} fields
 * @param {number} t
 * @returns {[number, number, number[]][]}
 */
function _weeks(fields, t) {
  const days = Array.from({ length: days_in(t) }, (_, i) => i + 1);
  const counted = fields.find((field) => field.weeks)?.weeks;
  if (!counted) {
    return [[Math.floor(t / 12), 0, days]];
  }
  /** @type {[number, number, number[]][]} */
  const held = [];
  for (const day of days) {
    const [year, number] = week(t, day, counted);
    const last = held[held.length - 1];
    if (last?.[0] === year && last[1] === number) {
      last[2].push(day);
    } else {
      held.push([year, number, [day]]);
    }
  }
  return held;
}

/**
 * What the field should read in a week, or month, of this year.
 * @param {Field} field
 * @param {Cell} date
 * @param {number} year
 * @param {number} number
 * @param {readonly number[]} days
 * @returns {Texts}
 */
function _right(field, date, year, number, days) {
  switch (field.means) {
    case "month":
      return [[...field.alphabet][date.t % 12]];
    case "year":
      return [String(year).slice(-field.width)];
    case "year-letter":
      return _coded(field, year);
    case "model-year":
      return _coded(field, date.year);
    case "week":
      return [String(number).padStart(2, "0")];
    case "day":
      return days.map((day) => String(day).padStart(2, "0"));
  }
  return null;
}

/**
 * @param {Field} field
 * @param {number} year
 * @returns {Texts}
 */
function _coded(field, year) {
  const text = field.codes.find(([coded]) => coded === year)?.[1];
  return text === undefined ? null : [text];
}

/**
 * The layout's distinct clean readings, with fields of these meanings unread.
 *
 * Fields that say nothing about the date stay unread too. A date on which a dating
 * field is silent has no clean reading: the readings must not overlap.
 * @param {LayoutTable} table
 * @param {readonly string[]} unread
 * @param {string} blank
 */
function _clean(table, unread, blank) {
  const told = table.fields.map((field, f) =>
    unread.includes(field.means) ? [] : table.texts[f],
  );
  const dating = told.map((texts) => texts.some((right) => right !== null));
  /** @type {Set<string>} */
  const readings = new Set();
  for (const [, places] of table.rows.flat()) {
    const right = table.fields.map((field, f) =>
      dating[f] ? told[f][places[f]] : [blank.repeat(field.width)],
    );
    if (right.every((each) => each !== null)) {
      readings.add(right.map((each) => each?.[0]).join(""));
    }
  }
  return [...readings];
}

/**
 * The layout with all that it may be taken for, and all that these may be.
 * @param {readonly LayoutTable[]} tables
 * @param {number} place
 */
function _family(tables, place) {
  const family = [place];
  for (const i of family) {
    for (const k of tables.keys()) {
      if (!family.includes(k) && _confusable(tables[i].fields, tables[k].fields)) {
        family.push(k);
      }
    }
  }
  return family.sort((a, b) => a - b);
}

/**
 * Whether there is a text that both can be: a character for both at each place.
 * @param {readonly Field[]} a
 * @param {readonly Field[]} b
 */
function _confusable(a, b) {
  const [first, second] = [a, b].map((fields) =>
    fields.flatMap((field) => Array(field.width).fill([...field.alphabet])),
  );
  return (
    first.length === second.length &&
    first.every((x, i) =>
      x.some((/** @type {string} */ character) => second[i].includes(character)),
    )
  );
}

/**
 * Whether a text of any of the layouts can be read as both.
 * @param {string} a
 * @param {string} b
 * @param {readonly LayoutTable[]} tables
 * @param {string} blank
 */
function _overlap(a, b, tables, blank) {
  const [first, second] = [[...a], [...b]];
  if (first.length !== second.length) {
    return false;
  }
  if (first.some((x, i) => x !== second[i] && x !== blank && second[i] !== blank)) {
    return false;
  }
  return tables.some(
    ({ fields }) => fits(a, fields, blank) && fits(b, fields, blank),
  );
}
