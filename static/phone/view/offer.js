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
 * @param {number | null} asked
 */
export function fillAnswer(root, offer, asked) {
  write(slot(root, "working"), offer ? "" : WORKING);
  set(slot(root, "answered"), { hidden: !offer });
  if (!offer) return;
  const { advice, say, walk, currency } = offer;
  const [short, reason = ""] = say.split(": ");
  const most = money(walk, currency);
  write(slot(root, "advice"), advice === "offer" ? short.replace(` ${most}`, "") : short);
  set(slot(root, "figure"), { hidden: !advice || walk <= 0 });
  write(slot(root, "walk"), most);
  write(slot(root, "reason"), capital(reason));
  write(slot(root, "range"), offer.range_say);
  write(slot(root, "note"), offer.note);
  set(slot(root, "unpriced"), { hidden: Boolean(advice) });
  set(slot(root, "drawn"), { hidden: !advice });
  slot(root, "strip").replaceChildren(drawStrip(offer, asked));
  slot(root, "keys").replaceChildren(...drawKeys(offer, asked));
  fillLooks(root, offer);
}

/** Whether to look again, and where. @param {HTMLElement} root @param {Offer} offer */
function fillLooks(root, { advice, looks, looks_say, perfect_say }) {
  const worthy = looks.filter(({ worth }) => hundredths(worth) > 0).slice(0, MOST_LOOKS);
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
