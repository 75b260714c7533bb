/** The whole object: every clue in any order, from the drawing or from a list by part. */

import { brackets } from "../engine/range.js";
import { capital } from "../engine/words.js";
import { toClue } from "../routes.js";
import { ALL, everywhere, isSet, reading } from "../scope.js";
import { drawSetLink } from "./aside.js";
import { fill, piece, set, slot } from "./dom.js";
import { runs, the } from "./names.js";
import { scene, spotAt } from "./picture.js";
import { told } from "./reading.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../engine/guide.js").Part} Part */
/** @typedef {import("../session.js").Kept} Kept */
/** @typedef {import("../session.js").Session} Session */

const ANY_ORDER =
  "Tap a place in the drawing, or choose a clue from the list. Any order will do; what has been read is coloured.";
const MARKS =
  "Choose what you find on it, from the list or in the drawing, and leave the rest. Two or three often do; what has been read is coloured.";

/**
 * Draws the places.
 * @param {HTMLElement} root
 * @param {{guide: Guide, session: Session}} data
 */
export function drawPlaces(root, { guide, session }) {
  const items = shown(session);
  const read = guide.clues.filter((clue) => items.some((item) => wasRead(item, clue)));
  root.replaceChildren(
    piece("places", {
      heading: heading(guide, session),
      hint: brackets(guide) ? MARKS : ANY_ORDER,
      scene: scene(
        guide.scene,
        read.map((clue) => clue.spot),
      ),
      set: drawSetLink(guide, session),
      parts: guide.parts.map((part) => drawPart(part, guide, items)),
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
  const items = shown(session);
  return here.find((clue) => !items.every((item) => wasRead(item, clue))) ?? here[0] ?? null;
}

/** What is asked about. @param {Session} session */
const shown = (session) => everywhere(session).map((place) => session.items[place]);

/** @param {Guide} guide @param {Session} session */
function heading(guide, session) {
  if (brackets(guide)) return "What can you see on it?";
  if (!isSet(session)) return "The whole object";
  if (session.at === ALL) return `All ${session.items.length}, clue by clue`;
  return capital(the(guide, session.items[session.at].member));
}

/** Whether a clue has a reading, "can't tell" not counted. @param {Kept} item @param {Clue} clue */
const wasRead = (item, { id }) => (reading(item, id) ?? null) !== null;

/** @param {Part} part @param {Guide} guide @param {readonly Kept[]} items */
function drawPart(part, guide, items) {
  const lost = items.filter((item) => item.gone.includes(part.id));
  const gone = lost.length === items.length;
  const clues = guide.clues.filter((clue) => clue.part === part.id);
  const made = piece("part", {
    name: capital(part.name),
    gone: lost.length ? goneOn(lost, gone, guide) : null,
    clues: clues.map((clue) => row(clue, items, { gone, guide })),
  });
  made.classList.toggle("part--gone", gone);
  if (part.replaced === 0) return fill(made, { toggle: null });
  fill(made, { toggle: `${capital(part.name)}: ${gone ? "there" : "gone"}` });
  Object.assign(slot(made, "toggle").dataset, { act: gone ? "regain" : "lose", part: part.id });
  return made;
}

/** @param {readonly Kept[]} lost @param {boolean} all @param {Guide} guide */
function goneOn(lost, all, guide) {
  const on = all ? "" : ` on ${runs(guide, members(lost))}`;
  return `Gone${on}. What was read on it is kept, but does not count.`;
}

/** @param {Clue} clue @param {readonly Kept[]} items @param {{gone: boolean, guide: Guide}} part */
function row(clue, items, { gone, guide }) {
  const read = summed(clue, items, guide);
  const made = piece("place", {
    name: capital(clue.name),
    reading: read || (gone ? "not looked at" : "look at it"),
    what: ` the ${clue.name}`,
  });
  made.classList.toggle("place--read", read !== "");
  set(slot(made, "link"), { href: toClue(clue.id) });
  slot(made, "back").dataset.clue = clue.id;
  return read === "" ? fill(made, { back: null }) : made;
}

/**
 * What was read of a clue; where that is not the same on all, with whom it is of.
 * @param {Clue} clue @param {readonly Kept[]} items @param {Guide} guide
 */
function summed(clue, items, guide) {
  /** @type {Map<string, Kept[]>} */
  const alike = new Map();
  for (const item of items) {
    const read = told(clue, reading(item, clue.id));
    if (read) alike.set(read, [...(alike.get(read) ?? []), item]);
  }
  return [...alike]
    .map(([read, of]) => (of.length === items.length ? read : `${runs(guide, members(of))}: ${read}`))
    .join("; ");
}

/** @param {readonly Kept[]} items */
const members = (items) => items.map(({ member }) => member);
