// What practice scores, which year comes next, and what is kept of it.

import assert from "node:assert/strict";
import { test } from "node:test";

import { lots } from "../../static/phone/engine/lot.js";
import { RecordError } from "../../static/phone/log/fields.js";
import { cards, due, GAPS, next } from "../../static/phone/practice/boxes.js";
import { levels, missing, overall, wilson } from "../../static/phone/practice/calibration.js";
import { freeSeed, joined, MOST, practised, withBegun, withRound, written } from "../../static/phone/practice/kept.js";
import { brier, guessed, mean, scored, steps } from "../../static/phone/practice/score.js";

const YEARS = [1954, 1955, 1956, 1957];
const near = (found, wanted) => assert.ok(Math.abs(found - wanted) < 1e-9, `${found}, not ${wanted}`);
const begunRound = (fields = {}) => ({ seed: 1, year: 1954, looks: [], stamp: "", said: null, sure: null, ...fields });
const played = (fields = {}) => ({ seed: 1, year: 1954, said: 1954, sure: 0.8, years: 4, ...fields });
/** Rounds of these years, right where they are written as positive. */
const rounds = (...years) =>
  years.map((year, seed) => played({ seed, year: Math.abs(year), said: year > 0 ? year : 1900 }));
const boxes = (...played) => cards(YEARS, rounds(...played)).map(({ box }) => box);

// The example of three outcomes in scikit-learn's documentation of brier_score_loss,
// which says 0.146...
const FOOD = [[0.8, 0.1, 0.1], [0.2, 0.7, 0.1], [0.2, 0.2, 0.6]];

test("three forecasts of what is eaten score 0.146...", () => {
  near(mean(FOOD.map((forecast, came) => brier(forecast, came))), 0.44 / 3);
});

// Brier's own example of 1950, from memory: ten forecasts of rain or no rain, of which
// the second to the fourth saw rain, score 0.19; the same by the frequency of rain, 0.42.
const RAIN = [0.7, 0.9, 0.8, 0.4, 0.2, 0, 0, 0, 0, 0.1];
const CAME = [1, 0, 0, 0, 1, 1, 1, 1, 1, 1];

test("Brier's ten forecasts of rain score 0.19", () => {
  near(mean(RAIN.map((p, i) => brier([p, 1 - p], CAME[i]))), 0.19);
  near(mean(CAME.map((came) => brier([0.3, 0.7], came))), 0.42);
});

test("a round scores all that was forecast", () => {
  near(scored(played({ sure: 0.7 })), 0.3 ** 2 + 3 * 0.1 ** 2);
  near(scored(played({ sure: 0.7, said: 1955 })), 0.7 ** 2 + 0.9 ** 2 + 2 * 0.1 ** 2);
  near(guessed({ years: 4 }), 0.75);
  near(scored(played({ sure: 0.25 })), guessed({ years: 4 }));
});

test("saying what is likely scores best on average", () => {
  const truth = [0.65, 0.2, 0.1, 0.05];
  const expected = (said, sure) =>
    truth.reduce((sum, p, y) => sum + p * scored(played({ year: YEARS[y], said: YEARS[said], sure })), 0);
  const all = YEARS.flatMap((_, said) => steps(4).map((step) => [expected(said, step / 100), said, step]));
  const [, said, step] = all.sort((a, b) => a[0] - b[0])[0];

  assert.deepEqual([said, step], [0, 65]);
});

test("nobody is less sure than by guessing", () => {
  assert.deepEqual(steps(12), [10, 20, 35, 50, 65, 80, 90, 95, 99]);
  assert.equal(steps(4)[0], 35);
  assert.equal(steps(2)[0], 50);
});

test("a right card goes one box on, a wrong one back", () => {
  assert.deepEqual(boxes(), [0, 0, 0, 0]);
  assert.deepEqual(boxes(1954, 1954, -1955), [2, 0, 0, 0]);
  assert.deepEqual(boxes(1954, 1954, 1954, -1954), [0, 0, 0, 0]);
  assert.deepEqual(boxes(...Array(9).fill(1957)), [0, 0, 0, 4]);
});

