/** The month ruler: when the object was built, a column a month, years marked below. */

import { MONTHS } from "../engine/words.js";
import { element } from "./dom.js";

/** @typedef {import("../engine/find.js").Verdict} Verdict */

/** What is cut off at each end holds no more than this, which is less than what the
 * sentence leaves out. */
const FAINT = 0.02;
/** Up to so many months each carries its letter. */
const LETTERED = 18;
/** More than so many months are drawn as years. */
const MOST_MONTHS = 120;

/** So many years are named below; of more, round ones only. */
const MOST_YEARS = 6;
/** The share of the ruler that a year's name takes. */
const LEAST_ROOM = 0.12;

/**
 * The columns and the years below them.
 * @param {Verdict["built"]} built
 */
export function drawMonths(built) {
  const stretch = cut(built);
  const by =
    stretch.length > MOST_MONTHS ? years(built) : stretch.map(([t, p]) => ({ t, p, span: 1 }));
  const best = Math.max(...by.map(({ p }) => p));
  const lettered = stretch.length <= LETTERED;
  const ties = by.filter(({ p }) => p === best).length;
  const columns = by.map(({ t, p }) => {
    const letter = lettered ? MONTHS[t % 12][0] : "";
    // Where most months are alike, none of them leads.
    return column(p / best, letter, p === best && 2 * ties <= by.length);
  });
  const row = element("div", "months__columns", ...columns);
  row.style.setProperty("--columns", String(by.length));
  const below = element("div", "months__years", ...spans(by));
  below.style.setProperty("--columns", String(by.length));
  return [row, below];
}

/** The stretch that matters. @param {Verdict["built"]} built */
function cut(built) {
  const faint = FAINT * built.reduce((total, [, p]) => total + p, 0);
  return begun(begun(built, faint).reverse(), faint).reverse();
}

/** From where more than so much has come. @param {Verdict["built"]} built @param {number} faint */
function begun(built, faint) {
  let run = 0;
  return built.slice(built.findIndex(([, p]) => (run += p) > faint));
}

/** Months summed by year, again cut. @param {Verdict["built"]} built */
function years(built) {
  /** @type {Map<number, number>} */
  const sums = new Map();
  for (const [t, p] of built)
    sums.set(Math.floor(t / 12), (sums.get(Math.floor(t / 12)) ?? 0) + p);
  return cut([...sums]).map(([year, p]) => ({ t: 12 * year, p, span: 12 }));
}

/** @param {number} share @param {string} letter @param {boolean} leads */
function column(share, letter, leads) {
  const made = element("span", "months__column", element("span", "months__rise"));
  if (letter) made.append(element("span", "months__letter", letter));
  made.classList.toggle("months__column--lead", leads);
  made.style.setProperty("--p", share.toFixed(4));
  return made;
}

/**
 * The years as brackets under their columns; where they are many, round ones only.
 * @param {{t: number, span: number}[]} by
 */
function spans(by) {
  /** @type {Map<number, number>} */
  const widths = new Map();
  for (const { t } of by) {
    const year = Math.floor(t / 12);
    widths.set(year, (widths.get(year) ?? 0) + 1);
  }
  const step = [1, 2, 5, 10, 20, 50].find((size) => widths.size / size <= MOST_YEARS) ?? 100;
  let left = by.length;
  return [...widths].map(([year, width]) => {
    const room = (step > 1 ? left : width) >= LEAST_ROOM * by.length;
    const named = year % step === 0 && room;
    const made = element("span", "months__year", named ? String(year) : "");
    if (step > 1) made.classList.add(named ? "months__year--round" : "months__year--bare");
    made.style.setProperty("--width", String(width));
    left -= width;
    return made;
  });
}
