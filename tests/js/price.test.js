import assert from "node:assert/strict";
import { test } from "node:test";

import { read, written } from "../../static/phone/kept/own.js";
import { currency, money, price, priced } from "../../static/phone/price.js";

const WHOLE = { badInput: false };

test("prices are read with comma or point", () => {
  const typed = ["40", "12,5", "12.50", " 1 200 ", "1\u202f200,99", "0"];

  assert.deepEqual(typed.map(price), [40, 12.5, 12.5, 1200, 1200.99, 0]);
});

test("nothing typed is no price", () => {
  assert.deepEqual(["", "  "].map(price), [null, null]);
});

test("what could be two prices is none", () => {
  const typed = ["1,200", "1.200", "1.200,50", "-3", "1e3", "forty", ".5", "£", "40 shillings"];

  assert.deepEqual(typed.map(price), typed.map(() => undefined));
});

test("a price may have its currency beside it", () => {
  const typed = ["£20", "20 EUR", "eur 20", "$12,5", "20 €", "20,"];

  assert.deepEqual(typed.map(price), [20, 20, 20, 12.5, 20, 20]);
  assert.deepEqual(
    typed.map((text) => money(text)?.currency),
    ["GBP", "EUR", "EUR", "USD", "EUR", ""],
  );
  assert.deepEqual(["£20 GBP", "20 XXQ"].map(money), [undefined, undefined]);
});

test("a currency is typed as a sign or by its letters", () => {
  const typed = ["£", "€", "$", " eur", "dkk", ""];

  assert.deepEqual(typed.map(currency), ["GBP", "EUR", "USD", "EUR", "DKK", ""]);
  assert.deepEqual(
    ["POU", "pounds", "E", "££", "constructor"].map(currency),
    [undefined, undefined, undefined, undefined, undefined],
  );
});

test("without a list of currencies three letters are one", () => {
  const known = Intl.supportedValuesOf;
  delete Intl.supportedValuesOf;
  const found = ["POU", "pound"].map(currency);
  Intl.supportedValuesOf = known;

  assert.deepEqual(found, ["POU", undefined]);
});

test("prices are written as they are paid", () => {
  assert.deepEqual([null, 40, 12.5, 0].map(priced), ["", "40", "12.50", "0"]);
});

test("fields come as the log takes them", () => {
  assert.deepEqual(read("title", " Iron ", WHOLE), { own: { title: "Iron" }, wrong: "" });
  assert.deepEqual(read("note", " as it is ", WHOLE).own, { note: " as it is " });
  assert.deepEqual(read("currency", " eur", WHOLE).own, { currency: "EUR" });
  assert.deepEqual(read("currency", "£", WHOLE).own, { currency: "GBP" });
  assert.deepEqual(read("paid", "£20", WHOLE).own, { paid: 20 });
  assert.deepEqual(read("paid", "", WHOLE).own, { paid: null });
});

test("half a date is not taken for none", () => {
  const { own, wrong } = read("date", "", { badInput: true });

  assert.deepEqual(own, {});
  assert.match(wrong, /whole day/);
});

test("what is wrong with a price is said", () => {
  assert.match(read("asked", "1,200", WHOLE).wrong, /as 1200 or 12\.50/);
  assert.match(read("currency", "pounds", WHOLE).wrong, /^This is no currency/);
});

test("fields stand there as they were typed", () => {
  const entry = /** @type {any} */ ({ title: "Iron", asked: null, paid: 27.5 });
  const fields = /** @type {const} */ (["title", "asked", "paid"]);

  assert.deepEqual(fields.map((field) => written(entry, field)), ["Iron", "", "27.50"]);
});
