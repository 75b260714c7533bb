// What follows from a field of the offer while it is typed into.

import assert from "node:assert/strict";
import { test } from "node:test";

import { FIELDS, NO_HABITS } from "../../static/phone/dealing/dealsfields.js";
import { readAt, trouble, withTyped } from "../../static/phone/dealing/offertyped.js";
import { sections } from "../../static/phone/dealing/pricesfields.js";
import { wantedLimit } from "../../static/phone/view/wantssay.js";
import { wanted } from "./wanted.js";

const PRICES = {
  currency: "EUR",
  date: "",
  source: "",
  worth: [[1957, 85]],
  other: 6,
  condition: [],
  parts: [],
  set: null,
};
const GUIDE = /** @type {any} */ ({ years: [{ year: 1957 }], parts: [], members: null, prices: null });
const DEAL = { asked: null, costs: 0, condition: "", ...NO_HABITS };
const TERMS = { prices: PRICES, deal: DEAL };
const byKey = (fields) => new Map(fields.map((field) => [field.key, field]));
const THERE = {
  deals: byKey(FIELDS),
  prices: byKey(sections(GUIDE, PRICES).flatMap(({ fields }) => fields)),
};

test("what is typed counts as if it were taken", () => {
  assert.equal(withTyped(THERE, "asked", "€28,5", TERMS).deal.asked, 28.5);
  assert.deepEqual(withTyped(THERE, "worth/1957", "90", TERMS).prices.worth, [[1957, 90]]);
  assert.deepEqual([PRICES.worth, DEAL.asked], [[[1957, 85]], null]);
});

test("what cannot be read changes nothing and is told", () => {
  assert.equal(withTyped(THERE, "asked", "dear", TERMS), TERMS);
  assert.match(readAt(THERE, "asked", "dear", TERMS).wrong, /^Type the price/);
  assert.match(readAt(THERE, "asked", "£20", TERMS).wrong, /^Your prices are in EUR/);
});

test("trouble names its field", () => {
  assert.equal(trouble(THERE, "asked"), "The price asked cannot be read: mend it below.");
  assert.equal(
    trouble(THERE, "worth/1957"),
    "“1957” among your prices cannot be read: mend it below.",
  );
  for (const { name } of FIELDS) assert.match(name, /^(The|What) /);
});

test("the likeliest want with a limit is held against the price", () => {
  const guide = { ...GUIDE, id: "plain" };
  const find = { items: [{ member: null, readings: [["toe", "round"]], gone: [] }] };
  const verdict = { model_years: [[1957, 0.4], [1958, 0.6]], members: [] };
  const of = (number, year, fields) =>
    wanted(number, { guide: "plain", since: year, until: year, member: null, ...fields });
  const wants = [of(1, 1957, { most: 40 }), of(2, 1958, { most: null })];
  const judged = /** @type {any} */ ({ guide, find, verdict });
  const said = (asked) => wantedLimit(judged, wants, { asked, currency: "EUR" });

  assert.equal(
    said(44),
    "This may be what you want: 44.00 EUR is asked, 4.00 EUR more than you wanted to pay.",
  );
  assert.equal(said(null), "");
  assert.equal(wantedLimit(judged, [], { asked: 44, currency: "EUR" }), "");
});
