/** From a drawn node ([tag, [[attribute, value], ...], children]) to SVG. */

/** @typedef {import("../engine/guide.js").Picture} Drawn */

const SVG = "http://www.w3.org/2000/svg";
const LIT = "drawing__spot--lit";
/** How far from a spot, in pixels, a finger may land and still mean it. */
const REACH = 48;
/** Wider than this against its height, a drawing lies across its row. */
const LONG = 1.2;

/**
 * The drawing of a node.
 * @param {Drawn} node
 * @returns {SVGElement}
 */
export function picture([tag, attributes, children]) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of attributes) made.setAttribute(name, String(value));
  made.append(...children.map((each) => (typeof each === "string" ? each : picture(each))));
  return made;
}

/**
 * The object's drawing with some of its spots lit.
 * @param {Drawn} node
 * @param {string[]} lit
 */
export function scene(node, lit) {
  const drawn = picture(node);
  light(drawn, lit);
  return drawn;
}

/**
 * Lights some spots of a drawing, and no others.
 * @param {Element} drawn
 * @param {string[]} lit
 */
export function light(drawn, lit) {
  for (const spot of drawn.querySelectorAll("[data-spot]")) {
    spot.classList.toggle(LIT, lit.includes(spot.getAttribute("data-spot") ?? ""));
  }
}

/** Whether a drawing is much wider than high. @param {Drawn | null} node */
export function isLong(node) {
  const box = node?.[1].find(([name]) => name === "viewBox")?.[1];
  if (!box) return false;
  const [, , width, height] = String(box).split(" ").map(Number);
  return width / height > LONG;
}

/**
 * The wanted spot nearest to a place on the page, if one is within reach; of spots
 * that lie in one another the smallest.
 * @param {SVGElement} drawn
 * @param {string[]} wanted
 * @param {number} x
 * @param {number} y
 */
export function spotAt(drawn, wanted, x, y) {
  let best = null;
  let nearest = [REACH, Infinity];
  for (const spot of drawn.querySelectorAll("[data-spot]")) {
    const name = spot.getAttribute("data-spot") ?? "";
    if (!wanted.includes(name)) continue;
    const box = spot.getBoundingClientRect();
    const away = [distance(box, x, y), box.width * box.height];
    if (away[0] < nearest[0] || (away[0] === nearest[0] && away[1] < nearest[1])) {
      nearest = away;
      best = name;
    }
  }
  return best;
}

/** @param {DOMRect} box @param {number} x @param {number} y */
function distance(box, x, y) {
  const across = Math.max(box.left - x, 0, x - box.right);
  const along = Math.max(box.top - y, 0, y - box.bottom);
  return Math.hypot(across, along);
}
