/** What a look shows: always a drawing, with its name for who cannot see it. */

import { measured } from "../engine/find.js";
import { UNREADABLE } from "../engine/code.js";
import { capital } from "../engine/words.js";
import { grouped } from "../counting.js";
import { apart } from "../spelling.js";
import { element, set } from "./dom.js";
import { isLong, picture } from "./picture.js";
import { drawPiece } from "./practiceruler.js";
import { byId, told } from "./reading.js";

/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("./picture.js").Drawn} Drawn */

const CELL = 30;
const HIGH = 56;
const CANNOT = "cannot be read";

/**
 * The card of a clue that was looked at. The focus can come to it, so that its name is
 * told at once.
 * @param {Clue} clue
 * @param {Reading} reading
 */
export function drawSeen(clue, reading) {
  const name = capital(clue.name);
  const { drawn, wide } = drawing(clue, reading);
  const made = element(
    "li",
    "practice__seen",
    set(element("div", "practice__drawn", drawn), { role: "img", "aria-label": `${name}: ${spoken(clue, reading)}`, tabindex: -1, "data-seen": clue.id }),
    set(element("span", "practice__name", name), { "aria-hidden": "true" }),
  );
  made.classList.toggle("practice__seen--wide", wide);
  return made;
}

/** What is seen, in words. @param {Clue} clue @param {Reading} reading */
export const spoken = (clue, reading) => (reading === null ? CANNOT : told(clue, reading));

/**
 * The drawing of a reading, and whether it needs the full width.
 * @param {Clue} clue
 * @param {Reading} reading
 * @returns {{drawn: Node, wide: boolean}}
 */
function drawing({ kind }, reading) {
  if (reading === null) return { drawn: element("span", "practice__cannot", CANNOT), wide: false };
  switch (kind.name) {
    case "choice":
      return option(byId(kind.options, String(reading)));
    case "measure":
      return { drawn: drawPiece(kind, measured(reading).value), wide: true };
    case "code":
      return { drawn: plate(apart(kind, String(reading))), wide: false };
    case "number":
      return { drawn: plate(grouped(String(reading))), wide: false };
  }
}

/** An option without a picture has its words in its place. @param {import("../engine/guide.js").Option} option */
function option({ label, picture: node }) {
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
  if (a === UNREADABLE) return ["path", Object.entries({ class: "practice__lost", d: `M${x - 9} 40l18-24M${x - 9} 16l18 24` }), []];
  return ["text", Object.entries({ class: "practice__letter", x, y: 41, "text-anchor": "middle" }), [a]];
}
