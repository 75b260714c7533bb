/** What a look shows: always a drawing, with its name for who cannot see it. */

import { measured } from "../engine/find.js";
import { UNREADABLE } from "../engine/code.js";
import { capital } from "../engine/words.js";
import { grouped } from "../counting.js";
import { borne } from "../practice/borne.js";
import { apart } from "../spelling.js";
import { element, set } from "./dom.js";
import { isLong, picture } from "./picture.js";
import { drawPiece } from "./practiceruler.js";
import { byId, told } from "./reading.js";

/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("./picture.js").Drawn} Drawn */
/** @typedef {import("../shelf.js").Guide} Guide */

const CELL = 30;
const HIGH = 56;
/** Hatched, so that it is taken for no letter. */
const LOST = "M0 10L7 0M0 20L14 0M0 28L20 0M6 28L20 9M13 28L20 18";
const CANNOT = "cannot be read";

/**
 * The card of a clue that was looked at. The focus can come to it, so that its name is
 * told at once.
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {import("../practice/round.js").Laid} laid the object
 */
export function drawSeen(guide, clue, { readings, specimen }) {
  const reading = readings.get(clue.id) ?? null;
  const name = capital(clue.name);
  const { drawn, wide } = drawing(guide, clue, reading, specimen.member);
  const made = element(
    "li",
    "practice__seen",
    set(element("div", "practice__drawn", drawn), { role: "img", "aria-label": `${name}: ${spoken(clue, reading)}`, tabindex: -1, "data-seen": clue.id }),
    set(element("span", "practice__name", `${name}${unit(clue)}`), { "aria-hidden": "true" }),
  );
  made.classList.toggle("practice__seen--wide", wide);
  return made;
}

/** What the figures of a ruler mean, unless they say so themselves. @param {Clue} clue */
const unit = ({ kind }) => (kind.name === "measure" && !kind.helper ? `, in ${kind.unit}` : "");

/** What is seen, in words. @param {Clue} clue @param {Reading} reading */
export const spoken = (clue, reading) => (reading === null ? CANNOT : told(clue, reading));

/**
 * The drawing of a reading, and whether it needs the full width.
 * @param {Guide} guide
 * @param {Clue} clue
 * @param {Reading} reading
 * @param {string | null} member
 * @returns {{drawn: Node, wide: boolean}}
 */
function drawing(guide, { id, kind }, reading, member) {
  if (reading === null) return { drawn: element("span", "practice__cannot", CANNOT), wide: false };
  switch (kind.name) {
    case "choice": {
      const option = byId(kind.options, String(reading));
      return drawOption(option.label, borne(guide, id, option, member));
    }
    case "measure":
      return { drawn: drawPiece(kind, measured(reading).value), wide: true };
    case "code":
      return { drawn: plate(apart(kind, String(reading))), wide: false };
    case "number":
      return { drawn: plate(grouped(String(reading))), wide: false };
  }
}

/** An option without a picture has its words in its place. @param {string} label @param {Drawn | null} node */
function drawOption(label, node) {
  if (node) return { drawn: picture(node), wide: isLong(node) };
  return { drawn: element("span", "practice__words", label), wide: false };
}

/** Characters as they are stamped, on a plate; hatched where one cannot be read. @param {string} text */
function plate(text) {
  const characters = [...text];
  const wide = CELL * (characters.length + 1);
  const drawn = characters.map((a, i) => stamped(a, CELL * (i + 1)));
  /** @type {Drawn} */
  const ground = ["rect", Object.entries({ class: "practice__plate", x: 2, y: 2, width: wide - 4, height: HIGH - 4, rx: 6 }), []];
  const box = { class: "practice__stamp", viewBox: `0 0 ${wide} ${HIGH}`, width: wide, "aria-hidden": "true" };
  return picture(["svg", Object.entries(box), [ground, ...drawn]]);
}

/** @param {string} a @param {number} x @returns {Drawn} */
function stamped(a, x) {
  if (a === UNREADABLE) return ["path", Object.entries({ class: "practice__lost", d: LOST, transform: `translate(${x - 10} 14)` }), []];
  return ["text", Object.entries({ class: "practice__letter", x, y: 41, "text-anchor": "middle" }), [a]];
}
