/**
 * The swing weight of a golf club: how heavy its head feels, worked out from the club's
 * weight and its balance point, and back. Pure.
 *
 * The scale has its fulcrum 14 inches from the butt end, and about it a club has the
 * moment `weight * (balance - 14)`, in ounces and inches. A0, where the scale begins,
 * is 161 inch-ounces; a point is 1.75 of them, ten points are a letter.
 */

import { amount } from "./amount.js";
import { figure } from "./engine/words.js";

const FULCRUM = 14;
const POINT = 1.75;
const A0 = 161;
const LETTERS = "ABCDEFG";
/** The last point of the scale, G9. */
const LAST = 69;
/** No club is longer, in inches. */
const LONGEST = 48;

/** Units: how many make an ounce or an inch, how a club is read in it and how well. */
const UNITS = {
  g: { of: 28.349523125, such: "425", off: "1", decimals: 1 },
  oz: { of: 1, such: "15.2", off: "0.05", decimals: 2 },
  mm: { of: 25.4, such: "700", off: "2", decimals: 0 },
  in: { of: 1, such: "27.5", off: "0.1", decimals: 2 },
};

/** What is read off a club, and in which units. */
export const READ = /** @type {const} */ ({
  weight: { name: "weight", units: ["g", "oz"] },
  balance: { name: "balance point", units: ["mm", "in"] },
});

/**
 * A reading as typed: the number, its unit, and by how much it may be off.
 * @typedef {{typed: string, unit: keyof typeof UNITS, off: string}} Typed
 */

/**
 * All that is typed, and the swing weight that is wanted.
 * @typedef {{weight: Typed, balance: Typed, aim: string}} Swing
 */

/**
 * What is worked out, or in words what stands in the way and where.
 * @typedef {{points: number, say: string} | {wrong: string, at: string}} Worked
 */

/** Nothing typed yet. @type {Swing} */
export const START = {
  weight: { typed: "", unit: "g", off: UNITS.g.off },
  balance: { typed: "", unit: "mm", off: UNITS.mm.off },
  aim: "",
};

/**
 * Points above A0 of a club of so many ounces that balances so many inches from the butt.
 * @param {number} weight
 * @param {number} balance
 */
export function points(weight, balance) {
  return (weight * (balance - FULCRUM) - A0) / POINT;
}

/**
 * By how many points that may be off, when both readings may be, each by chance.
 * @param {readonly [number, number]} weight the reading and by how much it may be off
 * @param {readonly [number, number]} balance
 */
export function spread([weight, off], [balance, aside]) {
  return Math.hypot((balance - FULCRUM) * off, weight * aside) / POINT;
}

/**
 * The balance point in inches that a club of so many ounces needs.
 * @param {number} points
 * @param {number} weight
 */
export function needed(points, weight) {
  return FULCRUM + (A0 + POINT * points) / weight;
}

/** Points as the scale calls them: 31.6 is D1.6. @param {number} points */
export function named(points) {
  const tenths = Math.floor(10 * points + 0.5);
  const letter = Math.min(Math.floor(tenths / 100), LETTERS.length - 1);
  return LETTERS[letter] + figure((tenths - 100 * letter) / 10);
}

/**
 * Points of a swing weight that is typed as D1.6 or as 31.6; null if it is none on the
 * scale.
 * @param {string} typed
 */
export function pointsOf(typed) {
  const [, letter, digits] = /^\s*([a-g])\s*(\d([.,]\d*)?)\s*$/i.exec(typed) ?? [];
  const above = amount(digits ?? typed);
  if (above === null) return null;
  const points = above + (letter ? 10 * LETTERS.indexOf(letter.toUpperCase()) : 0);
  return isOnScale(points) ? points : null;
}

/**
 * The swing with one of its controls changed: "aim", or "weight" or "balance" alone or
 * with what of it, as "weight unit".
 * @param {Swing} swing
 * @param {string} control
 * @param {string} value
 * @returns {Swing}
 */
