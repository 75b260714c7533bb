/** The whole object: every clue in any order, from the drawing or from a list by part. */

import { capital } from "../engine/words.js";
import { toClue } from "../routes.js";
import { fill, piece, set, slot } from "./dom.js";
import { drawMember } from "./member.js";
import { scene, spotAt } from "./picture.js";
import { told } from "./reading.js";

/**
 * Draws the places.
 * @param {HTMLElement} root
 * @param {{guide: any, session: any}} data
 */
export function drawPlaces(root, { guide, session }) {
  const read = guide.clues.filter((/** @type {any} */ clue) => wasRead(session, clue));
  root.replaceChildren(
    piece("places", {
      scene: scene(guide.scene, read.map((/** @type {any} */ clue) => clue.spot)),
      member: drawMember(guide, session),
      parts: guide.parts.map((/** @type {any} */ part) => drawPart(part, guide, session)),
    }),
  );
}

/**
 * The clue to open for a tap in the drawing: of the clues at the spot the first that
 * was not read, else the first; null for a tap on nothing.
 * @param {Event} event
 * @param {any} guide
 * @param {any} session
 */
export function clueAt(event, guide, session) {
  if (!(event instanceof MouseEvent) || !(event.target instanceof Element)) return null;
  const drawn = event.target.closest("svg.drawing");
  if (!(drawn instanceof SVGElement)) return null;
  const wanted = guide.clues.map((/** @type {any} */ clue) => clue.spot);
  const spot = spotAt(drawn, wanted, event.clientX, event.clientY);
  const here = guide.clues.filter((/** @type {any} */ clue) => clue.spot === spot);
  return here.find((/** @type {any} */ clue) => !wasRead(session, clue)) ?? here[0] ?? null;
}

/** Whether a clue has a reading, "can't tell" not counted. @param {any} session @param {any} clue */
function wasRead({ readings }, { id }) {
  return readings.some((/** @type {any[]} */ [clue, reading]) => clue === id && reading !== null);
}

/** @param {any} part @param {any} guide @param {any} session */
function drawPart(part, guide, session) {
  const gone = session.gone.includes(part.id);
  const clues = guide.clues.filter((/** @type {any} */ clue) => clue.part === part.id);
  const readings = new Map(session.readings);
  const made = piece("part", {
    name: capital(part.name),
    gone: gone ? "Gone. What was read on it is kept, but does not count." : null,
    clues: clues.map((/** @type {any} */ clue) => row(clue, readings.get(clue.id), gone)),
  });
  made.classList.toggle("part--gone", gone);
  if (part.replaced === 0) return fill(made, { toggle: null });
  fill(made, { toggle: gone ? `The ${part.name} is there` : `The ${part.name} is gone` });
  Object.assign(slot(made, "toggle").dataset, { act: gone ? "regain" : "lose", part: part.id });
  return made;
}

/** @param {any} clue @param {string | number | null | undefined} reading @param {boolean} gone */
function row(clue, reading, gone) {
  const read = told(clue, reading);
  const made = piece("place", {
    name: capital(clue.name),
    reading: read || (gone ? "not looked at" : "look at it"),
    what: ` the ${clue.name}`,
  });
  made.classList.toggle("place--read", reading !== undefined);
  set(slot(made, "link"), { href: toClue(clue.id) });
  slot(made, "back").dataset.clue = clue.id;
  return reading === undefined ? fill(made, { back: null }) : made;
}
