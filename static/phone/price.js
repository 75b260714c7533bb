/** A price as people type it, and as it is written. Pure. */

const PRICE = /^\d+([.,]\d{1,2})?$/;
const BLANKS = /\s/g;

/** What to do about a price that is none; "1,200" could be read in two ways. */
export const PRICE_WRONG = "Type the price in figures, as 1200 or 12.50, with nothing beside it.";

/**
 * The price; null where nothing was typed, undefined where it is none.
 * @param {string} typed
 */
export function price(typed) {
  const text = typed.replace(BLANKS, "");
  if (!text) return null;
  return PRICE.test(text) ? Number(text.replace(",", ".")) : undefined;
}

/** A price in figures: 40, or 12.50; nothing where there is none. @param {number | null} price */
export function priced(price) {
  if (price === null) return "";
  return Number.isInteger(price) ? String(price) : price.toFixed(2);
}
