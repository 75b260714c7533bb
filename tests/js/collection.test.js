import assert from "node:assert/strict";
import { test } from "node:test";

import { collection, sums } from "../../static/phone/log/collection.js";
import { entry } from "../../static/phone/log/record.js";
import { escaped } from "../../static/phone/log/reportnodes.js";
import { id, json } from "./kept.js";
import { jpeg } from "./pictured.js";

const GUIDE = "Kittiwake irons";

/** A find of the list; fields of its entry can be given. */
const row = (number, fields = {}, photo = null) => {
  const kept = entry(json({ id: id(number), place: "Market hall", ...fields }));
  return { entry: kept, name: kept.title || GUIDE, guide: GUIDE, invented: false, photo };
};
const listed = (rows, more = {}) =>
  collection({ rows, place: false, left: 0, today: "2026-11-26", ...more });

/** The text of a page as a reader sees it, a line an element. */
function shown(html) {
  const body = html.split("<body>")[1];
  const signs = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };
  const text = body.replace(/<[^>]*>/g, "\n").replace(/&([^;]+);/g, (_, sign) => signs[sign]);
  return text.replaceAll("\u00a0", " ").replace(/\n+/g, "\n");
}

test("each find tells what it is and what it cost", () => {
  const rows = [row(1), row(2, { title: "", paid: 40, date: "" })];
  const text = shown(listed(rows));

  assert.match(text, /\nDay of the list\n26 November 2026\nFinds\n2\nPaid in all\n120\.50 EUR\n/);
  assert.match(
    text,
    /\nIrons from the fair\nKittiwake irons\n1957: likely, 71 %\n22 November 2026\n80\.50 EUR\n/,
  );
  assert.match(text, /\nKittiwake irons\n1957: likely, 71 %\n40 EUR\n/);
  assert.match(text, /it is no appraisal, and an insurer may ask for one/);
});

test("the file can neither run nor load anything", () => {
  const html = listed([row(1)]);

  assert.match(html, /content="default-src 'none'; img-src data:; style-src 'unsafe-inline'"/);
  assert.doesNotMatch(html, /<script|<link|url\(|@import/i);
});

test("a verdict that gives no figure is given one", () => {
  const verdict = { ...json().verdict, say: "cannot be told", probability: 0.31 };

  assert.match(shown(listed([row(1, { verdict })])), /\nCannot be told: 31 %\n/);
});

test("the list tells which and how many objects a find is of", () => {
  const items = (...members) => ({
    guide: "kittiwake",
    items: members.map((member) => ({ member, readings: [["pad", 6]], gone: [] })),
    claim: null,
  });
  const text = shown(listed([row(1, { find: items("6", "7", "W") }), row(2, { find: items("9") })]));

  assert.match(text, /\nIrons from the fair\nKittiwake irons\nSet of 3: 6, 7 and W\n/);
  assert.match(text, /\nKittiwake irons\nMember 9\n/);
  assert.match(text, /\nFinds\n2\nObjects in them\n4\n/);
  assert.doesNotMatch(shown(listed([row(1)])), /Objects in them|Member|Set of/);
});

test("the place is told only if ticked", () => {
  assert.doesNotMatch(listed([row(1)]), /Market hall/);
  assert.match(shown(listed([row(1)], { place: true })), /\n22 November 2026\nMarket hall\n/);
});

test("prices are added up by currency, to the hundredth", () => {
  const paid = (amount, currency) => entry(json({ paid: amount, currency }));
  const entries = [paid(0.1, "EUR"), paid(0.2, "EUR"), paid(12, "GBP"), paid(null, "USD")];

  assert.equal(sums(entries), "0.30 EUR and 12 GBP");
  assert.equal(sums([...entries, paid(5, "")]), "0.30 EUR, 12 GBP and 5 without a currency");
  assert.equal(sums([paid(5, "")]), "5");
  assert.equal(sums([paid(0, "EUR")]), "0 EUR");
  assert.equal(sums([]), "");
});

test("finds without a price are counted as such", () => {
  const text = shown(listed([row(1), row(2, { paid: null })]));

  assert.match(text, /\nFinds\n2, 1 with a price paid\n/);
  assert.match(shown(listed([row(1, { paid: null })])), /\nno price is known\n/);
});

test("photos come within the file, and those left out are counted", () => {
  const photo = jpeg(1);
  const html = listed([row(1, {}, photo), row(2)], { left: 3 });
  const [, base64] = html.match(/<img src="data:image\/jpeg;base64,([^"]+)" alt="([^"]+)"/);

  assert.deepEqual(Buffer.from(base64, "base64"), Buffer.from(photo));
  assert.equal(html.split("<img").length, 2);
  assert.match(html, /alt="Photo of Irons from the fair" width="40" height="30"/);
  assert.match(shown(html), /\nPhotos\n1; 3 more are left out\n/);
});

for (const text of ['"><script>alert(1)</script>', '=HYPERLINK("http://x.invalid")', "</style>"]) {
  test(`${text} stays a text`, () => {
    const made = (title) =>
      listed([{ ...row(1, { title, place: title }, jpeg(1)), guide: title }], { place: true });

    assert.equal(made(text).split("<").length, made("A").split("<").length);
    assert.equal(made(text).split('"').length, made("A").split('"').length);
    assert.equal(made(text).split(escaped(text)).length - 1, 4);
  });
}
