import assert from "node:assert/strict";
import { test } from "node:test";

import { read, written } from "../../static/phone/kept/own.js";
import { price, priced } from "../../static/phone/price.js";

const WHOLE = { badInput: false };

test("prices are read with comma or point", () => {
  const typed = ["40", "12,5", "12.50", " 1 200 ", "1\u202f200,99", "0"];

  assert.deepEqual(typed.map(price), [40, 12.5, 12.5, 1200, 1200.99, 0]);
});

test("nothing typed is no price", () => {
  assert.deepEqual(["", "  "].map(price), [null, null]);
});

test("what could be two prices is none", () => {
  const typed = ["1,200", "1.200", "1.200,50", "-3", "€ 40", "40 EUR", "1e3", "forty", ".5"];

  assert.deepEqual(typed.map(price), typed.map(() => undefined));
});

test("prices are written as they are paid", () => {
  assert.deepEqual([null, 40, 12.5, 0].map(priced), ["", "40", "12.50", "0"]);
});

test("fields come as the log takes them", () => {
  assert.deepEqual(read("title", " Iron ", WHOLE), { own: { title: "Iron" }, wrong: "" });
  assert.deepEqual(read("note", " as it is ", WHOLE).own, { note: " as it is " });
  assert.deepEqual(read("currency", " eur", WHOLE).own, { currency: "EUR" });
  assert.deepEqual(read("paid", "", WHOLE).own, { paid: null });
});

test("half a date is not taken for none", () => {
  const { own, wrong } = read("date", "", { badInput: true });

  assert.deepEqual(own, {});
  assert.match(wrong, /whole day/);
});

test("what is wrong with a price is said", () => {
  assert.match(read("asked", "1,200", WHOLE).wrong, /as 1200 or 12\.50/);
});

test("fields stand there as they were typed", () => {
  const entry = /** @type {any} */ ({ title: "Iron", asked: null, paid: 27.5 });
  const fields = /** @type {const} */ (["title", "asked", "paid"]);

  assert.deepEqual(fields.map((field) => written(entry, field)), ["Iron", "", "27.50"]);
});
