// Whether a find is what somebody is after, and what a set lacks.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { read, written } from "../../static/phone/dealing/wantsform.js";
import { isOne, matches, scarcity } from "../../static/phone/dealing/wantsmatch.js";
import { likelyYears, unwanted, wantsFor } from "../../static/phone/dealing/wantsmissing.js";
import { judge, prepare, unpack } from "../../static/phone/engine/index.js";
import { want } from "../../static/phone/log/wants.js";
import {
  limitSay,
  matchSay,
  matchTitle,
  scarceSay,
  wantSay,
} from "../../static/phone/view/wantssay.js";
import { id, NOW } from "./kept.js";
import { wanted } from "./wanted.js";

const vectors = JSON.parse(
  readFileSync(new URL("../vectors/wrackham-teale-dotterel.json", import.meta.url), "utf-8"),
);
const guide = unpack(vectors.guide);
const tables = prepare(guide);
const card = { title: guide.title, anything: false };
const OPEN = { since: null, until: null, member: null, most: null, currency: "", note: "" };

const item = (member, readings) => ({ member, readings, gone: [] });
const READ = [["collar-rings", "red-gold"], ["toe-outline", "square"]];
/** A find and its verdict. */
function judged(...items) {
  const find = { guide: guide.id, items, claim: null };
  return { guide, find, verdict: judge(tables, find) };
}
const years = ({ verdict }, since, until) =>
  verdict.model_years
    .filter(([year]) => since <= year && year <= until)
    .reduce((sum, [, p]) => sum + p, 0);
const near = (one, other) => assert.ok(Math.abs(one - other) < 1e-9, `${one} is not ${other}`);

test("a want is met by the sum of its years", () => {
  const one = judged(item("5", READ));

  near(isOne(one, wanted()), years(one, 1957, 1958));
  near(isOne(one, wanted(1, { ...OPEN, since: 1960 })), years(one, 1960, 9999));
  near(isOne(one, wanted(1, { ...OPEN, until: 1960 })), years(one, 0, 1960));
  near(isOne(one, wanted(1, OPEN)), 1 - one.verdict.outside);
});

test("a member that is not there is no match", () => {
  const want = wanted(1, { since: null, until: null });

  assert.equal(isOne(judged(item("6", READ)), want), 0);
  assert.equal(isOne(judged(item(null, READ)), want), 0);
  assert.ok(isOne(judged(item("5", READ)), want) > 0.5);
});

test("a stray in a set is of its own years", () => {
  const { find } = vectors.cases.find(
    ({ verdict }) => verdict.members.some(({ stray }) => stray > 0.9),
  );
  const set = judged(...find.items);
  const stray = set.verdict.members.find((each) => each.stray > 0.9);
  const year = stray.leading;
  const want = wanted(1, { ...OPEN, member: stray.member, since: year, until: year });
  const own = stray.model_years.find(([each]) => each === year)[1];

  near(isOne(set, want), (1 - stray.stray) * years(set, year, year) + stray.stray * own);
});

test("nothing is matched before anything was read", () => {
  const want = wanted(1, OPEN);

  assert.deepEqual(matches(judged(item("5", [])), [want]), []);
  assert.deepEqual(matches(judged(item("5", [["toe-outline", null]])), [want]), []);
  assert.equal(matches(judged(item("5", READ)), [want]).length, 1);
});

test("what is hardly likely, or of another guide, is not said", () => {
  const one = judged(item("5", READ));
  const [first] = one.verdict.model_years.filter(([, p]) => p < 0.19)[0];
  const dim = wanted(1, { ...OPEN, since: first, until: first });

  assert.deepEqual(matches(one, [dim, wanted(2, { ...OPEN, guide: "oxmere-grebe" })]), []);
});

test("from one in five on it is said, the likeliest first", () => {
  const shares = (p) => [
    [1957, p],
    [1958, 0.4],
  ];
  const found = (p) => {
    const verdict = { model_years: shares(p), members: [], outside: 0.1 };
    const find = { items: [item("5", READ)] };
    const wants = [1957, 1958].map((year) => wanted(year, { ...OPEN, since: year, until: year }));
    return matches({ guide, find, verdict }, wants).map(({ want }) => want.since);
  };

  assert.deepEqual(found(0.5), [1957, 1958]);
  assert.deepEqual(found(0.2), [1958, 1957]);
  assert.deepEqual(found(0.19), [1958]);
});

test("scarcity is the share of what was made", () => {
  const all = guide.years.reduce((sum, { volume }) => sum + volume, 0);
  const { volume } = guide.years.find(({ year }) => year === 1959);

  near(scarcity(guide, { since: 1959, until: 1959 }), volume / all);
  assert.equal(scarcity(guide, { since: null, until: null }), null);
  const flat = { ...guide, years: guide.years.map((each) => ({ ...each, volume: 1 })) };
  assert.equal(scarcity(flat, { since: 1959, until: 1959 }), null);
  assert.equal(scarcity({ ...guide, verdict: "range" }, { since: 1959, until: 1959 }), null);
});

