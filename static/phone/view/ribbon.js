/** The year ribbon: a column a model year, as high as the year is probable. */

import { listed, percent } from "../engine/words.js";
import { element, joined, set } from "./dom.js";

/** @typedef {import("../engine/find.js").Verdict} Verdict */

/** Up to so many columns each carries its year; beyond, every fifth, tenth, ... */
const ALL_LABELLED = 14;
const STEPS = [5, 10, 20, 25, 50, 100];
const MOST_LABELS = 5;
/** With so many years a full column is certainty; with more, a share of it. */
const FULL = 12;
/** How many years the spoken form names before the rest. */
const SPOKEN = 4;

/**
 * Draws the ribbon, keeping its columns where the years are the same ones, so that a
 * column moves to its new height.
 * @param {HTMLElement} figure
 * @param {Verdict} verdict
 */
export function drawRibbon(figure, verdict) {
  const years = verdict.model_years;
  const key = years.map(([year]) => year).join();
  if (figure.dataset.years !== key) {
    figure.dataset.years = key;
    figure.classList.toggle("ribbon--dense", years.length > ALL_LABELLED);
    figure.style.setProperty("--columns", String(years.length));
    figure.replaceChildren(...years.map(() => column("")), column("ribbon__column--none"));
  }
  const shares = [...years.map(([, p]) => p), verdict.outside];
  const lead = leading(verdict);
  const full = Math.max(Math.min(1, FULL / years.length), ...shares);
  shares.forEach((p, i) => {
    const made = /** @type {HTMLElement} */ (figure.children[i]);
    made.classList.toggle("ribbon__column--lead", i === lead);
    made.style.setProperty("--p", (p / full).toFixed(4));
  });
  labels(figure, years, lead);
  set(figure, { "aria-label": spoken(verdict) });
}

/**
 * The ribbon in words: the likeliest years, the rest, none of these.
 * @param {Verdict} verdict
 */
export function spoken(verdict) {
  const ranked = [...verdict.model_years].sort((a, b) => b[1] - a[1]);
  const named = ranked.slice(0, SPOKEN).map(([year, p]) => `${year} ${percent(p)}`);
  const rest = ranked.slice(SPOKEN).reduce((sum, [, p]) => sum + p, 0);
  if (ranked.length > SPOKEN) named.push(`all other years ${percent(rest)}`);
  return `Year ribbon: ${listed([...named, `none of these ${percent(verdict.outside)}`])}.`;
}

/**
 * The sentence under the ribbon, the leading year marked.
 * @param {HTMLElement} status
 * @param {Verdict} verdict
 */
export function drawSay(status, verdict) {
  if (status.dataset.said === verdict.say) return;
  status.dataset.said = verdict.say;
  const year = String(verdict.leading);
  const [before, after] = halves(verdict.say, year);
  if (after === null) status.replaceChildren(joined(before));
  else status.replaceChildren(before, element("b", "marked", year), joined(after));
}

/**
 * A sentence cut at a year; the second half is null where the year is not in it.
 * @param {string} say
 * @param {string} year
 * @returns {[string, string | null]}
 */
export function halves(say, year) {
  const at = say.indexOf(year);
  return at < 0 ? [say, null] : [say.slice(0, at), say.slice(at + year.length)];
}

/** @param {string} name */
function column(name) {
  const made = element("span", `ribbon__column ${name}`.trim());
  made.append(element("span", "ribbon__rise"), element("span", "ribbon__year"));
  return made;
}

/** Place of the leading column; none while nothing was read. @param {Verdict} verdict */
function leading(verdict) {
  const years = verdict.model_years;
  if (verdict.leading === null) return years.length;
  if (!verdict.say.includes(String(verdict.leading))) return -1;
  return years.findIndex(([year]) => year === verdict.leading);
}

/**
 * Writes the years below: all of them, or round ones with the leading year in between.
 * @param {HTMLElement} figure
 * @param {Verdict["model_years"]} years
 * @param {number} lead
 */
function labels(figure, years, lead) {
  const all = years.length <= ALL_LABELLED;
  const step = STEPS.find((size) => years.length / size <= MOST_LABELS) ?? 200;
  const room = years.length / MOST_LABELS;
  years.forEach(([year], i) => {
    const near = !all && lead >= 0 && i !== lead && Math.abs(i - lead) < room;
    const shown = all || i === lead || (year % step === 0 && !near);
    write(figure.children[i], shown ? label(year, years.length) : "");
  });
  write(figure.children[years.length], "none");
}

/** Two figures where twelve columns stand close, else four. @param {number} year @param {number} n */
function label(year, n) {
  const close = n > 6 && n <= ALL_LABELLED;
  return close ? String(year % 100).padStart(2, "0") : String(year);
}

/** @param {Element} made @param {string} text */
function write(made, text) {
  const year = /** @type {Element} */ (made.lastElementChild);
  if (year.textContent !== text) year.textContent = text;
}
