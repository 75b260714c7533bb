/** The one door: Tables and a Find in, a Verdict out. */

import { advice } from "./advice.js";
import { bag } from "./bag.js";
import { claim, place } from "./claim.js";
import { flags } from "./flags.js";
import { WORTHWHILE, prospects, whatever_is_claimed } from "./gain.js";
import { ranked, weigh } from "./one.js";
import { ended } from "./prepare.js";
import { brackets, ends, lead } from "./range.js";
import { conflicts, weights } from "./reasons.js";
import {
  answer,
  built,
  exhausted,
  is_read,
  leading,
  month_shares,
  part_states,
  runner_up,
  year_shares,
} from "./saying.js";
import { set_prospects } from "./setgain.js";
import { weigh_set } from "./sets.js";

/** @import { Weighed } from "./claim.js" */
/** @import { Claim, Find, Item, Next, Verdict } from "./find.js" */
/** @import { Prospect } from "./gain.js" */
/** @import { Posterior } from "./one.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Case, Shares } from "./saying.js" */

/**
 * The verdict on the find's one object, or on its set.
 *
 * `away`, `without` and `photos` limit what to look at next, as for `prospects`.
 * @param {Tables} tables
 * @param {Find} find
 * @param {{away?: boolean, without?: readonly string[], photos?: boolean}} [limits]
 * @returns {Verdict}
 */
export function judge(
  tables,
  find,
  { away = false, without = [], photos = false } = {},
) {
  return ended(judging(tables, find, { away, without, photos }));
}

/**
 * The same step by step, so that a page can answer in between.
 * @param {Tables} tables
 * @param {Find} find
 * @param {{away: boolean, without: readonly string[], photos: boolean}} limits
 * @returns {Generator<void, Verdict, void>}
 */
export function* judging(tables, find, { away, without, photos }) {
  const items = find.items.map((item) => counted(tables, item));
  const claimed = find.claim ? place(tables, find.claim.model_year) : null;
  const limits = { claimed, away, without, photos };
  if (items.length > 1) {
    const whole = weigh_set(tables, items);
    yield;
    const found = set_prospects(tables, items, whole, limits);
    const told = _case(tables, items, whole, found);
    return bag(told, whole, yield* _common(told, find.claim));
  }
  const posterior = weigh(tables, items[0]);
  yield;
  const found = prospects(tables, items[0], posterior, limits);
  const told = _case(tables, items, posterior, found);
  return _one(told, posterior, yield* _common(told, find.claim));
}

/**
 * The item without readings on parts that are gone: they say nothing any more.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Item}
 */
export function counted(tables, item) {
  const part_of = new Map(tables.guide.clues.map((clue) => [clue.id, clue.part]));
  const readings = item.readings.filter(
    ([clue]) => !item.gone.includes(part_of.get(clue) ?? ""),
  );
  // The same item if nothing falls away, so that what is known of it can be kept.
  return readings.length === item.readings.length ? item : { ...item, readings };
}

/**
 * @param {Tables} tables
 * @param {readonly Item[]} items
 * @param {Weighed} posterior
 * @param {readonly Prospect[]} found
 * @returns {Case}
 */
function _case(tables, items, posterior, found) {
  const [first, second = null] = ranked(posterior.years);
  // If nothing left would test the claim, the year may still be worth looking for.
  const any = found.some(({ bits }) => bits >= WORTHWHILE);
  return Object.freeze({
    tables,
    items,
    posterior,
    found: any ? found : whatever_is_claimed(tables, found),
    first,
    second,
  });
}

/**
 * What one object and a set have in common.
 * @param {Case} told
 * @param {Claim | null} said
 * @returns {Generator<void, Verdict, void>}
 */
function* _common(told, said) {
  const { tables, items, posterior, found, first } = told;
  /** @type {Next[]} */
  const next = [];
  for (const each of found) {
    yield;
    next.push(advice(tables, items, posterior, each));
  }
  yield;
  const months = _months(tables, posterior);
  return {
    guide: tables.guide.id,
    model_years: year_shares(tables, posterior),
    outside: posterior.outside,
    built: months,
    replaced: [],
    log_evidence: posterior.log_evidence,
    leading: leading(tables, posterior, first),
    say: answer(tables, items, posterior, found),
    runner_up: runner_up(told),
    built_say: is_read(items) ? built(months) : "",
    weights: [],
    claim: said ? claim(tables, items, posterior, said) : null,
    flags: [],
    next,
    exhausted: exhausted(told),
    whole_set: [],
    members: [],
    missing: [],
    surplus: [],
    set_say: "",
    range: null,
  };
}

/**
 * The verdict with what belongs to one object alone.
 * @param {Case} told
 * @param {Posterior} posterior
 * @param {Verdict} verdict
 * @returns {Verdict}
 */
function _one(told, posterior, verdict) {
  const { tables } = told;
  const [item] = told.items;
  const best = lead(tables, posterior.years);
  return Object.freeze({
    ...verdict,
    replaced: part_states(tables, item, posterior),
    weights: weights(tables, item, posterior, best),
    flags: flags(tables, item, posterior, conflicts(tables, item), verdict.claim),
    range: ends(tables, item, posterior),
  });
}

/**
 * When it was built; a guide that brackets says no more of that than its range.
 * @param {Tables} tables
 * @param {Weighed} posterior
 * @returns {Shares}
 */
function _months(tables, posterior) {
  return brackets(tables.guide) ? [] : month_shares(tables, posterior.cells);
}
