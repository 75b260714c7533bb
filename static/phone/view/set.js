/** The set: who is in it, as it was sold, and who was taken for another. */

import { called, capital, listed } from "../engine/words.js";
import { takenAway } from "../members.js";
import { isSet, isTouched, placeOf } from "../scope.js";
import { element, listen, piece, set, slot } from "./dom.js";
import { tile } from "./members.js";
import { runs, the } from "./names.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Session} Session */

/**
 * Draws the set.
 * @param {HTMLElement} root
 * @param {Desk} data
 */
export function drawSet(root, { guide, session, verdict }) {
  const { all, usual } = /** @type {import("../engine/guide.js").Members} */ (guide.members);
  const unknown = unnamed(session);
  const lacking = usual.filter((id) => placeOf(session, id) < 0);
  root.replaceChildren(
    piece("set", {
      heading: unknown ? "Which one is it?" : heading(guide, session),
      how: unknown ? WHICH_IS_IT : howTo(guide, session),
      tiles: all.map((id) => toggle(id, guide, session)),
      sold: lacking.length && !unknown ? `As it was sold: ${runs(guide, usual)}` : null,
      lost: lost(guide, session),
      say: verdict.set_say || null,
      rename: session.items[0].member === null ? null : drawRename(guide, session),
    }),
  );
}

const WHICH_IS_IT =
  "Tap the number of the one that you have looked at, then all that came with it.";
const TAP = "Tap what is there; tap it again to take it away.";

/** One object was looked at, and nobody knows which. @param {Session} session */
const unnamed = ({ items: [first] }) => first.member === null && isTouched(first);

/** @param {Guide} guide @param {Session} session */
function heading(guide, session) {
  const { items } = session;
  if (isSet(session)) return `The set: ${runs(guide, items.map(({ member }) => member))}`;
  return "One of a set?";
}

/** @param {Guide} guide @param {Session} session */
function howTo(guide, session) {
  const [{ member }] = session.items;
  if (isSet(session)) return TAP;
  if (member === null) return `${TAP} One alone is fine too.`;
  return `So far it is ${the(guide, member)} alone. ${TAP}`;
}

/** @param {string} id @param {Guide} guide @param {Session} session */
function toggle(id, guide, session) {
  const item = session.items[placeOf(session, id)];
  const read = item?.readings.length ?? 0;
  const note = item ? (read ? `${read} read` : "there") : "";
  const made = set(tile("button", id, guide, note), {
    type: "button",
    "aria-pressed": String(item !== undefined),
  });
  Object.assign(made.dataset, { act: "toggle", member: id });
  return made;
}

/** What the last tap took away, and that it is not lost. @param {Guide} guide @param {Session} session */
function lost(guide, session) {
  const names = takenAway(session).map(({ member }) => the(guide, member));
  if (!names.length) return null;
  return `${capital(listed(names))} was taken away with all that was read. Undo brings it back.`;
}

/** @param {Guide} guide @param {Session} session */
function drawRename(guide, session) {
  const made = piece("rename");
  const there = session.items.map(({ member }) => member ?? "");
  const free = (guide.members?.all ?? []).filter((id) => !there.includes(id));
  if (!free.length) return null;
  slot(made, "from").replaceChildren(...there.map((id) => option(id, guide)));
  slot(made, "to").replaceChildren(...free.map((id) => option(id, guide)));
  return made;
}

/** @param {string} id @param {Guide} guide */
function option(id, guide) {
  return set(element("option", "", called(guide, id)), { value: id });
}

/**
 * Calls `toggle` with a member's id, `sold` for those it was sold with, `rename` with
 * the id that was wrong and the right one.
 * @param {HTMLElement} root
 * @param {{toggle: (id: string) => void, sold: () => void, rename: (from: string, to: string) => void}} on
 */
export function listenSet(root, { toggle, sold, rename }) {
  listen(root, { toggle: ({ member = "" }) => toggle(member), sold });
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    const told = new FormData(/** @type {HTMLFormElement} */ (event.target));
    rename(String(told.get("from")), String(told.get("to")));
  });
}
