/** The offer: the answer with its reason, what it rests on, and whether to look again. */

import { capital, money } from "../engine/words.js";
import { hundredths } from "../engine/worth.js";
import { toClue } from "../routes.js";
import { joined, piece, set, slot } from "./dom.js";
import { drawKeys, drawStrip } from "./offerstrip.js";

/** @typedef {import("../engine/offer.js").Offer} Offer */

const MOST_LOOKS = 3;
const WORKING = "Working it out.";

/** The screen without its answer: drawn once for each guide, and filled from then on. */
export const frame = () => piece("offer-screen");

/**
 * Fills in the answer, or that it is being worked out.
 * @param {HTMLElement} root
 * @param {Offer | null} offer
 * @param {{asked: number | null, limit: string}} said the price asked, and how it stands to
 *   what the person wanted to pay
 */
export function fillAnswer(root, offer, { asked, limit }) {
  write(slot(root, "working"), offer ? "" : WORKING);
  set(slot(root, "answered"), { hidden: !offer });
  if (!offer) return write(slot(root, "now"), WORKING);
  const { advice, say, walk, currency } = offer;
  const [short, reason = ""] = say.split(": ");
  write(slot(root, "now"), reason ? `${short}.` : short);
  write(slot(root, "limit"), limit);
  const most = money(walk, currency);
  // What stands large below it is the most to pay, whatever is asked.
  const heads = { offer: short.replace(` ${most}`, ""), buy: "Buy, up to", walk: short };
  write(slot(root, "advice"), advice ? heads[advice] : short);
  set(slot(root, "figure"), { hidden: !advice || walk <= 0 });
  write(slot(root, "walk"), most);
  write(slot(root, "reason"), capital(reason));
  write(slot(root, "range"), offer.range_say);
  write(slot(root, "note"), offer.note);
  set(slot(root, "unpriced"), { hidden: Boolean(advice) });
  set(slot(root, "drawn"), { hidden: !advice });
  slot(root, "strip").replaceChildren(drawStrip(offer, asked));
  slot(root, "keys").replaceChildren(...drawKeys(asked));
  fillLooks(root, offer);
}

/** Says why there is no answer, in its place. @param {HTMLElement} root @param {string} why */
export function fillTrouble(root, why) {
  write(slot(root, "working"), why);
  for (const name of ["now", "limit"]) write(slot(root, name), "");
  for (const name of ["answered", "unpriced", "drawn", "looking"])
    set(slot(root, name), { hidden: true });
}

/** Whether to look again, and where. @param {HTMLElement} root @param {Offer} offer */
function fillLooks(root, { advice, looks, looks_say, perfect_say }) {
  // Where an hour has a price, also what is not worth its time, with the reason.
  const told = looks.filter(({ pays, time, worth }) => pays || (time > 0 && hundredths(worth) > 0));
  const worthy = told.slice(0, MOST_LOOKS);
  set(slot(root, "looking"), { hidden: !advice });
  write(slot(root, "looks-say"), looks_say);
  write(slot(root, "perfect"), perfect_say);
  slot(root, "looks").replaceChildren(
    ...worthy.map(({ member, clue, what, say }) => {
      const made = piece("next-row", { name: capital(what), say });
      set(slot(made, "link"), { href: toClue(clue, member) });
      return made;
    }),
  );
}

/** What has happened; the same is not said again. @param {HTMLElement} root @param {string} say */
export const sayIn = (root, say) => write(slot(root, "said"), say);

/**
 * Does what may move the page, and leaves what has the focus where it was.
 * @param {() => void} work
 */
export function steady(work) {
  const held = document.activeElement;
  const before = held?.getBoundingClientRect().top ?? 0;
  work();
  const after = held?.getBoundingClientRect().top ?? 0;
  if (held?.matches("[data-own], button, a") && after !== before) window.scrollBy(0, after - before);
}

/** Writes a text that has changed: one that stays is not said again. @param {HTMLElement} place @param {string} text */
function write(place, text) {
  if (place.textContent !== joined(text)) place.textContent = joined(text);
}
