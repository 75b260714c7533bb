/**
 * A guide as frozen records; no arithmetic, no files.
 *
 * Months are counted `t = 12 * year + month - 1`, in pairs that include both ends.
 * Everything that has an order is an array in the guide's order.
 */

export const FORMAT = 1;

/**
 * A drawn node: tag, attributes, children; what it means is the views' business.
 * @typedef {readonly [string, readonly (readonly [string, string | number])[],
 *   readonly (Picture | string)[]]} Picture
 */

/**
 * A catalogue year, built in the months `opens` to `closes`.
 * @typedef {object} ModelYear
 * @property {number} year
 * @property {number} opens
 * @property {number} closes
 * @property {number} volume
 * @property {string} note
 */

/**
 * A part that can be replaced, alone or when the part it follows is.
 * @typedef {object} Part
 * @property {string} id
 * @property {string} name
 * @property {number} replaced
 * @property {string | null} follows
 * @property {number} share
 * @property {number} whole_set
 */

/**
 * When an option was made: model years, build months, or both.
 *
 * With `members` it counts for those alone (never when the member is unknown);
 * with `excluded` for all others. `fade` is how many months it lingers outside.
 * @typedef {object} Span
 * @property {readonly [number, number] | null} years
 * @property {number | null} since
 * @property {number | null} until
 * @property {number} fade
 * @property {number} share
 * @property {readonly string[]} members
 * @property {readonly string[]} excluded
 */

/**
 * One answer of a choice. Without spans it never left the works.
 * @typedef {object} Option
 * @property {string} id
 * @property {string} label
 * @property {readonly string[]} like
 * @property {readonly Span[]} seen
 * @property {Picture | null} picture
 * @property {string} source
 */

/**
 * A clue with a few answers; `replacement` is what a replaced part shows.
 * @typedef {object} Choice
 * @property {"choice"} name
 * @property {readonly Option[]} options
 * @property {readonly (readonly [string, number])[]} replacement
 */

/**
 * The size as made in the given model years.
 * @typedef {object} Size
 * @property {readonly [number, number]} years
 * @property {number} mean
 * @property {number} sd
 * @property {readonly string[]} members
 * @property {readonly string[]} excluded
 */

/**
 * A clue that is measured: a length, a mass, an angle, in `unit`.
 *
 * `helper` names a calculation that helps to reach the measure: swing-weight or none.
 * @typedef {object} Measure
 * @property {"measure"} name
 * @property {string} unit
 * @property {number} low
 * @property {number} high
 * @property {number} wear
 * @property {readonly Size[]} sizes
 * @property {"" | "swing-weight"} helper
 */

/**
 * One field of a code: `means` is month, year, year-letter, model-year, week, day
 * or plain.
 *
 * `codes` says what stands for a year (year-letter) or a model year (model-year),
 * `weeks` how a week is counted: iso or sunday; for other meanings they are empty.
 * @typedef {object} Field
 * @property {string} name
 * @property {"month" | "year" | "year-letter" | "model-year" | "week" | "day" | "plain"} means
 * @property {number} width
 * @property {string} alphabet
 * @property {number} odd
 * @property {readonly (readonly [number, string])[]} codes
 * @property {"" | "iso" | "sunday"} weeks
 */

/**
 * One way in which a code was laid out, in use in the given years, or always.
 * @typedef {object} Layout
 * @property {readonly [number, number] | null} years
 * @property {readonly Field[]} fields
 */

/**
 * A clue that is spelled out: a stamped or printed string of fields.
 *
 * A code has `fields`, or several `layouts`. It `means` when the object was made, or
 * a date that it was made not-before: marks stay in use for `lag` years on average.
 * @typedef {object} Code
 * @property {"code"} name
 * @property {readonly Field[]} fields
 * @property {"made" | "not-before"} means
 * @property {number} lag
 * @property {readonly Layout[]} layouts
 */

/**
 * A clue that is counted: a serial, patent or registration number.
 *
 * `first` is the first number of each year, `last` the last of all; `means` and `lag`
 * are as for a code.
 * @typedef {object} Number
 * @property {"number"} name
 * @property {"made" | "not-before"} means
 * @property {number} lag
 * @property {readonly (readonly [number, number])[]} first
 * @property {number} last
 */

/**
 * The same under a name that is no type of the language's own.
 * @typedef {import("./guide.js").Number} Counted
 */

