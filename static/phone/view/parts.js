/** Each part original, replaced or gone: the object drawn, and a row a part. */

import { is_replaced } from "../engine/flags.js";
import { UNSEEN } from "../engine/saying.js";
import { capital } from "../engine/words.js";
import { isSet } from "../scope.js";
import { element, joined, piece, set, slot } from "./dom.js";
import { scene } from "./picture.js";
import { byId } from "./reading.js";

/** @typedef {import("../engine/find.js").PartState} PartState */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../engine/find.js").Verdict} Verdict */

/**
 * The section of the parts: of one object, or of a set as a whole; nothing of a set
 * none of whose parts goes on all at once.
 * @param {{guide: Guide, session: Session, verdict: Verdict}} data
 */
export function drawStates({ guide, session, verdict }) {
  const whole = isSet(session);
  const found = whole ? verdict.whole_set : verdict.replaced;
  if (!found.length) return null;
  const gone = session.items[0].gone;
  const states = found.map((state) => ({
    ...state,
    kind: kindOf(state, whole ? [] : gone),
    name: byId(guide.parts, state.part).name,
  }));
  const doubtful = states.filter(({ kind }) => kind === "replaced" || kind === "gone");
  const lit = spots(
    guide,
    doubtful.map((state) => state.part),
  );
  const names = doubtful.map((state) => state.name);
  return piece("states", {
    title: whole ? "Renewed on the whole set?" : "Part by part",
    scene: lit.length ? scene(guide.scene, lit) : null,
    lit: lit.length ? `Lit: the ${names.join(", the ")}.` : null,
    rows: states.map(row),
  });
}

/** @param {PartState} state @param {readonly string[]} gone */
function kindOf({ part, probability, say }, gone) {
  if (gone.includes(part)) return "gone";
  if (say.startsWith(UNSEEN)) return "unseen";
  return is_replaced(probability) ? "replaced" : "original";
}

/** The spots of these parts' clues. @param {Guide} guide @param {string[]} parts */
function spots(guide, parts) {
  const clues = guide.clues.filter((clue) => parts.includes(clue.part));
  return [...new Set(clues.map((clue) => clue.spot))].filter(Boolean);
}

/** @param {any} state */
function row(state) {
  const [finding, sure = ""] = state.say.split(/(?=:)/);
  const say = [element("b", "", finding), document.createTextNode(joined(sure))];
  const made = piece("state", { name: capital(state.name), say });
  set(slot(made, "mark"), { class: `state__shape state__shape--${state.kind}` });
  return made;
}
