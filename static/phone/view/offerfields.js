/** What an offer rests on: the fields of the deal, and those of the person's prices. */

import { capital } from "../engine/words.js";
import { element, piece, set, slot } from "./dom.js";
import { day } from "./reading.js";

/** @typedef {import("../dealing/pricestyped.js").Kind} Kind */
/** @typedef {import("../log/prices.js").OwnPrices} OwnPrices */
/** @typedef {{key: string, label: string, kind: Kind, all?: boolean}} Field */
/**
 * What is said of the prices.
 * @typedef {object} Said
 * @property {import("../engine/guide.js").Guide} guide
 * @property {OwnPrices | null} own
 * @property {string} unread
 * @property {string} lost
 * @property {boolean} undo whether many were changed in one go
 * @property {readonly string[]} differ the fields that stand for several prices
 */

/** So much of a time is its day. */
const DAY = 10;
const NONE = "not said";

/**
 * @param {HTMLElement} root
 * @param {readonly Field[]} fields
 * @param {readonly string[]} grades
 */
export function drawDeal(root, fields, grades) {
  const [asked, ...others] = fields.map((field) => drawField(field, grades));
  slot(root, "asking").replaceChildren(asked);
  slot(root, "deal").replaceChildren(...others);
}

/**
 * Says beside a field what is wrong with it, and moves nothing while it is typed into.
 * @param {HTMLElement} root
 * @param {import("./entryown.js").Control} control
 * @param {string} wrong
 */
export function markWrong(root, control, wrong) {
  slot(root, `${control.dataset.own}-wrong`).textContent = wrong;
  set(control, { "aria-invalid": wrong ? "true" : null });
}

/** Lets go of what could not be read in these fields. @param {HTMLElement} root @param {readonly string[]} keys */
export function forgetWrong(root, keys) {
  for (const key of keys) {
    const control = /** @type {HTMLInputElement} */ (root.querySelector(`[data-own="${CSS.escape(key)}"]`));
    control.value = control.defaultValue;
    markWrong(root, control, "");
  }
}

/**
 * The prices in their sections.
 * @param {HTMLElement} root
 * @param {readonly {title: string, hint: string, fields: readonly Field[]}[]} sections
 */
export function drawPrices(root, sections) {
  const made = sections.map(({ title, hint, fields }) =>
    piece("offer-prices", { title, hint, fields: fields.map((field) => drawField(field)) }),
  );
  slot(root, "tables").replaceChildren(...made);
}

/**
 * Says whose prices they are, and what of them does not count.
 * @param {HTMLElement} root
 * @param {Said} said
 */
export function fillPrices(root, { guide, own, unread, lost, undo, differ }) {
  slot(root, "whose").textContent = whose(guide, own);
  slot(root, "unread").textContent = unread && `Your own prices cannot be read. ${unread} They stay as they are, and are set aside once you change a price here.`;
  slot(root, "lost").textContent = lost;
  slot(root, "reset").textContent = guide.prices ? "Back to the guide’s prices" : "Empty all of it";
  slot(root, "reset").hidden = !own;
  slot(root, "undo").hidden = !undo;
  for (const control of root.querySelectorAll("input[data-own]")) {
    const { own: key = "" } = /** @type {HTMLInputElement} */ (control).dataset;
    set(control, { placeholder: differ.includes(key) ? "they differ" : null });
  }
}

/** @param {Said["guide"]} guide @param {OwnPrices | null} own */
function whose({ prices, fiction }, own) {
  if (own) return `Your own prices, last changed on ${day(own.changed.slice(0, DAY))}. They stay on this phone.`;
  if (!prices) return "This guide has no prices. What you type here stays on this phone.";
  const invented = fiction ? "invented prices" : "prices";
  const source = /[.?!]$/.test(prices.source) ? prices.source : `${prices.source}.`;
  return `The guide’s ${invented} of ${day(prices.date)}. ${source} What you change stays on this phone.`;
}

/** Opens the prices, and begins with the first. @param {HTMLElement} root @param {boolean} [going] */
export function openPrices(root, going = true) {
  slot(root, "prices").open = true;
  const first = slot(root, "tables").querySelector("input:not([data-own=currency])");
  if (going && first instanceof HTMLInputElement) first.focus();
}

/** @param {Field} field @param {readonly string[]} [grades] */
function drawField({ key, label, kind, all = false }, grades = []) {
  const id = `deal-${key.replace("/", "-")}`;
  const made = piece("offer-field", { name: label });
  made.classList.toggle("own--wide", all);
  set(slot(made, "name"), { for: id });
  const wrong = set(slot(made, "wrong"), { id: `${id}-wrong` });
  wrong.dataset.slot = `${key}-wrong`;
  const control = kind === "word" ? choice(grades) : slot(made, "control");
  set(control, { id, "aria-describedby": wrong.id, "data-own": key });
  if (kind === "price" || kind === "percent") set(control, { inputmode: "decimal" });
  if (kind === "currency") set(control, { autocapitalize: "characters" });
  slot(made, "control").replaceWith(control);
  return made;
}

/** @param {readonly string[]} words */
function choice(words) {
  const options = ["", ...words].map((word) =>
    set(element("option", "", capital(word || NONE)), { value: word }),
  );
  return element("select", "own__input", ...options);
}
