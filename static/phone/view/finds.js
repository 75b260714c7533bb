/** The log as a list: what to search and sort it by, how many, and what stands over it. */

import { element, piece, set, slot } from "./dom.js";

/** Drawn at first; more of them on demand, for thousands take a phone its time. */
export const MANY = 60;
const CHOOSE_IT =
  "The phone had closed the app while its camera was open. Choose the photo from the gallery.";

/** The screen without any find yet: drawn once, and filled from then on. */
export function findsFrame() {
  return piece("finds");
}

/**
 * Fills in the list.
 * @param {HTMLElement} root
 * @param {object} list
 * @param {readonly HTMLElement[]} list.rows those that are drawn
 * @param {number} list.found how many the search finds
 * @param {number} list.all how many finds there are
 * @param {readonly string[]} list.refused a sentence for each that cannot be read
 */
export function fillFinds(root, { rows, found, all, refused }) {
  slot(root, "empty").hidden = all > 0 || refused.length > 0;
  slot(root, "ask").hidden = all === 0;
  slot(root, "rows").hidden = rows.length === 0;
  slot(root, "rows").replaceChildren(...rows);
  slot(root, "more").hidden = rows.length === found;
  slot(root, "refused").hidden = refused.length === 0;
  slot(root, "reasons").replaceChildren(...refused.map((why) => element("li", "", why)));
  const said = counted(found, all);
  // A count that stays is not said again.
  if (slot(root, "count").textContent !== said) slot(root, "count").textContent = said;
}

/** @param {number} found @param {number} all */
function counted(found, all) {
  const many = all === 1 ? "1 find" : `${all} finds`;
  if (all === 0) return "";
  return found === all ? `${many}.` : `${found} of ${many}.`;
}

/**
 * The reminder of an export; nothing takes it away.
 * @param {HTMLElement} root @param {string} say
 */
export function fillReminder(root, say) {
  slot(root, "reminder").hidden = !say;
  slot(root, "remind").textContent = say;
}

/**
 * How the log is kept, and how much room there is.
 * @param {HTMLElement} root @param {string[]} says
 */
export function fillRoom(root, says) {
  slot(root, "room").replaceChildren(...says.filter(Boolean).map((say) => element("p", "", say)));
}

/** What has happened. @param {HTMLElement} root @param {string} say */
export function sayIn(root, say) {
  slot(root, "said").textContent = say;
}

/** What is said of the finds, on Home. @param {HTMLElement} root @param {string} say */
export function drawCount(root, say) {
  const place = /** @type {HTMLElement} */ (root.querySelector("[data-finds]"));
  place.hidden = false;
  slot(place, "finds").textContent = say;
}

/**
 * What lies open on Home is kept in the log, so that starting another forgets nothing.
 * @param {HTMLElement} draft
 * @param {{many: string, say: string}} kept
 */
export function drawKept(draft, { many, say }) {
  slot(draft, "say").textContent = `Kept in My finds: ${[many, say].filter(Boolean).join(", ")}.`;
  const loss = slot(draft, "loss");
  loss.textContent = "It stays in My finds.";
  loss.nextElementSibling?.remove();
  slot(draft, "start").textContent = "Start a new one";
  if ("done" in draft.dataset) offerNew(draft);
}

/** Nothing is left to look at: another one comes first. @param {HTMLElement} draft */
function offerNew(draft) {
  delete draft.dataset.done;
  const [go, start] = [slot(draft, "go"), slot(draft, "start")];
  const second = start.parentElement;
  go.replaceWith(start);
  second?.replaceChildren(go);
  for (const button of [go, start]) button.classList.toggle("button--main");
  slot(draft, "other").textContent = "Look at this one again";
}

/**
 * The photo that never came, on Home or on its own find; nothing takes it away.
 * @param {HTMLElement} place
 * @param {{title: string, href: string} | null} missed no address on the find itself
 */
export function drawMissed(place, missed) {
  place.hidden = missed === null;
  place.replaceChildren(...(missed ? [drawnMissed(missed)] : []));
}

/** @param {{title: string, href: string}} missed */
function drawnMissed({ title, href }) {
  const which = title ? `The photo for “${title}”` : "The photo that you took";
  const made = piece("missed", { say: `${which} did not arrive. ${CHOOSE_IT}` });
  if (href) set(slot(made, "link"), { href });
  else slot(made, "link").remove();
  return made;
}

/** The guides whose cards say that they are invented. @param {HTMLElement} root */
export function inventedOn(root) {
  const cards = [...root.querySelectorAll("[data-guide-card][data-invented]")];
  return new Set(cards.map((card) => /** @type {HTMLElement} */ (card).dataset.guideCard));
}