for (const [fields, says] of [
  [{}, "of 1957 or 1958, the 5 iron, up to 120 EUR"],
  [{ ...OPEN }, "of any year"],
  [{ ...OPEN, since: 1957 }, "of 1957 or later"],
  [{ ...OPEN, until: 1957 }, "of 1957 or earlier"],
  [{ ...OPEN, since: 1957, until: 1957 }, "of 1957"],
  [{ ...OPEN, since: 1957, until: 1960, most: 12.5 }, "of 1957 to 1960, up to 12.50"],
]) {
  test(`a want says ${says}`, () => {
    const told = wantSay(wanted(1, fields), card, guide);

    assert.equal(told, `Wrackham & Teale 'Dotterel' forged irons ${says}`);
  });
}

test("a guide that is called by a question is named before it", () => {
  const clubs = { title: "Any golf club: from which era?", anything: false };

  assert.equal(wantSay(wanted(1, OPEN), clubs, null), "Any golf club of any year");
  const anything = { title: "Dated marks", anything: true };
  assert.equal(wantSay(wanted(1, { ...OPEN, since: 1900 }), anything, null), "Anything of 1900 or later");
});

for (const [fields, dealt, says] of [
  [{}, { asked: 124 }, "124 EUR is asked, 4.00 EUR more than you wanted to pay."],
  [{}, { asked: 120 }, "120 EUR is asked, within what you wanted to pay."],
  [{ currency: "" }, { asked: 1 }, "1.00 EUR is asked, within what you wanted to pay."],
  [{}, { asked: 1, currency: "" }, "1.00 EUR is asked, within what you wanted to pay."],
  [{}, { asked: 124, currency: "GBP" }, ""],
  [{}, { asked: null }, ""],
  [{ most: null }, { asked: 124 }, ""],
]) {
  test(`of ${JSON.stringify([fields, dealt])} the limit says ${says || "nothing"}`, () => {
    assert.equal(limitSay(wanted(1, fields), { currency: "EUR", ...dealt }), says);
  });
}

test("likelihood and scarcity are told in the app's words", () => {
  const match = (probability, scarce, fields = {}) => ({
    want: wanted(1, fields),
    probability,
    scarce,
  });

  assert.equal(matchTitle([match(0.5)]), "This is most likely what you want");
  assert.equal(matchTitle([match(0.49)]), "This may be what you want");
  assert.equal(matchSay(match(0.71)), "How sure: likely, 71 %.");
  assert.equal(
    scarceSay(match(1, 0.043)),
    "Of 100 of this line about 4 are of these years, as far as the guide knows.",
  );
  assert.equal(
    scarceSay(match(1, 0.0012, { since: 1957, until: 1957 })),
    "Of 1000 of this line about 1 is of this year, as far as the guide knows.",
  );
  assert.equal(scarceSay(match(1, null)), "");
});

const SET = { guide: guide.id, missing: ["3", "4"], leading: 1957 };
const verdict = (fields = {}) => ({
  ...SET,
  model_years: [
    [1956, 0.09],
    [1957, 0.7],
    [1958, 0.1],
    [1959, 0.05],
  ],
  ...fields,
});

test("what a set lacks is wanted of its likely years", () => {
  assert.deepEqual(likelyYears(verdict()), { since: 1957, until: 1958 });
  assert.deepEqual(likelyYears(verdict({ leading: null })), { since: null, until: null });
  const flat = verdict({ model_years: [[1957, 0.05]] });
  assert.deepEqual(likelyYears(flat), { since: null, until: null });

  const [three, four] = wantsFor(verdict(), ["3", "4"], { newId: () => id(7), now: NOW });
  assert.deepEqual(want(three), wanted(7, { ...OPEN, since: 1957, until: 1958, member: "3" }));
  assert.equal(four.member, "4");
});

test("no missing member is wanted twice", () => {
  const kept = [
    wanted(1, { member: "3", since: 1958, until: null }),
    wanted(2, { member: "4", since: 1959, until: 1965 }),
    wanted(3, { member: "4", guide: "oxmere-grebe" }),
  ];

  assert.deepEqual(unwanted(verdict(), []), ["3", "4"]);
  assert.deepEqual(unwanted(verdict(), kept), ["4"]);
});

const TYPED = {
  guide: guide.id,
  since: "1957",
  until: "1958",
  member: "5",
  most: "120",
  currency: "eur",
  note: "for the long set",
};

test("what is typed becomes a want, and stands there again", () => {
  const { told, wrong } = read(TYPED);

  assert.deepEqual(wrong, {});
  assert.deepEqual(wanted(1, told), wanted());
  assert.deepEqual(written(told), { ...TYPED, currency: "EUR" });
  const open = { ...TYPED, since: "", until: "", member: "", most: "", currency: "", note: "" };
  assert.deepEqual(wanted(1, read(open).told), wanted(1, OPEN));
  assert.deepEqual(written(read(open).told), open);
});

test("a currency typed with the price is taken", () => {
  const { told, wrong } = read({ ...TYPED, most: "£20", currency: "" });

  assert.deepEqual([told.most, told.currency, wrong], [20, "GBP", {}]);
  assert.equal(read({ ...TYPED, most: "20 €" }).told.currency, "EUR");
});

for (const [field, typed] of [
  ["until", "1956"],
  ["most", "1,200"],
  ["most", "dear"],
  ["most", "£20"],
  ["currency", "EURO"],
  ["currency", "POU"],
]) {
  test(`${typed} in ${field} is told beside the field`, () => {
    const { wrong } = read({ ...TYPED, [field]: typed });

    assert.deepEqual(Object.keys(wrong), [field]);
    assert.match(wrong[field], /^\p{Lu}[^]+\.$/u);
  });
}
