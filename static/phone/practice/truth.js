/**
 * What was misread on a specimen. The engine draws what somebody reads, mistakes
 * included; what was really there is drawn back from that, as likely as it is given the
 * reading, so that both together come as often as the model says. Pure.
 *
 * Told for original parts alone: what stands on a replaced one says nothing of the year.
 * Of a code or a number, that it cannot be right there is all that can be known.
 */

import { weight } from "../engine/choice.js";
import { layouts } from "../engine/guide.js";
import { fits } from "../engine/layout.js";
import { pick } from "../engine/lot.js";
import { likelihood, tables_for } from "../engine/prepare.js";

/** @typedef {import("../engine/find.js").Reading} Reading */
/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../engine/lot.js").Draw} Draw */
/** @typedef {import("../engine/prepare.js").Tables} Tables */
/** @typedef {import("./round.js").Laid} Laid */
/** @typedef {{clue: string, truly: string | null}} Slip A clue that was misread, and the option that was there, if that is known. */
/** @typedef {{tables: Tables, cell: number, table: import("../engine/prepare.js").ClueTable, draw: Draw}} Place */

/**
 * The clues on original parts that were misread, in guide order.
 * @param {Tables} tables
 * @param {Laid} laid
 * @returns {Slip[]}
 */
export function slips(tables, { specimen, readings, draw }) {
  const { cell, replaced, member } = specimen;
  return tables_for(tables, member).flatMap((table, k) => {
    const clue = tables.guide.clues[k];
    const reading = readings.get(clue.id) ?? null;
    if (reading === null || replaced[tables.part_of[k]]) return [];
    const truly = slip(clue, reading, { tables, cell, table, draw }, member);
    return truly === undefined ? [] : [{ clue: clue.id, truly }];
  });
}

/**
 * What was really there, null if that it was misread is all that is known; undefined
 * where nothing was.
 * @param {Clue} clue
 * @param {Exclude<Reading, null>} reading
 * @param {Place} place
 * @param {string | null} member
 */
function slip(clue, reading, place, member) {
  switch (clue.kind.name) {
    case "choice":
      return other(clue.kind, String(reading), place, member);
    case "measure":
      return anywhere(clue.kind, reading, place);
    case "code":
      return impossible(clue.kind, String(reading), place);
    case "number":
      return untimely(clue.kind, Number(reading), place);
  }
}

/**
 * The option that was there, by lot: as often as it is there and is taken for this one.
 * @param {import("../engine/guide.js").Choice} kind
 * @param {string} reading
 * @param {Place} place
 * @param {string | null} member
 */
function other({ options }, reading, { tables, cell, table, draw }, member) {
  const { by_source } = likelihood(table, reading);
  const { floor } = tables.guide;
  const there = options.map((o) => weight(o, tables.cells[cell], member) + floor);
  const { id } = options[pick(draw, there.map((w, o) => w * by_source[o]))];
  return id === reading ? undefined : id;
}

/**
 * Whether the size was any of the range and not the object's own, by lot.
 * @param {import("../engine/guide.js").Measure} kind
 * @param {Exclude<Reading, null>} reading
 * @param {Place} place
 */
function anywhere({ sizes }, reading, { cell, table, draw }) {
  if (table.name !== "measure" || table.which[cell] >= sizes.length) return undefined;
  const { orig, out } = likelihood(table, reading);
  return draw() < (table.misread * out) / orig[cell] ? null : undefined;
}

/**
 * Whether no code of that time reads so: misread, or stamped out of order. Marks that are
 * older than their object may be of any time before.
 * @param {import("../engine/guide.js").Code} kind
 * @param {string} reading
 * @param {Place} place
 */
function impossible(kind, reading, { cell, table }) {
  if (table.name !== "code" || kind.means !== "made") return undefined;
  const could = layouts(kind).some((layout, i) => {
    const { texts, rows, which } = table.layouts[i];
    const row = rows[which[cell]];
    if (!fits(reading, layout.fields, "?")) return false;
    return row.some(([, places]) => agrees(reading, layout.fields, texts.map((t, f) => t[places[f]])));
  });
  return could ? undefined : null;
}

/**
 * Whether each field reads what it should.
 * @param {string} reading
 * @param {readonly import("../engine/guide.js").Field[]} fields
 * @param {readonly import("../engine/layout.js").Texts[]} right
 */
function agrees(reading, fields, right) {
  const characters = [...reading];
  let end = 0;
  return fields.every(({ width }, f) => {
    const read = characters.slice(end, (end += width)).join("");
    return right[f] === null || right[f].includes(read);
  });
}

/**
 * Whether the number was not given in the year of building, or, of one that stays in use,
 * only later.
 * @param {import("../engine/guide.js").Counted} kind
 * @param {number} reading
 * @param {Place} place
 */
function untimely({ first, means }, reading, { tables, cell }) {
  const built = Math.floor(tables.cells[cell].t / 12);
  const [year] = first.findLast(([, n]) => n <= reading) ?? first[0];
  return (means === "made" ? year === built : year <= built) ? undefined : null;
}
