/** A measure: a number with its unit, a ruler that shows where it lies, a hint. */

import { amount } from "../amount.js";
import { measured } from "../engine/find.js";
import { LEAST_SAID } from "../engine/typical.js";
import { figure } from "../engine/words.js";
import { LONGEST, MILLIMETRES } from "../lengths.js";
import { toSizing } from "../routes.js";
import { reading } from "../scope.js";
import { named, pointsOf, START } from "../swing.js";
import { piece, set, slot } from "./dom.js";
import { picture } from "./picture.js";
import { drawRuler } from "./ruler.js";
import { drawSwing } from "./swing.js";

/** @typedef {import("../engine/find.js").Measured} Measured */
/** @typedef {import("../engine/guide.js").Measure} Measure */
/** @typedef {import("../engine/guide.js").Clue} Clue */

/** What the edge of a sheet of paper can carry, in millimetres. */
const SHEET = 250;
const ON_PAPER =
  "No tool at hand? Mark the size on the edge of a piece of paper and lay that along a ruler later.";
const ON_STRING =
  "No tool at hand? Mark the length on a string with a knot and measure that later.";
/** A guide that tells how to do without a tool knows better. */
const SAID = /\bwithout\b/i;

/**
 * The field for a measure, with what was typed and what is wrong with it.
 * @param {Clue} clue
 * @param {Measure} kind the clue's own
 * @param {import("./clue.js").Asked} data
 */
export function drawMeasure(clue, kind, { session, places, typed, wrong, swing }) {
  const { asked, unit } = scale(kind);
  const item = session.items[places[0]];
  const made = piece("measure", {
    picture: clue.picture ? picture(clue.picture) : null,
    label: `The ${asked}`,
    unit,
    range: range(kind),
    wrong,
    ruler: ruler(kind, typed),
    without: without(clue.where, kind),
    estimate: estimate(kind, measured(reading(item, clue.id))),
    photo: inPhoto(kind) ? "Measure it in a photo" : null,
    // What was worked out and taken over is out of the way.
    helper: kind.helper ? [drawSwing(swing ?? START, !!swing && !typed)] : null,
  });
  if (inPhoto(kind)) set(slot(made, "photo"), { href: toSizing(clue.id, item.member) });
  const value = kind.helper ? shown(kind, typed) : typed;
  set(slot(made, "input"), { value, "aria-invalid": wrong ? "true" : null });
  return made;
}

/**
 * The size that was typed, comma or point, with its unit or without; null if it is none.
 * @param {Measure} kind
 * @param {string} typed
 */
export const parse = (kind, typed) => scale(kind).read(typed);

/**
 * What is wrong with the typed measure, in a sentence; nothing if it will do.
 * @param {Measure} kind
 * @param {string} typed
 */
export function unfit(kind, typed) {
  const { low, high } = kind;
  const { what, asked, say, doubt } = scale(kind);
  const size = parse(kind, typed);
  if (!typed.trim()) return `Type the ${asked}, or choose “Can’t tell”.`;
  if (size === null) {
    const middle = say(Math.round(low + high) / 2);
    return `Type a ${what} from ${range(kind)}, for example ${middle}.`;
  }
  if (size >= low && size <= high) return "";
  return `${written(kind, size)} is outside ${range(kind)}. Look again${doubt}.`;
}

/** A size as it is written. @param {Measure} kind @param {number} size */
export const written = (kind, size) => scale(kind).write(size);

/**
 * A size with its unit, and with its standard error if it has one, which is never so
 * small that it is nothing.
 * @param {Measure} kind @param {Measured} size
 */
export function sizeSaid(kind, { value, error }) {
  const said = written(kind, value);
  return error > 0 ? `${said}, give or take ${figure(Math.max(error, LEAST_SAID))}` : said;
}

/** Whether it is a length that a photo can tell. @param {Measure} kind */
export const inPhoto = ({ unit, low, helper }) =>
  !helper && low * (MILLIMETRES.get(unit) ?? Infinity) < LONGEST;

/** What a measure can be. @param {Measure} kind */
export const range = (kind) => `${scale(kind).say(kind.low)} to ${written(kind, kind.high)}`;

/**
 * Moves the ruler's mark while the size is being typed, and takes back what was wrong.
 * @param {HTMLElement} root
 * @param {Measure} kind
 * @param {string} typed
 */
export function moveMark(root, kind, typed) {
  root.querySelector("[data-ruler]")?.replaceChildren(ruler(kind, typed));
  root.querySelector("#size")?.removeAttribute("aria-invalid");
  root.querySelector("#size-wrong")?.replaceChildren();
}

/** A reading comes back as a number, and has a name. @param {Measure} kind @param {string} typed */
function shown(kind, typed) {
  const size = parse(kind, typed);
  return size === null ? typed : written(kind, size);
}

/** How to do without a tool, where that can be said. @param {string} where @param {Measure} kind */
function without(where, { unit, high }) {
  const length = MILLIMETRES.get(unit);
  if (!length || SAID.test(where)) return null;
  return high * length <= SHEET ? ON_PAPER : ON_STRING;
}

/** That a size was told with an error, which one that is typed has not. @param {Measure} kind @param {Measured} size */
function estimate(kind, size) {
  if (!(size.error > 0)) return null;
  return `Taken before: ${sizeSaid(kind, size)}. That stays so unless you type another size.`;
}

/** @param {Measure} kind @param {string} typed */
const ruler = (kind, typed) => drawRuler(kind, parse(kind, typed), scale(kind).say);

/**
 * How sizes are read and written: as numbers with a unit, or as swing weights.
 * @param {Measure} kind
 */
const scale = ({ helper, unit }) => (helper === "swing-weight" ? SWING : plain(unit));

const SWING = {
  what: "swing weight",
  asked: "swing weight",
  unit: null,
  read: pointsOf,
  say: named,
  write: named,
  doubt: "",
};

/** @param {string} unit @returns {Omit<typeof SWING, "unit"> & {unit: string | null}} */
function plain(unit) {
  const last = new RegExp(`\\s*${unit}$`);
  return {
    what: "size",
    asked: `size in ${unit}`,
    unit,
    read: (typed) => amount(typed.trim().replace(last, "")),
    say: figure,
    write: (size) => `${figure(size)} ${unit}`,
    doubt: ", or check the unit",
  };
}
