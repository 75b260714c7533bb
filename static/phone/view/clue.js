/** Looking: one clue fills the screen, its question the legend, its answers below. */

import { capital } from "../engine/words.js";
import { TO_REST } from "../routes.js";
import { ALL, reading } from "../scope.js";
import { drawAside, drawSwitches } from "./aside.js";
import { element, fill, joined, piece, set, slot } from "./dom.js";
import { digitPad } from "./digits.js";
import { codePad } from "./keypad.js";
import { drawMeasure } from "./measure.js";
import { drawPad } from "./pad.js";
import { isLong, light, picture } from "./picture.js";
import { the } from "./names.js";
import { byId, CANNOT_TELL } from "./reading.js";
import { drawScope } from "./scope.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("./picture.js").Drawn} Drawn */
/** @typedef {import("../shelf.js").Guide} Guide */

/**
 * A question and all that it is drawn from.
 * @typedef {Desk & import("../desk.js").Question & import("../typing.js").Entry} Asked
 */

/** A hint with more characters than this needs the full width. */
const TOLD = 90;
/** A question with more characters than this is set smaller. */
const WORDY = 36;
/** From so many answers on they stand in two columns. */
const MANY = 7;
const PHOTO = "What does the photo show?";
const LEFT_OUT = "Some clues are left out by the switches below. Turn them off to go on.";
const TAKES = {
  measure: "Take this measure",
  code: "Take this code",
  number: "Take this number",
  choice: "Take this answer",
};

/**
 * Draws the question.
 * @param {HTMLElement} root
 * @param {Asked} data
 */
export function drawClue(root, data) {
  const { guide, session, clue } = data;
  const asked = standing(root, guide);
  const shown = session.photos && clue.photo ? clue.photo : "";
  const where = shown || clue.where;
  fill(asked, {
    ask: shown ? [element("span", "question__photo", PHOTO), " ", clue.ask] : clue.ask,
    last: last(data),
    take: TAKES[clue.kind.name],
  });
  set(slot(asked, "where"), { hidden: !where }).textContent = joined(where);
  slot(asked, "scope").replaceChildren(...[drawScope(data) ?? []].flat());
  drawRest(slot(asked, "rest"), data);
  light(slot(asked, "scene"), [clue.spot]);
  asked.removeAttribute("data-chosen");
  const typed = clue.kind.name !== "choice";
  asked.classList.toggle("question--typed", typed);
  // What is typed is taken where it is typed; the keys go the same way as the eyes. What
  // moves within a fieldset has all of it laid out anew.
  const [before, ways] = [slot(asked, typed ? "rest" : "answers"), slot(asked, "last")];
  if (before.nextElementSibling !== ways) before.after(ways);
  asked.classList.toggle("question--wordy", clue.ask.length > WORDY);
  asked.classList.toggle("question--told", where.length > TOLD);
  drawAnswers(set(slot(asked, "answers"), { class: answersClass(clue) }), data);
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

/** The way to take what is typed for all that are open. @param {HTMLElement} button @param {Asked} data */
function drawRest(button, { session, places, open }) {
  const rest = open.length - places.length;
  button.hidden = rest <= 0;
  const all = open.length === session.items.length;
  button.textContent = `The same on ${all ? `all ${open.length}` : `the other ${open.length}`}`;
}

/**
 * Draws what stands in place of a question when there is nothing left to look at.
 * @param {HTMLElement} root
 * @param {Desk} data
 */
export function drawDone(root, { guide, session, verdict }) {
  const held = session.away || session.photos || session.without.length > 0;
  const one = session.at === ALL ? null : session.items[session.at].member;
  const unread = verdict.next.filter(({ member }) => one === null || member === one).length;
  const made = piece("done", {
    heading: held ? "That is all for now" : told(unread),
    say: one === null ? verdict.exhausted : `Nothing left on ${the(guide, one)} would tell much.`,
    hint: held ? LEFT_OUT : null,
    all: one === null ? null : `Go on with all ${session.items.length}`,
    switches: drawSwitches(guide, session, null),
  });
  slot(made, "verdict").classList.toggle("button--main", one === null);
  if (unread) set(slot(made, "rest"), { href: TO_REST });
  else slot(made, "rest").remove();
  root.replaceChildren(made);
}

/** Whether anything is left to see, though none of it is worth a look. @param {number} unread */
function told(unread) {
  if (!unread) return "That is all there is to see";
  return `You know enough; ${unread === 1 ? "1 clue is" : `${unread} clues are`} unread.`;
}

/** @param {HTMLElement} root @param {Asked} data */
function drawAnswers(root, data) {
  const made = answers(root, data);
  // A keypad that stands already must stay where it is.
  if (made[0] !== root.firstChild) root.replaceChildren(...made);
}

/** @param {HTMLElement} root @param {Asked} data @returns {Node[]} */
function answers(root, data) {
  const { clue, session, places, typed } = data;
  const { kind } = clue;
  if (kind.name === "measure") return [drawMeasure(clue, kind, data)];
  if (kind.name === "code") return [drawPad(root, data, codePad(kind, typed))];
  if (kind.name === "number") return [drawPad(root, data, digitPad(kind, typed))];
  const read = common(places.map((place) => reading(session.items[place], clue.id)));
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
function last({ guide, clue, session, places, open }) {
  const part = byId(guide.parts, clue.part);
  const items = places.map((place) => session.items[place]);
  const cannot = common(items.map((item) => reading(item, clue.id))) === null;
  const gone = items.every((item) => item.gone.includes(part.id));
  // What is read one by one can still not be told on any.
  const any = open.length > places.length ? " on any" : "";
  const made = [
    answer(`${capital(CANNOT_TELL)}${any}`, { means: "cannot", id: "answer-cannot", checked: cannot }),
    answer(`The ${part.name} is gone`, { means: "gone", id: "answer-gone", checked: gone }),
  ];
  // What is never replaced cannot be gone either.
  return part.replaced > 0 ? made : made.slice(0, 1);
}

/** What all have alike; undefined where they differ. @template T @param {readonly T[]} values */
function common([first, ...others]) {
  return others.every((each) => each === first) ? first : undefined;
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
