/**
 * A report handed on: shared with the phone's share sheet, saved as a file, or printed.
 * Every way ends in a sentence to show.
 */

import { PAPER } from "./reportstyle.js";

/** @typedef {import("./reportnodes.js").Node} Node */
/**
 * What is to be printed: its page, with images where a source says, and how it looks.
 * @typedef {{page: (source: import("./reportphotos.js").Source) => Node, style: string}} Printed
 */

const TYPE = "text/html";
const SVG = "http://www.w3.org/2000/svg";
/** By then a browser has begun to save, however slow; the memory is given back. */
const SAVED = 60_000;
/** Beside the page lies the report for the printer; on the screen it is never seen. */
const ALONE = [
  "@media screen { [data-report-sheet] { display: none; } }",
  PAPER,
  "@media print {",
  "html, body { background: #fff; }",
  "body > :not([data-report-sheet]) { display: none; }",
  "}",
].join("\n");

/** @type {{host: HTMLElement, images: string[]} | null} */
let lying = null;

/**
 * Hands the report to the share sheet; where there is none it is saved.
 * @param {string} html @param {string} name
 */
export async function share(html, name) {
  const files = [new File([html], name, { type: TYPE })];
  // Asked with the very file: many that share texts share no pages.
  if (!navigator.canShare?.({ files })) return save(html, name);
  try {
    await navigator.share({ files });
    return "Handed on.";
  } catch (error) {
    if (/** @type {Error} */ (error).name === "AbortError") return "It was not shared.";
    return `This phone could not share it. ${save(html, name)}`;
  }
}

/** @param {string} html @param {string} name */
export function save(html, name) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([html], { type: TYPE }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), SAVED);
  return `Saved as ${name}.`;
}

/** Whether this phone can print: an app on an iPhone's home screen cannot. */
export function canPrint() {
  const { standalone } = /** @type {any} */ (navigator);
  return typeof window.print === "function" && standalone !== true;
}

/**
 * Prints the report out of the page that is open. A window of its own would keep this
 * page's policy, which allows neither the report's styles nor its photos; so it is laid
 * beside the page, in a tree that the page's own styles do not reach.
 * @param {Printed} printed
 */
export async function print(printed) {
  lying?.images.forEach((image) => URL.revokeObjectURL(image));
  lying?.host.remove();
  const { host, images } = (lying = laid(printed));
  document.body.append(host);
  const shown = host.shadowRoot?.querySelectorAll("img") ?? [];
  // One that cannot be drawn is named in its place.
  await Promise.allSettled([...shown].map((image) => image.decode()));
  // It stays until the next: some phones print long after they were asked to.
  window.print();
  return "Handed to the printer.";
}

/** @param {Printed} printed */
function laid({ page, style }) {
  /** @type {string[]} */
  const images = [];
  const made = page((bytes) => {
    const image = URL.createObjectURL(new Blob([bytes], { type: "image/jpeg" }));
    images.push(image);
    return image;
  });
  const host = document.createElement("div");
  host.dataset.reportSheet = "";
  host.lang = "en";
  const tree = host.attachShadow({ mode: "open" });
  tree.adoptedStyleSheets = [sheetOf(style)];
  tree.append(drawn(made));
  if (!alone) document.adoptedStyleSheets.push((alone = sheetOf(ALONE)));
  return { host, images };
}

/** @type {CSSStyleSheet | null} */
let alone = null;

/** @param {string} rules */
function sheetOf(rules) {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
}

/** The node as an element. @param {Node} node @param {boolean} [within] within a drawing */
function drawn({ tag, attributes, children }, within = false) {
  const svg = within || tag === "svg";
  const made = svg ? document.createElementNS(SVG, tag) : document.createElement(tag);
  for (const [name, value] of attributes) made.setAttribute(name, String(value));
  made.append(...children.map((each) => (typeof each === "string" ? each : drawn(each, svg))));
  return made;
}
