import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { FIELDS, isHabit, NO_HABITS } from "../../static/phone/dealing/dealsfields.js";
import { beginning, counting, lost, priceOf } from "../../static/phone/dealing/prices.js";
import { sections } from "../../static/phone/dealing/pricesfields.js";
import { read, written } from "../../static/phone/dealing/pricestyped.js";
import { unpack } from "../../static/phone/engine/guide.js";
import { RecordError } from "../../static/phone/log/fields.js";
import { prices as taken } from "../../static/phone/log/prices.js";

const VECTOR = new URL("../vectors/wrackham-teale-dotterel.json", import.meta.url);
const DOTTEREL = unpack(JSON.parse(readFileSync(VECTOR, "utf8")).guide);
const BARE = { ...DOTTEREL, prices: null };
const NONE = beginning(BARE, "DKK");
const years = (first, last) =>
  Array.from({ length: last - first + 1 }, (_, i) => ({ year: first + i }));
const MARKS = { ...BARE, verdict: "range", years: years(1848, 1871) };

/** The fields of a guide's table by their keys. */
const fields = (guide, prices = NONE) =>
  new Map(sections(guide, prices).flatMap((part) => part.fields).map((each) => [each.key, each]));
/** The prices after what was typed into some of their fields, one after the other. */
const typedIn = (guide, texts, prices = NONE) =>
  Object.entries(texts).reduce((made, [key, text]) => {
    const field = fields(guide, prices).get(key);
    const { value, wrong } = read(field.kind, text);
    assert.equal(wrong, "", key);
    return field.put(made, value);
  }, prices);
/** What stands in a field. */
const standing = (guide, prices, key) => {
  const { kind, get } = fields(guide, prices).get(key);
  return written(kind, get(prices) ?? null);
};
const stored = (fields = {}) => ({ ...NONE, changed: "2026-02-01T10:00:00Z", ...fields });

test("a price is typed with a comma or a point", () => {
  assert.deepEqual(read("price", " 28,50 ").value, 28.5);
  assert.deepEqual(read("price", "1 200").value, 1200);
  assert.deepEqual(read("price", "").value, null);
});

for (const [kind, text, why] of [
  ["price", "forty", /^Type the price in figures/],
  ["price", "-5", /^Type the price in figures/],
  ["price", "1e99", /^Type the price in figures/],
  ["price", "9".repeat(400), /^This is more than a price can be/],
  ["off", "a third", /^Type an amount, as 12.50, or a share/],
  ["off", "120 %", /^Type an amount/],
  ["off", "-3", /^Type an amount/],
  ["off", "3+", /^Type an amount/],
  ["off", "9999999999", /^This is more/],
  ["percent", "101", /^Type the per cent in figures, from 0 to 100/],
  ["percent", "-1", /^Type the per cent/],
  ["currency", "euro", /^This is no currency: type its three letters/],
  ["currency", "POU", /^This is no currency/],
  ["price", "£20", /^Your prices are in EUR: type it in EUR/],
  ["off", "£20", /^Your prices are in EUR/],
]) {
  test(`${text.slice(0, 20)} is no ${kind}`, () => {
    assert.match(read(kind, text, "EUR").wrong, why);
  });
}

for (const [kind, text, value, again = text] of [
  ["off", "40 %", { amount: 0, share: 0.4 }],
  ["off", "12,5%", { amount: 0, share: 0.125 }, "12.5 %"],
  ["off", "7", { amount: 7, share: 0 }],
  ["off", "3,50 + 10 %", { amount: 3.5, share: 0.1 }, "3.50 + 10 %"],
  ["percent", "30 %", 30, "30"],
  ["currency", "eur", "EUR", "EUR"],
  ["currency", "€", "EUR", "EUR"],
  ["price", "20 EUR", 20, "20"],
  ["price", "€20", 20, "20"],
  ["off", "€ 20 + 10 %", { amount: 20, share: 0.1 }, "20 + 10 %"],
  ["word", "worn", "worn"],
]) {
  test(`${text} comes back as ${again}`, () => {
    const found = read(kind, text, "EUR");

    assert.deepEqual(found, { value, wrong: "" });
    assert.equal(written(kind, found.value), again);
  });
}

test("any currency is taken where none is said yet", () => {
  assert.deepEqual(read("price", "£20", ""), { value: 20, wrong: "" });
});

test("a row each becomes prices and rows again", () => {
  const texts = {
    "worth/1957": "85",
    "worth/1954": "34.50",
    "worth/other": "6",
    "part/shaft": "45 %",
    "right/grip": "9",
    "set/1957": "880",
    "set/missing": "15 %",
    currency: "EUR",
  };
  const prices = typedIn(BARE, texts);

  for (const [key, text] of Object.entries(texts))
    assert.equal(standing(BARE, prices, key), text, key);
  assert.deepEqual(prices.worth, [
    [1954, 34.5],
    [1957, 85],
  ]);
  assert.deepEqual(taken({ ...prices, changed: "2026-02-01T10:00:00Z" }).set, prices.set);
});

