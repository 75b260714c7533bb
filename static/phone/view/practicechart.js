/** How one has done so far: the mean score, and how sure one was against how often right. */

import { percent, figure } from "../engine/words.js";
import { ENOUGH, levels, missing, overall } from "../practice/calibration.js";
import { guessed, mean, scored } from "../practice/score.js";
import { element } from "./dom.js";
import { picture } from "./picture.js";

/** @typedef {import("../practice/kept.js").Round} Round */
/** @typedef {import("../practice/calibration.js").Level} Level */
/** @typedef {import("./picture.js").Drawn} Drawn */

const WIDE = 320;
const HIGH = 320;
/** Where 0 and 100 % lie, across and up. */
const LEFT = 44;
const RIGHT = 304;
const FOOT = 272;
const TOP = 36;
const MARKS = [0, 0.25, 0.5, 0.75, 1];
const LEAST = 4;
/** @type {Record<string, string>} */
const JUDGED = {
  near: "chance alone could make that difference",
  more: "surer than you were right",
  less: "less sure than you could be",
};

/**
 * The record of some rounds; of none nothing.
 * @param {readonly Round[]} rounds
 * @returns {HTMLElement[]}
 */
export function drawRecord(rounds) {
  if (!rounds.length) return [];
  const score = figure(mean(rounds.map(scored)));
  const guess = figure(mean(rounds.map(guessed)));
  const many = rounds.length === 1 ? "1 round" : `${rounds.length} rounds`;
  const parts = [
    element("h2", "section__title", `After ${many}`),
    element("p", "", "Your Brier score: ", element("b", "", score), ` on average, where 0 is the best there is and 2 the worst. Guessing would score ${guess}.`),
    element("p", "practice__hint", "G. W. Brier’s score of 1950 counts how sure you were, not only whether you were right. What you leave over counts as spread evenly over the other years. Years that you miss come up more often."),
    ...(missing(rounds) ? [element("p", "", toCome(missing(rounds)))] : drawCalibration(rounds)),
  ];
  return [element("section", "practice__record", ...parts)];
}

/** @param {number} count */
const toCome = (count) =>
  `After ${count === 1 ? "one more round" : `${count} more rounds`} (${ENOUGH} in all) a picture shows whether you are right as often as you say.`;

/** @param {readonly Round[]} rounds */
function drawCalibration(rounds) {
  const { sure, right, share, judged } = overall(rounds);
  const say = `You said ${percent(sure)} on average and were right in ${right} of ${rounds.length} rounds, ${whole(share)} %: ${JUDGED[judged]}.`;
  const found = levels(rounds);
  return [
    element("h3", "practice__part", "Are you right as often as you say?"),
    element("p", "", say),
    element("figure", "practice__chart", chart(found)),
    element("p", "practice__hint", "A dot for each step of sureness, larger for more rounds, and a line for where it might lie by chance. On the slanted line you are right as often as you say."),
    table(found),
  ];
}

/** @param {readonly Level[]} found */
function chart(found) {
  const most = Math.max(...found.map(({ rounds }) => rounds));
  const drawn = [
    ...MARKS.flatMap(mark),
    line("practice__ideal", `M${across(0)} ${up(0)}L${across(1)} ${up(1)}`),
    ...found.map(({ sure, low, high }) => line("practice__range", `M${across(sure)} ${up(low)}V${up(high)}`)),
    ...found.map((level) => dot(level, most)),
    words("You said, in %", (LEFT + RIGHT) / 2, HIGH - 6, "middle"),
    words("You were right, in %", 0, 16, "start"),
  ];
  const box = { class: "practice__plot", viewBox: `0 0 ${WIDE} ${HIGH}`, "aria-hidden": "true" };
  return picture(["svg", Object.entries(box), drawn]);
}

/** @param {number} p */
const across = (p) => Math.round(LEFT + (RIGHT - LEFT) * p);

/** @param {number} p */
const up = (p) => Math.round(FOOT - (FOOT - TOP) * p);

/** A line of the grid with its figures. @param {number} p @returns {Drawn[]} */
function mark(p) {
  const said = String(100 * p);
  const grid = line("practice__grid", `M${LEFT} ${up(p)}H${RIGHT}M${across(p)} ${TOP}V${FOOT}`);
  return [grid, words(said, across(p), FOOT + 20, "middle"), words(said, LEFT - 8, up(p) + 5, "end")];
}

/** As large in area as it has rounds. @param {Level} level @param {number} most @returns {Drawn} */
function dot({ sure, share, rounds }, most) {
  const r = Math.max(11 * Math.sqrt(rounds / most), LEAST).toFixed(1);
  return ["circle", Object.entries({ class: "practice__dot", cx: across(sure), cy: up(share), r }), []];
}

/** @param {string} name @param {string} d @returns {Drawn} */
const line = (name, d) => ["path", Object.entries({ class: name, d }), []];

/** @param {string} text @param {number} x @param {number} y @param {string} anchor @returns {Drawn} */
const words = (text, x, y, anchor) => ["text", Object.entries({ class: "practice__axis", x, y, "text-anchor": anchor }), [text]];

/** @param {readonly Level[]} found */
function table(found) {
  const head = ["You said", "Right", "By chance"].map((name) => cell("th", name, "col"));
  const rows = found.map(({ sure, rounds, right, share, low, high }) =>
    element("tr", "", cell("th", percent(sure), "row"), ...[`${right} of ${rounds} (${whole(share)} %)`, `${whole(low)} to ${whole(high)} %`].map((text) => cell("td", text))),
  );
  return element("table", "practice__table", element("thead", "", element("tr", "", ...head)), element("tbody", "", ...rows));
}

/** @param {string} tag @param {string} text @param {string} [scope] */
function cell(tag, text, scope = "") {
  const made = element(tag, "", text);
  if (scope) made.setAttribute("scope", scope);
  return made;
}

/** Of what was counted, 0 and 100 are no claims of certainty. @param {number} p */
const whole = (p) => Math.floor(100 * p + 0.5);