test("each box is due after its own number of rounds", () => {
  const last = (...played) => cards(YEARS, rounds(...played)).find(({ year }) => year === 1957).due;

  assert.deepEqual(GAPS, [2, 4, 10, 16, 28]);
  assert.equal(last(-1957), 0 + 2);
  assert.deepEqual([1, 2, 3, 4, 5].map((n) => last(...Array(n).fill(1957)) - (n - 1)), [4, 10, 16, 28, 28]);
});

test("what was wrong comes back sooner", () => {
  const before = rounds(-1954, 1955, 1956, 1957);

  assert.deepEqual(due(cards(YEARS, before), before).map(({ year }) => year), [1954]);
});

test("the same year never follows on itself", () => {
  let before = [];
  const draw = lots(7);
  for (let i = 0; i < 150; i++) {
    const year = next(YEARS, before, draw);
    assert.notEqual(year, before.at(-1)?.year);
    before = [...before, played({ seed: i, year, said: i % 3 ? year : 1900 })];
  }
  assert.equal(next([1954], rounds(-1954), draw), 1954);
});

test("every year is asked, the hard one most often", () => {
  let before = [];
  const draw = lots(8);
  for (let i = 0; i < 200; i++) {
    const year = next(YEARS, before, draw);
    before = [...before, played({ seed: i, year, said: year === 1956 ? 1900 : year })];
  }
  const counts = YEARS.map((each) => before.filter(({ year }) => year === each).length);

  assert.ok(counts.every((count) => count > 20), String(counts));
  assert.equal(Math.max(...counts), counts[2]);
  assert.ok(counts[2] > 1.3 * counts[0], String(counts));
});

test("what is due comes in about half of the rounds more than its share", () => {
  // 1956 alone is due: by half of the rounds, and by lot one in three of the others.
  const before = rounds(1954, -1956, 1955, 1954, 1955, 1957);
  assert.deepEqual(due(cards(YEARS, before), before).map(({ year }) => year), [1956]);
  const many = Array.from({ length: 6000 }, (_, i) => next(YEARS, before, lots(1 + 350000 * i)));
  const share = (year) => many.filter((each) => each === year).length / many.length;

  for (const [year, wanted] of [[1956, 2 / 3], [1954, 1 / 6], [1955, 1 / 6], [1957, 0]]) {
    assert.ok(Math.abs(share(year) - wanted) < 0.03, `${year}: ${share(year)}`);
  }
});

test("a year that the guide has lost has no card", () => {
  const found = cards([1954, 1958], rounds(1957, -1954));

  assert.deepEqual(found.map(({ year, box }) => [year, box]), [[1954, 0], [1958, 0]]);
});

test("sureness is held against how often it was right", () => {
  const all = [
    ...Array.from({ length: 10 }, (_, i) => played({ seed: i, sure: 0.8, said: i < 6 ? 1954 : 1955 })),
    ...Array.from({ length: 10 }, (_, i) => played({ seed: 10 + i, sure: 0.2, said: i < 2 ? 1954 : 1955 })),
  ];
  const [low, high] = levels(all);

  assert.deepEqual([low.sure, low.rounds, low.right], [0.2, 10, 2]);
  assert.deepEqual([high.sure, high.rounds, high.right, high.share], [0.8, 10, 6, 0.6]);
  assert.deepEqual([missing(all), missing(all.slice(1))], [0, 1]);
  const { sure, share, judged } = overall(all);
  near(sure, 0.5);
  near(share, 0.4);
  assert.equal(judged, "near");
  assert.equal(overall(all.map((round) => ({ ...round, sure: 0.95 }))).judged, "more");
  assert.equal(overall(all.map((round) => ({ ...round, sure: 0.1 }))).judged, "less");
});