test("an emptied row is no price", () => {
  const prices = typedIn(BARE, { "worth/1957": "85", "part/shaft": "7", "right/shaft": "9" });
  const emptied = typedIn(BARE, { "worth/1957": "", "part/shaft": "", "right/shaft": "" }, prices);

  assert.deepEqual(emptied, NONE);
});

test("zero is a price, and not the same as none", () => {
  assert.deepEqual(typedIn(BARE, { "worth/1957": "0" }).worth, [[1957, 0]]);
});

test("one price for all is changed year by year", () => {
  const prices = typedIn(BARE, { "worth/all": "20", "worth/1957": "85" });

  assert.equal(prices.worth.length, 12);
  assert.equal(standing(BARE, prices, "worth/1954"), "20");
  assert.equal(fields(BARE).get("worth/all").get(prices), undefined);
  assert.equal(standing(BARE, typedIn(BARE, { "worth/1957": "20" }, prices), "worth/all"), "20");
});

test("a decade stands for its years", () => {
  const prices = typedIn(MARKS, { "worth/1840s": "90", "worth/1870s": "40" });

  assert.deepEqual(
    prices.worth,
    [1848, 1849, 1870, 1871].map((year) => [year, year < 1860 ? 90 : 40]),
  );
  const [worth] = sections(MARKS, NONE);
  assert.deepEqual(
    worth.fields.map(({ label }) => label).slice(2),
    ["1840s", "1850s", "1860s", "1870s", "Any other year"],
  );
  assert.equal(priceOf([[1848, 90]], [1848, 1849]), undefined);
});

test("a table begins with the guide's, or in the last currency", () => {
  assert.equal(beginning(DOTTEREL, "DKK").currency, "EUR");
  assert.equal(standing(DOTTEREL, beginning(DOTTEREL, ""), "worth/1957"), "85");
  assert.equal(standing(DOTTEREL, beginning(DOTTEREL, ""), "grade/worn"), "20 %");
  assert.equal(NONE.currency, "DKK");
});

test("a set without a price counts member by member", () => {
  const prices = typedIn(BARE, { "worth/all": "20", "set/stray": "60 %" });

  assert.notEqual(prices.set, null);
  assert.equal(counting(prices).set, null);
  assert.notEqual(counting(typedIn(BARE, { "set/1957": "880" }, prices)).set, null);
});

test("what the guide has dropped is kept and told", () => {
  const prices = typedIn(BARE, { "worth/1957": "85", "part/shaft": "7", "worth/1954": "3" });
  const later = {
    ...BARE,
    years: BARE.years.filter(({ year }) => year !== 1957),
    parts: BARE.parts.filter(({ id }) => id !== "shaft"),
  };
  const changed = typedIn(later, { "worth/1954": "4" }, prices);

  assert.match(lost(later, changed), /^You have priced 1957 and the part “shaft”, which/);
  assert.equal(standing(BARE, changed, "worth/1957"), "85");
  assert.equal(lost(BARE, changed), "");
});

test("a part that is never replaced has no row", () => {
  const sure = { ...BARE, parts: BARE.parts.map((part) => ({ ...part, replaced: 0 })) };

  assert.ok(fields(BARE).has("part/shaft"));
  assert.ok(!fields(sure).has("part/shaft"));
});

test("a deal's empty field is nothing", () => {
  const deal = { asked: 20, costs: 5, condition: "worn", margin: 30, hour: 15 };
  const emptied = FIELDS.reduce((made, field) => field.put(made, null), deal);

  assert.deepEqual(emptied, { asked: null, costs: 0, condition: "", ...NO_HABITS });
  assert.ok(FIELDS.every(({ get }) => get(emptied) === null));
  assert.deepEqual(FIELDS.map(({ key }) => key).filter(isHabit), ["margin", "hour"]);
});

test("stored prices are built anew", () => {
  const kept = taken({ ...stored({ worth: [[1957, 85]] }), more: "than is known" });

  assert.ok(!("more" in kept));
  assert.deepEqual(kept.worth, [[1957, 85]]);
});

for (const [name, fields] of Object.entries({
  "no table": null,
  "a worth without a year": { worth: [[85]] },
  "a year twice": { worth: [[1957, 1], [1957, 2]] },
  "a price below nothing": { worth: [[1957, -1]] },
  "a price that is no number": { other: "40" },
  "a share above all": { condition: [["worn", { amount: 0, share: 1.5 }]] },
  "a part without an id": { parts: [{ off: { amount: 1, share: 0 }, put_right: null }] },
  "a currency of four letters": { currency: "EURO" },
  "no time": { changed: "today" },
  "a set that is a list": { set: [] },
})) {
  test(`${name} is refused with a sentence`, () => {
    assert.throws(
      () => taken(fields && stored(fields)),
      (error) => error instanceof RecordError && /^The .+\.$/.test(error.message),
    );
  });
}
