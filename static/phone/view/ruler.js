/** A drawn ruler over a measure's range, with a mark where the typed size lies. */

import { picture } from "./picture.js";

const WIDE = 320;
const HIGH = 58;
const EDGE = 24;
const MOST_FIGURES = 7;

/**
 * The ruler as SVG.
 * @param {{low: number, high: number}} kind
 * @param {number | null} size
 * @param {(size: number) => string} say what a size is called
 */
export function drawRuler({ low, high }, size, say) {
  const at = (/** @type {number} */ x) =>
    Math.round(EDGE + ((WIDE - 2 * EDGE) * (x - low)) / (high - low));
  const step = stride(high - low);
  const long = multiples(low, high, step);
  const ticks = [
    ...long.map((x) => `M${at(x)} 21V34`),
    ...multiples(low, high, step / 2).map((x) => `M${at(x)} 21V28`),
  ];
  const drawn = [
    path("ruler__edge", `M1 57V21H${WIDE - 1}V57`),
    path("ruler__tick", ticks.join("")),
    ...long.map((x) => words(at(x), say(x))),
  ];
  if (size !== null && size >= low && size <= high) {
    drawn.push(path("ruler__mark", `M${at(size)} 34l-8-31h16z`));
  }
  const box = { class: "ruler", viewBox: `0 0 ${WIDE} ${HIGH}`, "aria-hidden": "true" };
  return picture(["svg", Object.entries(box), drawn]);
}

/** The multiples of a step within the range. @param {number} low @param {number} high @param {number} step */
function multiples(low, high, step) {
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step + 1e-9) - first + 1;
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

/** The round distance between figures: 1, 2 or 5 times a power of ten. @param {number} range */
function stride(range) {
  const power = 10 ** Math.floor(Math.log10(range / MOST_FIGURES));
  return power * ([1, 2, 5].find((n) => range / (n * power) <= MOST_FIGURES) ?? 10);
}

/** @param {string} name @param {string} d @returns {import("./picture.js").Drawn} */
function path(name, d) {
  return [
    "path",
    [
      ["class", name],
      ["d", d],
    ],
    [],
  ];
}

/** @param {number} x @param {string} text @returns {import("./picture.js").Drawn} */
function words(x, text) {
  const place = { class: "ruler__figure", x: String(x), y: "52", "text-anchor": "middle" };
  return ["text", Object.entries(place), [text]];
}
