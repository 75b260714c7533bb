/** Pieces of the page: cloning templates, filling their slots, listening once a root. */

/** @typedef {string | Node | (string | Node)[] | null} Filling */

/** The templates in use, by name: looking one up is a walk through the page. @type {Map<string, HTMLTemplateElement>} */
const templates = new Map();

/** @param {string} selector @returns {HTMLElement} */
export const at = (selector) => /** @type {HTMLElement} */ (document.querySelector(selector));

/** @param {string} name */
export const screenOf = (name) => at(`[data-screen="${name}"]`);

/**
 * A copy of a template's one element, its slots filled.
 * @param {string} name
 * @param {Record<string, Filling>} [slots]
 * @returns {HTMLElement}
 */
export function piece(name, slots = {}) {
  const found = templates.get(name) ?? template(name);
  templates.set(name, found);
  const copy = /** @type {HTMLElement} */ (
    document.importNode(found.content, true).firstElementChild
  );
  return fill(copy, slots);
}

/** @param {string} name */
function template(name) {
  const found = document.querySelector(`template[data-piece="${name}"]`);
  if (found instanceof HTMLTemplateElement) return found;
  throw new Error(`No piece "${name}"`);
}

/**
 * The root with its slots filled: text or nodes; nothing to fill in removes the slot.
 * @template {HTMLElement} T
 * @param {T} root
 * @param {Record<string, Filling>} slots
 */
export function fill(root, slots) {
  for (const [name, filling] of Object.entries(slots)) {
    const place = slot(root, name);
    if (isNothing(filling)) place.remove();
    else if (typeof filling === "string") place.textContent = joined(filling);
    else place.replaceChildren(...[filling].flat().filter((node) => node !== null));
  }
  return root;
}

/**
 * The element of a slot.
 * @param {HTMLElement} root
 * @param {string} name
 * @returns {any}
 */
export function slot(root, name) {
  const place = root.dataset.slot === name ? root : null;
  const found = place ?? root.querySelector(`[data-slot="${name}"]`);
  if (!found) throw new Error(`No slot "${name}"`);
  return found;
}

/**
 * The element with attributes set; false and null leave one out, true gives it bare.
 * @template {Element} T
 * @param {T} element
 * @param {Record<string, string | number | boolean | null>} attributes
 */
export function set(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null) element.removeAttribute(name);
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  return element;
}

/**
 * An element with a class and what it holds.
 * @param {string} tag
 * @param {string} name
 * @param {...(string | Node)} children
 */
export function element(tag, name, ...children) {
  const made = document.createElement(tag);
  if (name) made.className = name;
  made.append(...children.map((each) => (typeof each === "string" ? joined(each) : each)));
  return made;
}

/** The text with each figure tied to its per cent sign. @param {string} text */
export function joined(text) {
  return text.replaceAll(" %", "\u00a0%");
}

/**
 * Calls the action that the tapped element names by data-act, with its data.
 * @param {HTMLElement} root
 * @param {Record<string, (data: DOMStringMap, event: Event) => void>} actions
 */
export function listen(root, actions) {
  root.addEventListener("click", (event) => {
    if (!(event.target instanceof Element)) return;
    const tapped = event.target.closest("[data-act]");
    if (!(tapped instanceof HTMLElement) && !(tapped instanceof SVGElement)) return;
    actions[tapped.dataset.act ?? ""]?.(tapped.dataset, event);
  });
}

/**
 * Calls the action that a changed control names by data-change, with its value.
 * @param {HTMLElement} root
 * @param {Record<string, (value: string, on: boolean, data: DOMStringMap) => void>} actions
 */
export function listenChanges(root, actions) {
  root.addEventListener("change", (event) => {
    const control = /** @type {HTMLInputElement} */ (event.target);
    actions[control.dataset.change ?? ""]?.(control.value, control.checked, control.dataset);
  });
}

/** Brings into sight what a tapped summary opens. @param {HTMLElement} root */
export function revealOpened(root) {
  root.addEventListener("click", ({ target }) => {
    const summary = target instanceof Element ? target.closest("summary") : null;
    // The details open only after the tap has been dealt with.
    requestAnimationFrame(() =>
      summary?.nextElementSibling?.scrollIntoView({ block: "nearest" }),
    );
  });
}

/** Moves the focus to the heading of what is shown. @param {ParentNode} root */
export function focusHeading(root) {
  const heading = root.querySelector("[data-heading], h1");
  if (heading instanceof HTMLElement) heading.focus({ preventScroll: true });
}

/** @param {Filling} filling */
function isNothing(filling) {
  return filling === null || filling === "" || (Array.isArray(filling) && !filling.length);
}

/**
 * Redraws the root and gives the focus back to the control that had it; to the
 * fallback where that control is no more.
 * @param {HTMLElement} root
 * @param {() => void} redraw
 * @param {string} [fallback]
 */
export function keepingFocus(root, redraw, fallback = "[data-heading]") {
  const held = document.activeElement;
  const within = held instanceof HTMLElement && root.contains(held);
  const mark = within ? marked(held) : "";
  redraw();
  if (!within) return;
  const found = (mark && root.querySelector(mark)) || root.querySelector(fallback);
  if (found instanceof HTMLElement) found.focus({ preventScroll: true });
}

/** A selector that finds the same control after a redraw. @param {HTMLElement} held */
function marked(held) {
  if (held.id) return `#${CSS.escape(held.id)}`;
  const value = held instanceof HTMLInputElement ? `[value="${CSS.escape(held.value)}"]` : "";
  const names = Object.keys(held.dataset).filter((name) => name !== "slot");
  if (!names.length) return "";
  const data = names.map((name) => `[data-${name}="${CSS.escape(held.dataset[name] ?? "")}"]`);
  return data.join("") + value;
}
