/** After a round: the year, what was on the object, what the looks say, look by look. */

import { WORTHWHILE } from "../engine/gain.js";
import { capital, figure, listed, percent } from "../engine/words.js";
import { element, set } from "./dom.js";
import { scene } from "./picture.js";
import { drawHead } from "./practice.js";
import { drawRecord } from "./practicechart.js";
import { spoken } from "./practicelook.js";
import { byId } from "./reading.js";
import { drawRibbon } from "./ribbon.js";

/** @typedef {import("../practice/feedback.js").Told} Told */
/** @typedef {import("../practice/feedback.js").Chosen} Chosen */
/** @typedef {import("../practice/feedback.js").Look} Look */
/** @typedef {import("../practice/round.js").Laid} Laid */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {{guide: Guide, laid: Laid, told: Told, left: number, wait: number, rounds: readonly import("../practice/kept.js").Round[]}} Answered */

/** @type {Record<Exclude<Told["judged"], "elsewhere">, string>} */
const JUDGED = {
  near: "you judged that well",
  more: "you were surer than the looks allow",
  less: "you could have been surer",
};

const MISREAD_NOTHING = "Nothing that you looked at was misread on an original part.";

/**
 * Draws what a round teaches.
 * @param {HTMLElement} root
 * @param {Answered} answered
 */
export function drawTold(root, answered) {
  const { guide, told, wait, rounds } = answered;
  const right = told.said === told.year;
  const title = right ? `${told.year}: right` : `It was ${told.year}, not ${told.said}`;
  const score = `This round scores ${figure(told.score)} (Brier): you said ${percent(told.sure)}. Of 0 to 2, less is better.`;
  const next = set(element("button", "button button--main", "Next round"), { type: "button", "data-act": "begin" });
  const box = right ? `so it comes again after ${wait} rounds at the earliest` : "so it comes again soon";
  root.replaceChildren(
    element(
      "div",
      "spread",
      element("div", "practice__side", drawHead(title, score), next, element("p", "practice__hint", `You had ${told.year} ${right ? "right" : "wrong"}, ${box}.`), drawExact(told)),
      element("div", "practice__main", drawObject(answered), drawLooks(answered), ...drawRecord(rounds)),
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
    element("h2", "section__title", "What you saw says exactly"),
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

/** What was replaced, and what was misread. @param {Answered} answered */
function drawObject({ guide, laid, told }) {
  const parts = told.replaced.map((id) => byId(guide.parts, id));
  const spots = guide.clues.filter(({ part }) => told.replaced.includes(part)).map(({ spot }) => spot);
  const names = parts.map(({ name }) => `the ${name}`);
  const replaced = names.length ? `Replaced, and lit in the drawing: ${listed(names)}.` : "No part of it was replaced.";
  const misread = told.slips.map((slip) => element("li", "", slipSaid(guide, laid, slip)));
  const nothing = told.looks.length && !misread.length ? [element("p", "", MISREAD_NOTHING)] : [];
  return element(
    "section",
    "",
    element("h2", "section__title", "What was on it"),
    element(
      "div",
      "practice__object-row",
      element("div", "practice__scene", scene(guide.scene, spots)),
      element("div", "practice__list", element("p", "", replaced), ...nothing, ...(misread.length ? [element("ul", "practice__list", ...misread)] : [])),
    ),
  );
}

/** @param {Guide} guide @param {Laid} laid @param {import("../practice/truth.js").Slip} slip */
function slipSaid(guide, { readings }, { clue: id, truly }) {
  const clue = byId(guide.clues, id);
  const name = capital(clue.name);
  const read = spoken(clue, readings.get(id) ?? null);
  if (truly !== null) return `${name}, misread: it looked like “${read}” and was “${spoken(clue, truly)}”.`;
  if (clue.kind.name === "measure") return `${name}, measured wrongly: ${read}.`;
  return `${name}, misread or stamped out of order: ${read}.`;
}

/** Each look beside the best one then. @param {Answered} answered */
function drawLooks({ guide, laid, told, left }) {
  const { looks, missed } = told;
  const rows = looks.map((look) => element("li", "practice__step", ...lookSaid(guide, laid, look)));
  const missing = missed && missed.bits >= WORTHWHILE;
  return element(
    "section",
    "",
    element("h2", "section__title", "Look by look"),
    ...(rows.length ? [element("ol", "practice__list", ...rows)] : [element("p", "", "You looked at nothing.")]),
    ...(missing ? [element("p", "", `${figure(left)} seconds were left: ${of(guide, missed)} would still have told ${worth(missed)}.`)] : []),
    element("p", "practice__hint", "A bit is what a question tells that halves the years. What a look tells is what one could expect of it before, mistakes counted in."),
  );
}

/** @param {Guide} guide @param {Laid} laid @param {Chosen} look */
function lookSaid(guide, { readings }, look) {
  const clue = byId(guide.clues, look.clue);
  const read = spoken(clue, readings.get(clue.id) ?? null);
  const own = `: ${read}. Worth ${worth(look)}.`;
  const better = `Better then: ${of(guide, look.best)}, ${worth(look.best)}.`;
  return [element("b", "", capital(clue.name)), own, " ", look.best.clue === look.clue ? "The best look then." : better];
}

/** @param {Guide} guide @param {Look} look */
const of = (guide, { clue }) => `the ${byId(guide.clues, clue).name}`;

/** @param {Look} look */
function worth({ bits, seconds }) {
  const told = figure(bits);
  const many = told === "0" ? "next to nothing" : `${told} ${told === "1" ? "bit" : "bits"}`;
  return `${many} in ${figure(seconds)}\u00a0s`;
}
