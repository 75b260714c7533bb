// Offers, which the Python engine made and also runs: numbers to 1e-9, words and order
// exactly; and what only a phone meets.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { unpack } from "../../static/phone/engine/guide.js";
import { offer, starting } from "../../static/phone/engine/offer.js";
import { prepare } from "../../static/phone/engine/prepare.js";
import { money } from "../../static/phone/engine/words.js";

const FILE = new URL("../offers.json", import.meta.url);
const SHARED = JSON.parse(readFileSync(FILE, "utf8"));

/** Where two things differ: numbers by more than 1e-9, all else at all. */
function differences(found, wanted, path = "") {
  if (typeof wanted === "number" && typeof found === "number") {
    const near = Math.abs(found - wanted) <= 1e-9 * Math.max(1, Math.abs(wanted));
    return near ? [] : [`${path}: ${found}, not ${wanted}`];
  }
  if (typeof wanted !== "object" || wanted === null || !found) {
    return found === wanted ? [] : [`${path}: ${found}, not ${wanted}`];
  }
  assert.deepEqual(Object.keys(found), Object.keys(wanted), path);
  return Object.keys(wanted).flatMap((key) =>
    differences(found[key], wanted[key], `${path}.${key}`),
  );
}

for (const { guide, cases } of SHARED) {
  test(`${guide.id}: ${cases.length} offers agree with Python`, () => {
    const tables = prepare(unpack(guide));

    for (const { find, prices, deal, offer: wanted } of cases) {
      const found = offer(tables, find, { prices, deal });
      assert.deepEqual(differences(found, wanted), []);
    }
  });
}

test("sets, strays of all sizes and every advice are among them", () => {
  const cases = SHARED.flatMap((each) => each.cases);
  const sizes = cases.map(({ find }) => find.items.length);
  const advice = cases.map((each) => each.offer.advice);

  assert.ok(cases.length >= 50, `${cases.length} cases`);
  assert.deepEqual([...new Set(sizes)].sort(), [1, 2, 3]);
  assert.ok(["buy", "offer", "walk", ""].every((word) => advice.includes(word)));
});

test("a guide without prices begins with none", () => {
  const [{ guide, cases }] = SHARED;
  const tables = prepare(unpack(guide));
  const prices = starting(tables.guide);
  const { advice, say } = offer(tables, cases[0].find, { prices, deal: cases[0].deal });

  assert.equal(advice, "");
  assert.equal(say, "Say first what each model year is worth to you.");
});

test("what cannot be looked at now is not among the looks", () => {
  const [{ guide, cases }] = SHARED;
  const tables = prepare(unpack(guide));
  const [{ find, prices, deal }] = cases.filter((each) => each.offer.looks.length > 3);
  const hand = new Map(guide.clues.map((clue) => [clue.id, clue.seen_from]));
  const { looks } = offer(tables, find, { prices, deal, away: true });

  assert.ok(looks.every(({ clue }) => hand.get(clue) === "away"));
});

test("money is written as in Python", () => {
  const written = [0, 45.5, 99.994, 99.995, 123.5, -0.001, -7.5].map((x) =>
    money(x, "EUR"),
  );

  assert.deepEqual(written, [
    ...["0.00 EUR", "45.50 EUR", "99.99 EUR", "100 EUR", "124 EUR", "0.00 EUR"],
    "−7.50 EUR",
  ]);
});
