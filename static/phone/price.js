/** A price and a currency as people type them, and as they are written. Pure. */

/** Figures with at most a sign or the letters of a currency, before or after. */
const PRICE = /^(\D*)(\d+(?:[.,]\d{0,2})?)(\D*)$/;
const BLANKS = /\s/g;
const LETTERS = /^[A-Z]{3}$/;
/** @type {Record<string, string>} */
const SIGNS = { "£": "GBP", "€": "EUR", $: "USD" };

/** What to do about a price that is none; "1,200" could be read in two ways. */
export const PRICE_WRONG = "Type the price in figures, as 1200 or 12.50.";
export const CURRENCY_WRONG = "This is no currency: type its three letters, as EUR, GBP or USD.";

/**
 * The price; null where nothing was typed, undefined where it is none.
 * @param {string} typed
 */
export const price = (typed) => money(typed)?.price;

/**
 * A price with the currency that was typed with it, if any; undefined where it is none.
 * @param {string} typed
 * @returns {{price: number | null, currency: string} | undefined}
 */
export function money(typed) {
  const text = typed.replace(BLANKS, "");
  if (!text) return { price: null, currency: "" };
  const [, before = "", figures = "", after = ""] = PRICE.exec(text) ?? [];
  const of = currency(before || after);
  if (!figures || (before && after) || of === undefined) return undefined;
  return { price: Number(figures.replace(",", ".")), currency: of };
}

/**
 * The three letters of a currency, as ISO 4217 has them; empty where nothing was typed,
 * undefined where it is none.
 * @param {string} typed
 */
export function currency(typed) {
  const text = typed.trim().toUpperCase();
  const code = SIGNS[text] ?? text;
  return !code || isCurrency(code) ? code : undefined;
}

/** Whether there is such a currency; an old browser knows no list of them. @param {string} code */
function isCurrency(code) {
  return LETTERS.test(code) && (Intl.supportedValuesOf?.("currency").includes(code) ?? true);
}

/** A price in figures: 40, or 12.50; nothing where there is none. @param {number | null} price */
export function priced(price) {
  if (price === null) return "";
  return Number.isInteger(price) ? String(price) : price.toFixed(2);
}
