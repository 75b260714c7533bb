/** A find (what was read off an object) and a verdict (what follows); no arithmetic. */

/**
 * An option's id or a code; a measure; null for "can't tell".
 * @typedef {string | number | null} Reading
 */

/**
 * One object: its readings in any order, and the parts that are gone.
 * @typedef {object} Item
 * @property {readonly (readonly [string, Reading])[]} readings
 * @property {readonly string[]} gone
 * @property {string | null} member
 */

/**
 * What the seller says, and the clues that are cited for it.
 * @typedef {object} Claim
 * @property {number} model_year
 * @property {readonly string[]} cites
 */

/**
 * What was read off one object (or, one day, a set) under one guide.
 * @typedef {object} Find
 * @property {string} guide
 * @property {readonly Item[]} items
 * @property {Claim | null} claim
 */

/**
 * How probable it is that the part is replaced, and the finding in words.
 * @typedef {object} PartState
 * @property {string} part
 * @property {number} probability
 * @property {string} say
 */

/**
 * What one reading adds for or against the leading model year.
 * @typedef {object} Weight
 * @property {string} clue
 * @property {number} factor
 * @property {string} say
 */

/**
 * A red flag; `kind` is replaced, gone, disagree, outside, claim or guide.
 * @typedef {object} Flag
 * @property {string} kind
 * @property {readonly string[]} about
 * @property {string} say
 * @property {string} ask
 */

/**
 * What one cited clue's reading is worth for the claim, taken alone.
 * @typedef {object} Cited
 * @property {string} clue
 * @property {number} factor
 * @property {string} say
 */

/**
 * The claim weighed: odds for it after the readings over odds before.
 * @typedef {object} ClaimVerdict
 * @property {number} model_year
 * @property {number} bayes_factor
 * @property {string} words
 * @property {string} say
 * @property {readonly Cited[]} cited
 */

/**
 * A clue worth looking at, what it is expected to tell, and why.
 * @typedef {object} Next
 * @property {string} clue
 * @property {number} bits
 * @property {number} bits_per_second
 * @property {string} say
 */

/**
 * The answer, in numbers and in the words that the screens show.
 * @typedef {object} Verdict
 * @property {string} guide
 * @property {readonly (readonly [number, number])[]} model_years
 * @property {number} outside
 * @property {readonly (readonly [number, number])[]} built
 * @property {readonly PartState[]} replaced
 * @property {number} log_evidence
 * @property {number | null} leading
 * @property {string} say
 * @property {string} runner_up
 * @property {string} built_say
 * @property {readonly Weight[]} weights
 * @property {ClaimVerdict | null} claim
 * @property {readonly Flag[]} flags
 * @property {readonly Next[]} next
 * @property {string} exhausted
 */

// A module even without a value to export.
export {};
