/**
 * A kept find as a report: one page that needs nothing else, to be sent, printed or put
 * by. Pure: the same find, verdict and day give the same text.
 */

import { answer, anew } from "./reportanswer.js";
import { head, named } from "./reporthead.js";
import { escaped, node, written } from "./reportnodes.js";
import { otherPhotos, pictured, withinPage } from "./reportphotos.js";
import { STYLE } from "./reportstyle.js";
import { cautions, claim, flags, origin, set } from "./reporttold.js";
import { beside, parts, readings, why } from "./reportwhy.js";

/** @typedef {{place?: boolean, prices?: boolean}} Ticked */
/**
 * What a report is made from: an entry, and its find judged by the guide of today.
 * @typedef {object} Asked
 * @property {import("../shelf.js").Guide} guide
 * @property {import("./entry.js").Entry} entry
 * @property {import("../engine/find.js").Verdict} verdict
 * @property {readonly import("./entries.js").Photo[]} photos
 * @property {Ticked} [with] what else the person wants told
 * @property {string} [stamp] the guide's; that of the entry if they are the same
 * @property {string} [now]
 */
/** @typedef {Required<Asked>} Told */

const LANGUAGE = "en";
/** Even if a text could become more than text, it could neither run nor load anything. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

/**
 * The report as a file's text.
 * @param {Asked} asked
 */
export function report(asked) {
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
    `<title>${escaped(named(asked))}</title>`,
    "<style>",
    STYLE,
    "</style>",
    "</head>",
    "<body>",
    written(page(asked, withinPage)),
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

/**
 * The report as nodes, with images where `source` says.
 * @param {Asked} asked
 * @param {import("./reportphotos.js").Source} source
 */
export function page(asked, source) {
  const told = completed(asked);
  const pictures = pictured(told.entry, told.photos, source);
  const { shown } = pictures;
  return node(
    "main",
    { class: "report" },
    head(told),
    answer(told),
    anew(told),
    set(told),
    why(told, shown),
    readings(told, shown),
    parts(told),
    claim(told),
    flags(told),
    otherPhotos(told, pictures, beside(told)),
    cautions(told),
    origin(told),
  );
}

/** What the file is called. @param {Pick<Asked, "entry">} asked */
export function fileName({ entry }) {
  const words = entry.title.normalize("NFKD").toLowerCase().match(/[a-z0-9]+/g) ?? [];
  const name = words.join("-").slice(0, 60) || entry.guide;
  return `find-${name}.html`;
}

/** @param {Asked} asked @returns {Told} */
function completed({ with: ticked = {}, stamp, now = new Date().toISOString(), ...asked }) {
  return { ...asked, with: ticked, stamp: stamp ?? asked.entry.version.stamp, now };
}
