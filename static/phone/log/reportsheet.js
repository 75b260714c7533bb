/**
 * A page that needs nothing else, to be sent, printed or put by: what every such file
 * has around what it says. Pure.
 */

import { escaped, written } from "./reportnodes.js";

/** @typedef {import("./reportnodes.js").Node} Node */

const LANGUAGE = "en";
/** Even if a text could become more than text, it could neither run nor load anything. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

/**
 * The file's text.
 * @param {{title: string, style: string, page: Node}} made
 */
export function sheet({ title, style, page }) {
  return [
    "<!doctype html>",
    `<html lang="${LANGUAGE}">`,
    "<head>",
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light">',
    // A serial number is no telephone number.
    '<meta name="format-detection" content="telephone=no">',
    `<title>${escaped(title)}</title>`,
    "<style>",
    style,
    "</style>",
    "</head>",
    "<body>",
    written(page),
    "</body>",
    "</html>",
    "",
  ].join("\n");
}
