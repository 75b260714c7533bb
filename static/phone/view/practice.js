/** A round of practice: the object, the time, the looks by part, and the answer. */

import { called, capital, figure } from "../engine/words.js";
import { BUDGET, left, open } from "../practice/round.js";
import { steps } from "../practice/score.js";
import { element, fill, set, slot } from "./dom.js";
import { light, picture } from "./picture.js";
import { drawSeen } from "./practicelook.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../engine/guide.js").Part} Part */
/** @typedef {import("../practice/kept.js").Begun} Begun */
/** @typedef {import("../practice/round.js").Laid} Laid */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {{guide: Guide, laid: Laid, begun: Begun}} Playing */

/** What is missing of an answer, by the name of its fields. @type {Record<string, string>} */
const MISSING = { year: "Choose a year first.", sure: "Say how sure you are." };

/** A place that is filled in later. @param {string} tag @param {string} name @param {string} slot */
export const place = (tag, name, slot) => set(element(tag, name), { "data-slot": slot });

/** The first lines of every screen of practice. @param {string} title @param {string} hint */
export function drawHead(title, hint) {
  const heading = set(element("h1", "screen__title", title), { tabindex: -1, "data-heading": true });
  const back = set(element("a", "link", "All guides"), { href: "#home" });
  const said = set(place("p", "wrong", "said"), { role: "status" });
  return element("div", "practice__head", back, heading, element("p", "", hint), said);
}

/**
 * The screen of a round, with nothing looked at yet.
 * @param {HTMLElement} root
 * @param {Playing} playing
 */
export function drawRound(root, playing) {
  const { guide, laid, begun } = playing;
  const { member } = laid.specimen;
  const what = `An invented ${member === null ? "object" : called(guide, member)}: ${guide.title}.`;
  root.replaceChildren(
    element("div", "practice__time", element("span", "practice__bar", element("span", "practice__used")), drawTime(), drawJump()),
    element(
      "div",
      "spread",
      element("div", "practice__side practice__side--round", drawHead("Which year is this?", what), element("div", "practice__scene", picture(guide.scene)), element("p", "practice__hint", "The drawing shows where to look; what is on this one shows once you look.")),
      element("div", "practice__main", place("p", "practice__over", "over"), place("div", "practice__parts", "parts"), drawAnswer(guide, begun)),
    ),
  );
  fillRound(root, playing, null);
}

/**
 * Shows what has been looked at, and the time that is left.
 * @param {HTMLElement} root
 * @param {Playing} playing
 * @param {string | null} seen the clue of the last look, if there was one just now
 */
export function fillRound(root, { guide, laid, begun }, seen) {
  const seconds = left(guide, begun.looks);
  const possible = open(guide, begun.looks).map(({ id }) => id);
  const all = begun.looks.length === guide.clues.length;
  fill(root, {
    time: seconds === 1 ? "1 second left" : `${figure(seconds)} seconds left`,
    parts: guide.parts.map((part) => drawPart(part, guide, laid, begun, possible)),
  });
  slot(root, "over").textContent = possible.length ? "" : `${all ? "That is all there is" : "No look fits into what is left"}: now say the year.`;
  root.style.setProperty("--used", String(1 - seconds / BUDGET));
  const looked = guide.clues.find(({ id }) => id === seen);
  if (!looked) return;
  light(/** @type {Element} */ (root.querySelector(".practice__scene")), [looked.spot]);
  /** @type {HTMLElement} */ (root.querySelector(`[data-seen="${CSS.escape(looked.id)}"]`)).focus({ preventScroll: true });
}

/** Says at an answer what is missing, and leads to it. @param {HTMLElement} root @param {"year" | "sure"} name */
export function showMissing(root, name) {
  slot(root, "missing").textContent = MISSING[name];
  /** @type {HTMLElement} */ (root.querySelector(`input[name=${name}]`)).focus();
}

/** Takes back what was said to be missing. @param {HTMLElement} root */
export function hideMissing(root) {
  slot(root, "missing").textContent = "";
}

/** Brings the answer into sight. @param {HTMLElement} root */
export function toAnswer(root) {
  const legend = /** @type {HTMLElement} */ (root.querySelector("[data-answer]"));
  legend.scrollIntoView({ block: "start" });
  legend.focus({ preventScroll: true });
}

const drawTime = () => set(place("p", "practice__left", "time"), { role: "status" });

const drawJump = () => set(element("button", "button button--small", "Say the year"), { type: "button", "data-act": "to-answer" });

/**
 * @param {Part} part
 * @param {Guide} guide
 * @param {Laid} laid
 * @param {Begun} begun
 * @param {readonly string[]} possible
 */
function drawPart(part, guide, laid, { looks }, possible) {
  const own = guide.clues.filter((clue) => clue.part === part.id);
  const rows = own.map((clue) =>
    looks.includes(clue.id) ? drawSeen(guide, clue, laid) : drawLook(clue, possible.includes(clue.id)),
  );
  return element("section", "", element("h2", "practice__part", capital(part.name)), element("ul", "practice__looks", ...rows));
}

/** @param {Clue} clue @param {boolean} possible */
function drawLook({ id, name, seconds }, possible) {
  const time = element("span", "practice__seconds", `${figure(seconds)}\u00a0s`);
  const button = element("button", "button practice__look", element("span", "", capital(name)), " ", time);
  return element("li", "", set(button, { type: "button", "data-act": "look", "data-clue": id, disabled: !possible }));
}

/**
 * The year and how sure, in tiles for a thumb, as far as they are chosen.
 * @param {Guide} guide
 * @param {Playing["begun"]} begun
 */
function drawAnswer({ years }, { said, sure: share }) {
  const sure = steps(years.length).map((step) => choice("sure", step, `${step} %`, step / 100 === share));
  const take = set(element("button", "button button--main", "That is my answer"), { type: "submit" });
  const form = element(
    "form",
    "practice__answer",
    group("Which model year?", "", "practice__choices", years.map(({ year }) => choice("year", year, String(year), year === said))),
    group("How sure are you?", "At 65 % you should be right about two times in three.", "practice__choices practice__choices--sure", sure),
    set(place("p", "wrong", "missing"), { role: "alert" }),
    take,
  );
  return set(form, { novalidate: true });
}

/** @param {string} legend @param {string} hint @param {string} name of the class @param {Node[]} choices */
function group(legend, hint, name, choices) {
  const heading = element("legend", "", set(element("h2", "section__title", legend), { tabindex: -1, "data-answer": true }));
  return element("fieldset", "", heading, ...(hint ? [element("p", "practice__hint", hint)] : []), element("div", name, ...choices));
}

/** @param {string} name @param {number} value @param {string} label @param {boolean} checked */
function choice(name, value, label, checked) {
  const radio = set(document.createElement("input"), { class: "practice__radio", type: "radio", name, value, checked });
  return element("label", "practice__choice", radio, element("span", "", label));
}
