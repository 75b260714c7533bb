/** After a round: the year, what was on the object, what the looks say, look by look. */

import { capital, figure, listed, percent } from "../engine/words.js";
import { element, set } from "./dom.js";
import { scene } from "./picture.js";
import { drawHead } from "./practice.js";
import { drawRecord } from "./practicechart.js";
import { spoken } from "./practicelook.js";
import { byId } from "./reading.js";
import { drawRibbon } from "./ribbon.js";

/** @typedef {import("../practice/feedback.js").Told} Told */
/** @typedef {import("../practice/feedback.js").Missed} Missed */
/** @typedef {import("../practice/round.js").Laid} Laid */
/** @typedef {import("../practice/truth.js").Slip} Slip */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {{guide: Guide, laid: Laid, told: Told, rounds: readonly import("../practice/kept.js").Round[]}} Answered */

/** @type {Record<Exclude<Told["judged"], "elsewhere">, string>} */
const JUDGED = {
  near: "you judged that well",
  more: "you were surer than the looks allow",
  less: "you could have been surer",
};

/**
 * Draws what a round teaches.
 * @param {HTMLElement} root
 * @param {Answered} answered
 */
export function drawTold(root, answered) {
  const { guide, told, rounds } = answered;
  const title = told.said === told.year ? `${told.year}: right` : `It was ${told.year}, not ${told.said}`;
  const score = `You said ${percent(told.sure)}, which scores ${figure(told.score)}; the less the better.`;
  const next = set(element("button", "button button--main", "Next round"), { type: "button", "data-act": "begin" });
  root.replaceChildren(
    element(
      "div",
      "spread",
      element("div", "practice__side", drawHead(title, score), next, drawExact(told), drawObject(answered)),
      element("div", "practice__main", drawLooks(answered), ...drawAdvice(answered), ...drawRecord(rounds)),
    ),
  );
  drawShares(/** @type {HTMLElement} */ (root.querySelector(".ribbon")), guide, told);
}

/** What all looks together say. @param {Told} told */
function drawExact(told) {
  const { year, said, sure, likeliest, judged } = told;
  const shares = new Map(told.years);
  const named = [["It was", year], ["You said", said], ["Likeliest was", likeliest]]
    // A year is named once.
    .filter(([, each], i, all) => all.findIndex(([, other]) => other === each) === i)
    .map(([what, each]) => `${what} ${each}: ${percent(shares.get(Number(each)) ?? 0)}.`);
  return element(
    "section",
    "",
    element("h2", "section__title", "What your looks add up to"),
    set(element("figure", "ribbon practice__ribbon"), { role: "img" }),
    element("p", "", named.join(" ")),
    element("p", "", `You said ${percent(sure)} for ${said}: `, element("b", "", judged === "elsewhere" ? `the looks spoke for ${likeliest}` : JUDGED[judged]), "."),
    element("p", "practice__hint", "Beforehand every model year counts the same here, however many of it were made."),
  );
}

/** The ribbon, of what the looks say alone. @param {HTMLElement} ribbon @param {Guide} guide @param {Told} told */
function drawShares(ribbon, guide, { years, year }) {
  const say = `it was ${year}`;
  // The leading column is the year that it was.
  drawRibbon(ribbon, /** @type {any} */ ({ model_years: years, outside: 0, leading: year, range: null, say }));
  const spokenYears = years.map(([each, p]) => `${each} ${percent(p)}`);
  set(ribbon, { "aria-label": `Year ribbon: ${listed(spokenYears)}. It was ${year}.` });
  ribbon.lastElementChild?.classList.add("practice__none");
}

/** What was replaced. @param {Answered} answered */
function drawObject({ guide, told }) {
  const parts = told.replaced.map((id) => byId(guide.parts, id));
  const spots = guide.clues.filter(({ part }) => told.replaced.includes(part)).map(({ spot }) => spot);
  const names = parts.map(({ name }) => `the ${name}`);
  const replaced = names.length ? `Replaced, and lit in the drawing: ${listed(names)}.` : "No part of it was replaced.";
  return element(
    "section",
    "",
    element("h2", "section__title", "The object"),
    element("p", "", replaced),
    element("div", "practice__scene", scene(guide.scene, spots)),
  );
}

/** What each look has made of the year that it was. @param {Answered} answered */
function drawLooks({ guide, laid, told }) {
  const { looks, year, years } = told;
  const rows = looks.map(({ clue, share }) => element("li", "practice__step", drawWhat(guide, laid, told, clue), drawShare(share)));
  const start = `With nothing seen, ${year} stood at ${percent(1 / years.length)}, like every other year.`;
  return element(
    "section",
    "",
    element("h2", "section__title", "Look by look"),
    element("p", "", looks.length ? `${start} After each look it stood at:` : `You looked at nothing. ${start}`),
    ...(rows.length ? [element("ol", "practice__steps", ...rows)] : []),
  );
}

/** A look, what it showed, and what was wrong with that. @param {Guide} guide @param {Laid} laid @param {Told} told @param {string} id */
function drawWhat(guide, { readings }, { replaced, slips }, id) {
  const clue = byId(guide.clues, id);
  const slip = slips.find((each) => each.clue === id);
  const part = replaced.includes(clue.part) ? `On the replaced ${byId(guide.parts, clue.part).name}.` : "";
  const note = slip ? slipSaid(clue, slip) : part;
  // A figure and its unit stay together.
  const read = `: ${spoken(clue, readings.get(id) ?? null).replaceAll(/(?<=\d) /g, "\u00a0")}`;
  return element("span", "", element("b", "", capital(clue.name)), read, ...(note ? [element("span", "practice__note", note)] : []));
}

/** @param {import("../engine/guide.js").Clue} clue @param {Slip} slip */
function slipSaid(clue, { truly }) {
  if (truly !== null) return `Misread: it was “${spoken(clue, truly)}”.`;
  return clue.kind.name === "measure" ? "Measured wrongly." : "Misread, or stamped out of order.";
}

/** A share as a bar and a figure. @param {number} share */
function drawShare(share) {
  const bar = element("span", "practice__grown");
  bar.style.setProperty("--p", share.toFixed(4));
  return element("span", "practice__share", set(element("span", "practice__grows", bar), { "aria-hidden": "true" }), element("b", "", percent(share)));
}

/** What would have told more, where that mattered. @param {Answered} answered @returns {HTMLElement[]} */
function drawAdvice({ guide, told: { advice, missed, looks } }) {
  const said = [
    ...advice.map(({ look, missed: other }) => `In place of ${of(guide, look)}, ${of(guide, other.clue)} would have told more, and it takes no longer.${apart(other)}`),
    ...(missed ? [`There was still time for ${of(guide, missed.clue)} (${figure(missed.seconds)}\u00a0s).${apart(missed)}`] : []),
  ];
  const heading = element("h2", "section__title", "What to look at next time");
  if (said.length) return [element("section", "", heading, ...said.map((each) => element("p", "", each)))];
  return looks.length ? [element("p", "", "Your looks were well chosen: none that you left out would have told much more in the same time.")] : [];
}

/** @param {Missed} missed */
const apart = ({ between }) => (between ? ` It tells ${between[0]} from ${between[1]}, the two that led.` : "");

/** @param {Guide} guide @param {string} clue */
const of = (guide, clue) => `the ${byId(guide.clues, clue).name}`;