test("Wilson's interval solves its own equation", () => {
  // Its ends are the p at which the share lies z standard deviations of p away.
  for (const [share, n] of [[0.6, 10], [0.1, 40], [0.5, 3]]) {
    const { low, high } = wilson(share, n);
    for (const p of [low, high]) near((share - p) ** 2, (1.959964 ** 2 * p * (1 - p)) / n);
  }
  near(wilson(0, 5).low, 0);
  near(wilson(1, 5).high, 1);
});

test("practice comes back as it was written", () => {
  const kept = {
    rounds: [played(), played({ seed: 2, said: 1957 })],
    begun: begunRound({ seed: 3, year: 1956, looks: ["collar-rings"], stamp: "a1", said: 1957 }),
    answered: begunRound({ seed: 2, said: 1957, sure: 0.8 }),
  };
  const older = { seed: 3, year: 1956, looks: [], stamp: "a1" };

  assert.deepEqual(practised(JSON.parse(JSON.stringify({ ...written(kept), more: 1 }))), kept);
  assert.deepEqual(practised({ format: 1, rounds: [], begun: older }), {
    rounds: [],
    begun: begunRound(older),
    answered: null,
  });
});

for (const [name, json] of Object.entries({
  "no table": "torn",
  "a newer format": { format: 2, rounds: [], begun: null },
  "no rounds": { format: 1, begun: null },
  "a round that is more than sure": { format: 1, rounds: [played({ sure: 1.2 })], begun: null },
  "a year that is no number": { format: 1, rounds: [played({ year: "1954" })], begun: null },
  "a round twice": { format: 1, rounds: [played(), played()], begun: null },
  "an answer that is more than sure": { format: 1, rounds: [], begun: begunRound({ sure: 2 }) },
  "looks that are no clues": { format: 1, rounds: [], begun: { seed: 1, year: 1954, looks: [3], stamp: "" } },
})) {
  test(`${name} is refused with a sentence`, () => {
    assert.throws(() => practised(json), (error) => error instanceof RecordError && /\.$/.test(error.message));
  });
}

test("a round ends the one that was begun, and no other", () => {
  const begun = begunRound();
  const answered = { ...begun, said: 1954, sure: 0.8 };
  const open = { rounds: [], begun, answered: null };

  assert.deepEqual(withRound(open, played(), answered), { rounds: [played()], begun: null, answered });
  assert.equal(withRound(open, played({ seed: 9 }), answered).begun, begun);
});

test("what a round taught stays until the next begins", () => {
  const answered = begunRound({ said: 1954, sure: 0.8 });
  const after = withRound({ rounds: [], begun: null, answered: null }, played(), answered);

  assert.equal(withRound(after, played({ said: 1957 }), begunRound()).answered, answered);
  const next = begunRound({ seed: 2 });
  assert.deepEqual(withBegun(after, next), { rounds: [played()], begun: next, answered: null });
  assert.equal(withBegun(after, begunRound({ said: 1957 })), after);
});

test("a round counts once, and the last ones stay", () => {
  const full = { rounds: Array.from({ length: MOST }, (_, seed) => played({ seed })), begun: null, answered: null };
  const more = withRound(full, played({ seed: 999 }), null);

  assert.equal(more.rounds.length, MOST);
  assert.deepEqual([more.rounds[0].seed, more.rounds.at(-1).seed], [1, 999]);
  assert.equal(withRound(more, played({ seed: 999, said: 1900 }), null).rounds.at(-1).said, 1954);
});

test("each round has a seed of its own", () => {
  const last = 2 ** 31 - 1;

  assert.equal(freeSeed([], 7), 7);
  assert.equal(freeSeed([played({ seed: 7 }), played({ seed: 8 })], 7), 9);
  assert.equal(freeSeed([played({ seed: last })], last), 0);
});

test("two accounts join without a round twice", () => {
  const one = { rounds: rounds(1954, 1955), begun: null, answered: begunRound() };
  const other = { rounds: rounds(1954, 1955, -1956), begun: begunRound({ seed: 7, year: 1957 }), answered: null };

  assert.deepEqual(joined(one, other), other);
});
