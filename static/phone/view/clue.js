/** Looking: one clue fills the screen, its question the legend, its answers below. */

import { capital } from "../engine/words.js";
import { piece, set, slot } from "./dom.js";
import { drawKeypad } from "./keypad.js";
import { drawMeasure } from "./measure.js";
import { isLong, picture, scene } from "./picture.js";
import { drawMember } from "./member.js";

/** A hint with more characters than this needs the full width. */
const TOLD = 90;
/** A question with more characters than this is set smaller. */
const WORDY = 36;
/** From so many answers on they stand in two columns. */
const MANY = 7;
const CANNOT = "Can’t tell";
const TAKES = { measure: "Take this measure", code: "Take this code", choice: "Take this answer" };

/**
 * Draws the question.
 * @param {HTMLElement} root
 * @param {{guide: any, clue: any, session: any, verdict: any, typed: string, wrong: string}} data
 */
export function drawClue(root, data) {
  const { guide, clue } = data;
  const made = piece("question", {
    ask: clue.ask,
    where: clue.where,
    scene: scene(guide.scene, [clue.spot]),
    answers: answers(data),
    last: last(data),
    take: TAKES[/** @type {keyof TAKES} */ (clue.kind.name)],
  });
  made.classList.toggle("question--typed", clue.kind.name !== "choice");
  made.classList.toggle("question--wordy", clue.ask.length > WORDY);
  made.classList.toggle("question--told", clue.where.length > TOLD);
  if (!clue.where) made.querySelector("fieldset")?.removeAttribute("aria-describedby");
  set(slot(made, "answers"), { class: answersClass(clue) });
  root.replaceChildren(made, aside(data));
}

/**
 * Draws what stands in place of a question when there is nothing left to look at.
 * @param {HTMLElement} root
 * @param {{guide: any, session: any, verdict: any}} data
 */
export function drawDone(root, { guide, session, verdict }) {
  const held = session.away || session.without.length > 0;
  const made = piece("done", {
    heading: held ? "That is all for now" : "That is all there is to see",
    say: verdict.exhausted,
    hint: held ? "Some clues were left out because of the switches below. Turn them off to go on." : null,
    switches: switches(guide, session, null),
  });
  root.replaceChildren(made);
}

/** @param {any} data @returns {Node[]} */
function answers({ guide, clue, session, typed, wrong }) {
  if (clue.kind.name === "measure") return [drawMeasure(clue, typed, wrong)];
  if (clue.kind.name === "code") return [drawKeypad(clue, typed, wrong)];
  const read = new Map(session.readings).get(clue.id);
  return clue.kind.options.map((/** @type {any} */ option, /** @type {number} */ i) =>
    answer(option.label, {
      value: option.id,
      id: i ? `answer-${i}` : "answer",
      checked: read === option.id,
      drawn: option.picture,
    }),
  );
}

/** The two ways out, always last. @param {any} data */
function last({ guide, clue, session }) {
  const readings = new Map(session.readings);
  const part = guide.parts.find((/** @type {any} */ each) => each.id === clue.part);
  const gone = session.gone.includes(part.id);
  const made = [
    answer(CANNOT, { cannot: true, id: "answer-cannot", checked: readings.get(clue.id) === null }),
  ];
  if (part.replaced > 0) {
    made.push(answer(`The ${part.name} is gone`, { gone: part.id, id: "answer-gone", checked: gone }));
  }
  return made;
}

/**
 * @param {string} label
 * @param {{value?: string, cannot?: boolean, gone?: string, id: string, checked: boolean, drawn?: any}} what
 */
function answer(label, { value = "", cannot = false, gone = "", id, checked, drawn = null }) {
  const made = piece("answer", { label, picture: drawn ? picture(drawn) : null });
  const radio = set(slot(made, "radio"), { id, value, checked });
  radio.dataset.means = cannot ? "cannot" : gone ? "gone" : "reading";
  if (gone) radio.dataset.part = gone;
  if (cannot || gone) made.classList.add("answer--plain");
  return made;
}

/** @param {any} clue */
function answersClass(clue) {
  const { options = [] } = clue.kind;
  const drawn = options.filter((/** @type {any} */ o) => o.picture);
  const names = ["question__answers"];
  if (options.length >= MANY) names.push("question__answers--many");
  if (drawn.some((/** @type {any} */ o) => isLong(o.picture))) names.push("question__answers--long");
  if (options.length && !drawn.length) names.push("question__answers--words");
  return names.join(" ");
}

/** Why this clue, and the switches. @param {any} data */
function aside({ guide, clue, session, verdict }) {
  const next = verdict.next.find((/** @type {any} */ each) => each.clue === clue.id);
  const made = piece("aside", {
    say: next ? `${capital(next.say)}.` : "You have looked at this one before; look again if in doubt.",
    why: clue.why,
    switches: switches(guide, session, clue),
  });
  const member = drawMember(guide, session);
  if (member) made.append(member);
  return made;
}

/** @param {any} guide @param {any} session @param {any} clue */
function switches(guide, session, clue) {
  const made = [];
  if (guide.clues.some((/** @type {any} */ each) => each.seen_from === "away")) {
    made.push(toggle("I can only look from here", session.away, { change: "away" }));
  }
  const tools = [...session.without, ...(clue?.needs ? [clue.needs] : [])];
  for (const tool of new Set(tools)) {
    const off = session.without.includes(tool);
    made.push(toggle(lacking(tool), off, { change: "without", tool }));
  }
  return made;
}

/** @param {string} tool */
function lacking(tool) {
  return tool.startsWith("the ") ? `I do not have ${tool}` : `I have no ${tool}`;
}

/** @param {string} label @param {boolean} on @param {Record<string, string>} data */
function toggle(label, on, data) {
  const made = piece("switch", { label });
  const box = set(slot(made, "box"), { checked: on });
  Object.assign(box.dataset, data);
  return made;
}
