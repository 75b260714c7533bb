/** Beside a question: why it is asked now, what cannot be done, which member it is. */

import { capital } from "../engine/words.js";
import { element, piece, set, slot } from "./dom.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("./clue.js").Asked} Asked */

/**
 * Why this clue, and the switches.
 * @param {Asked} data
 */
export function drawAside({ guide, clue, session, verdict }) {
  const next = verdict.next.find((each) => each.clue === clue.id);
  const made = piece("aside", {
    say: next
      ? `${capital(next.say)}.`
      : "You have looked at this one before; look again if in doubt.",
    why: clue.why,
    switches: drawSwitches(guide, session, clue),
  });
  const member = drawMember(guide, session);
  if (member) made.append(member);
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
  const tools = [...session.without, ...(clue?.needs ? [clue.needs] : [])];
  for (const tool of new Set(tools)) {
    const off = session.without.includes(tool);
    made.push(toggle(lacking(tool), off, { change: "without", tool }));
  }
  return made;
}

/**
 * The choice; nothing where the guide knows no sets.
 * @param {Guide} guide
 * @param {Session} session
 */
export function drawMember(guide, session) {
  if (!guide.members) return null;
  const made = piece("member", {
    now: `Which of the set is it: ${session.member ?? "not known"}`,
  });
  const options = [
    ["", "not known"],
    ...guide.members.all.map((/** @type {string} */ m) => [m, m]),
  ];
  slot(made, "select").replaceChildren(
    ...options.map(([value, label]) => {
      const option = element("option", "", label);
      return set(option, { value, selected: value === (session.member ?? "") });
    }),
  );
  return made;
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
