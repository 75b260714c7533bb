/** Beside a question: why it is asked now, what cannot be done, set and claim. */

import { capital } from "../engine/words.js";
import { piece, set, slot } from "./dom.js";
import { toLesson } from "../routes.js";
import { runs, the } from "./names.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("./clue.js").Asked} Asked */

/**
 * Why this clue, the switches, and the ways to what may be told at any time.
 * @param {Asked} data
 */
export function drawAside({ guide, clue, session, verdict, places }) {
  const asked = places.map((place) => session.items[place].member);
  const next = verdict.next.find((each) => each.clue === clue.id && asked.includes(each.member));
  const made = piece("aside", {
    say: next
      ? `${capital(next.say)}.`
      : "You have looked at this one before; look again if in doubt.",
    why: clue.why,
    switches: drawSwitches(guide, session, clue),
    set: drawSetLink(guide, session),
    claim: session.claim
      ? `The seller says ${session.claim.model_year}`
      : "The seller says a year?",
  });
  // A guide from a file has no pages of its own.
  if (guide.given) slot(made, "more").remove();
  else set(slot(made, "more"), { href: toLesson(guide.id, clue.id) });
  return made;
}

/**
 * The switches of what cannot be done now.
 * @param {Guide} guide
 * @param {Session} session
 * @param {Clue | null} clue
 */
export function drawSwitches(guide, session, clue) {
  const made = [];
  if (guide.clues.some((each) => each.seen_from === "away")) {
    made.push(toggle("I can only look from here", session.away, { change: "away" }));
  }
  if (guide.clues.some((each) => each.photo)) {
    made.push(toggle("I only have photos", session.photos, { change: "photos" }));
  }
  const tools = [...session.without, ...(clue?.needs ? [clue.needs] : [])];
  for (const tool of new Set(tools)) {
    const off = session.without.includes(tool);
    made.push(toggle(lacking(tool), off, { change: "without", tool }));
  }
  return made;
}

/**
 * The way to the set; nothing where the guide knows no sets.
 * @param {Guide} guide
 * @param {Session} session
 */
export function drawSetLink(guide, { items }) {
  if (!guide.members) return null;
  const [{ member }] = items;
  if (items.length > 1) return `The set: ${runs(guide, items.map((item) => item.member))}`;
  if (member === null) return "One of a set? Add the others";
  return `It is ${the(guide, member)}. Add its set`;
}

/** @param {string} tool */
function lacking(tool) {
  return tool.startsWith("the ") ? `I do not have ${tool}` : `I have no ${tool}`;
}

/** @param {string} label @param {boolean} on @param {Record<string, string>} data */
function toggle(label, on, data) {
  const made = piece("switch", { label });
  const box = set(slot(made, "box"), { checked: on });
  Object.assign(box.dataset, data);
  return made;
}
