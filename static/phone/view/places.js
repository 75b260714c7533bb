/** The whole object: every clue in any order, from the drawing or from a list by part. */

import { capital } from "../engine/words.js";
import { toClue } from "../routes.js";
import { drawMember } from "./aside.js";
import { fill, piece, set, slot } from "./dom.js";
import { scene, spotAt } from "./picture.js";
import { told } from "./reading.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../engine/guide.js").Part} Part */
/** @typedef {import("../session.js").Session} Session */

/**
 * Draws the places.
 * @param {HTMLElement} root
 * @param {{guide: Guide, session: Session}} data
 */
export function drawPlaces(root, { guide, session }) {
  const read = guide.clues.filter((clue) => wasRead(session, clue));
  root.replaceChildren(
    piece("places", {
      scene: scene(
        guide.scene,
        read.map((clue) => clue.spot),
      ),
      member: drawMember(guide, session),
      parts: guide.parts.map((part) => drawPart(part, guide, session)),
    }),
  );
}

/**
 * The clue to open for a tap in the drawing: of the clues at the spot the first that
 * was not read, else the first; null for a tap on nothing.
 * @param {Event} event
 * @param {Guide} guide
 * @param {Session} session
 */
export function clueAt(event, guide, session) {
  if (!(event instanceof MouseEvent) || !(event.target instanceof Element)) return null;
  const drawn = event.target.closest("svg.drawing");
  if (!(drawn instanceof SVGElement)) return null;
  const wanted = guide.clues.map((clue) => clue.spot);
  const spot = spotAt(drawn, wanted, event.clientX, event.clientY);
  const here = guide.clues.filter((clue) => clue.spot === spot);
  return here.find((clue) => !wasRead(session, clue)) ?? here[0] ?? null;
}

/** Whether a clue has a reading, "can't tell" not counted. @param {Session} session @param {Clue} clue */
function wasRead({ readings }, { id }) {
  return readings.some(([clue, reading]) => clue === id && reading !== null);
}

/** @param {Part} part @param {Guide} guide @param {Session} session */
function drawPart(part, guide, session) {
  const gone = session.gone.includes(part.id);
  const clues = guide.clues.filter((clue) => clue.part === part.id);
  const readings = new Map(session.readings);
  const made = piece("part", {
    name: capital(part.name),
    gone: gone ? "Gone. What was read on it is kept, but does not count." : null,
    clues: clues.map((clue) => row(clue, readings.get(clue.id), gone)),
  });
  made.classList.toggle("part--gone", gone);
  if (part.replaced === 0) return fill(made, { toggle: null });
  fill(made, { toggle: gone ? `The ${part.name} is there` : `The ${part.name} is gone` });
  Object.assign(slot(made, "toggle").dataset, { act: gone ? "regain" : "lose", part: part.id });
  return made;
}

/** @param {Clue} clue @param {string | number | null | undefined} reading @param {boolean} gone */
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
