/** Why: each reading with its weight and its photo, and what became of each part. Pure. */

import { is_read } from "../engine/saying.js";
import { called, capital, FACTORS, listed } from "../engine/words.js";
import { runs } from "../view/names.js";
import { byId } from "../view/reading.js";
import { nameOf, textOf } from "./readingtext.js";
import { line, list, node, section, table } from "./reportnodes.js";
import { figureOf } from "./reportphotos.js";

/** @typedef {import("../engine/find.js").PartState} PartState */
/** @typedef {import("./report.js").Told} Told */
/** @typedef {import("./reportphotos.js").Shown} Photo */

/** The factor that fills the beam: from here on the evidence is "very strong". */
const [[FULL]] = FACTORS;
/** A beam shorter than this, in per cent, is drawn as a dot's width. */
const LEAST = 1;

/**
 * Each reading of one object with its weight; of a set each member's.
 * @param {Told} told @param {readonly Photo[]} photos
 */
export function why(told, photos) {
  const { verdict } = told;
  const whole = verdict.members.length > 0;
  const rows = whole ? adding(told) : weighed(told, photos);
  const axis = node("p", { class: "axis" }, node("span", {}, "against"), node("span", {}, "for"));
  return section(
    whole ? "Why: the weight of each member" : "Why: the weight of each reading",
    "why",
    rows.length ? [axis, node("ul", { class: "readings" }, rows)] : null,
    whole ? null : unweighed(told),
  );
}

/**
 * What was read on a set, clue by clue, with the photos of each.
 * @param {Told} told @param {readonly Photo[]} photos
 */
export function readings(told, photos) {
  const { guide, entry } = told;
  const { items } = entry.find;
  if (items.length === 1) return null;
  const rows = readClues(told).map((clue) => {
    const lines = grouped(told, clue).map(([text, members]) =>
      line(`${capital(text)}: ${runs(guide, members)}`),
    );
    return [capital(nameOf(guide, clue)), [...lines, ...figures(told, clue, photos)]];
  });
  return section(
    "What was read",
    "read",
    rows.length ? table("clues", ["Clue", "Read, and on which"], rows) : null,
  );
}

/** What became of each part, of one object or of a set. @param {Told} told */
export function parts({ guide, verdict }) {
  const whole = verdict.members.length > 0;
  const states = whole ? verdict.whole_set : verdict.replaced;
  const rows = states.map(({ part, say }) => [capital(partOf(guide, part)), capital(say)]);
  const doubted = verdict.members.flatMap(({ member, replaced }) => {
    const found = replaced.filter(isDoubtful);
    const said = found.map(({ part, say }) => `${partOf(guide, part)} ${say}`).join("; ");
    return said ? [[capital(called(guide, member)), `${capital(said)}.`]] : [];
  });
  return section(
    "Original or replaced",
    "parts",
    rows.length ? table("states", [whole ? "On the whole set" : "Part", "Finding"], rows) : null,
    doubted.length ? table("states", ["Member", "Replaced or gone"], doubted) : null,
  );
}

/**
 * Clues of the entry's readings in the guide's order; last those it no longer knows.
 * @param {Told} told
 */
function readClues({ guide, entry }) {
  const read = new Set(entry.find.items.flatMap((item) => item.readings.map(([clue]) => clue)));
  const known = guide.clues.map(({ id }) => id).filter((id) => read.has(id));
  return [...known, ...[...read].filter((id) => !known.includes(id))];
}

/** The clues whose photos stand beside their readings. @param {Told} told */
export function beside(told) {
  const { verdict } = told;
  return verdict.members.length ? readClues(told) : verdict.weights.map(({ clue }) => clue);
}

/** @param {Told} told @param {readonly Photo[]} photos */
function weighed(told, photos) {
  return told.verdict.weights.map(({ clue, factor, say }) =>
    node(
      "li",
      { class: "reading" },
      node("div", {}, beam(factor), line(say)),
      figures(told, clue, photos),
    ),
  );
}

/** What each member of a set adds on which anything was read. @param {Told} told */
function adding({ entry, verdict }) {
  const read = entry.find.items.filter((item) => is_read([item])).map(({ member }) => member);
  return verdict.members
    .filter(({ member }) => read.includes(member))
    .map(({ factor, factor_say: say }) => node("li", {}, beam(factor), line(say)));
}

/** What was read and could not count, or could not be told. @param {Told} told */
function unweighed({ guide, entry, verdict }) {
  const counted = verdict.weights.map(({ clue }) => clue);
  const rest = entry.find.items[0].readings.filter(([clue]) => !counted.includes(clue));
  const unclear = rest.filter(([, reading]) => reading === null);
  const idle = rest.filter(([, reading]) => reading !== null);
  const names = unclear.map(([clue]) => nameOf(guide, clue));
  const texts = idle.map(
    ([clue, reading]) => `${nameOf(guide, clue)} (${textOf({ guide, clue, reading })})`,
  );
  return list("unweighed", [
    ...(names.length ? [`Could not be told: ${listed(names)}.`] : []),
    ...(texts.length ? [`Read and not weighed: ${listed(texts)}.`] : []),
  ]);
}

/** What was read of a clue, and by which members. @param {Told} told @param {string} clue */
function grouped({ guide, entry }, clue) {
  /** @type {Map<string, (string | null)[]>} */
  const found = new Map();
  for (const { member, readings } of entry.find.items) {
    const read = readings.find(([id]) => id === clue);
    if (!read) continue;
    const text = textOf({ guide, clue, reading: read[1] });
    found.set(text, [...(found.get(text) ?? []), member]);
  }
  return [...found];
}

/**
 * The photos of a clue that was read.
 * @param {Told} told @param {string} clue @param {readonly Photo[]} photos
 */
function figures(told, clue, photos) {
  const texts = grouped(told, clue).map(([text]) => text);
  const read = texts.length === 1 ? `, read as: ${texts[0]}` : "";
  const alt = `Photo of the ${nameOf(told.guide, clue)}${read}`;
  return photos.filter((photo) => photo.clue === clue).map((photo) => figureOf(photo, alt));
}

/** A part that is gone counts as replaced. @param {PartState} state */
const isDoubtful = ({ say }) => /^(gone|replaced)/.test(say);

/** @param {Told["guide"]} guide @param {string} part */
const partOf = (guide, part) => byId(guide.parts, part).name;

/** @param {number} factor */
function beam(factor) {
  const reach = Math.min(Math.abs(Math.log(factor)) / Math.log(FULL), 1) * 50;
  const width = Math.max(reach, LEAST);
  const against = factor < 1;
  return node(
    "svg",
    { class: "beam", width: "100%", height: 14, "aria-hidden": "true" },
    node("line", { class: "rail", x1: "0", x2: "100%", y1: 7, y2: 7 }),
    node("rect", {
      class: against ? "against" : "for",
      x: `${(against ? 50 - width : 50).toFixed(1)}%`,
      y: 2,
      width: `${width.toFixed(1)}%`,
      height: 10,
    }),
    node("line", { class: "post", x1: "50%", x2: "50%", y1: 0, y2: 14 }),
  );
}
