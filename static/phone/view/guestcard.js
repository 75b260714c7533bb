/** A guide that came from a file, on Home. */

import { day } from "../engine/words.js";
import { UNCHECKED } from "../guests/adding.js";
import { at, element, screenOf, set } from "./dom.js";
import { cardsOf } from "./home.js";
import { picture } from "./picture.js";

/** @typedef {import("../shelf.js").Card} Card */
/** @typedef {import("../shelf.js").Guide} Guide */

/** The app's own cards whose place a guest has taken, by id. @type {Map<string, Element>} */
const stoodBack = new Map();

/** What the app must know of a guide before it is opened. @param {Guide} guide @returns {Card} */
export function cardOf({ id, title, years, anything, fiction }) {
  const [since, until] = [years[0].year, years[years.length - 1].year];
  return { id, title, since, until, anything, invented: fiction };
}

/** @param {string} id */
const cardAt = (id) => screenOf("home").querySelector(`[data-guide-card="${CSS.escape(id)}"]`);

/** Where a card is put up: behind the last one. */
const lastCard = () => [...screenOf("home").querySelectorAll("[data-guide-card]")].at(-1) ?? at("[data-ready]");

/**
 * Puts a guide on Home: in the place of the card of its name, else behind the others.
 * @param {Guide} guide @param {string} added
 */
export function drawGuest(guide, added) {
  const card = drawnCard(guide, added);
  const before = cardAt(guide.id);
  if (!before) return lastCard().after(card);
  if (!before.hasAttribute("data-guest")) stoodBack.set(guide.id, before);
  return before.replaceWith(card);
}

/** Takes a guide off Home; what stands in its place then, if anything does. @param {string} id @returns {Card | null} */
export function takeCardOff(id) {
  const own = stoodBack.get(id);
  stoodBack.delete(id);
  if (own) cardAt(id)?.replaceWith(own);
  else cardAt(id)?.remove();
  return cardsOf(screenOf("home")).find((card) => card.id === id) ?? null;
}

/** @param {Guide} guide @param {string} added */
function drawnCard(guide, added) {
  const { id, title, years, anything, fiction, verdict, about, clues, updated } = guide;
  const [since, until] = [years[0].year, years[years.length - 1].year];
  const heading = set(element("h3", "guide__name", title), { id: `guide-${id}` });
  const start = set(element("a", "button button--main", "Start looking"), { href: "#look", "data-act": "start", "data-guide": id });
  const card = element(
    "article",
    "guide",
    element("div", "guide__scene", picture(guide.scene)),
    element("div", "guide__title", heading, element("p", "", `${verdict === "range" ? "Years" : "Model years"} ${since} to ${until}`)),
    element(
      "div",
      "guide__text",
      set(element("div", ""), { "data-draft": true, hidden: true }),
      set(element("p", "guide__start", start), { "data-start-row": true }),
      element("p", "invented", `Added from a file on ${day(added)}. ${UNCHECKED}`),
      ...(fiction ? [element("p", "invented", "Invented for demonstration: these objects never existed.")] : []),
      element("details", "more", element("summary", "more__summary", "About these objects"), element("p", "", about)),
      ...(verdict === "year" ? [element("p", "guide__practise", link("Practise", `#practice/${id}`))] : []),
      element("p", "", link("Give or remove it", "#guests")),
      element("p", "guide__date", `${clues.length} ${clues.length === 1 ? "clue" : "clues"}, as known on ${day(updated)}.`),
    ),
  );
  const known = { "data-guide-card": id, "data-title": title, "data-years": `${since} ${until}` };
  return set(card, { ...known, "data-guest": true, "data-anything": anything, "data-invented": fiction, "aria-labelledby": `guide-${id}` });
}

/** @param {string} text @param {string} href */
const link = (text, href) => set(element("a", "link", text), { href });

/**
 * Says beside the badge how many of them were checked and found good.
 * @param {HTMLElement} badge @param {number} all @param {number} good
 */
export function drawReadyGuests(badge, all, good) {
  const place = badge.parentElement?.querySelector("[data-ready-guests]") ?? set(element("p", "ready"), { "data-ready-guests": true });
  badge.after(place);
  const which = all === 1 ? "The guide that was added from a file" : `All ${all} guides that were added from files`;
  const some = `${all - good} of the ${all} guides that were added from files cannot be used; “Add or give a guide” says why.`;
  place.textContent = good === all ? `${which} ${all === 1 ? "is" : "are"} here too, checked.` : some;
  set(place, { "data-state": good === all ? "ready" : "failed", hidden: all === 0 });
}
