/** Each part original, replaced or gone: the object drawn, and a row a part. */

import { capital } from "../engine/words.js";
import { element, joined, piece, set, slot } from "./dom.js";
import { scene } from "./picture.js";

const EVEN = 0.5;

/**
 * The section of the parts.
 * @param {{guide: any, session: any, verdict: any}} data
 */
export function drawStates({ guide, session, verdict }) {
  const states = verdict.replaced.map((/** @type {any} */ state) => ({
    ...state,
    kind: kind(state, session.gone),
    name: guide.parts.find((/** @type {any} */ part) => part.id === state.part).name,
  }));
  const doubtful = states.filter((/** @type {any} */ state) => state.kind !== "original");
  const lit = spots(guide, doubtful.map((/** @type {any} */ state) => state.part));
  const names = doubtful.map((/** @type {any} */ state) => state.name);
  return piece("states", {
    scene: lit.length ? scene(guide.scene, lit) : null,
    lit: lit.length ? `Lit: the ${names.join(", the ")}.` : null,
    rows: states.map(row),
  });
}

/** @param {any} state @param {string[]} gone */
function kind(state, gone) {
  if (gone.includes(state.part)) return "gone";
  return state.probability > EVEN ? "replaced" : "original";
}

/** The spots of these parts' clues. @param {any} guide @param {string[]} parts */
function spots(guide, parts) {
  const clues = guide.clues.filter((/** @type {any} */ clue) => parts.includes(clue.part));
  return [...new Set(clues.map((/** @type {any} */ clue) => clue.spot))].filter(Boolean);
}

/** @param {any} state */
function row(state) {
  const [finding, sure = ""] = state.say.split(/(?=:)/);
  const say = [element("b", "", finding), document.createTextNode(joined(sure))];
  const made = piece("state", { name: capital(state.name), say });
  set(slot(made, "mark"), { class: `state__shape state__shape--${state.kind}` });
  return made;
}
