/** One clue of a guide that was given: its part and spot, its options or sizes. Pure. */

import { applies } from "../engine/likelihood.js";
import { codeProblems, meaningProblems, numberProblems } from "./codes.js";
import { twice, unknown } from "./names.js";
import { plain, quote, told } from "./told.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../engine/guide.js").Measure} Measure */
/** @typedef {import("../engine/guide.js").Option} Option */
/** @typedef {import("../engine/guide.js").Size} Size */
/** @typedef {import("../engine/guide.js").Span} Span */
/** @typedef {import("./across.js").Known} Known */
/** @typedef {import("./told.js").Path} Path */

/** @param {Clue} clue @param {Path} path @param {Known} known */
export function* clueProblems(clue, path, known) {
  const { part, spot, kind } = clue;
  yield* unknown(part, known.parts, "part of this guide", [...path, "part"]);
  if (known.spots.length && !known.spots.includes(spot)) {
    yield told([...path, "spot"], "no-spot", { drawing: quote(known.drawing), value: quote(spot) });
  }
  if (kind.name === "choice") yield* optionProblems(kind, path, known);
  if (kind.name === "measure") yield* sizeProblems(kind, [...path, "size"], known);
  if (kind.name === "code" || kind.name === "number") yield* meaningProblems(kind, path);
  if (kind.name === "code") yield* codeProblems(kind, path);
  if (kind.name === "number") yield* numberProblems(kind, path);
}

/**
 * Why the clue cannot be read as this measure or number; null if it can.
 * @param {number} value @param {Clue["kind"]} kind @param {Path} path
 */
export function beyond(value, kind, path) {
  const ends = endsOf(kind);
  if (!ends || (ends[0] <= value && value <= ends[1])) return null;
  const code = kind.name === "number" ? "outside-numbers" : "outside-range";
  return told(path, code, { value: plain(value) });
}

/** @param {Clue["kind"]} kind @returns {[number, number] | null} */
function endsOf(kind) {
  if (kind.name === "measure") return [kind.low, kind.high];
  return kind.name === "number" ? [kind.first[0][1], kind.last] : null;
}

/** @param {import("../engine/guide.js").Choice} kind @param {Path} path @param {Known} known */
function* optionProblems({ options, replacement }, path, known) {
  const ids = options.map(({ id }) => id);
  const what = "option of this clue";
  yield* twice(options, [...path, "option"]);
  for (const [name] of replacement) yield* unknown(name, ids, what, [...path, "replacement", name]);
  for (const [i, { id, like, seen }] of options.entries()) {
    const at = [...path, "option", i];
    for (const [k, name] of like.entries()) {
      if (name === id) yield told([...at, "like", k], "like-itself", { value: quote(name) });
      yield* unknown(name, ids, what, [...at, "like", k]);
    }
    for (const [k, span] of seen.entries()) {
      yield* spanProblems(span, [...at, "seen", k]);
      yield* memberProblems(span, [...at, "seen", k], known);
    }
  }
}

/** @param {Span} span @param {Path} path */
function* spanProblems({ since, until, fade }, path) {
  if (fade && since === null && until === null) yield told([...path, "fade"], "fade-alone");
  if (since === null || until === null || since <= until) return;
  yield told([...path, "to"], "backwards", { value: `'${month(since)} to ${month(until)}'` });
}

/** A month as a guide's file writes it. @param {number} t */
const month = (t) => `${Math.floor(t / 12)}-${String((t % 12) + 1).padStart(2, "0")}`;

/** @param {Measure} kind @param {Path} path @param {Known} known */
function* sizeProblems(kind, path, known) {
  for (const [i, size] of kind.sizes.entries()) {
    yield* memberProblems(size, [...path, i], known);
    const wrong = beyond(size.mean, kind, [...path, i, "mean"]);
    if (wrong) yield wrong;
  }
  for (const [i, one] of kind.sizes.entries()) {
    for (const [j, other] of kind.sizes.entries()) {
      const year = Math.max(one.years[0], other.years[0]);
      const meet = j > i && year <= Math.min(one.years[1], other.years[1]);
      if (meet && sharesMember(one, other, known)) yield told([...path, j], "overlap", { other: i + 1, year });
    }
  }
}

/** Whether an object may fall under both, its member known or not. @param {Size} one @param {Size} other @param {Known} known */
const sharesMember = (one, other, { members }) =>
  [null, ...(members ?? [])].some((m) =>
    [one, other].every(({ members: own, excluded }) => applies(own, excluded, m)),
  );

/** The members that a span or a size is for. @param {Span | Size} table @param {Path} path @param {Known} known */
function* memberProblems({ members, excluded }, path, known) {
  if (members.length && excluded.length) yield told([...path, "except"], "members-and-except");
  for (const [key, named] of /** @type {const} */ ([["members", members], ["except", excluded]])) {
    if (named.length && !known.members) yield told([...path, key], "no-set");
    for (const [i, member] of named.entries()) {
      yield* unknown(member, known.members ?? [], "member of the set", [...path, key, i]);
    }
  }
}
