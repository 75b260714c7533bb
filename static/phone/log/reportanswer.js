/** Which year a report tells: in large figures, as the ribbon, and in a table. Pure. */

import { decades } from "../engine/range.js";
import { is_read } from "../engine/saying.js";
import { capital, percent } from "../engine/words.js";
import { day } from "../view/reading.js";
import { halves, leads, spoken } from "../view/ribbon.js";
import { differences } from "./differences.js";
import { summed } from "./record.js";
import { line, list, node, section, table } from "./reportnodes.js";

/** @typedef {import("../engine/find.js").Verdict} Verdict */
/** @typedef {import("./report.js").Told} Told */
/**
 * A year or a decade, and how probable it is.
 * @typedef {readonly [string | number, number]} Share
 */

/** Up to so many years each is named below its column, in two figures. */
const ALL_NAMED = 14;
/** Of more years, those named stand so far apart, as a share of the ribbon. */
const APART = 0.16;
/** Up to so many years each has its row; of more, those that count. */
const ALL_ROWS = 14;
const COUNTS = 0.005;
/** Heights of the ribbon's columns and of what stands below, in pixels. */
const RISE = 110;
const BELOW = 22;
/** A lower column is nothing but the ground. */
const LEAST = 1;

/** The answer with all that belongs to it. @param {Told} told */
export function answer({ guide, entry, verdict }) {
  const { runner_up: second, built_say: built, range, exhausted } = verdict;
  return section(
    "Which year, and how sure",
    "answer",
    headline(verdict),
    node(
      "div",
      { class: "beside" },
      node(
        "div",
        {},
        ribbon(verdict),
        line(second && is_read(entry.find.items) && `Runner-up: ${second}.`),
        line(built && `${capital(built)}.`),
        line(range?.start_say),
        line(range?.stop_say),
        line(exhausted),
        line(noteOf(guide, verdict)),
      ),
      years(verdict),
    ),
  );
}

/**
 * What the guide says of the year that it is leaned to.
 * @param {Told["guide"]} guide @param {Verdict} verdict
 */
function noteOf(guide, verdict) {
  const [lean, figure] = halves(verdict);
  const note = guide.years.find(({ year }) => String(year) === figure)?.note;
  return note && !isOpen(lean) && `${figure}: ${note}`;
}

/** Whether the year that leads is no answer yet. @param {string} lean what stands before it */
const isOpen = (lean) => lean.includes(":");

/**
 * What has become of the verdict at the time; nothing while it holds.
 * @param {Told} told
 */
export function anew({ guide, stamp, entry, verdict, now }) {
  const changes = differences(entry.verdict, summed(verdict));
  const { version } = entry;
  if (!changes.length && version.stamp === stamp) return null;
  const by = version.updated ? ` by the guide of ${day(version.updated)}` : "";
  const judged = `It was judged on ${day(entry.judged.slice(0, 10))}${by}: ${entry.verdict.say}.`;
  const today = guide.updated ? ` by the guide of ${day(guide.updated)}` : "";
  const same = "The guide has changed since; what follows from it is the same.";
  return section(
    "Judged anew",
    "anew",
    line(`${judged} This report shows the verdict of ${day(now.slice(0, 10))}${today}.`),
    changes.length ? list("changes", changes.map(capital)) : line(same),
  );
}

/** The sentence, its year or range in large figures. @param {Verdict} verdict */
function headline(verdict) {
  const [lean, figure, sure] = halves(verdict);
  if (!figure) return node("p", { class: "say" }, capital(lean));
  const kind = isOpen(lean) ? "open" : verdict.range || figure.includes(" ") ? "range" : "year";
  return node(
    "p",
    { class: "say" },
    capital(lean),
    node("strong", { class: `figure figure--${kind}` }, figure),
    " ",
    sure.replace(/^: /, "").trim(),
  );
}

