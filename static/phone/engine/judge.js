/** The one door: Tables and a Find in, a Verdict out. */

import { claim, place } from "./claim.js";
import { flags, is_outside, is_replaced, replaced } from "./flags.js";
import { WORTHWHILE, advice, prospects, separator } from "./gain.js";
import { ranked, weigh } from "./one.js";
import { conflicts, weights } from "./reasons.js";
import { largest, round9 } from "./special.js";
import { likely, month, percent } from "./words.js";

/** @import { Find, Item, PartState, Verdict } from "./find.js" */
/** @import { Prospect } from "./gain.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */

/** A leading year that is less likely than this is not leaned to. */
export const CANNOT_TELL = 0.33;
export const SETTLED = 0.9;
/** What the stretch of build months leaves out at each end. */
export const TAILS = 0.05;

/** @typedef {readonly (readonly [number, number])[]} Built */

/**
 * The verdict on the find's one object.
 *
 * `away` and `without` limit what to look at next, as for `prospects`.
 * @param {Tables} tables
 * @param {Find} find
 * @param {{away?: boolean, without?: readonly string[]}} [limits]
 * @returns {Verdict}
 */
export function judge(tables, find, { away = false, without = [] } = {}) {
  const item = _standing(tables, find.items[0]);
  const posterior = weigh(tables, item);
  const [first, second = null] = ranked(posterior);
  const weighed = find.claim ? claim(tables, item, posterior, find.claim) : null;
  const claimed = find.claim ? place(tables, find.claim.model_year) : null;
  const found = prospects(tables, item, posterior, { claimed, away, without });
  const built = _built(tables, posterior);
  const years = tables.guide.years;
  return Object.freeze({
    guide: tables.guide.id,
    model_years: years.map(
      ({ year }, y) => /** @type {const} */ ([year, posterior.years[y]]),
    ),
    outside: posterior.outside,
    built,
    replaced: tables.guide.parts.map(({ id }, p) =>
      _part(id, replaced(posterior, p), item.gone.includes(id)),
    ),
    log_evidence: posterior.log_evidence,
    leading: is_outside(posterior) ? null : years[first].year,
    say: _say(tables, item, posterior, first),
    runner_up: _runner_up(tables, posterior, found, first, second),
    built_say: _built_say(built),
    weights: weights(tables, item, posterior, first),
    claim: weighed,
    flags: flags(tables, item, posterior, conflicts(tables, item), weighed),
    next: found.map((prospect) => advice(tables, posterior, prospect)),
    exhausted: _exhausted(tables, posterior, found, first, second),
  });
}

/**
 * The item without readings on parts that are gone: they say nothing any more.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Item}
 */
function _standing(tables, item) {
  const part_of = new Map(tables.guide.clues.map((clue) => [clue.id, clue.part]));
  const readings = item.readings.filter(
    ([clue]) => !item.gone.includes(part_of.get(clue) ?? ""),
  );
  return { ...item, readings };
}

/**
 * Probability of every build month, whatever the model year, in their order.
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @returns {Built}
 */
function _built(tables, posterior) {
  /** @type {Map<number, number>} */
  const share = new Map();
  for (const [i, cell] of tables.cells.entries()) {
    share.set(cell.t, (share.get(cell.t) ?? 0) + posterior.cells[i]);
  }
  return [...share].sort(([t], [u]) => t - u);
}

/**
 * @param {string} part
 * @param {number} share
 * @param {boolean} gone
 * @returns {PartState}
 */
function _part(part, share, gone) {
  let say;
  if (gone) {
    say = "gone";
  } else if (is_replaced(share)) {
    say = `replaced: ${likely(share)}, ${percent(share)}`;
  } else {
    const kept = 1 - share;
    say = `original: ${likely(kept)}, ${percent(kept)}`;
  }
  return Object.freeze({ part, probability: share, say });
}

/**
 * @param {Tables} tables
 * @param {Item} item
 * @param {Posterior} posterior
 * @param {number} first
 */
function _say(tables, item, posterior, first) {
  const p = round9(posterior.years[first]);
  const year = tables.guide.years[first].year;
  if (is_outside(posterior)) {
    const outside = posterior.outside;
    return `looks like none of these: ${likely(outside)}, ${percent(outside)}`;
  }
  if (
    item.gone.length === 0 &&
    item.readings.every(([, reading]) => reading === null)
  ) {
    return "nothing read yet";
  }
  if (p < CANNOT_TELL) {
    return `cannot tell yet: ${year} leads with ${percent(p)}`;
  }
  const lead = p >= SETTLED ? `${year}` : `leaning to ${year}`;
  return `${lead}: ${likely(p)}, ${percent(p)}`;
}

/**
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @param {readonly Prospect[]} found
 * @param {number} first
 * @param {number | null} second
 */
function _runner_up(tables, posterior, found, first, second) {
  if (second === null) {
    return "";
  }
  const best = separator(tables, found, first, second);
  const year = `${tables.guide.years[second].year}, ${percent(posterior.years[second])}`;
  if (best === null) {
    return `${year}: no clue left would separate them`;
  }
  return `${year}: the ${tables.guide.clues[best.k].name} would best separate them`;
}

/**
 * The stretch of months that leaves out 5 % at each end, and the likeliest.
 *
 * Empty where every month is ruled out.
 * @param {Built} built
 */
function _built_say(built) {
  const inside = built.reduce((total, [, p]) => total + p, 0);
  if (inside === 0) {
    return "";
  }
  let run = 0;
  let [[since]] = built;
  let until = since;
  for (const [t, p] of built) {
    const before = run;
    run += p / inside;
    if (round9(before) <= TAILS) {
      since = t;
    }
    if (round9(before) < 1 - TAILS) {
      until = t;
    }
  }
  const [best] = largest(built, ([, p]) => round9(p));
  return (
    `built between ${month(since)} and ${month(until)}, ` +
    `most likely about ${month(best)}`
  );
}

/**
 * Why there is nothing left to look at; empty while something can gain.
 * @param {Tables} tables
 * @param {Posterior} posterior
 * @param {readonly Prospect[]} found
 * @param {number} first
 * @param {number | null} second
 */
function _exhausted(tables, posterior, found, first, second) {
  if (found.some((prospect) => prospect.bits >= WORTHWHILE)) {
    return "";
  }
  if (second === null || round9(posterior.years[first]) >= SETTLED) {
    return "Nothing left to look at would change this.";
  }
  const [earlier, later] = [first, second]
    .map((y) => tables.guide.years[y].year)
    .sort((a, b) => a - b);
  return `The clues cannot tell ${earlier} from ${later} any further.`;
}
