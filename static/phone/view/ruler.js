/** A drawn ruler over a measure's range, with a mark where the typed size lies. */

import { figure } from "../engine/words.js";

const SVG = "http://www.w3.org/2000/svg";
const WIDE = 320;
const HIGH = 58;
const EDGE = 16;
const MOST_LABELS = 7;

/**
 * The ruler as SVG.
 * @param {{low: number, high: number, unit: string}} kind
 * @param {number | null} size
 */
export function drawRuler({ low, high }, size) {
  const at = (/** @type {number} */ x) => EDGE + ((WIDE - 2 * EDGE) * (x - low)) / (high - low);
  const root = node("svg", { class: "ruler", viewBox: `0 0 ${WIDE} ${HIGH}`, "aria-hidden": "true", focusable: "false" });
  root.append(node("path", { class: "ruler__edge", d: `M1 57V21H${WIDE - 1}V57` }));
  const step = stride(high - low);
  const first = Math.ceil(low / step);
  for (let i = first; i * step <= high + 1e-9; i += 1) {
    const x = at(i * step).toFixed(1);
    const label = node("text", { class: "ruler__figure", x, y: 52, "text-anchor": "middle" });
    label.textContent = figure(i * step);
    root.append(node("path", { class: "ruler__tick", d: `M${x} 21V34` }), label);
  }
  root.append(node("path", { class: "ruler__tick", d: halves(low, high, step / 2, at) }));
  if (size !== null && size >= low && size <= high) {
    const x = at(size).toFixed(1);
    root.append(node("path", { class: "ruler__mark", d: `M${x} 34L${Number(x) - 8} 3H${Number(x) + 8}Z` }));
  }
  return root;
}

/** The short ticks between the figures. @param {number} low @param {number} high @param {number} step @param {(x: number) => number} at */
function halves(low, high, step, at) {
  let d = "";
  for (let i = Math.ceil(low / step); i * step <= high + 1e-9; i += 1) d += `M${at(i * step).toFixed(1)} 21V28`;
  return d;
}

/** The round distance between figures: 1, 2 or 5 times a power of ten. @param {number} range */
function stride(range) {
  const power = 10 ** Math.floor(Math.log10(range / MOST_LABELS));
  return power * ([1, 2, 5].find((n) => range / (n * power) <= MOST_LABELS) ?? 10);
}

/** @param {string} tag @param {Record<string, string | number>} attributes */
function node(tag, attributes) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  return made;
}
