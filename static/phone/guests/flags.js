/** The red flags of a guide that was given: what each waits for exists, and can come true. Pure. */

import { beyond } from "./clue.js";
import { codeProblems, meaningProblems, unfit } from "./codes.js";
import { unknown } from "./names.js";
import { quote, told } from "./told.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../engine/guide.js").Condition} Condition */
/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("./told.js").Path} Path */

/** @param {Guide} guide @param {import("./across.js").Known} known */
export function* flagProblems({ flags, clues }, { parts }) {
  for (const [i, { when: all }] of flags.entries()) {
    for (const [k, when] of all.entries()) {
      const path = ["flag", i, "when", k];
      yield* wholeProblems(when, path);
      if (when.part !== null) yield* unknown(when.part, parts, "part of this guide", [...path, "part"]);
      if (when.clue !== null) yield* readingProblems(when, clues, path);
    }
  }
}

/** The readings that are waited for, each with its key in a guide's file. @param {Condition} when @returns {[string, any][]} */
const readingsOf = ({ among, over, under }) => [
  ["is", among.length ? among : null],
  ["over", over],
  ["under", under],
];

/** Keys that need each other stand together. @param {Condition} when @param {Path} path */
function* wholeProblems(when, path) {
  const read = readingsOf(when).filter(([, given]) => given !== null);
  const { clue, part, replaced_over, years } = when;
  const others = [clue, part, replaced_over, years];
  if (!read.length && others.every((each) => each === null)) yield told(path, "when-empty");
  if (clue !== null && !read.length) yield told([...path, "clue"], "when-alone");
  if (read.length && clue === null) yield told([...path, read[0][0]], "when-alone");
  if ((part === null) === (replaced_over === null)) return;
  yield told([...path, part === null ? "replaced_over" : "part"], "when-alone");
}

/** The reading that is waited for is one that the clue can give. @param {Condition} when @param {readonly Clue[]} clues @param {Path} path */
function* readingProblems(when, clues, path) {
  const clue = clues.find(({ id }) => id === when.clue);
  if (!clue) {
    const ids = clues.map(({ id }) => id);
    yield* unknown(String(when.clue), ids, "clue of this guide", [...path, "clue"]);
    return;
  }
  const { kind } = clue;
  const counts = kind.name === "measure" || kind.name === "number";
  for (const [key, given] of readingsOf(when)) {
    const at = [...path, key];
    if (given === null) continue;
    if ((key === "is") === counts) yield told(at, "when-kind", { clue: quote(clue.id), kind: kind.name });
    else if (key === "is") yield* amongProblems(given, kind, at);
    else {
      const wrong = beyond(given, kind, at);
      if (wrong) yield wrong;
    }
  }
}

/** @param {readonly string[]} given @param {Clue["kind"]} kind @param {Path} path */
function* amongProblems(given, kind, path) {
  const isSound = kind.name === "code" && ![...codeProblems(kind, []), ...meaningProblems(kind, [])].length;
  for (const [i, text] of given.entries()) {
    const at = [...path, i];
    if (kind.name === "choice") {
      yield* unknown(text, kind.options.map(({ id }) => id), "option of this clue", at);
    } else if (kind.name === "code" && isSound) {
      const wrong = unfit(text, kind, at);
      if (wrong) yield wrong;
    }
  }
}
