/** The photo with its points: handles, the lines between them, and the magnifier. */

import { capital } from "../engine/words.js";
import { ends, marks } from "../scale/marked.js";
import { element, set, slot } from "./dom.js";
import { picture } from "./picture.js";

/** @typedef {import("../scale/objects.js").Card} Card */
/** @typedef {import("../scale/objects.js").Coin} Coin */
/** @typedef {import("../scale/plane.js").Point} Point */
/** @typedef {import("../scale/points.js").Points} Points */
/** @typedef {{url: string, width: number, height: number}} Shot */

/** The magnifier shows one part in so many of the photo's long side, and so many pixels at least. */
const PARTS = 22;
const LEAST_SEEN = 12;
/** Between the magnifier and the edges of what it lies over, in pixels of the screen. */
const MARGIN = 8;

/**
 * Lays out a photo with a handle for each point.
 * @param {HTMLElement} root @param {Shot} shot @param {readonly string[]} names
 */
export function layPhoto(root, { url, width, height }, names) {
  slot(root, "work").hidden = false;
  slot(root, "how").open = false;
  const stage = slot(root, "stage");
  stage.style.setProperty("--ratio", (width / height).toFixed(4));
  set(slot(root, "image"), { src: url, width, height });
  set(slot(root, "lines"), { viewBox: `0 0 ${width} ${height}` });
  set(slot(root, "seen"), { href: url, width, height });
  stage.querySelectorAll("[data-handle]").forEach((/** @type {Element} */ each) => each.remove());
  stage.append(...names.map(handle));
}

/** Shows no photo any more. @param {HTMLElement} root */
export function clearPhoto(root) {
  slot(root, "work").hidden = true;
  slot(root, "image").removeAttribute("src");
  slot(root, "seen").removeAttribute("href");
}

/**
 * Puts all where the points are.
 * @param {HTMLElement} root @param {Points} state @param {Card | Coin} scale
 * @param {readonly string[]} names
 */
export function movePoints(root, state, scale, names) {
  const { photo, points, active } = state;
  for (const [place, made] of handles(root).entries()) {
    const [x, y] = points[place];
    made.style.setProperty("--x", `${(100 * x) / photo.width}%`);
    made.style.setProperty("--y", `${(100 * y) / photo.height}%`);
    set(made, { "aria-label": `${capital(names[place])}: ${spot(points[place])}` });
    set(made, { "aria-current": place === active ? "true" : null });
  }
  const drawn = lines(state, scale);
  slot(root, "lines").replaceChildren(...drawn.map(picture));
  slot(root, "seen-lines").replaceChildren(...drawn.map(picture));
  set(slot(root, "view"), { viewBox: seen(photo, points[active]) });
  slot(root, "point").textContent = `Chosen: ${names[active]}`;
}

/** The handles, in the order of the points. @param {HTMLElement} root @returns {HTMLElement[]} */
export const handles = (root) => [...root.querySelectorAll("[data-handle]")].map(
  (each) => /** @type {HTMLElement} */ (each),
);

/** @param {EventTarget | null} target @returns {target is HTMLElement} */
export const isHandle = (target) =>
  target instanceof HTMLElement && target.dataset.handle !== undefined;

/**
 * Where on the photo an event was, in its pixels; null if not on it, nor of a finger that
 * came from it.
 * @param {HTMLElement} root @param {MouseEvent} event
 * @param {{width: number, height: number}} photo @returns {Point | null}
 */
export function onPhoto(root, { target, clientX, clientY }, photo) {
  if (!(target instanceof Element) || !target.closest("[data-stage]")) return null;
  const { left, top, width, height } = slot(root, "image").getBoundingClientRect();
  return [
    ((clientX - left) / width) * photo.width,
    ((clientY - top) / height) * photo.height,
  ];
}

/** Where a point is, in whole pixels of the photo. @param {Point} point */
export const spot = ([x, y]) => `${Math.round(x)} across, ${Math.round(y)} down`;

/**
 * Lays the magnifier over the photo, in the corner of its part in sight that is away
 * from the finger; back beside the buttons without one.
 * @param {HTMLElement} root @param {Point | null} finger on the screen
 */
export function liftLens(root, finger) {
  const lens = slot(root, "lens");
  lens.classList.toggle("lens--over", finger !== null);
  if (!finger) return;
  const corner = away(slot(root, "stage").getBoundingClientRect(), finger, {
    size: lens.offsetWidth,
    below: beneath(),
  });
  lens.style.setProperty("--left", `${corner[0]}px`);
  lens.style.setProperty("--top", `${corner[1]}px`);
}

/** How far down the ribbon reaches that sticks over the photo. */
function beneath() {
  const lead = document.querySelector("[data-lead]");
  return Math.max(lead?.getBoundingClientRect().bottom ?? 0, 0);
}

/**
 * The left and top of the magnifier: in the upper corner across from the finger.
 * @param {{left: number, right: number, top: number}} box of the photo
 * @param {Point} finger @param {{size: number, below: number}} lens
 * @returns {Point}
 */
export function away({ left, right, top }, [x], { size, below }) {
  const side = x < (left + right) / 2 ? right - size - MARGIN : left + MARGIN;
  return [Math.max(side, MARGIN), Math.max(top, below) + MARGIN];
}

/** @param {string} _ @param {number} place */
function handle(_, place) {
  return set(element("button", "handle"), { type: "button", "data-handle": place });
}

/** What the magnifier shows. @param {{width: number, height: number}} photo @param {Point} middle */
function seen({ width, height }, [x, y]) {
  const span = Math.max(Math.max(width, height) / PARTS, LEAST_SEEN);
  return [x - span / 2, y - span / 2, span, span].join(" ");
}

/**
 * Each line twice, a dark and a light one, so that it shows on any photo.
 * @param {Points} state @param {Card | Coin} scale
 * @returns {import("./picture.js").Drawn[]}
 */
function lines(state, { shape }) {
  const [a, b, c, d] = marks(state);
  const drawn = [
    ["scale", shape === "card" ? `${straight([a, b, c, d])}Z` : rimOf(marks(state))],
    ...(shape === "card" ? [["long", straight([a, b]) + straight([c, d])]] : []),
    ["length", straight(ends(state))],
  ];
  return drawn.flatMap(([name, way]) => [`${name}-edge`, name].map((each) => path(each, way)));
}

/** @param {string} name @param {string} d @returns {import("./picture.js").Drawn} */
const path = (name, d) => ["path", Object.entries({ class: `mark mark--${name}`, d }), []];

/** @param {readonly Point[]} points */
const straight = (points) => `M${points.map(written).join("L")}`;

/**
 * A round line through the points: of circles as of what they look like from aside,
 * where the points are spread evenly.
 * @param {readonly Point[]} points
 */
export function rimOf(points) {
  const count = points.length;
  const turn = (2 * Math.PI) / count;
  // Of the way from the point before to the one after.
  const reach = ((4 / 3) * Math.tan(turn / 4)) / (2 * Math.sin(turn));
  /** @param {number} i @param {1 | -1} by @returns {Point} */
  const bow = (i, by) => {
    const [[x, y], [u, v]] = [points[(i + count - 1) % count], points[(i + 1) % count]];
    const [p, q] = points[i % count];
    return [p + by * reach * (u - x), q + by * reach * (v - y)];
  };
  const pieces = points.map((_, i) => {
    const next = (i + 1) % count;
    return `C${[bow(i, 1), bow(next, -1), points[next]].map(written).join(" ")}`;
  });
  return `M${written(points[0])}${pieces.join("")}Z`;
}

/** @param {Point} point */
const written = ([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`;
