// A kept draft, judged: whether it can be read, and what of it the guide still has.
// Pure; session.js is the way in.

import { UNREADABLE } from "./engine/code.js";
import { layouts } from "./engine/guide.js";
import { fits } from "./engine/layout.js";
import { measured } from "./engine/find.js";
import { ALL } from "./scope.js";

/** @typedef {import("./engine/guide.js").Guide} Guide */
/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {import("./engine/find.js").Claim} Claim */
/** @typedef {import("./engine/find.js").Reading} Reading */
/** @typedef {import("./session.js").Draft} Draft */
/** @typedef {import("./session.js").Kept} Kept */
/** @typedef {import("./session.js").State} State */

export const FORMAT = 2;

/** A draft that cannot be taken up again; the message is a sentence to show. */
export class DraftError extends Error {
  name = "DraftError";
}

/**
 * The draft, if this version can read it and it belongs to the guide.
 * @param {any} json @param {Guide} guide @returns {Draft}
 */
export function opened(json, guide) {
  const { format, session } = json ?? {};
  if (Number.isInteger(format) && format > FORMAT) {
    throw new DraftError(
      "This draft was written by a newer version of the app " +
        `(format ${format}; this one reads ${FORMAT}). ` +
        "It is kept as it is; update when online.",
    );
  }
  if (Number.isInteger(format) && 0 < format && format < FORMAT) {
    throw new DraftError(
      "This draft was written by an older version of the app " +
        `(format ${format}; this one reads ${FORMAT}). ` +
        "It is set aside as it is; begin a new find.",
    );
  }
  if (format !== FORMAT || !isState(session) || !isList(session.past, isState)) {
    throw new DraftError(
      "What was kept here is not a draft that this app can read. " +
        "It is set aside as it is; begin a new find.",
    );
  }
  if (session.guide !== guide.id) {
    throw new DraftError(
      `This draft belongs to the guide "${session.guide}", not to "${guide.id}". ` +
        "It is kept as it is; open its own guide to go on.",
    );
  }
  return json;
}

/** @param {any} value */
function isState(value) {
  const { guide, items, at, claim, away, photos, without } = value ?? {};
  return (
    isText(guide) &&
    isList(items, isItem) &&
    isTold(items) &&
    (at === ALL || [...items.keys()].includes(at)) &&
    (claim === null || isClaim(claim)) &&
    typeof away === "boolean" &&
    typeof photos === "boolean" &&
    isList(without, isText)
  );
}

/** @param {any} value */
function isItem(value) {
  const { member, readings, gone } = value ?? {};
  return (
    (member === null || isText(member)) && isList(readings, isPair) && isList(gone, isText)
  );
}

/** Whether there is one object, or several that can be told apart. @param {any[]} items */
function isTold(items) {
  const members = new Set(items.map(({ member }) => member));
  if (items.length < 2) return items.length === 1;
  return members.size === items.length && !members.has(null);
}

/** @param {unknown} value */
const isText = (value) => typeof value === "string";

/** @param {unknown} value @param {(each: unknown) => boolean} holds */
const isList = (value, holds) => Array.isArray(value) && value.every(holds);

/** @param {any} value */
const isClaim = (value) =>
  Number.isInteger(value?.model_year) && isList(value.cites, isText);

/** @param {any} value */
function isPair(value) {
  if (!Array.isArray(value) || value.length !== 2 || !isText(value[0])) return false;
  const [, reading] = value;
  return reading === null || isText(reading) || Number.isFinite(reading) || isMeasured(reading);
}

/** Whether it is a size with its error. @param {any} reading */
function isMeasured(reading) {
  const { value, error } = reading ?? {};
  return Number.isFinite(value) && Number.isFinite(error) && error > 0;
}

/**
 * Takes a state without what the guide no longer has, built anew from known keys alone,
 * and says what was lost. What several states share, they share afterwards.
 * @param {Guide} guide
 * @returns {(state: State) => {state: State, lost: string[]}}
 */
