/** What a person types into the fields of an offer, and what stands there. Pure. */

import { figure } from "../engine/words.js";
import { currency, CURRENCY_WRONG, money, priced, PRICE_WRONG } from "../price.js";

/** @typedef {import("../engine/guide.js").Off} Off */
/**
 * What a field takes: a price, what comes off a worth, a per cent, a currency, or any word.
 * @typedef {"price" | "off" | "percent" | "currency" | "word"} Kind
 */
/** A value, null where the field is empty; or what is wrong. @typedef {{value: any, wrong: string}} Read */

const DEAREST = 1e9;
const BLANKS = /\s/g;
const SHARE = /^(?:(.+)\+)?(\d{1,3}(?:[.,]\d{0,4})?)%$/;
const PERCENT = /^(\d{1,3}(?:[.,]\d{0,4})?)%?$/;
const WRONG = {
  dear: `This is more than a price can be here: ${DEAREST} at most.`,
  off: "Type an amount, as 12.50, or a share of the worth, as 40 %.",
  percent: "Type the per cent in figures, from 0 to 100.",
};

/** @type {Record<Kind, (typed: string, of: string) => Read>} */
const READ = { price: readPrice, off: readOff, percent: readPercent, currency: readCurrency, word: taken };

/** @type {Record<Kind, (value: any) => string>} */
const WRITTEN = {
  price: priced,
  off: writtenOff,
  percent: (value) => (value === null ? "" : figure(value)),
  currency: (value) => value ?? "",
  word: (value) => value ?? "",
};

/**
 * What was typed into a field of a kind.
 * @param {Kind} kind
 * @param {string} typed
 * @param {string} [of] the currency of the prices, empty where none is said yet
 */
export const read = (kind, typed, of = "") => READ[kind](typed, of);

/** What stands in a field of a kind. @param {Kind} kind @param {any} value */
export const written = (kind, value) => WRITTEN[kind](value);

/** @param {string} typed @param {string} of @returns {Read} */
function readPrice(typed, of) {
  const found = money(typed);
  if (!found) return refused(PRICE_WRONG);
  const wrong = unfit(found, of);
  return wrong ? refused(wrong) : taken(found.price);
}

/**
 * What speaks against a price that can be read.
 * @param {{price: number | null, currency: string}} found
 * @param {string} of
 */
function unfit(found, of) {
  const isOther = of && found.currency && found.currency !== of;
  if (isOther) return `Your prices are in ${of}: type it in ${of}.`;
  return (found.price ?? 0) > DEAREST ? WRONG.dear : "";
}

/**
 * An amount, a share, or both as "3.50 + 10 %".
 * @param {string} typed
 * @param {string} of
 * @returns {Read}
 */
function readOff(typed, of) {
  const text = typed.replace(BLANKS, "");
  if (!text) return taken(null);
  const [, first, percent] = SHARE.exec(text) ?? [null, text, "0"];
  const found = money(first ?? "0");
  const share = number(percent) / 100;
  if (!found || found.price === null || share > 1) return refused(WRONG.off);
  const wrong = unfit(found, of);
  return wrong ? refused(wrong) : taken({ amount: found.price, share });
}

/** @param {string} typed @returns {Read} */
function readPercent(typed) {
  const text = typed.replace(BLANKS, "");
  if (!text) return taken(null);
  const found = PERCENT.exec(text);
  return found && number(found[1]) <= 100 ? taken(number(found[1])) : refused(WRONG.percent);
}

/** @param {string} typed @returns {Read} */
function readCurrency(typed) {
  const found = currency(typed);
  return found === undefined ? refused(CURRENCY_WRONG) : taken(found || null);
}

/** @param {Off | null} off */
function writtenOff(off) {
  if (off === null) return "";
  const percent = `${figure(100 * off.share)} %`;
  if (off.share === 0) return priced(off.amount);
  return off.amount === 0 ? percent : `${priced(off.amount)} + ${percent}`;
}

/** @param {string} text */
const number = (text) => Number(text.replace(",", "."));

/** @param {any} value @returns {Read} */
function taken(value) {
  return { value, wrong: "" };
}

/** @param {string} wrong @returns {Read} */
function refused(wrong) {
  return { value: null, wrong };
}
