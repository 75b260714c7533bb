/**
 * A guide whose form is right, against itself: what no single value can tell is wrong.
 * The twin of Python's `giventables` and of the checks that it calls, in their order and
 * their words; places are named as in a guide's file. Pure.
 */

import { LIMITS, SCENES } from "./described.js";
import { clueProblems } from "./clue.js";
import { flagProblems } from "./flags.js";
import { twice, unknown } from "./names.js";
import { quote, told } from "./told.js";

/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../engine/guide.js").Part} Part */
/** @typedef {import("./told.js").Finding} Finding */
/** @typedef {import("./told.js").Path} Path */
/**
 * What the guide has, by name. Null for the members where it has no set.
 * @typedef {{drawing: string, spots: readonly string[], parts: readonly string[], members: readonly string[] | null}} Known
 */

/** @type {Map<string, string[]>} */
const SPOTS = new Map(/** @type {any} */ (SCENES));

/**
 * All that is wrong across a guide. Where an id stands twice, no name says what it means.
 * @param {any} guide @returns {Finding[]}
 */
export function problems(guide) {
  const all = [...found(guide)];
  const twice = all.filter(([, code]) => code === "id-twice");
  return twice.length ? twice : all;
}

/** @param {any} guide @returns {Generator<Finding, void>} */
function* found(guide) {
  const known = knownIn(guide);
  if (!SPOTS.has(guide.drawing)) yield told(["drawing"], "unknown-drawing", { value: quote(guide.drawing) });
  yield* twice(guide.parts, ["part"]);
  yield* follows(guide.parts, known.parts);
  yield* twice(guide.clues, ["clue"]);
  for (const [i, clue] of guide.clues.entries()) yield* clueProblems(clue, ["clue", i], known);
  yield* set(guide);
  yield* flagProblems(guide, known);
  yield* pricedParts(guide, known);
  yield* years(guide.years);
  yield* ends(guide);
  yield* pricedYears(guide);
  yield* own(guide);
  yield* work(guide);
}

/** @param {Guide} guide @returns {Known} */
function knownIn({ drawing, parts, members }) {
  const ids = parts.map(({ id }) => id);
  return { drawing, spots: SPOTS.get(drawing) ?? [], parts: ids, members: members && members.all };
}

/** Who follows whom: known parts, in no circle, in no long chain. @param {readonly Part[]} parts @param {readonly string[]} ids */
function* follows(parts, ids) {
  /** @type {Map<string, string>} */
  const above = new Map();
  for (const { id, follows } of parts) if (follows !== null && !above.has(id)) above.set(id, follows);
  /** @type {string[]} */
  const named = [];
  for (const [i, { id, follows }] of parts.entries()) {
    if (follows === null) continue;
    const path = ["part", i, "follows", "part"];
    yield* unknown(follows, ids, "part of this guide", path);
    const chain = chained(id, above);
    const last = chain[chain.length - 1];
    if (chain.indexOf(last) < chain.length - 1) {
      if (chain[0] !== last || named.includes(id)) continue;
      named.push(...chain);
      yield told(path, "circle", { chain: chain.join(", ") });
    } else if (chain.length > LIMITS.chain) {
      yield told(path, "chain", { count: chain.length });
    }
  }
}

/** A part, what it follows and so on, up to a root or back to one before. @param {string} start @param {Map<string, string>} above */
function chained(start, above) {
  const chain = [start];
  for (let next = above.get(start); next !== undefined; next = above.get(next)) {
    chain.push(next);
    if (chain.indexOf(next) < chain.length - 1) break;
  }
  return chain;
}

/** @param {Guide} guide */
function* set({ members, verdict }) {
  if (!members) return;
  const { all, usual, stray_for, names } = members;
  const what = "member of the set";
  for (const [i, member] of usual.entries()) yield* unknown(member, all, what, ["set", "usual", i]);
  for (const [member] of stray_for) yield* unknown(member, all, what, ["set", "stray_for", member]);
  for (const [member] of names) yield* unknown(member, all, what, ["set", "names", member]);
  if (verdict === "range") yield told(["set"], "range-set");
}

