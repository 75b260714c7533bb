/** The row of club numbers under the ribbon, and the tiles that choose among members. */

import { called } from "../engine/words.js";
import { ALL, isSet, isTouched } from "../scope.js";
import { element, piece, set } from "./dom.js";
import { isOftenApart } from "./names.js";
import { counted } from "./reading.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../engine/find.js").MemberVerdict} MemberVerdict */
/** @typedef {import("../shelf.js").Guide} Guide */
/** @typedef {import("../session.js").Kept} Kept */

/** @type {Record<string, string>} */
const STRAYS = { stray: "probably a stray", apart: "probably apart from the set" };

/**
 * Draws the row where there is a set and a question to put to it, else hides it.
 * @param {HTMLElement} root
 * @param {Desk & {screen: string, places: readonly number[]}} data
 */
export function drawRow(root, data) {
  const { session, screen, places } = data;
  root.hidden = !isSet(session) || !["look", "places"].includes(screen);
  // A selector that looked for the row from the page would be tried at every change.
  document.body.classList.toggle("has-row", !root.hidden);
  if (root.hidden) return;
  const { items, at } = session;
  const asked = places.length === 1 ? places[0] : at;
  const all = cell("All", ALL, { name: `All ${items.length}`, on: at === ALL });
  const members = items.map((_, place) => memberCell(place, data, asked));
  root.replaceChildren(all, ...members, piece("row-set"));
  bringIntoSight(root, asked);
}

/** Whether a member is said to belong to another set. @param {MemberVerdict} member */
export function isStray({ stray_say }) {
  return stray_say !== "";
}

/** @param {number} place @param {Desk} desk @param {"all" | number} asked */
function memberCell(place, { guide, session, verdict }, asked) {
  const item = session.items[place];
  const id = item.member ?? "";
  const read = isTouched(item);
  const told = verdict.members.find(({ member }) => member === id);
  const mark = told && isStray(told) ? (isOftenApart(guide, id) ? "apart" : "stray") : "";
  const names = [spoken(guide, id), read && counted([item]), STRAYS[mark]];
  const name = names.filter(Boolean).join(", ");
  const made = cell(id, place, { name, mark, on: session.at === place });
  made.classList.toggle("row__cell--read", read);
  if (mark) made.classList.add(`row__cell--${mark}`);
  return set(made, { "aria-current": asked === place && session.at !== place ? "true" : null });
}

/**
 * @param {string} label @param {"all" | number} at
 * @param {{name: string, on: boolean, mark?: string}} what
 */
function cell(label, at, { name, on, mark = "" }) {
  const made = piece("row-cell", { number: label, mark });
  made.dataset.at = String(at);
  return set(made, { "aria-label": name, "aria-pressed": String(on) });
}

/**
 * Scrolls the row to who is asked about, when that is another; "All" is always in sight.
 * @param {HTMLElement} root @param {"all" | number} at
 */
function bringIntoSight(root, at) {
  if (root.dataset.asked === String(at)) return;
  root.dataset.asked = String(at);
  // Scrolling makes a browser lay the page out, which costs a phone a tenth of a tap.
  if (at === ALL) return;
  const who = root.querySelector("[aria-current], [aria-pressed=true]");
  who?.scrollIntoView({ inline: "nearest", block: "nearest" });
}

/**
 * A tile with a member's number, to be made a button or a link.
 * @param {"a" | "button"} tag
 * @param {string} id
 * @param {Guide} guide
 * @param {string} [note] below the number
 */
export function tile(tag, id, guide, note = "") {
  const made = element(tag, "tile", element("span", "tile__number", id));
  if (note) made.append(element("span", "tile__note", note));
  return set(made, { "aria-label": [spoken(guide, id), note].filter(Boolean).join(", ") });
}

/** A member by its number and its name, so that both can be said to it. @param {Guide} guide @param {string} id */
function spoken(guide, id) {
  const name = called(guide, id);
  return name.includes(id) ? name : `${id}, ${name}`;
}
