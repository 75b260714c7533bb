/**
 * Points on a photo dragged by finger, pen or mouse. A point moves as the finger does
 * and never jumps to it, so that it can be held from beside.
 */

import { due, isStill, put } from "../scale/marked.js";
import { drag, grab } from "../scale/points.js";
import { handles, isHandle, onPhoto } from "../view/sizingphoto.js";

/** @typedef {import("../scale/marked.js").Marked} Marked */
/** @typedef {import("../scale/plane.js").Point} Point */
/** @typedef {import("./sizinghands.js").Hands} Hands */
/**
 * @typedef {object} Held
 * @property {number} pointer
 * @property {number} place of the point
 * @property {number} beside how far from the point the finger came down, on the screen
 * @property {Marked} before all points as they were
 * @property {PointerEvent} down
 * @property {Point} last where on the photo the finger was
 * @property {Point} spot where the point would be if the photo had no edge
 */

/** A finger that came and went so soon, and went no further, has tapped. */
const TAP_TIME = 300;
const TAP_WAY = 4;
/** So near, in pixels of the screen, a tap means the point itself: its ring is as large. */
const RING = 9;

/** @param {HTMLElement} root @param {Hands} hands */
export function listenDrag(root, { now, change }) {
  /** @type {Held | null} */
  let held = null;

  root.addEventListener("pointerdown", (event) => {
    const before = now();
    const last = before && onPhoto(root, event, before.photo);
    if (held || !before || !last || event.button !== 0 || !isHandle(event.target)) return;
    event.preventDefault();
    const { place, beside } = nearest(root, event);
    const handle = handles(root)[place];
    const spot = before.points[place];
    held = { pointer: event.pointerId, place, beside, before, down: event, last, spot };
    handle.setPointerCapture(event.pointerId);
    handle.focus({ preventScroll: true });
    change({ ...before, ...grab(before, place) }, onScreen(event));
  });

  root.addEventListener("pointermove", (event) => {
    const state = now();
    if (!state || held?.pointer !== event.pointerId) return;
    const at = onPhoto(root, event, state.photo);
    if (!at) return;
    held.spot = [held.spot[0] + at[0] - held.last[0], held.spot[1] + at[1] - held.last[1]];
    held.last = at;
    change({ ...state, ...drag(state, held.spot) }, onScreen(event));
  });

  root.addEventListener("pointerup", (event) => {
    if (held?.pointer !== event.pointerId) return;
    const { before, last } = held;
    const tapped = isTap(held, event) && isMeantBeside(held);
    letGo();
    if (tapped) change(put(before, last));
  });

  const letGo = () => {
    const state = now();
    const was = held;
    held = null;
    if (was && state) change({ ...state, run: "" });
  };
  for (const name of /** @type {const} */ (["pointercancel", "lostpointercapture"])) {
    root.addEventListener(name, ({ pointerId }) => pointerId === held?.pointer && letGo());
  }
  // The phone was turned: what is under the finger now is another place.
  window.addEventListener("resize", letGo);
}

/** @param {Held} held @param {PointerEvent} up */
function isTap({ down }, up) {
  const way = Math.hypot(up.clientX - down.clientX, up.clientY - down.clientY);
  return way < TAP_WAY && up.timeStamp - down.timeStamp < TAP_TIME;
}

/**
 * Whether a tap on a handle is meant for the point that is due: the handle of one that
 * waits is in the way by chance, and of one that was put the ring alone is meant, for on a
 * coin they lie closer together than a finger is wide.
 * @param {Held} held
 */
const isMeantBeside = ({ before, place, beside }) =>
  due(before) !== undefined && (isStill(before, place) || beside > RING);

/** @param {MouseEvent} event @returns {Point} */
const onScreen = ({ clientX, clientY }) => [clientX, clientY];

/**
 * The point that a finger meant, and how far it is: where handles lie over one another,
 * the nearest.
 * @param {HTMLElement} root @param {MouseEvent} event
 */
function nearest(root, { clientX, clientY }) {
  const far = handles(root).map((handle) => {
    const { left, right, top, bottom } = handle.getBoundingClientRect();
    return Math.hypot((left + right) / 2 - clientX, (top + bottom) / 2 - clientY);
  });
  const beside = Math.min(...far);
  return { place: far.indexOf(beside), beside };
}