/** @param {Guide} guide @param {Known} known */
function* pricedParts({ prices, members }, { parts }) {
  for (const { part } of prices?.parts ?? []) {
    yield* unknown(part, parts, "part of this guide", ["prices", "off", part]);
  }
  if (prices?.set && !members) yield told(["prices", "set"], "prices-set");
}

/** Model years rise, each with a window near it. @param {Guide["years"]} years */
function* years(years) {
  for (const [i, { year, opens, closes }] of years.entries()) {
    const path = ["model_year", i, "built"];
    const [from, to] = [opens, closes].map((t) => Math.floor(t / 12));
    if (closes - opens >= LIMITS.window) yield told(path, "built-long", { count: closes - opens + 1 });
    else if (to < year - 1 || from > year + 1) yield told(path, "built-far", { year });
  }
  let last = 0;
  for (const [i, { year }] of years.entries()) {
    const code = year === last ? "year-twice" : "year-order";
    if (year <= last) yield told(["model_year", i], code, { value: year, before: last });
    last = Math.max(last, year);
  }
}

/** What ends does so after it starts. @param {Guide} guide */
function* ends({ years, clues }) {
  for (const [i, { opens, closes }] of years.entries()) {
    if (closes < opens) yield told(["years", i], "backwards", { value: quote(`${opens} to ${closes}`) });
  }
  for (const [i, { kind }] of clues.entries()) {
    const at = ["clues", i, "kind"];
    if (kind.name === "measure" && kind.high <= kind.low) {
      yield told(at, "backwards", { value: quote(`${kind.low} to ${kind.high}`) });
    }
    const first = kind.name === "number" ? kind.first.map(([year]) => year) : [];
    if (first.some((year, k) => k && year < first[k - 1])) {
      const value = quote(`${first[0]} to ${first[first.length - 1]}`);
      yield told([...at, "first"], "backwards", { value });
    }
  }
}

/** @param {Guide} guide */
function* pricedYears({ prices, years }) {
  const known = new Set(years.map(({ year }) => year));
  for (const [table, path] of /** @type {const} */ ([[prices, ["prices"]], [prices?.set, ["prices", "set"]]])) {
    for (const [year] of table?.worth ?? []) {
      if (known.has(year)) continue;
      yield told([...path, "worth", String(year)], "year-outside", { value: year, what: "model year" });
    }
  }
}

/** A drawing of its own belongs to an option of a clue, and a member. @param {any} guide */
function* own({ own, clues, members }) {
  const options = new Map(clues.map((/** @type {any} */ { id, kind }) => [id, (kind.options ?? []).map(idOf)]));
  const all = [null, ...(members?.all ?? [])];
  for (const [i, [clue, option, member]] of own.entries()) {
    for (const [at, name, known, what] of [
      [0, clue, [...options.keys()], "clue of this guide"],
      [1, option, options.get(clue) ?? [option], "option of this clue"],
      [2, member, all, "member of the set"],
    ]) {
      if (known.includes(name)) continue;
      yield told(["own", i, at], "unknown-name", { value: quote(name), what });
    }
  }
}

/** @param {{id: string}} each */
const idOf = ({ id }) => id;

/** A guide that is right may still take a phone for ever. @param {any} guide */
function* work({ years, clues, parts }) {
  let months = 0;
  for (const { opens, closes } of years) months += Math.max(0, closes - opens + 1);
  const most = LIMITS.months;
  if (months > most) yield told(["years"], "too-many", { count: months, most });
  let answers = 0;
  for (const { kind } of clues) answers += kind.options?.length || LIMITS.answers;
  const steps = months * answers;
  if (steps > LIMITS.steps) yield told(["clues"], "too-much", { count: steps, most: LIMITS.steps });
  const whole = parts.filter((/** @type {Part} */ { whole_set }) => whole_set > 0).length;
  if (whole > LIMITS.whole) yield told(["parts"], "too-many", { count: whole, most: LIMITS.whole });
}
