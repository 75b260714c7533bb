/** The year ribbon: a column a model year, as high as the year is probable. */

import { painted } from "../breath.js";
import { listed, percent } from "../engine/words.js";
import { element, joined, set } from "./dom.js";

/** @typedef {import("../engine/find.js").Verdict} Verdict */

/** Up to so many columns each carries its year; beyond, every fifth, tenth, ... */
const ALL_LABELLED = 12;
const STEPS = [5, 10, 20, 25, 50, 100];
const MOST_LABELS = 5;
/** With so many years a full column is certainty; with more, a share of it. */
const FULL = 12;
/** What a sentence ends with that rules nothing out yet. */
const SO_FAR = " so far";
/** How many years the spoken form names before the rest. */
const SPOKEN = 4;

/** What each ribbon is to show. @type {WeakMap<HTMLElement, Verdict>} */
const due = new WeakMap();

/**
 * Draws the ribbon. Where the years are the same ones its columns stay and move to their
 * new heights: in the next frame, since so many movements would hold up the question that
 * comes with them.
 * @param {HTMLElement} figure
 * @param {Verdict} verdict
 */
export function drawRibbon(figure, verdict) {
  due.set(figure, verdict);
  const years = verdict.model_years;
  const key = years.map(([year]) => year).join();
  if (figure.dataset.years === key) {
    painted().then(() => due.get(figure) === verdict && rise(figure, verdict));
    return;
  }
  figure.dataset.years = key;
  figure.classList.toggle("ribbon--dense", years.length > ALL_LABELLED);
  figure.style.setProperty("--columns", String(years.length));
  figure.replaceChildren(...years.map(() => column("")), column("ribbon__column--none"));
  rise(figure, verdict);
}

/** Gives each column its height and its year. @param {HTMLElement} figure @param {Verdict} verdict */
function rise(figure, verdict) {
  const years = verdict.model_years;
  const shares = [...years.map(([, p]) => p), verdict.outside];
  const [first, last] = leading(verdict);
  const full = Math.max(Math.min(1, FULL / years.length), ...shares);
  shares.forEach((p, i) => {
    const made = /** @type {HTMLElement} */ (figure.children[i]);
    made.classList.toggle("ribbon__column--lead", first <= i && i <= last);
    const filled = /** @type {HTMLElement} */ (made.firstElementChild);
    filled.style.setProperty("--p", (p / full).toFixed(4));
  });
  labels(figure, years, first < years.length ? [first, last] : []);
  set(figure, { "aria-label": spoken(verdict) });
}

/**
 * The ribbon in words: the range, or the likeliest years; the rest, none of these.
 * @param {Verdict} verdict
 */
export function spoken(verdict) {
  const none = `none of these ${percent(verdict.outside)}`;
  if (verdict.range) return `Year ribbon: ${verdict.say}, ${none}.`;
  const ranked = [...verdict.model_years].sort((a, b) => b[1] - a[1]);
  const named = ranked.slice(0, SPOKEN).map(([year, p]) => `${year} ${percent(p)}`);
  const rest = ranked.slice(SPOKEN).reduce((sum, [, p]) => sum + p, 0);
  if (ranked.length > SPOKEN) named.push(`all other years ${percent(rest)}`);
  return `Year ribbon: ${listed([...named, none])}.`;
}

/**
 * The sentence under the ribbon, the leading year marked.
 * @param {HTMLElement} status
 * @param {Verdict} verdict
 */
export function drawSay(status, verdict) {
  if (status.dataset.said === verdict.say) return;
  status.dataset.said = verdict.say;
  const [before, answer, after] = halves(verdict);
  if (!answer) status.replaceChildren(joined(before));
  else status.replaceChildren(before, element("b", "marked", answer), joined(after));
}

/**
 * The sentence of a verdict, cut at the year or the range that it names; all of it is
 * the first piece where it names none.
 * @param {{say: string, leading: number | null, range: {say: string} | null}} verdict
 * @returns {[string, string, string]}
 */
export function halves({ say, range, leading }) {
  const answer = range?.say ?? named(say, leading);
  const at = say.indexOf(answer);
  if (at < 0 || say.endsWith(SO_FAR)) return [say, "", ""];
  return [say.slice(0, at), answer, say.slice(at + answer.length)];
}

/** The year that leads, or both where two lead alike. @param {string} say @param {number | null} year */
function named(say, year) {
  return say.match(`(\\d+ or )?${year}( or \\d+)?`)?.[0] ?? String(year);
}

/** @param {string} name */
function column(name) {
  const made = element("span", `ribbon__column ${name}`.trim());
  made.append(element("span", "ribbon__rise"), element("span", "ribbon__year"));
  return made;
}

/**
 * Whether a year or a range is named alone; not while nothing is, or years are level.
 * @param {Pick<Verdict, "say" | "leading"> & {range: {say: string} | null}} verdict
 */
export function leads(verdict) {
  const { range, leading } = verdict;
  const answer = halves(verdict)[1];
  return range ? answer !== "" : answer === String(leading);
}

/**
 * Places of the first and the last leading column; before all where none leads.
 * @param {Verdict} verdict
 */
function leading(verdict) {
  const years = verdict.model_years;
  if (verdict.leading === null) return [years.length, years.length];
  if (!leads(verdict)) return [-1, -1];
  const { since, until } = verdict.range ?? { since: verdict.leading, until: verdict.leading };
  return [since, until].map((end) => years.findIndex(([year]) => year === end));
}

/**
 * Writes the years below: all of them, or round ones with those that lead in between.
 * @param {HTMLElement} figure
 * @param {Verdict["model_years"]} years
 * @param {readonly number[]} lead
 */
function labels(figure, years, lead) {
  const all = years.length <= ALL_LABELLED;
  const step = STEPS.find((size) => years.length / size <= MOST_LABELS) ?? 200;
  const room = years.length / MOST_LABELS;
  // Two ends that stand close are named by the first.
  const [first = -1, last = -1] = lead;
  const ends = last - first < room ? [first] : lead;
  // The last years stand where "none" has its own name.
  const named = all ? ends : ends.filter((end) => end < years.length - room / 2);
  years.forEach(([year], i) => {
    const near = !all && first >= 0 && named.some((end) => Math.abs(i - end) < room);
    const shown = all || named.includes(i) || (year % step === 0 && !near);
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
