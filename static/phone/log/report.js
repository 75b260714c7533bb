/**
 * A kept find as a report: one page that needs nothing else, to be sent, printed or put
 * by. Pure: the same find, verdict and day give the same text.
 */

import { answer, anew } from "./reportanswer.js";
import { head, named } from "./reporthead.js";
import { node } from "./reportnodes.js";
import { otherPhotos, pictured, withinPage } from "./reportphotos.js";
import { sheet } from "./reportsheet.js";
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

/**
 * The report as a file's text.
 * @param {Asked} asked
 */
export const report = (asked) =>
  sheet({ title: named(asked), style: STYLE, page: page(asked, withinPage) });

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
