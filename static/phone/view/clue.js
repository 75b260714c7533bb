/** Looking: one clue fills the screen, its question the legend, its answers below. */

import { capital } from "../engine/words.js";
import { drawAside, drawSwitches } from "./aside.js";
import { fill, joined, piece, set, slot } from "./dom.js";
import { drawKeypad } from "./keypad.js";
import { drawMeasure } from "./measure.js";
import { isLong, light, picture } from "./picture.js";
import { byId, CANNOT_TELL } from "./reading.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("./picture.js").Drawn} Drawn */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../engine/find.js").Verdict} Verdict */

/**
 * A question and all that it is drawn from.
 * @typedef {Desk & {clue: Clue, typed: string, wrong: string}} Asked
 */

/** A hint with more characters than this needs the full width. */
const TOLD = 90;
/** A question with more characters than this is set smaller. */
const WORDY = 36;
/** From so many answers on they stand in two columns. */
const MANY = 7;
const LEFT_OUT = "Some clues are left out by the switches below. Turn them off to go on.";
const TAKES = {
  measure: "Take this measure",
  code: "Take this code",
  choice: "Take this answer",
};

/**
 * Draws the question.
 * @param {HTMLElement} root
 * @param {Asked} data
 */
export function drawClue(root, data) {
  const { guide, clue } = data;
  const asked = standing(root, guide);
  fill(asked, {
    ask: clue.ask,
    answers: answers(data),
    last: last(data),
    take: TAKES[clue.kind.name],
  });
  set(slot(asked, "where"), { hidden: !clue.where }).textContent = joined(clue.where);
  light(slot(asked, "scene"), [clue.spot]);
  asked.removeAttribute("data-chosen");
  asked.classList.toggle("question--typed", clue.kind.name !== "choice");
  asked.classList.toggle("question--wordy", clue.ask.length > WORDY);
  asked.classList.toggle("question--told", clue.where.length > TOLD);
  set(slot(asked, "answers"), { class: answersClass(clue) });
  asked.nextElementSibling?.remove();
  asked.after(drawAside(data));
}

/**
 * The frame of a guide's questions. It stays from one to the next, since the object's
 * drawing is the dearest thing on the screen to lay out.
 * @param {HTMLElement} root
 * @param {Guide} guide
 */
function standing(root, guide) {
  const there = root.firstElementChild;
  if (there instanceof HTMLElement && there.dataset.guide === guide.id) return there;
  const made = set(piece("question", { scene: picture(guide.scene) }), {
    "data-guide": guide.id,
  });
  root.replaceChildren(made);
  return made;
}

/**
 * Draws what stands in place of a question when there is nothing left to look at.
 * @param {HTMLElement} root
 * @param {{guide: Guide, session: Session, verdict: Verdict}} data
 */
export function drawDone(root, { guide, session, verdict }) {
  const held = session.away || session.without.length > 0;
  const made = piece("done", {
    heading: held ? "That is all for now" : "That is all there is to see",
    say: verdict.exhausted,
    hint: held ? LEFT_OUT : null,
    switches: drawSwitches(guide, session, null),
  });
  root.replaceChildren(made);
}

/** @param {Asked} data @returns {Node[]} */
function answers({ guide, clue, session, typed, wrong }) {
  const { kind } = clue;
  if (kind.name === "measure") return [drawMeasure(clue, kind, typed, wrong)];
  if (kind.name === "code") return [drawKeypad(kind.fields, typed, wrong)];
  const read = new Map(session.readings).get(clue.id);
  return kind.options.map((option, i) =>
    answer(option.label, {
      means: "reading",
      value: option.id,
      id: i ? `answer-${i}` : "answer",
      checked: read === option.id,
      drawn: option.picture,
    }),
  );
}

/** The two ways out, always last. @param {Asked} data */
function last({ guide, clue, session }) {
  const readings = new Map(session.readings);
  const part = byId(guide.parts, clue.part);
  const cannot = readings.get(clue.id) === null;
  const gone = session.gone.includes(part.id);
  const made = [
    answer(capital(CANNOT_TELL), { means: "cannot", id: "answer-cannot", checked: cannot }),
    answer(`The ${part.name} is gone`, { means: "gone", id: "answer-gone", checked: gone }),
  ];
  // What is never replaced cannot be gone either.
  return part.replaced > 0 ? made : made.slice(0, 1);
}

/**
 * @param {string} label
 * @param {{means: string, value?: string, id: string, checked: boolean, drawn?: Drawn | null}} what
 */
function answer(label, { means, value = "", id, checked, drawn = null }) {
  const made = piece("answer", { label, picture: drawn ? picture(drawn) : null });
  set(slot(made, "radio"), { id, value, checked, "data-means": means });
  made.classList.toggle("answer--plain", means !== "reading");
  return made;
}

/** @param {Clue} clue */
function answersClass(clue) {
  const options = clue.kind.name === "choice" ? clue.kind.options : [];
  const drawn = options.filter((o) => o.picture);
  const names = ["question__answers"];
  if (options.length >= MANY) names.push("question__answers--many");
  if (drawn.some((o) => isLong(o.picture))) names.push("question__answers--long");
  if (options.length && !drawn.length) names.push("question__answers--words");
  return names.join(" ");
}
