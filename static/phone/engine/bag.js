/**
 * The verdict on a set: its members alone and together, and what became of the whole.
 *
 * Model page: "A set"; the arithmetic is in `sets`.
 */

import { factor, odds } from "./claim.js";
import { missing, set_say, surplus } from "./members.js";
import { ranked, weigh } from "./one.js";
import { conflicts } from "./reasons.js";
import {
  SEEN_ONCE,
  UNSEEN,
  answer,
  leading,
  looked_on,
  part_states,
  year_shares,
} from "./saying.js";
import { at_once, set_flags } from "./setflags.js";
import { stray_say } from "./strays.js";
import {
  called,
  evidence,
  likely,
  percent,
  tells_nothing,
  times,
} from "./words.js";

/** @import { Item, MemberVerdict, PartState, Verdict } from "./find.js" */
/** @import { Tables } from "./prepare.js" */
/** @import { Case } from "./saying.js" */
/** @import { Apart } from "./setflags.js" */
/** @import { SetPosterior } from "./sets.js" */

// On a phone a set is judged after every tap, which changes one member.
/** @type {WeakMap<Tables, WeakMap<Item, Apart>>} */
const _kept = new WeakMap();

/**
 * The verdict with what belongs to a set alone.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {Verdict} verdict
 * @returns {Verdict}
 */
export function bag(told, whole, verdict) {
  const { guide } = told.tables;
  const apart = told.items.map((item) => _apart(told.tables, item));
  return Object.freeze({
    ...verdict,
    flags: set_flags(told, whole, apart, verdict.claim),
    whole_set: _whole_set(told, whole),
    members: apart.map((each, i) => _member(told, whole, i, each)),
    missing: missing(guide, told.items),
    surplus: surplus(guide, told.items),
    set_say: set_say(guide, told.items),
  });
}

/**
 * What follows from one item, whatever the others are.
 * @param {Tables} tables
 * @param {Item} item
 * @returns {Apart}
 */
function _apart(tables, item) {
  const kept = _kept.get(tables) ?? new WeakMap();
  _kept.set(tables, kept);
  const apart = kept.get(item) ?? [weigh(tables, item), conflicts(tables, item)];
  kept.set(item, apart);
  return apart;
}

/**
 * @param {Case} told
 * @param {SetPosterior} whole
 * @param {number} i
 * @param {Apart} apart
 * @returns {MemberVerdict}
 */
function _member(told, whole, i, apart) {
  const tables = told.tables;
  const item = told.items[i];
  const [own] = apart;
  const [first] = ranked(own.years);
  const weighed =
    factor(tables, whole, told.first) / odds(tables, whole.without[i], [told.first, told.first]);
  return Object.freeze({
    member: String(item.member),
    model_years: year_shares(tables, own),
    outside: own.outside,
    replaced: part_states(tables, item, own),
    leading: leading(tables, own, first),
    say: answer(tables, [item], own, told.found.filter((each) => each.item === i)),
    stray: whole.stray[i],
    stray_say: stray_say(told, whole, i),
    factor: weighed,
    factor_say: _factor_say(told, String(item.member), weighed),
  });
}

/**
 * @param {Case} told
 * @param {string} member
 * @param {number} weighed
 */
function _factor_say(told, member, weighed) {
  const { guide } = told.tables;
  const name = called(guide, member);
  const { year } = guide.years[told.first];
  if (tells_nothing(weighed)) {
    return `The ${name}: next to nothing about ${year}.`;
  }
  return `The ${name}: ${evidence(weighed, year)}, ${times(weighed)}.`;
}

/**
 * The parts that can be replaced on a whole set at once, in guide order.
 * @param {Case} told
 * @param {SetPosterior} whole
 * @returns {PartState[]}
 */
function _whole_set(told, whole) {
  const { tables, items } = told;
  const said = at_once(told, whole);
  return tables.guide.parts.flatMap((part, p) => {
    const share = whole.whole_set[p];
    const able = tables.worlds.some((world) => world.whole[p]);
    const say = _at_once(share, said[p], looked_on(tables, items, p));
    const state = { part: part.id, probability: share, say };
    return able ? [Object.freeze(state)] : [];
  });
}

/**
 * @param {number} share
 * @param {boolean} said
 * @param {number} looked
 */
function _at_once(share, said, looked) {
  if (said) {
    return `replaced on the whole set: ${likely(share)}, ${percent(share)}`;
  }
  if (looked < 2) {
    return looked ? SEEN_ONCE : UNSEEN;
  }
  const kept = 1 - share;
  return `not replaced on the whole set: ${likely(kept)}, ${percent(kept)}`;
}