/**
 * A column a year and, apart from them, one for none of these. Widths are shares, so that
 * the ribbon is as wide as there is room, and its letters stay as large as others.
 * @param {Verdict} verdict
 */
function ribbon(verdict) {
  const { model_years: years, outside } = verdict;
  const apart = Math.max(1, years.length / 20);
  const share = 100 / (years.length + 2 * apart);
  const full = Math.max(outside, ...years.map(([, p]) => p));
  const lead = leading(verdict);
  const names = named(years, lead);
  const drawn = years.flatMap(([, p], i) => [
    column(i * share, share, p / full, lead.includes(i)),
    name(i === 0 && names.size < years.length ? 0 : (i + 0.5) * share, names.get(i)),
  ]);
  const last = 100 - apart * share;
  const none = column(last, apart * share, outside / full, verdict.leading === null);
  return node(
    "figure",
    {},
    node(
      "svg",
      { width: "100%", height: RISE + BELOW, role: "img", "aria-label": spoken(verdict) },
      drawn,
      none,
      name(last + (apart * share) / 2, "none"),
      node("line", { class: "ground", x1: "0", x2: "100%", y1: RISE, y2: RISE }),
    ),
  );
}

/** @param {number} x @param {number} width @param {number} rise its share @param {boolean} lead */
function column(x, width, rise, lead) {
  const height = RISE * rise;
  if (height < LEAST) return null;
  return node("rect", {
    class: lead ? "column column--lead" : "column",
    x: `${(x + width / 10).toFixed(2)}%`,
    y: (RISE - height).toFixed(1),
    width: `${(0.8 * width).toFixed(2)}%`,
    height: height.toFixed(1),
  });
}

/** @param {number} x the middle of it, or 0 if it begins there @param {string} [text] */
function name(x, text) {
  if (!text) return null;
  const place = { class: x ? "name" : "name name--first", x: `${x.toFixed(2)}%` };
  return node("text", { ...place, y: RISE + BELOW - 5 }, text);
}

/** Places of the years that lead; there are none if none of these does. @param {Verdict} verdict */
function leading(verdict) {
  const { model_years: years, leading: year, range } = verdict;
  if (year === null || !leads(verdict)) return [];
  const { since, until } = range ?? { since: year, until: year };
  return [...years.keys()].filter((i) => since <= years[i][0] && years[i][0] <= until);
}

/**
 * What is written below the columns, by place: of many years the ends of what leads and
 * the guide's first, as far as there is room.
 * @param {Verdict["model_years"]} years @param {readonly number[]} lead
 */
function named(years, lead) {
  const last = years.length - 1;
  if (years.length <= ALL_NAMED) {
    return new Map(years.map(([year], i) => [i, String(year).slice(-2)]));
  }
  /** @type {Map<number, string>} */
  const names = new Map();
  for (const i of [lead[0] ?? 0, lead.at(-1) ?? last, 0]) {
    // Behind the last of them stands the name of the column for none of these.
    const taken = [...names.keys(), last];
    const isFree = taken.every((other) => Math.abs(i - other) >= APART * last);
    if (isFree) names.set(i, String(years[i][0]));
  }
  return names;
}

/** @param {Verdict} verdict */
function years({ model_years: all, outside, range }) {
  const every = range ? decades(all) : all;
  const rows = every.length > ALL_ROWS ? counting(every) : every;
  const told = [...rows, /** @type {const} */ (["none of these", outside])];
  return table(
    "years",
    [range ? "Decade" : "Model year", "Probability"],
    told.map(([year, p]) => [String(year), percent(p)]),
  );
}

/** The years that count, and all others as one. @param {readonly Share[]} all */
function counting(all) {
  const kept = all.filter(([, p]) => p >= COUNTS);
  const rest = all.filter(([, p]) => p < COUNTS).reduce((sum, [, p]) => sum + p, 0);
  /** @type {Share} */
  const others = ["all other years", rest];
  return kept.length < all.length ? [...kept, others] : kept;
}
