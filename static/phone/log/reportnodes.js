/** What a report is made of: nodes, and the one way in which they become text. Pure. */

import { joined } from "../view/dom.js";

/**
 * @typedef {object} Node
 * @property {string} tag
 * @property {readonly (readonly [string, string | number])[]} attributes
 * @property {readonly (Node | string)[]} children
 */
/** @typedef {Node | string | null | undefined | false} Child what is nothing is left out */
/** @typedef {Child | readonly Child[]} Children */

const SIGNS = new Map([
  ["&", "&amp;"],
  ["<", "&lt;"],
  [">", "&gt;"],
  ['"', "&quot;"],
  ["'", "&#39;"],
]);
/** What no page may hold, though somebody may have pasted it. */
const UNFIT = /(?![\t\n])[\p{Cc}\p{Cs}\p{Noncharacter_Code_Point}]/gu;
/** Elements that hold nothing, and have no end. */
const VOID = ["img"];

/**
 * @param {string} tag
 * @param {Record<string, string | number>} attributes
 * @param {...Children} children
 * @returns {Node}
 */
export function node(tag, attributes, ...children) {
  return { tag, attributes: Object.entries(attributes), children: something(children) };
}

/**
 * A part of the report under its heading; nothing where nothing stands in it.
 * @param {string} title
 * @param {string} name its class
 * @param {...Children} children
 */
export function section(title, name, ...children) {
  const held = something(children);
  return held.length ? node("section", { class: name }, node("h2", {}, title), held) : null;
}

/**
 * A table whose rows begin with what they are about.
 * @param {string} name its class
 * @param {readonly string[]} heads
 * @param {readonly (readonly Children[])[]} rows
 */
export function table(name, heads, rows) {
  const head = heads.map((text) => node("th", { scope: "col" }, text));
  const body = rows.map(([first, ...rest]) => {
    const cells = rest.map((cell) => node("td", {}, cell));
    return node("tr", {}, node("th", { scope: "row" }, first), cells);
  });
  return node(
    "table",
    { class: name },
    node("thead", {}, node("tr", {}, head)),
    node("tbody", {}, body),
  );
}

/** @param {string} name its class @param {readonly Child[]} lines */
export function list(name, lines) {
  if (!lines.length) return null;
  return node("ul", { class: name }, lines.map((line) => node("li", {}, line)));
}

/** @param {Child} text */
export const line = (text) => (text ? node("p", {}, text) : null);

/** The text of a node. @param {Node | string} made @returns {string} */
export function written(made) {
  if (typeof made === "string") return escaped(made);
  const { tag, attributes, children } = made;
  const given = attributes.map(([name, value]) => ` ${name}="${escaped(String(value))}"`);
  const start = `<${tag}${given.join("")}>`;
  if (VOID.includes(tag)) return start;
  return `${start}${children.map(written).join("")}</${tag}>`;
}

/** A text that is text wherever it stands in a page. @param {string} text */
export function escaped(text) {
  const fit = text.replace(/\r\n?/g, "\n").replace(UNFIT, "\uFFFD");
  return joined(fit).replace(/[&<>"']/g, (sign) => SIGNS.get(sign) ?? "");
}

/** What there is of some children. @param {readonly Children[]} children */
function something(children) {
  const all = /** @type {Child[]} */ (children.flat());
  return /** @type {(Node | string)[]} */ (all.filter(Boolean));
}