/**
 * One thing to look at, on one part; a `popular` one is what people often cite.
 * @typedef {object} Clue
 * @property {string} id
 * @property {string} part
 * @property {string} name
 * @property {Choice | Measure | Code | Counted} kind
 * @property {string} ask
 * @property {string} where
 * @property {string} why
 * @property {string} photo
 * @property {number} seconds
 * @property {number} unreadable
 * @property {string} seen_from
 * @property {string} needs
 * @property {number} misread
 * @property {string} spot
 * @property {Picture | null} picture
 * @property {string} source
 * @property {boolean} popular
 */

/**
 * What a set consists of, was sold as, and how often one is a stray.
 *
 * `names` is what members are called, where that is not their id.
 * @typedef {object} Members
 * @property {readonly string[]} all
 * @property {readonly string[]} usual
 * @property {number} stray
 * @property {readonly (readonly [string, number])[]} stray_for
 * @property {readonly (readonly [string, string])[]} names
 */

/**
 * What a guide's flag waits for; each condition uses the fields it needs.
 *
 * `clue` with `among` (option ids, or codes with ? for any character), `over`
 * or `under`; `part` with `replaced_over`; or `years`, which the leading model
 * year must lie in.
 * @typedef {object} Condition
 * @property {string | null} clue
 * @property {readonly string[]} among
 * @property {number | null} over
 * @property {number | null} under
 * @property {string | null} part
 * @property {number | null} replaced_over
 * @property {readonly [number, number] | null} years
 */

/**
 * A red flag of the guide's own, raised when all conditions hold.
 * @typedef {object} GuideFlag
 * @property {readonly Condition[]} when
 * @property {string} say
 * @property {string} ask
 */

/**
 * What is taken off a worth: an amount of money, a share of the worth, or both.
 * @typedef {object} Off
 * @property {number} amount
 * @property {number} share
 */

/**
 * What a part takes off when it is replaced, or what it costs to put right where
 * that is less.
 * @typedef {object} PartPrice
 * @property {string} part
 * @property {Off} off
 * @property {number | null} put_right
 */

/**
 * What a whole set is worth, and what a missing member and a stray take off.
 * @typedef {object} SetPrices
 * @property {readonly (readonly [number, number])[]} worth
 * @property {number} other
 * @property {Off} missing
 * @property {Off} stray
 */

/**
 * What one object of each model year is worth with all its parts original; `other`
 * is the worth of any other year and of what is outside.
 *
 * `condition` is what each grade of condition takes off. Prices of one's own have no
 * date and no source.
 * @typedef {object} Prices
 * @property {string} currency
 * @property {string} date
 * @property {string} source
 * @property {readonly (readonly [number, number])[]} worth
 * @property {number} other
 * @property {readonly (readonly [string, Off])[]} condition
 * @property {readonly PartPrice[]} parts
 * @property {SetPrices | null} set
 */

/**
 * All that is known about one line of objects, or with `anything` about marks that
 * any object may have. The `verdict` is a model year, or a range of them.
 * @typedef {object} Guide
 * @property {number} format
 * @property {string} id
 * @property {string} title
 * @property {string} maker
 * @property {string} kind
 * @property {boolean} fiction
 * @property {string} about
 * @property {string} source
 * @property {string} updated
 * @property {string} drawing
 * @property {number} floor
 * @property {number} misread
 * @property {number} outside
 * @property {readonly ModelYear[]} years
 * @property {readonly Part[]} parts
 * @property {readonly Clue[]} clues
 * @property {Members | null} members
 * @property {readonly GuideFlag[]} flags
 * @property {readonly string[]} cautions
 * @property {"year" | "range"} verdict
 * @property {boolean} anything
 * @property {Prices | null} prices
 */

/**
 * The ways in which a code was laid out: its plain fields are one.
 * @param {Pick<Code, "fields" | "layouts">} code
 * @returns {readonly Layout[]}
 */
export function layouts(code) {
  return code.layouts.length ? code.layouts : [{ years: null, fields: code.fields }];
}

/**
 * The guide in a packed guide, which is one already; another format is refused.
 * @param {any} packed parsed JSON
 * @returns {Guide}
 */
export function unpack(packed) {
  if (packed.format !== FORMAT) {
    throw new Error(
      `This guide is format ${packed.format}, the app reads ${FORMAT}: ` +
        "update the app when online.",
    );
  }
  return _frozen(packed);
}

/**
 * The value with everything in it frozen.
 * @template T
 * @param {T} value
 * @returns {T}
 */
function _frozen(value) {
  if (typeof value === "object" && value !== null) {
    Object.values(value).forEach(_frozen);
    Object.freeze(value);
  }
  return value;
}
