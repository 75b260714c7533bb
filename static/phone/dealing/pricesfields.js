/** The fields of a table of prices: what each is called, holds and changes. Pure. */

import { brackets, decades } from "../engine/range.js";
import { capital } from "../engine/words.js";
import * as table from "./prices.js";

/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../engine/guide.js").Off} Off */
/** @typedef {import("../engine/guide.js").Prices} Prices */
/** @typedef {import("../engine/guide.js").SetPrices} SetPrices */
/**
 * @typedef {object} Field
 * @property {string} key
 * @property {string} label
 * @property {import("./pricestyped.js").Kind} kind
 * @property {boolean} [all] whether it stands for all years at once
 * @property {(prices: Prices) => any} get undefined where it stands for several that differ
 * @property {(prices: Prices, value: any) => Prices} put null for a field that is empty
 */
/** @typedef {{title: string, hint: string, fields: Field[]}} Section */
/**
 * What the rows of a table of worths lie in.
 * @typedef {object} Rows
 * @property {string} key
 * @property {(prices: Prices) => {worth: table.Worths, other: number}} of
 * @property {(prices: Prices, changes: {worth?: table.Worths, other?: number}) => Prices} into
 */

const WORTH =
  "What one is worth to you with all its parts original and in good order. A year left empty is worth what stands under “Any other year”.";
const OFF =
  "As an amount, or as a share of the worth, like 40 %. Where it costs less to put a part right, that cost comes off instead. All of them together take off no more than the worth.";
const SET = "As it was sold. Without a price here its members are worth what they are one by one.";

/** @type {Rows} */
const ONE = {
  key: "worth",
  of: (prices) => prices,
  into: (prices, changes) => ({ ...prices, ...changes }),
};
/** @type {Rows} */
const MANY = {
  key: "set",
  of: ({ set }) => set ?? table.NO_SET,
  into: (prices, changes) => ({ ...prices, set: { ...(prices.set ?? table.NO_SET), ...changes } }),
};

/**
 * All fields of a guide's table, in their sections.
 * @param {Guide} guide
 * @param {Prices} prices
 * @returns {Section[]}
 */
export function sections(guide, prices) {
  const off = guide.parts.filter(({ replaced }) => replaced > 0).flatMap(part);
  const graded = table.gradesOf(guide, prices).map(grade);
  const one = { title: "What it is worth", hint: WORTH, fields: [CURRENCY, ...worths(guide, ONE)] };
  const parts = { title: "What comes off", hint: OFF, fields: [...off, ...graded] };
  const many = { title: "A whole set", hint: SET, fields: [...worths(guide, MANY), ...apart()] };
  return [one, parts, ...(guide.members ? [many] : [])];
}

/** @type {Field} */
const CURRENCY = {
  key: "currency",
  label: "Currency",
  kind: "currency",
  get: ({ currency }) => currency,
  put: (prices, value) => ({ ...prices, currency: value ?? "" }),
};

/**
 * A price for all years at once, one for each, and one for any other.
 * @param {Guide} guide
 * @param {Rows} rows
 * @returns {Field[]}
 */
function worths(guide, rows) {
  const all = guide.years.map(({ year }) => year);
  const spans = brackets(guide) ? spansOf(all) : all.map((year) => [year]);
  const named = brackets(guide) ? decades(all.map((year) => [year, 0])) : [];
  const same = brackets(guide) ? "The same for every decade" : "The same for every year";
  return [
    { ...worth(rows, "all", same, all), all: true },
    ...spans.map((years, i) => {
      const name = named[i]?.[0] ?? String(years[0]);
      return worth(rows, name, name, years);
    }),
    {
      key: `${rows.key}/other`,
      label: "Any other year",
      kind: "price",
      get: (prices) => rows.of(prices).other || null,
      put: (prices, value) => rows.into(prices, { other: value ?? 0 }),
    },
  ];
}

/** @param {Rows} rows @param {string} name @param {string} label @param {readonly number[]} years @returns {Field} */
function worth(rows, name, label, years) {
  return {
    key: `${rows.key}/${name}`,
    label,
    kind: "price",
    get: (prices) => table.priceOf(rows.of(prices).worth, years),
    put: (prices, value) =>
      rows.into(prices, { worth: table.withPrice(rows.of(prices).worth, years, value) }),
  };
}

/** The years, decade by decade. @param {readonly number[]} years */
function spansOf(years) {
  /** @type {Map<number, number[]>} */
  const found = new Map();
  for (const year of years) {
    const decade = Math.floor(year / 10);
    found.set(decade, [...(found.get(decade) ?? []), year]);
  }
  return [...found.values()];
}

/** What a part takes off, and what it costs to put right. @param {{id: string, name: string}} part @returns {Field[]} */
function part({ id, name }) {
  const its = (/** @type {Prices} */ prices) => table.partOf(prices, id);
  return [
    {
      ...taken(`part/${id}`, `Replaced ${name}`, (prices) => its(prices).off),
      put: (prices, value) => table.withPart(prices, { ...its(prices), off: value ?? table.NO_OFF }),
    },
    {
      key: `right/${id}`,
      label: `Cost to put the ${name} right`,
      kind: "price",
      get: (prices) => its(prices).put_right,
      put: (prices, value) => table.withPart(prices, { ...its(prices), put_right: value }),
    },
  ];
}

/** @param {string} name @returns {Field} */
function grade(name) {
  return {
    ...taken(`grade/${name}`, `Condition: ${name}`, (prices) => table.gradeOf(prices, name)),
    put: (prices, value) => table.withGrade(prices, name, value ?? table.NO_OFF),
  };
}

/** @returns {Field[]} */
function apart() {
  return /** @type {const} */ (["missing", "stray"]).map((key) => ({
    ...taken(`set/${key}`, `A ${key === "stray" ? "stray" : "missing member"}`, ({ set }) =>
      (set ?? table.NO_SET)[key],
    ),
    put: (prices, value) => MANY.into(prices, { [key]: value ?? table.NO_OFF }),
  }));
}

/** @param {string} key @param {string} label @param {(prices: Prices) => Off} get */
function taken(key, label, get) {
  /** @param {Prices} prices */
  const shown = (prices) => (table.isNone(get(prices)) ? null : get(prices));
  return { key, label: capital(label), kind: /** @type {const} */ ("off"), get: shown };
}
