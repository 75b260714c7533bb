/** The screen of a size off a photo: how to take it, the scale, and what came out. */

import { capital } from "../engine/words.js";
import { ACCEPT } from "../log/photo.js";
import { CARD, COINS } from "../scale/objects.js";
import { element, piece, set, slot } from "./dom.js";
import { drawArt } from "./sizingart.js";

/** @typedef {import("../scale/objects.js").Card} Card */
/** @typedef {import("../scale/objects.js").Coin} Coin */

const HINTS = {
  card: "Its corners are round: put each point where the straight sides would meet. The thick lines are its long sides. You may zoom in.",
  coin: "Put the points all around its rim. A coin hardly shows when the phone is tilted, so hold it level, and do not zoom or cut the photo.",
};

/**
 * The frame of the screen, before there is a photo.
 * @param {HTMLElement} root
 * @param {{whose: string, ask: string, where: string, back: string, scale: Card | Coin}} about
 */
export function drawFrame(root, { whose, ask, where, back, scale }) {
  const made = piece("sizing", { ask, where, art: [drawArt()] });
  set(made, { "data-whose": whose });
  set(slot(made, "back"), { href: back });
  for (const input of ["from-camera", "from-gallery"]) set(slot(made, input), { accept: ACCEPT });
  // A mouse has no camera to point with.
  slot(made, "camera").hidden = !matchMedia("(pointer: coarse)").matches;
  slot(made, "scales").replaceChildren(...choices(scale));
  drawHint(made, scale);
  root.replaceChildren(made);
}

/** Whether the frame stands for this question. @param {HTMLElement} root @param {string} whose */
export const isFramed = ({ firstElementChild: frame }, whose) =>
  frame instanceof HTMLElement && frame.dataset.whose === whose;

/** In place of the screen where nothing is measured. @param {HTMLElement} root @param {string} back */
export function drawNothing(root, back) {
  const made = piece("no-sizing");
  set(slot(made, "back"), { href: back });
  root.replaceChildren(made);
}

/** What to look for on the scale. @param {HTMLElement} root @param {Card | Coin} scale */
export function drawHint(root, { shape }) {
  slot(root, "hint").textContent = HINTS[shape];
  slot(root, "turn").hidden = shape !== "card";
}

/** What was done, or why not. @param {HTMLElement} root @param {string} sentence */
export function saySizing(root, sentence) {
  slot(root, "said").textContent = sentence;
}

/** What a tap on the photo does now, above it. @param {HTMLElement} root @param {string} sentence */
export function drawTap(root, sentence) {
  slot(root, "tap").textContent = sentence;
}

/** Says it to those who do not see the photo, once a hand rests. @param {HTMLElement} root @param {string} sentence */
export function speak(root, sentence) {
  slot(root, "spoken").textContent = sentence;
}

/**
 * What came of the points.
 * @param {HTMLElement} root
 * @param {import("../dealing/sized.js").Result} result
 */
export function drawResult(root, { todo, say, wrong, reading }) {
  const size = slot(root, "size");
  size.textContent = todo || say;
  size.classList.toggle("sizing__size--found", say !== "");
  slot(root, "meaning").hidden = say === "";
  slot(root, "wrong").textContent = wrong;
  slot(root, "take-size").hidden = reading === null;
}

/** @param {Card | Coin} chosen */
function choices({ id: chosen }) {
  /** @param {Card | Coin} scale @param {string} label */
  const option = ({ id }, label) =>
    set(element("option", "", label), { value: id, selected: id === chosen });
  const currencies = [...new Set(COINS.map(({ currency }) => currency))];
  return [
    option(CARD, capital(CARD.name)),
    ...currencies.map((currency) => {
      const coins = COINS.filter((coin) => coin.currency === currency);
      const options = coins.map((coin) => option(coin, `${coin.name}, ${coin.diameter} mm`));
      return set(element("optgroup", "", ...options), { label: `Coins, ${currency}` });
    }),
  ];
}
