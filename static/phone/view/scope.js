/** Over a question to a set: for whom the answer counts, and the way to an exception. */

import { capital } from "../engine/words.js";
import { spread } from "../steps.js";
import { toClue, WHICH } from "../routes.js";
import { isSet } from "../scope.js";
import { element, piece, set, slot } from "./dom.js";
import { tile } from "./members.js";
import { runs, the } from "./names.js";
import { byId } from "./reading.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../desk.js").Question} Question */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {Desk & Question} Asked */

/**
 * The line over a question to a set; over one object's only where the clue is not the
 * same for every member and nobody has said which one it is.
 * @param {Asked} data
 */
export function drawScope(data) {
  const { guide, session } = data;
  if (!isSet(session)) return asksMember(data) ? piece("unsaid") : null;
  const last = spread(session, guide);
  const made = piece("scope", { whom: whom(data), exception: last ? exception(guide, last) : null });
  if (last) set(slot(made, "exception"), { href: toClue(last.clue.id, WHICH) });
  return made;
}

/** @param {Asked} data */
function whom({ guide, session, clue, places }) {
  const total = session.items.length;
  const members = places.map((place) => session.items[place].member ?? "");
  if (members.length === 1) return `For ${the(guide, members[0])} alone`;
  const many = members.length === total ? `For all ${total}` : `For the other ${members.length}`;
  const apart = members.filter((id) => isSingledOut(clue, id));
  if (!apart.length) return many;
  return [many, element("span", "scope__apart", `; ${runs(guide, apart)} may differ`)];
}

/** @param {Asked} data */
function asksMember({ guide, session, clue }) {
  const all = guide.members?.all ?? [];
  return session.items[0].member === null && all.some((id) => isSingledOut(clue, id));
}

/** Whether the guide says something of this clue for that member alone. @param {Clue} clue @param {string} id */
function isSingledOut({ kind }, id) {
  if (kind.name !== "choice" && kind.name !== "measure") return false;
  const said = kind.name === "choice" ? kind.options.flatMap(({ seen }) => seen) : kind.sizes;
  return said.some(({ members, excluded }) => members.includes(id) || excluded.includes(id));
}

/** @param {Guide} guide @param {import("../steps.js").Spread} last */
function exception(guide, { clue, count, total, gone }) {
  const name = gone ? byId(guide.parts, clue.part).name : clue.name;
  const whole = count === total;
  const many = whole ? `all ${total}` : `${count} of ${total}`;
  const said = `${capital(name)}: ${gone ? `gone on ${many}` : `${many} alike`}.`;
  return [`${said} `, element("span", "scope__ask", whole ? "One differs?" : "Another differs?")];
}

/**
 * Which member differs: a tile each, in place of the question.
 * @param {HTMLElement} root
 * @param {Asked} data
 */
export function drawWhich(root, { guide, session, clue }) {
  const tiles = session.items.map(({ member }) => {
    const id = member ?? "";
    return set(tile("a", id, guide), { href: toClue(clue.id, id) });
  });
  root.replaceChildren(piece("which", { clue: capital(clue.name), tiles }));
}
