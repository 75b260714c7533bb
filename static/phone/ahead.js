/**
 * One answer ahead: while a question is read, what each of its answers leads to is worked
 * out already, so that a tap has only to show it.
 */

import { paced, painted } from "./breath.js";
import { laying } from "./desk.js";
import { ended } from "./engine/index.js";
import { answered } from "./steps.js";

/** @typedef {import("./desk.js").Desk} Desk */
/** @typedef {import("./desk.js").Question} Question */
/** @typedef {import("./view/answering.js").Taken} Taken */

/** From which desk was looked ahead. @type {Desk | null} */
let from = null;
/** The question that is looked at. @type {Question | null} */
let shown = null;
/** The desks that answers lead to, by their keys. @type {Map<string, Desk>} */
const foreseen = new Map();

/**
 * The desk after an answer that was tapped, worked out before or now.
 * @param {Desk} desk @param {Question} question @param {Taken} answer
 */
export function led(desk, question, answer) {
  const known = desk === from && foreseen.get(keyOf(question, answer));
  return known || ended(leading(desk, question, answer));
}

/** @param {Desk} desk @param {Question} question @param {Taken} answer */
const leading = (desk, question, answer) =>
  laying(desk, answered(desk.session, question, answer, desk.guide));

/**
 * Works out where each answer to a question leads, once it is painted and piece by piece;
 * given up when another one is asked.
 * @param {Desk} desk @param {Question} question
 */
export async function foresee(desk, question) {
  if (desk !== from) foreseen.clear();
  from = desk;
  shown = question;
  await painted();
  for (const answer of answers(desk, question)) {
    const key = keyOf(question, answer);
    if (foreseen.has(key)) continue;
    const next = await paced(leading(desk, question, answer));
    if (question !== shown) return;
    foreseen.set(key, next);
  }
}

/** The answers that can be tapped. @param {Desk} desk @param {Question} question @returns {Taken[]} */
function answers({ guide }, { clue }) {
  const options = clue.kind.name === "choice" ? clue.kind.options : [];
  const part = guide.parts.find(({ id }) => id === clue.part);
  return [
    ...options.map(({ id }) => /** @type {const} */ ({ means: "reading", value: id })),
    { means: "cannot", value: "" },
    ...(part?.replaced ? [/** @type {const} */ ({ means: "gone", value: "" })] : []),
  ];
}

/** @param {Question} question @param {Taken} answer */
const keyOf = ({ clue, places, open }, { means, value }) =>
  JSON.stringify([clue.id, places, open, means, value]);
