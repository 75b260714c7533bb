// What a person types into the fields of a find, taken or refused before it is saved.

import assert from "node:assert/strict";
import { test } from "node:test";

import { read, written } from "../../static/phone/kept/own.js";
import { entry } from "../../static/phone/log/record.js";
import { json } from "./kept.js";

const whole = { badInput: false };

for (const [field, typed, told] of [
  ["currency", "pou", /This is no currency/],
  ["currency", "euro", /type its three letters/],
  ["date", "2026-02-30", /a day is needed/],
  ["asked", "forty", /Type the price in figures/],
  ["paid", "1,200", /Type the price in figures/],
]) {
  test(`${typed} is no ${field}`, () => {
    const { own, wrong } = read(field, typed, whole);

    assert.deepEqual(own, {});
    assert.match(wrong, told);
  });
}

test("half a date is told as such", () => {
  assert.match(read("date", "", { badInput: true }).wrong, /whole day/);
});

for (const [field, typed, taken] of [
  ["currency", " eur ", "EUR"],
  ["currency", "", ""],
  ["date", "2026-11-25", "2026-11-25"],
  ["date", "", ""],
  ["asked", "12,5", 12.5],
  ["paid", "", null],
  ["title", " Iron ", "Iron"],
  ["note", " as it is ", " as it is "],
]) {
  test(`${JSON.stringify(typed)} is a ${field}`, () => {
    assert.deepEqual(read(field, typed, whole), { own: { [field]: taken }, wrong: "" });
  });
}

test("fields are written as a person would", () => {
  const full = entry(json({ asked: 12.5, paid: null }));

  assert.deepEqual(["asked", "paid", "currency"].map((field) => written(full, field)), ["12.50", "", "EUR"]);
});
