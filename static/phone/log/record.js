/**
 * An entry of the log is made of what lies open, and changed field by field; ids and
 * the clock come from outside. Pure: an old entry in, a new one out.
 */

import { entry as taken, FORMAT } from "./entry.js";

export { entry, FORMAT, MOST } from "./entry.js";
export { RecordError } from "./fields.js";

/** @typedef {import("../engine/find.js").Find} Find */
/** @typedef {import("../engine/find.js").Verdict} Verdict */
/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./entry.js").PhotoNote} PhotoNote */
/** @typedef {import("./entry.js").Summary} Summary */
/**
 * What lies open, as far as the log keeps it; a desk is one.
 * @typedef {object} Judged
 * @property {{id: string, updated: string}} guide
 * @property {string} stamp
 * @property {Find} find
 * @property {Verdict} verdict
 */
/**
 * What a person can change of an entry.
 * @typedef {Pick<Entry, typeof OWN[number]>} Own
 */

/** All that a person, and no engine, says of a find. */
const OWN = /** @type {const} */ ([
  "title",
  "note",
  "place",
  "date",
  "asked",
  "paid",
  "currency",
  "photos",
]);

/**
 * The entry for a find that is kept now, or a RecordError that says why it cannot be.
 * @param {Judged} judged
 * @param {{id: string, now: string}} made
 * @param {Partial<Own>} [own]
 */
export function made(judged, { id, now }, own = {}) {
  const times = { judged: now, created: now, changed: now };
  return taken({ format: FORMAT, id, ...sealed(judged), ...times, ...only(own) });
}

/**
 * The entry with other words, prices or photos; what it was judged stays.
 * @param {Entry} entry
 * @param {Partial<Own>} own
 * @param {string} now
 */
export function changed(entry, own, now) {
  return taken({ ...entry, ...only(own), changed: after(entry, now) });
}

/**
 * The entry with the verdict of today in place of the one at the time.
 * @param {Entry} entry
 * @param {Judged} judged
 * @param {string} now
 */
export function judgedAgain(entry, judged, now) {
  return taken({ ...entry, ...sealed(judged), judged: now, changed: after(entry, now) });
}

/**
 * Now, but always after the change before: the last one counts, and a clock may have been
 * set back meanwhile.
 * @param {Entry} entry @param {string} now
 */
function after({ changed }, now) {
  return now > changed ? now : new Date(Date.parse(changed) + 1).toISOString();
}

/**
 * As much of a verdict as an entry keeps.
 * @param {Verdict} verdict
 * @returns {Summary}
 */
export function summed(verdict) {
  const { say, leading, outside, range, flags } = verdict;
  const said = flags.map((flag) => flag.say);
  return { say, leading, probability: sure(verdict), outside, range, flags: said };
}

/** How probable it is what the verdict says. @param {Verdict} verdict */
function sure({ leading, model_years, outside, range }) {
  if (leading === null) return outside;
  if (range) return range.probability;
  return model_years.find(([year]) => year === leading)?.[1] ?? 0;
}

/** @param {Judged} judged */
function sealed({ guide, stamp, find, verdict }) {
  const version = { stamp, updated: guide.updated };
  return { guide: guide.id, find, version, verdict: summed(verdict) };
}

/** What is given of a person's own fields, and nothing besides. @param {Partial<Own>} own */
function only(own) {
  return Object.fromEntries(OWN.flatMap((key) => (key in own ? [[key, own[key]]] : [])));
}
