/** The strip of an offer: where worth, walk-away price and asked price lie, with its keys. */

import { element } from "./dom.js";
import { picture } from "./picture.js";

/** @typedef {import("../engine/offer.js").Offer} Offer */
/** @typedef {import("./picture.js").Drawn} Drawn */

const WIDE = 320;
const HIGH = 48;
const EDGE = 10;
/** The line on which everything lies. */
const LINE = 30;
const KEY = 28;

/**
 * The strip as SVG.
 * @param {Offer} offer
 * @param {number | null} asked
 */
export function drawStrip({ expected, low, high, walk }, asked) {
  const least = Math.min(0, low, expected);
  const most = Math.max(high, expected, walk, asked ?? 0, least + 1);
  const at = (/** @type {number} */ x) =>
    Math.round(EDGE + ((WIDE - 2 * EDGE) * (x - least)) / (most - least));
  const drawn = [
    path("strip__line", `M${EDGE} ${LINE}H${WIDE - EDGE}M${at(0)} ${LINE - 6}V${LINE + 6}`),
    band(at(low), at(high)),
    post(at(walk)),
    dot(at(expected)),
    ...(asked === null ? [] : [pointer(at(asked))]),
  ];
  return svg("strip__drawing", `0 0 ${WIDE} ${HIGH}`, drawn);
}

/**
 * What each mark of the strip is, in words; the figures are told above it.
 * @param {number | null} asked
 */
export function drawKeys(asked) {
  const middle = KEY / 2;
  const rows = [
    key("four times in five", band(2, KEY - 2)),
    key("on average", dot(middle)),
    key("most to pay", post(middle)),
  ];
  if (asked !== null) rows.push(key("asked", pointer(middle)));
  return rows;
}

/** @param {string} name @param {Drawn} mark */
function key(name, mark) {
  return element(
    "li",
    "strip__key",
    svg("strip__mark", `0 ${LINE - KEY / 2} ${KEY} ${KEY}`, [mark]),
    element("span", "strip__name", name),
  );
}

/** From the low to the high worth. @param {number} from @param {number} to @returns {Drawn} */
function band(from, to) {
  const width = Math.max(to - from, 3);
  const box = { class: "strip__band", x: from, y: LINE - 6, width, height: 12 };
  return ["rect", attributes(box), []];
}

/** @param {number} x @returns {Drawn} */
const dot = (x) => ["circle", attributes({ class: "strip__dot", cx: x, cy: LINE, r: 5 }), []];

/** @param {number} x */
const post = (x) => path("strip__post", `M${x} ${LINE - 13}V${LINE + 13}`);

/** @param {number} x */
const pointer = (x) => path("strip__pointer", `M${x} ${LINE}l-7-15h14z`);

/** @param {string} name @param {string} d @returns {Drawn} */
const path = (name, d) => ["path", attributes({ class: name, d }), []];

/** @param {string} name @param {string} viewBox @param {Drawn[]} drawn */
function svg(name, viewBox, drawn) {
  const box = { class: name, viewBox, "aria-hidden": "true" };
  return picture(["svg", attributes(box), drawn]);
}

/** @param {Record<string, string | number>} named @returns {[string, string][]} */
const attributes = (named) =>
  Object.entries(named).map(([name, value]) => [name, String(value)]);
