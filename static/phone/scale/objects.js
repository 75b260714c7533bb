/**
 * Things of a fixed size that people carry: what is laid beside an object as a scale.
 *
 * Sizes are in millimetres. `doubt` is the standard deviation of a single one about its
 * size: for the card from the limits of the standard, 85.47 to 85.72 mm; for coins our
 * own guess for mint and wear. `standing` says who told the size: "published" by who
 * issues or regulates it, or "reported" by others. Coins that are not round are left out,
 * as the 20 and 50 pence and the 1 pound are. A leaf.
 */

/** @typedef {"published" | "reported"} Standing */
/**
 * @typedef {object} Card
 * @property {"card"} shape
 * @property {string} id
 * @property {string} name
 * @property {number} width The long side.
 * @property {number} height
 * @property {number} doubt
 * @property {Standing} standing
 */
/**
 * @typedef {object} Coin
 * @property {"coin"} shape
 * @property {string} id
 * @property {string} name
 * @property {string} currency
 * @property {number} diameter
 * @property {number} doubt
 * @property {Standing} standing
 */

const COIN_DOUBT = 0.05;

/** ISO/IEC 7810, ID-1: bank cards, and many identity cards and driving licences. @type {Card} */
export const CARD = Object.freeze({
  shape: "card",
  id: "card",
  name: "a bank card",
  width: 85.6,
  height: 53.98,
  doubt: 0.07,
  standing: "reported",
});

/** In the order of a purse: by currency, the largest value first. @type {readonly Coin[]} */
export const COINS = Object.freeze([
  // Council Regulation (EC) No 975/98; from 20 cent down by the central bank's list.
  coin("EUR", "2 euro", 25.75, "published"),
  coin("EUR", "1 euro", 23.25, "published"),
  coin("EUR", "50 cent", 24.25, "published"),
  // Seven notches: its rim is what lies between them.
  coin("EUR", "20 cent", 22.25, "reported"),
  coin("EUR", "10 cent", 19.75, "reported"),
  coin("EUR", "5 cent", 21.25, "reported"),
  coin("EUR", "2 cent", 18.75, "reported"),
  coin("EUR", "1 cent", 16.25, "reported"),
  coin("GBP", "2 pounds", 28.4, "reported"),
  coin("GBP", "10 pence (from 1992 on)", 24.5, "reported"),
  coin("GBP", "5 pence (from 1990 on)", 18, "reported"),
  coin("GBP", "2 pence", 25.9, "reported"),
  coin("GBP", "1 penny", 20.3, "reported"),
  // United States Mint, Coin Specifications.
  coin("USD", "1 dollar (small)", 26.49, "published"),
  coin("USD", "half dollar", 30.61, "published"),
  coin("USD", "quarter", 24.26, "published"),
  coin("USD", "dime", 17.91, "published"),
  coin("USD", "nickel", 21.21, "published"),
  coin("USD", "cent", 19.05, "published"),
]);

/** All scales, the best first: a card gives tilt away and a coin only partly. @type {readonly (Card | Coin)[]} */
export const SCALES = Object.freeze([CARD, ...COINS]);

/**
 * @param {string} currency @param {string} name @param {number} diameter
 * @param {Standing} standing @returns {Coin}
 */
function coin(currency, name, diameter, standing) {
  const id = `${currency} ${name.replace(/ \(.*/, "")}`.toLowerCase().replaceAll(" ", "-");
  const size = { diameter, doubt: COIN_DOUBT };
  return Object.freeze({ shape: "coin", id, name, currency, ...size, standing });
}