export function mended(guide) {
  /** @type {Map<Kept, Kept>} */
  const known = new Map();
  return (state) => {
    const { sift, lost } = sieve();
    const there = sift(state.items, (item) => leftOut(item, state.items, guide));
    const whole = there.length ? there : [{ ...state.items[0], member: null }];
    const items = whole.map((item) => {
      const again = known.get(item) ?? mendedItem(item, guide, sift);
      known.set(item, again);
      return again;
    });
    const asked = state.at === ALL ? -1 : there.indexOf(state.items[state.at]);
    const [claim = null] = sift([state.claim], (claim) => claimLost(claim, guide));
    const cites = sift(claim?.cites ?? [], (clue) => clueLost(clue, guide));
    return {
      state: {
        guide: guide.id,
        items,
        at: asked < 0 || items.length === 1 ? ALL : asked,
        claim: claim && { model_year: claim.model_year, cites },
        away: state.away,
        photos: state.photos,
        without: [...state.without],
      },
      // What all members have lost is said once.
      lost: [...new Set(lost)],
    };
  };
}

/** A filter that keeps the complaints about what does not pass. */
function sieve() {
  /** @type {string[]} */
  const lost = [];
  /** @template T @param {readonly T[]} list @param {(each: T) => string} complaint */
  const sift = (list, complaint) =>
    list.filter((each) => {
      const loss = complaint(each);
      if (loss) lost.push(loss);
      return !loss;
    });
  return { sift, lost };
}

/**
 * @param {Kept} item @param {Guide} guide @param {ReturnType<typeof sieve>["sift"]} sift
 * @returns {Kept}
 */
function mendedItem({ member, readings, gone }, guide, sift) {
  const [id = null] = sift([member], (id) => memberLost(id, guide));
  return {
    member: id,
    readings: sift(readings, (pair) => readingLost(pair, guide)).map(
      ([clue, reading]) => /** @type {const} */ ([clue, reading]),
    ),
    gone: sift(gone, (part) => partLost(part, guide)),
  };
}

/** @param {readonly [string, Reading]} pair @param {Guide} guide */
function readingLost([id, reading], guide) {
  const clue = guide.clues.find((clue) => clue.id === id);
  if (!clue) return clueLost(id, guide);
  if (reading === null || takes(clue.kind, reading)) return "";
  const read = typeof reading === "object" ? measured(reading).value : reading;
  return `The guide no longer takes "${read}" for the ${clue.name}; look again.`;
}

/** @param {string} id @param {Guide} guide */
function clueLost(id, guide) {
  if (guide.clues.some((clue) => clue.id === id)) return "";
  return `The guide no longer has the clue "${id}"; what was kept of it is left out.`;
}

/** @param {string} id @param {Guide} guide */
function partLost(id, guide) {
  const part = guide.parts.find((part) => part.id === id);
  if (part && part.replaced > 0) return "";
  return part
    ? `The guide now says that the ${part.name} is never replaced, so it is not gone.`
    : `The guide no longer has the part "${id}", which was gone.`;
}

/** @param {string | null} id @param {Guide} guide */
function memberLost(id, guide) {
  if (id === null || guide.members?.all.includes(id)) return "";
  return `The guide no longer has the set member "${id}"; it is left out.`;
}

/** What a set loses with a member; one object is still an object. @param {Kept} item @param {readonly Kept[]} items @param {Guide} guide */
function leftOut({ member }, items, guide) {
  if (items.length === 1 || !memberLost(member, guide)) return "";
  return `The guide no longer has the set member "${member}"; what was read on it is left out.`;
}

/** @param {Claim | null} claim @param {Guide} guide */
function claimLost(claim, guide) {
  if (!claim || guide.years.some(({ year }) => year === claim.model_year)) return "";
  const { model_year } = claim;
  return `The guide no longer has the model year ${model_year}; the claim is left out.`;
}

/**
 * Whether a clue of this kind can have the reading.
 * @param {Clue["kind"]} kind @param {NonNullable<Reading>} reading
 */
function takes(kind, reading) {
  switch (kind.name) {
    case "choice":
      return kind.options.some(({ id }) => id === reading);
    case "measure":
      return isSize(kind, reading);
    case "code":
      return typeof reading === "string" && spells(kind, reading);
    case "number":
      return isBetween(reading, kind.first[0][1], kind.last) && Number.isInteger(reading);
  }
}

/** @param {import("./engine/guide.js").Measure} kind @param {NonNullable<Reading>} reading */
function isSize({ low, high }, reading) {
  if (typeof reading === "string") return false;
  const { value, error } = measured(reading);
  return isBetween(value, low, high) && error <= high - low;
}

/** @param {unknown} reading @param {number} least @param {number} most */
const isBetween = (reading, least, most) =>
  typeof reading === "number" && least <= reading && reading <= most;

/** @param {import("./engine/guide.js").Code} code @param {string} reading */
const spells = (code, reading) =>
  layouts(code).some(({ fields }) => fits(reading, fields, UNREADABLE));
