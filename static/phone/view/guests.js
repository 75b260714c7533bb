/** Guides from files: adding one, those that were added, and giving one to somebody. */

import { day } from "../engine/words.js";
import { element, set, slot } from "./dom.js";

/** @typedef {import("../guests/home.js").Shown} Shown */
/** @typedef {import("../shelf.js").Card} Card */

const HINT =
  "A guide can be given to somebody as one file, and added on another phone. It is checked before it is kept, and then works without signal.";
const NONE = "No guide was added on this phone.";
const OLDER = "The app now comes with a newer one, which is used in its place.";

/** The screen, filled later. */
export function guestsFrame() {
  const heading = set(element("h1", "screen__title", "Guides from files"), { tabindex: -1, "data-heading": true });
  const file = set(document.createElement("input"), { class: "own__file", id: "guest-file", type: "file" });
  const label = set(element("label", "own__label", "A file that holds a guide. You see what it is before it is added."), { for: "guest-file" });
  return element(
    "div",
    "log",
    element("p", "log__ways", set(element("a", "link", "All guides"), { href: "#home" })),
    heading,
    element(
      "div",
      "log__side",
      element("p", "", HINT),
      element("section", "", title("Add a guide"), element("p", "own", label, file), said("said"), place("plan")),
      element("section", "", title("Added on this phone"), place("guests", "log__main")),
      element("section", "", title("Give a guide"), place("give", "log__ways"), place("file"), said("out")),
    ),
  );
}

/** @param {string} text */
const title = (text) => element("h2", "section__title", text);
/** @param {string} slot @param {string} [name] of its class */
const place = (slot, name = "") => set(element("div", name), { "data-slot": slot });
/** @param {string} name */
const said = (name) => set(element("p", "log__said"), { role: "status", "data-slot": name });

/** Fills in what there is. @param {HTMLElement} root @param {readonly Shown[]} guests @param {readonly Card[]} own */
export function fillGuests(root, guests, own) {
  slot(root, "guests").replaceChildren(...(guests.length ? guests.map(row) : [element("p", "", NONE)]));
  const usable = guests.filter(({ given }) => given).map(({ id, title }) => ({ id, title: `${title} (added)`, guest: true }));
  const all = [...own.map(({ id, title }) => ({ id, title, guest: false })), ...usable];
  slot(root, "give").replaceChildren(...all.map(giving));
}

/** @param {Shown} guest */
function row({ id, title, added, given, used, why }) {
  const remove = button("Remove it", "remove-guest", id);
  remove.setAttribute("aria-label", `Remove it: ${title}`);
  return element(
    "div",
    "log__file",
    element("h3", "log__heading", title),
    element("p", "", `Added on ${day(added)}.${given ? ` As known on ${day(given.guide.updated)}.` : ""}`),
    ...(why ? [element("p", "", `It cannot be used. ${why}`)] : []),
    ...(given && !used ? [element("p", "", OLDER)] : []),
    element("p", "log__ways", remove),
  );
}

/** @param {{id: string, title: string, guest: boolean}} guide */
function giving({ id, title, guest }) {
  return set(button(title, "give", id), { "data-guest": guest });
}

/** @param {string} text @param {string} act @param {string} id */
function button(text, act, id) {
  return set(element("button", "button", text), { type: "button", "data-act": act, "data-id": id });
}

/**
 * Asks before anything is done.
 * @param {HTMLElement} root
 * @param {{heading: string, says: readonly string[], take: string, act: string, leave: string}} asked
 */
export function drawAsked(root, { heading, says, take, act, leave }) {
  const top = set(element("h3", "log__heading", heading), { tabindex: -1 });
  const yes = set(element("button", "button button--main", take), { type: "button", "data-act": act });
  const no = set(element("button", "button", leave), { type: "button", "data-act": "leave-guest" });
  const lines = says.map((say) => element("p", "", say));
  slot(root, "plan").replaceChildren(element("div", "log__file", top, ...lines, element("p", "log__ways", yes, no)));
  top.focus();
}

/** @param {HTMLElement} root */
export function dropAsked(root) {
  slot(root, "plan").replaceChildren();
}

/** @param {HTMLElement} root @param {string} say */
export function sayGuests(root, say) {
  slot(root, "said").textContent = say;
}
