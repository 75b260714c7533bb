/** A size as it is measured: the object's edge on a piece of a ruler, to be read off. */

import { figure } from "../engine/words.js";
import { written } from "./measure.js";
import { picture } from "./picture.js";

/** @typedef {import("../engine/guide.js").Measure} Measure */
/** @typedef {import("./picture.js").Drawn} Drawn */

const WIDE = 320;
const HIGH = 116;
/** The line along which the ruler lies, and where its ticks end. */
const LINE = 58;
const LONG = 22;
const SHORT = 11;
/** So much of the range is in sight: enough to tell its finest marks apart. */
const PIECE = 1 / 6;
const FIGURES = 5;
const TICKS = 40;
/** A little of the range may lie beyond the piece, so the edge never tells by its place. */
const BEFORE = 0.4;

/**
 * The piece of the ruler around a size.
 * @param {Measure} kind
 * @param {number} size
 */
export function drawPiece(kind, size) {
  const wide = (kind.high - kind.low) * PIECE;
  const long = stride(wide / FIGURES);
  const tick = stride(wide / TICKS);
  const first = Math.floor((size - wide * BEFORE) / long) * long;
  const at = (/** @type {number} */ x) => 2 + ((WIDE - 4) * (x - first)) / (wide + long);
  const ticks = multiples(first, first + wide + long, tick).map((x) => `M${place(at(x))} ${LINE}v${SHORT}`);
  const figures = multiples(first, first + wide + long / 2, long);
  const edge = place(at(size));
  const drawn = [
    path("practice__object", `M0 ${LINE}V6H${edge}V${LINE}z`),
    path("practice__edge", `M${edge} 6V${LINE}`),
    path("practice__rule", `M0 ${HIGH - 2}V${LINE}H${WIDE}V${HIGH - 2}`),
    path("practice__tick", ticks.join("")),
    path("practice__tick practice__tick--long", figures.map((x) => `M${place(at(x))} ${LINE}v${LONG}`).join("")),
    ...figures.filter((x) => at(x) > 12 && at(x) < WIDE - 12).map((x) => words(at(x), said(kind, x))),
  ];
  const box = { class: "practice__ruler", viewBox: `0 0 ${WIDE} ${HIGH}`, "aria-hidden": "true" };
  return picture(["svg", Object.entries(box), drawn]);
}

/** What stands at a figure of the ruler. @param {Measure} kind @param {number} x */
const said = (kind, x) => (kind.helper ? written(kind, x) : figure(x));

/** The multiples of a step, from the first on. @param {number} first @param {number} last @param {number} step */
function multiples(first, last, step) {
  const count = Math.floor((last - first) / step + 1e-9) + 1;
  return Array.from({ length: count }, (_, i) => first + i * step);
}

/** The least of 1, 2, 5 times a power of ten that is no less. @param {number} least */
function stride(least) {
  const power = 10 ** Math.floor(Math.log10(least));
  return power * ([1, 2, 5].find((n) => n * power >= least * 0.999) ?? 10);
}

/** @param {number} x */
const place = (x) => Math.round(10 * x) / 10;

/** @param {string} name @param {string} d @returns {Drawn} */
const path = (name, d) => ["path", Object.entries({ class: name, d }), []];

/** @param {number} x @param {string} text @returns {Drawn} */
function words(x, text) {
  const where = { class: "practice__figure", x: place(x), y: LINE + LONG + 20, "text-anchor": "middle" };
  return ["text", Object.entries(where), [text]];
}
