/** The help with a swing weight: weigh and balance the club, and take over what follows. */

import { entered, named, READ, sought, START, worked } from "../swing.js";
import { element, listen, piece, set, slot } from "./dom.js";

/** @typedef {import("../swing.js").Swing} Swing */
/** @typedef {import("../swing.js").Typed} Typed */
/** @typedef {"weight" | "balance"} Which */

const WHICH = /** @type {const} */ (["weight", "balance"]);

/**
 * The help, with what was typed into it.
 * @param {Swing} swing
 * @param {boolean} open
 */
export function drawSwing(swing, open) {
  const made = piece("swing", { fields: WHICH.map((which) => field(which, swing[which])) });
  set(slot(made, "aim"), { value: swing.aim });
  say(made, swing);
  return set(made, { open });
}

/** @param {Which} which @param {Typed} typed */
function field(which, { typed, unit, off }) {
  const { name, units } = READ[which];
  const made = piece("swing-field", {
    label: `The club’s ${name}`,
    unit: units.map((each) => set(element("option", "", each), { selected: each === unit })),
  });
  set(slot(made, "label"), { for: idOf(which) });
  control(slot(made, "input"), which, { value: typed });
  control(slot(made, "unit"), `${which} unit`, { "aria-label": `Unit of the ${name}` });
  control(slot(made, "off"), `${which} off`, {
    value: off,
    "aria-label": `give or take, of the ${name}`,
  });
  return made;
}

/** @param {Element} made @param {string} name @param {Record<string, string>} rest */
function control(made, name, rest) {
  set(made, { id: idOf(name), "data-swing": name, ...rest });
}

/** @param {string} control */
const idOf = (control) => `swing-${control.replace(" ", "-")}`;

/** Says what follows, or what is still to be typed; that is no fault yet. @param {HTMLElement} root @param {Swing} swing */
function say(root, swing) {
  for (const each of root.querySelectorAll("[data-swing][aria-invalid]")) {
    set(each, { "aria-invalid": null, "aria-describedby": null });
  }
  tell(slot(root, "said"), worked(swing));
  tell(slot(root, "sought"), sought(swing));
}

/** @param {HTMLElement} place @param {import("../swing.js").Worked} found */
function tell(place, found) {
  const said = "say" in found ? found.say : found.wrong;
  // Whoever listens hears it again only when it is another one.
  if (place.textContent !== said) place.textContent = said;
  place.classList.toggle("swing__said--found", "say" in found);
  place.classList.remove("wrong");
}

/**
 * Says what follows from what is being typed; no control is drawn anew.
 * @param {HTMLElement} root
 * @param {Swing} swing
 */
export function moveSwing(root, swing) {
  say(root, swing);
  for (const which of WHICH) {
    // Another unit is usually off by another number.
    const { off } = swing[which];
    const field = controlOf(root, `${which} off`);
    if (field.value !== off) field.value = off;
  }
}

/** @param {HTMLElement} root @param {string} control @returns {HTMLInputElement} */
const controlOf = (root, control) => slot(root, "fields").querySelector(`#${idOf(control)}`);

/**
 * Calls `type` with the swing as it is typed, and `take` with the swing weight that is
 * to be the measure.
 * @param {HTMLElement} root
 * @param {{now: () => Swing, type: (swing: Swing) => void, take: (name: string) => void}} on
 */
export function listenSwing(root, { now, type, take }) {
  const over = () => {
    const found = worked(now());
    if ("wrong" in found) showWrong(root, found.at);
    else take(named(found.points));
  };
  listen(root, { swing: over });
  root.addEventListener("input", ({ target }) => {
    const { dataset, value } = /** @type {HTMLInputElement} */ (target);
    if (dataset.swing) type(entered(now(), dataset.swing, value));
  });
  root.addEventListener("keydown", (event) => {
    const { dataset } = /** @type {HTMLElement} */ (event.target);
    if (event.key !== "Enter" || !dataset.swing) return;
    // Else it would hand in the measure, which is not there yet.
    event.preventDefault();
    if (dataset.swing !== "aim") over();
  });
}

/** Marks what stands in the way, and goes there. @param {HTMLElement} root @param {string} at */
function showWrong(root, at) {
  slot(root, "said").classList.add("wrong");
  set(controlOf(root, at), { "aria-invalid": "true", "aria-describedby": "swing-said" }).focus();
}
