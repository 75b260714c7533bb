/**
 * The frame of a keypad: what was typed, what comes next, the keys. It stays while one
 * question is typed into, so that a screen reader tells what changes, and the focus
 * stays on its key.
 */

import { BACK } from "../spelling.js";
import { element, piece, set, slot } from "./dom.js";
import { picture } from "./picture.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {readonly (readonly [string, string])[]} Keys Each with what it says and does. */
/**
 * @typedef {object} Pad
 * @property {string} spoken what was typed, for a screen reader
 * @property {readonly Node[]} stamp the same, as it stands on the object
 * @property {string} now what comes next
 * @property {string} label of the keys
 * @property {string} shape how the keys stand
 * @property {Keys} keys
 * @property {Keys} ways keys below, for what is no character
 */

/**
 * The keypad of the entry: the one that stands in its place already, or a new one.
 * @param {HTMLElement} place
 * @param {import("../typing.js").Entry & {clue: Clue}} entry
 * @param {Pad} pad
 */
export function drawPad(place, { clue, whose, typed, wrong }, pad) {
  const made = standing(place, clue, whose);
  made.classList.toggle("keypad--digits", pad.shape === "digits");
  set(slot(made, "typed"), { value: typed });
  slot(made, "stamp").replaceChildren(...pad.stamp);
  for (const [name, said] of Object.entries({ spoken: pad.spoken, now: pad.now, wrong }))
    if (slot(made, name).textContent !== said) slot(made, name).textContent = said;
  const keys = set(slot(made, "keys"), { "aria-label": pad.label });
  keys.className = `keypad__keys keypad__keys--${pad.shape}`;
  drawKeys(keys, pad.keys);
  drawKeys(slot(made, "ways"), pad.ways);
  // A disabled key would lose the focus.
  const back = made.querySelector(`[data-key=${BACK}]`);
  if (back) set(back, { "aria-disabled": typed ? null : "true" });
  return made;
}

/** @param {HTMLElement} place @param {Clue} clue @param {string} whose */
function standing(place, clue, whose) {
  const there = place.firstElementChild;
  if (there instanceof HTMLElement && there.dataset.whose === whose) return there;
  const made = piece("keypad", { picture: clue.picture && picture(clue.picture) });
  return set(made, { "data-whose": whose });
}

/** @param {HTMLElement} root @param {Keys} keys */
function drawKeys(root, keys) {
  const values = keys.map(([, value]) => value).join(" ");
  if (root.dataset.keys === values) return;
  root.dataset.keys = values;
  const made = keys.map(([label, value]) => key(label, value));
  // Letters begin a row of their own below the digits.
  const first = keys.findIndex(([label]) => /^\p{L}$/u.test(label));
  if (/\d/.test(keys[first - 1]?.[0])) made[first].classList.add("key--first");
  root.replaceChildren(...made);
}

/** @param {string} label @param {string} value */
function key(label, value) {
  const made = set(element("button", "key", label), { type: "button" });
  Object.assign(made.dataset, { act: "key", key: value });
  made.classList.toggle("key--word", label !== value);
  return made;
}
