/** A find (what was read off an object) and a verdict (what follows); no arithmetic. */

/**
 * A measure that is only known with a standard error, as one taken from a photo.
 * @typedef {object} Measured
 * @property {number} value
 * @property {number} error
 */

/**
 * An option's id or a code; a measure; null for "can't tell".
 * @typedef {string | number | Measured | null} Reading
 */

/**
 * A reading of a measure with its standard error, 0 where it has none.
 * @param {Reading | undefined} reading
 * @returns {Measured}
 */
export function measured(reading) {
  if (typeof reading === "object" && reading !== null) {
    return reading;
  }
  return { value: Number(reading), error: 0 };
}

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
 * What was read off one object, or off the members of a set, under one guide.
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
 * A red flag; `kind` is replaced, gone, disagree, outside, claim, guide, or of a
 * set stray, whole-set or missing. `members` are those of the set that it is about.
 * @typedef {object} Flag
 * @property {string} kind
 * @property {readonly string[]} about
 * @property {string} say
 * @property {string} ask
 * @property {readonly string[]} members
 */

/**
 * What one cited clue is worth for the claim, taken alone.
 *
 * If it was not read: what the reading would be worth that the claimed year most
 * likely shows.
 * @typedef {object} Cited
 * @property {string} clue
 * @property {boolean} read
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
 * A clue to look at, what it is expected to tell, and why; `what` names it with
 * the member of the set that it is on.
 * @typedef {object} Next
 * @property {string | null} member
 * @property {string} clue
 * @property {string} what
 * @property {number} bits
 * @property {number} bits_per_second
 * @property {string} say
 */

/**
 * One member of a set: judged alone, up to `say`, and then within the set.
 *
 * `stray_say` is empty unless the member is more likely a stray than not. `factor`
 * is what the member adds for the set's leading year.
 * @typedef {object} MemberVerdict
 * @property {string} member
 * @property {readonly (readonly [number, number])[]} model_years
 * @property {number} outside
 * @property {readonly PartState[]} replaced
 * @property {number | null} leading
 * @property {string} say
 * @property {number} stray
 * @property {string} stray_say
 * @property {number} factor
 * @property {string} factor_say
 */

/**
 * The answer of a guide that brackets: from `since` to `until`, both included.
 *
 * `start_say` and `stop_say` name the readings that set the ends; they are empty where
 * the guide's own years end.
 * @typedef {object} Range
 * @property {number} since
 * @property {number} until
 * @property {number} probability
 * @property {string} say
 * @property {string} start_say
 * @property {string} stop_say
 */

/**
 * The answer, in numbers and in the words that the screens show.
 *
 * `replaced` and `weights` belong to one object, all from `whole_set` to `set_say` to a
 * set; `missing` and `surplus` are measured against what a set was sold as. A guide
 * that brackets has a `range`, and says nothing of a runner-up or of months.
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
 * @property {readonly PartState[]} whole_set
 * @property {readonly MemberVerdict[]} members
 * @property {readonly string[]} missing
 * @property {readonly string[]} surplus
 * @property {string} set_say
 * @property {Range | null} range
 */
