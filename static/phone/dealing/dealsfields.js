/** The fields of a deal: what each is called, holds and changes. Pure. */

/** @typedef {import("../engine/deal.js").Deal} Deal */
/** What the person wants of every deal. @typedef {Pick<Deal, "margin" | "hour">} Habits */
/**
 * @typedef {object} Field
 * @property {keyof Deal} key
 * @property {string} label
 * @property {string} name as a sentence begins with it
 * @property {import("./pricestyped.js").Kind} kind
 * @property {(deal: Deal) => any} get
 * @property {(deal: Deal, value: any) => Deal} put null for a field that is empty
 */

/** @type {Habits} */
export const NO_HABITS = Object.freeze({ margin: 0, hour: 0 });

/** @type {readonly Field[]} */
export const FIELDS = [
  field("asked", "Price asked", "The price asked", "price", null),
  field("costs", "Other costs", "What stands for other costs", "price", 0),
  field("margin", "To be left over, in % of its worth", "What is to be left over", "percent", 0),
  field("hour", "An hour of mine is worth", "What an hour is worth", "price", 0),
  field("condition", "Condition", "The condition", "word", ""),
];

/**
 * Whether it is the person's own for all guides, and not said of this find alone: what
 * somebody wants to be left over, and an hour is worth, is the same whatever is bought.
 * @param {string} key
 */
export const isHabit = (key) => key in NO_HABITS;

/**
 * A field; what is as good as nothing stands there as nothing.
 * @param {keyof Deal} key
 * @param {string} label
 * @param {string} name
 * @param {Field["kind"]} kind
 * @param {number | string | null} none
 * @returns {Field}
 */
function field(key, label, name, kind, none) {
  return {
    key,
    label,
    name,
    kind,
    get: (deal) => (deal[key] === none ? null : deal[key]),
    put: (deal, value) => ({ ...deal, [key]: value ?? none }),
  };
}
