/** Wants in words: what is wanted, whether a find is one, and how scarce it is. Pure. */

import { called, capital, likely, money, percent } from "../engine/words.js";
import { hundredths } from "../engine/worth.js";
import { matches, MOST_LIKELY } from "../dealing/wantsmatch.js";

/** @typedef {import("../dealing/wantsmatch.js").Match} Match */
/** @typedef {import("../engine/guide.js").Guide} Guide */
/** @typedef {import("../log/wants.js").Want} Want */

/** A share that is smaller is told in thousands. */
const FEW = 0.01;

/**
 * What is wanted, as one sentence without its stop.
 * @param {Want} want
 * @param {{title: string, anything: boolean}} card
 * @param {Guide | null} guide for the name of a member
 */
export function wantSay({ since, until, member, most, currency }, card, guide) {
  // Some guides are called by a question.
  const title = card.anything ? "Anything" : card.title.replace(/[:?].*$/, "");
  const which = member === null ? "" : `, the ${guide ? called(guide, member) : member}`;
  const limit = most === null ? "" : `, up to ${money(most, currency)}`;
  return `${title} ${yearsSay(since, until)}${which}${limit}`;
}

/** @param {number | null} since @param {number | null} until */
function yearsSay(since, until) {
  if (since === null && until === null) return "of any year";
  if (until === null) return `of ${since} or later`;
  if (since === null) return `of ${until} or earlier`;
  if (since === until) return `of ${since}`;
  return `of ${since} ${until === since + 1 ? "or" : "to"} ${until}`;
}

/** What stands over matches, the likeliest first. @param {readonly Match[]} found */
export function matchTitle([{ probability }]) {
  return probability >= MOST_LIKELY
    ? "This is most likely what you want"
    : "This may be what you want";
}

/** How probable it is that the find is what is wanted. @param {Match} match */
export function matchSay({ probability }) {
  return `How sure: ${likely(probability)}, ${percent(probability)}.`;
}

/**
 * Whether what is asked is within what somebody wanted to pay; nothing where one of them
 * is not known, or they are in different money.
 * @param {Pick<Want, "most" | "currency">} want
 * @param {{asked: number | null, currency: string}} dealt
 */
export function limitSay({ most, currency }, { asked, currency: paid }) {
  const isOther = currency && paid && currency !== paid;
  if (most === null || asked === null || isOther) return "";
  const of = currency || paid;
  const more = asked - most;
  const how = hundredths(more) > 0 ? `${money(more, of)} more than` : "within what";
  return `${money(asked, of)} is asked, ${how} you wanted to pay.`;
}

/**
 * How what is asked stands to what the person wanted to pay for such a find: a sentence,
 * empty where that is not known.
 * @param {import("../dealing/wantsmatch.js").Judged} judged
 * @param {readonly Want[]} wants
 * @param {{asked: number | null, currency: string}} dealt
 */
export function wantedLimit(judged, wants, dealt) {
  const found = matches(judged, wants).find(({ want }) => limitSay(want, dealt));
  return found ? `${matchTitle([found])}: ${limitSay(found.want, dealt)}` : "";
}

/** How scarce it is, as far as the guide knows; nothing where it does not. @param {Match} match */
export function scarceSay({ scarce, want }) {
  if (scarce === null) return "";
  const [of, many] = scarce < FEW ? [1000, 1000 * scarce] : [100, 100 * scarce];
  const count = Math.max(1, Math.floor(many + 0.5));
  const verb = count === 1 ? "is" : "are";
  const years = want.since === want.until ? "this year" : "these years";
  return capital(
    `of ${of} of this line about ${count} ${verb} of ${years}, as far as the guide knows.`,
  );
}
