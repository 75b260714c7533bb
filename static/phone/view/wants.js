/** What a person is after: a list of sentences, and a form for one more. */

import { called } from "../engine/words.js";
import { element, keepingFocus, piece, set, slot } from "./dom.js";

/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../shelf.js").Card} Card */
/** @typedef {Record<string, string>} Typed */
/** @typedef {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} Control */
/** @typedef {{id: string, say: string, note: string, lost: string}} Row `lost` is said of a guide that is not here */

const KEEP = { heading: "What are you after?", button: "Keep this want" };
const CHANGE = { heading: "Change this want", button: "Keep the change" };

/** The screen without any want: drawn once, and filled from then on. @param {readonly Card[]} cards */
export function wantsFrame(cards) {
  const made = piece("wants");
  const options = cards.map(({ id, title }) => option(id, title));
  field(made, "guide").replaceChildren(...options);
  return made;
}

/**
 * Fills in the list.
 * @param {HTMLElement} root
 * @param {readonly Row[]} rows
 * @param {readonly string[]} refused a sentence for each that cannot be read
 */
export function fillWants(root, rows, refused) {
  keepingFocus(root, () => slot(root, "rows").replaceChildren(...rows.map(drawn)));
  slot(root, "rows").hidden = rows.length === 0;
  slot(root, "empty").hidden = rows.length + refused.length > 0;
  slot(root, "refused").hidden = refused.length === 0;
  slot(root, "reasons").replaceChildren(...refused.map((why) => element("li", "", why)));
}

/** @param {Row} row */
function drawn({ id, say, note, lost }) {
  const made = piece("want", { say: `${say}.`, note: note || null, lost: lost || null });
  for (const name of ["change", "delete"]) {
    const button = slot(made, name);
    button.dataset.want = id;
    set(button, { "aria-label": `${button.textContent}: ${say}` });
  }
  return made;
}

/**
 * The members that the open set lacks, and the way to want them.
 * @param {HTMLElement} root
 * @param {string} say empty where it lacks none that is not wanted
 */
export function fillLacking(root, say) {
  slot(root, "lacking").hidden = !say;
  slot(root, "lacking-say").textContent = say;
}

/**
 * Fills the choices that a guide gives; what was chosen stays where it can.
 * @param {HTMLElement} root
 * @param {Guide} guide
 */
export function fillChoices(root, guide) {
  const years = guide.years.map(({ year }) => option(String(year), String(year)));
  choose(field(root, "since"), [option("", "any year"), ...years]);
  choose(field(root, "until"), [option("", "any year"), ...years.map(copied)]);
  const members = (guide.members?.all ?? []).map((id) => option(id, called(guide, id)));
  choose(field(root, "member"), [option("", "any of them"), ...members]);
  slot(root, "of-set").hidden = members.length === 0;
}

/** @param {Node} node */
const copied = (node) => /** @type {HTMLElement} */ (node.cloneNode(true));

/** @param {Control} select @param {readonly HTMLElement[]} options */
function choose(select, options) {
  const chosen = select.value;
  select.replaceChildren(...options);
  const isThere = options.some((each) => each.getAttribute("value") === chosen);
  select.value = isThere ? chosen : "";
}

/** @param {string} value @param {string} label */
const option = (value, label) => set(element("option", "", label), { value });

/** @param {HTMLElement} root @param {string} name @returns {Control} */
const field = (root, name) => slot(root, `want-${name}`);

/** What stands in the form. @param {HTMLElement} root @returns {Typed} */
export function typedIn(root) {
  const controls = /** @type {Control[]} */ ([...root.querySelectorAll("form [name]")]);
  return Object.fromEntries(controls.map(({ name, value }) => [name, value]));
}

/** @param {HTMLElement} root @param {Typed} typed */
export function typeIn(root, typed) {
  for (const [name, value] of Object.entries(typed)) {
    const control = field(root, name);
    control.value = value;
    // The guide of today may not have it.
    if (control.value !== value && name !== "guide") control.append(option(value, value));
    control.value = value;
  }
}

/** Says beside each field what is wrong with it. @param {HTMLElement} root @param {Typed} wrong */
export function showWrong(root, wrong) {
  for (const name of ["until", "most", "currency", "note"]) {
    slot(root, `wrong-${name}`).textContent = wrong[name] ?? "";
    set(field(root, name), { "aria-invalid": wrong[name] ? "true" : null });
  }
  const [first] = Object.keys(wrong);
  if (first) field(root, first).focus();
}

/** Whether the form changes a want that is there, or keeps another. @param {HTMLElement} root @param {boolean} isChange */
export function showForm(root, isChange) {
  const { heading, button } = isChange ? CHANGE : KEEP;
  slot(root, "form-heading").textContent = heading;
  slot(root, "keep").textContent = button;
  slot(root, "leave").hidden = !isChange;
}

/** @param {HTMLElement} root */
export function toForm(root) {
  slot(root, "form-heading").scrollIntoView({ block: "start" });
  slot(root, "form-heading").focus({ preventScroll: true });
}

/**
 * What has happened, and the way back where there is one.
 * @param {HTMLElement} root @param {string} say @param {boolean} [undo]
 */
export function sayWant(root, say, undo = false) {
  slot(root, "said").textContent = say;
  slot(root, "undo").hidden = !undo;
}
