/** What a person types into the fields of an offer, and what stands there. Pure. */

import { figure } from "../engine/words.js";
import { price, priced, PRICE_WRONG } from "../price.js";

/** @typedef {import("../engine/guide.js").Off} Off */
/**
 * What a field takes: a price, what comes off a worth, a per cent, a currency, or any word.
 * @typedef {"price" | "off" | "percent" | "currency" | "word"} Kind
 */
/** A value, null where the field is empty; or what is wrong. @typedef {{value: any, wrong: string}} Read */

const DEAREST = 1e9;
const BLANKS = /\s/g;
const SHARE = /^(?:(.+)\+)?(\d{1,3}(?:[.,]\d{1,4})?)%$/;
const PERCENT = /^(\d{1,3}(?:[.,]\d{1,4})?)%?$/;
const CURRENCY = /^[A-Z]{3}$/;
const WRONG = {
  dear: `This is more than a price can be here: ${DEAREST} at most.`,
  off: "Type an amount, as 12.50, or a share of the worth, as 40 %.",
  percent: "Type the per cent in figures, from 0 to 100.",
  currency: "Type the three letters of a currency, as EUR.",
};

/** @type {Record<Kind, (typed: string) => Read>} */
const READ = { price: readPrice, off: readOff, percent: readPercent, currency: readCurrency, word: taken };

/** @type {Record<Kind, (value: any) => string>} */
const WRITTEN = {
  price: priced,
  off: writtenOff,
  percent: (value) => (value === null ? "" : figure(value)),
  currency: (value) => value ?? "",
  word: (value) => value ?? "",
};

/** What was typed into a field of a kind. @param {Kind} kind @param {string} typed */
export const read = (kind, typed) => READ[kind](typed);

/** What stands in a field of a kind. @param {Kind} kind @param {any} value */
export const written = (kind, value) => WRITTEN[kind](value);

/** @param {string} typed @returns {Read} */
function readPrice(typed) {
  const found = price(typed);
  if (found === undefined) return refused(PRICE_WRONG);
  return found !== null && found > DEAREST ? refused(WRONG.dear) : taken(found);
}

/** An amount, a share, or both as "3.50 + 10 %". @param {string} typed @returns {Read} */
function readOff(typed) {
  const text = typed.replace(BLANKS, "");
  if (!text) return taken(null);
  const [, first, percent] = SHARE.exec(text) ?? [null, text, "0"];
  const amount = price(first ?? "0");
  const share = number(percent) / 100;
  if (typeof amount !== "number" || share > 1) return refused(WRONG.off);
  return amount > DEAREST ? refused(WRONG.dear) : taken({ amount, share });
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
  const text = typed.trim().toUpperCase();
  if (!text) return taken(null);
  return CURRENCY.test(text) ? taken(text) : refused(WRONG.currency);
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