export function entered(swing, control, value) {
  if (control === "aim") return { ...swing, aim: value };
  const [which, what = "typed"] = /** @type {["weight" | "balance", "unit" | "off" | undefined]} */ (
    control.split(" ")
  );
  const after = { ...swing[which], [what]: value };
  return { ...swing, [which]: what === "unit" ? readIn(after, swing[which].unit) : after };
}

/**
 * What is typed in another unit than before: the number is what was read, and stays;
 * only what such a reading is usually off by is another.
 * @param {Typed} typed
 * @param {Typed["unit"]} before
 */
function readIn(typed, before) {
  const own = typed.off !== UNITS[before].off;
  return own ? typed : { ...typed, off: UNITS[typed.unit].off };
}

/** The swing weight of what is typed. @param {Swing} swing @returns {Worked} */
export function worked(swing) {
  const weight = read(swing, "weight");
  if ("wrong" in weight) return weight;
  const balance = read(swing, "balance");
  if ("wrong" in balance) return balance;
  if (balance.is <= FULCRUM) return wrong("balance", INSIDE);
  const found = points(weight.is, balance.is);
  if (!isOnScale(found)) return wrong("weight", offScale(found));
  const off = spread([weight.is, weight.off], [balance.is, balance.off]);
  return { points: found, say: `${named(found)}${give(off, 1)}` };
}

const INSIDE =
  "The balance point of a club lies more than 14 inches (356 mm) from the butt end. " +
  "Measure from the end of the grip, and check the unit.";

/** @param {number} points */
const isOnScale = (points) => points > -0.05 && points < LAST + 0.05; // as rounded

/** @param {number} points */
function offScale(points) {
  const how = points < 0 ? "lighter" : "heavier";
  return `That is ${how} than the scale, which runs from A0 to G9. Check both readings and their units.`;
}

/** Where a club of this weight must balance for the wanted swing weight. @param {Swing} swing @returns {Worked} */
export function sought(swing) {
  const typed = swing.aim.trim();
  if (!typed) return wrong("aim", "Type the swing weight that you want, for example D2.");
  const aim = pointsOf(typed);
  if (aim === null) {
    return wrong("aim", `“${typed}” is no swing weight from A0 to G9. Type it as D2 or D1.6.`);
  }
  const weight = read(swing, "weight");
  if ("wrong" in weight) return weight;
  const at = needed(aim, weight.is);
  if (at > LONGEST) return wrong("weight", TOO_LIGHT);
  const { unit } = swing.balance;
  const { of, decimals } = UNITS[unit];
  const place = `${Number((at * of).toFixed(decimals))} ${unit} from the butt end`;
  const off = give((((at - FULCRUM) * weight.off) / weight.is) * of, decimals, ` ${unit}`);
  return { points: aim, say: `For ${named(aim)} it balances ${place}${off}` };
}

const TOO_LIGHT =
  "So light a club would have to balance farther out than any club is long. " +
  "Check the weight and its unit.";

/**
 * A reading in ounces or inches with what it may be off, or what is wrong with it.
 * @param {Swing} swing
 * @param {"weight" | "balance"} which
 */
function read(swing, which) {
  const { typed, unit, off } = swing[which];
  const { name } = READ[which];
  const { of, such, off: usual } = UNITS[unit];
  const [is, aside] = [typed, off].map(amount);
  if (!typed.trim()) return wrong(which, `Type the ${name} in ${unit}, for example ${such}.`);
  if (!is) {
    return wrong(which, `“${typed.trim()}” is no ${name}. Type a number, for example ${such}.`);
  }
  if (aside === null) {
    const many = `Type by how many ${unit} the ${name} may be off, for example ${usual}.`;
    return wrong(`${which} off`, many);
  }
  return { is: is / of, off: aside / of };
}

/** @param {string} at @param {string} say */
const wrong = (at, say) => ({ wrong: say, at });

/** By how much something may be off, in words. @param {number} off @param {number} decimals @param {string} [unit] */
function give(off, decimals, unit = "") {
  const least = Number(off.toFixed(decimals));
  return least ? `, give or take ${least}${unit}` : "";
}
