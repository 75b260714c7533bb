/** Codes and numbers of a guide that was given: whether their tables are sound. Pure. */

import { UNREADABLE } from "../engine/code.js";
import { layouts } from "../engine/guide.js";
import { twice } from "./names.js";
import { quote, told } from "./told.js";

/** @typedef {import("../engine/guide.js").Code} Code */
/** @typedef {import("../engine/guide.js").Counted} Counted */
/** @typedef {import("../engine/guide.js").Field} Field */
/** @typedef {import("./told.js").Finding} Finding */
/** @typedef {import("./told.js").Path} Path */

const DIGITS = "0123456789";
const MONTHS = 12;
const FIGURES = ["year", "week", "day"];
const TABLED = ["year-letter", "model-year"];
/** @type {Record<string, number>} */
const WIDEST = { month: 1, year: 4 };
/** @type {Record<string, number>} */
const EXACTLY = { week: 2, day: 2 };
/** What cannot be seen on an object, or not told from nothing. */
const UNSEEN = /[\p{C}\p{Z}\s]/u;

/** A code or a number has a lag if it means not-before, and else none. @param {Code | Counted} kind @param {Path} path */
export function* meaningProblems({ means, lag }, path) {
  if (means === "not-before" && !lag) yield told([...path, "lag"], "missing");
  if (means === "made" && lag) yield told([...path, "lag"], "lag-unwanted", { means: "means = 'made'" });
}

/** The numbers rise, up to the last. @param {Counted} kind @param {Path} path */
export function* numberProblems({ first, last }, path) {
  for (const [i, [year, value]] of first.entries()) {
    const before = i ? first[i - 1][1] : -1;
    if (value <= before) yield told([...path, "first", String(year)], "number-order", { value, before });
  }
  const [year, least] = first[first.length - 1];
  if (last < least) yield told([...path, "last"], "number-last", { value: last, least, year });
}

/** A code has fields or layouts, and all of them are sound. @param {Code} kind @param {Path} path */
export function* codeProblems({ fields, layouts: found, means }, path) {
  if (fields.length && found.length) yield told([...path, "layout"], "field-and-layout");
  if (!fields.length && !found.length) yield told([...path, "field"], "missing");
  yield* fieldProblems(fields, [...path, "field"], null, means);
  for (const [i, layout] of found.entries()) {
    yield* fieldProblems(layout.fields, [...path, "layout", i, "field"], layout.years, means);
  }
}

/**
 * Why a text, ? included, is not a reading of the code; null if it is one.
 * @param {string} text @param {Code} code @param {Path} path
 * @returns {Finding | null}
 */
export function unfit(text, code, path) {
  const signs = [...text];
  const known = layouts(code).map(placesOf).filter(({ length }) => length === signs.length);
  if (!known.length) return told(path, "code-length", { value: quote(text), count: signs.length });
  const wrong = known.map((places) => foreign(text, path, (i) => places[i]));
  return wrong.includes(null) ? null : wrong[0];
}

/** The field of each character. @param {{fields: readonly Field[]}} layout */
const placesOf = ({ fields }) => fields.flatMap((field) => Array(field.width).fill(field));

/** The first character that its field has not, ? apart. @param {string} text @param {Path} path @param {(i: number) => Field} fieldAt */
function foreign(text, path, fieldAt) {
  for (const [i, a] of [...text].entries()) {
    const { name, alphabet } = fieldAt(i);
    if (a !== UNREADABLE && !has(alphabet, a)) return notIn(text, a, name, path);
  }
  return null;
}

/** @param {string} text @param {string} a @param {string} name @param {Path} path */
const notIn = (text, a, name, path) =>
  told(path, "code-character", { value: quote(text), character: quote(a), field: quote(name) });

/** @param {string} alphabet @param {string} a */
const has = (alphabet, a) => [...alphabet].includes(a);

/**
 * @param {readonly Field[]} fields @param {Path} path
 * @param {readonly [number, number] | null} span @param {Code["means"]} means
 */
function* fieldProblems(fields, path, span, means) {
  yield* twice(fields, path, "name");
  for (const [i, field] of fields.entries()) {
    const at = [...path, i];
    yield* alphabetProblems(field, [...at, "alphabet"]);
    yield* widthProblems(field, [...at, "width"]);
    yield* weekProblems(field, [...at, "weeks"]);
    yield* tableProblems(field, [...at, "codes"], span);
    if (field.means === "model-year" && means === "not-before") yield told([...at, "kind"], "no-model-year");
  }
}

/** @param {Field} field @param {Path} path */
function* alphabetProblems({ alphabet, means }, path) {
  const signs = [...alphabet];
  for (const [i, a] of signs.entries()) {
    if (a === UNREADABLE || UNSEEN.test(a)) yield told(path, "alphabet-mark", { value: quote(a) });
    else if (signs.indexOf(a) < i) yield told(path, "alphabet-repeats", { value: quote(a) });
  }
  const least = means === "month" ? MONTHS : 2;
  if (FIGURES.includes(means)) {
    const isAll = [...new Set(signs)].sort().join("") === DIGITS;
    if (!isAll) yield told(path, "alphabet-digits", { value: quote(alphabet) });
  } else if (signs.length < least) yield told(path, "alphabet-short", { count: signs.length });
}

/** @param {Field} field @param {Path} path */
function* widthProblems({ width, means }, path) {
  if (width > (WIDEST[means] ?? width)) yield told(path, "width", { value: width, kind: quote(means) });
  if (width !== (EXACTLY[means] ?? width)) yield told(path, "width-exact", { value: width, kind: means });
}

/** @param {Field} field @param {Path} path */
function* weekProblems({ weeks, means }, path) {
  if (means === "week" && !weeks) yield told(path, "missing");
  if (means !== "week" && weeks) yield told(path, "weeks-unwanted", { kind: quote(means) });
}

/** What stands for years. @param {Field} field @param {Path} path @param {readonly [number, number] | null} span */
function* tableProblems({ codes, means, width, alphabet, name }, path, span) {
  if (!TABLED.includes(means)) {
    if (codes.length) yield told(path, "codes-unwanted", { kind: quote(means) });
    return;
  }
  if (!codes.length) yield told(path, "missing");
  for (const [year, text] of codes) {
    const at = [...path, String(year)];
    const isOut = means !== "model-year" && span && !(span[0] <= year && year <= span[1]);
    if (isOut) yield told(at, "layout-year", { value: year });
    const signs = [...text];
    if (signs.length !== width) yield told(at, "code-length", { value: quote(text), count: signs.length });
    const strange = signs.find((a) => !has(alphabet, a));
    if (strange !== undefined) yield notIn(text, strange, name, at);
  }
}
