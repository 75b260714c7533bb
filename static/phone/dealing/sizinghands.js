/**
 * How points on a photo are moved: put by a tap, pushed by arrow keys or by the four
 * buttons; how they are dragged is in sizingdrag.js.
 */

import { put } from "../scale/marked.js";
import { grab, nudge } from "../scale/points.js";
import { isHandle, onPhoto } from "../view/sizingphoto.js";

/** @typedef {import("../scale/marked.js").Marked} Marked */
/** @typedef {import("../scale/plane.js").Point} Point */
/**
 * @typedef {object} Hands
 * @property {() => Marked | null} now
 * @property {(next: Marked, finger?: Point | null) => void} change with where the finger
 *   is that holds a point
 */

/** A button that is held moves its point again after so many milliseconds, then so often. */
const HELD = 450;
const AGAIN = 70;

/** @param {HTMLElement} root @param {Hands} hands */
export function listenHands(root, hands) {
  listenTaps(root, hands);
  listenKeys(root, hands);
  listenPad(root, hands);
}

/**
 * A tap puts the chosen point, or the next one if that was put already: so it is the same
 * whether "Next point" was pressed in between. One that was put is not moved by a stray tap.
 * @param {HTMLElement} root @param {Hands} hands
 */
function listenTaps(root, { now, change }) {
  /** @type {PointerEvent | null} */
  let down = null;
  root.addEventListener("pointerdown", (event) => void (down = event));
  root.addEventListener("click", (event) => {
    const state = now();
    // A browser may move the click of a finger to a handle nearby; where it came down is true.
    const spot = state && onPhoto(root, down ?? event, state.photo);
    if (state && spot && !isHandle(event.target)) change(put(state, spot));
  });
}

/** @param {HTMLElement} root @param {Hands} hands */
function listenKeys(root, { now, change }) {
  root.addEventListener("focusin", ({ target }) => {
    const state = now();
    const place = isHandle(target) ? Number(target.dataset.handle) : -1;
    if (!state || place < 0 || place === state.active) return;
    change({ ...state, ...grab(state, place) });
  });
  root.addEventListener("keydown", (event) => {
    const state = now();
    if (!state || !isHandle(event.target) || event.ctrlKey || event.metaKey || event.altKey) return;
    const moved = nudge(state, event.key, event.shiftKey);
    if (moved === state && !event.key.startsWith("Arrow")) return;
    // Or the page would scroll.
    event.preventDefault();
    change({ ...state, ...moved });
  });
}

/** @param {HTMLElement} root @param {Hands} hands */
function listenPad(root, { now, change }) {
  let timer = 0;
  const rest = () => clearTimeout(timer);
  /** @param {string} key */
  const push = (key) => {
    const state = now();
    if (state) change({ ...state, ...nudge(state, key, false) });
  };
  /** @param {string} key @param {number} wait */
  const again = (key, wait) => {
    timer = window.setTimeout(() => {
      push(key);
      again(key, AGAIN);
    }, wait);
  };
  root.addEventListener("pointerdown", ({ target }) => {
    rest();
    const key = keyOf(target);
    if (key) again(key, HELD);
  });
  for (const name of ["pointerup", "pointercancel", "pointerout"]) {
    root.addEventListener(name, rest);
  }
  root.addEventListener("click", ({ target }) => {
    const key = keyOf(target);
    if (key) push(key);
  });
}

/** The arrow key that a button stands for. @param {EventTarget | null} target */
function keyOf(target) {
  const button = target instanceof Element ? target.closest("[data-push]") : null;
  return button instanceof HTMLElement ? (button.dataset.push ?? "") : "";
}
