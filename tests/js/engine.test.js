// The engine against the shared vectors, which the Python engine made and also runs,
// and against what only a phone meets: a guide of another format.

import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { test } from "node:test";

import { run } from "../../static/phone/check.js";
import * as engine from "../../static/phone/engine/index.js";
import { gain } from "../../static/phone/engine/gain.js";
import { erfc } from "../../static/phone/engine/special.js";
import { capital, figure, years } from "../../static/phone/engine/words.js";

const FOLDER = new URL("../vectors/", import.meta.url);
const VECTORS = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .map((name) => JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")));

/** The verdict with the message beside it, so that both are compared. */
const both = {
  ...engine,
  judge: (tables, find, limits) => {
    const verdict = engine.judge(tables, find, limits);
    return { ...verdict, message: engine.message(tables, find, verdict) };
  },
};
const whole = ({ message, verdict, ...rest }) => ({
  ...rest,
  verdict: { ...verdict, message },
});

for (const vector of VECTORS) {
  test(`${vector.guide.id}: ${vector.cases.length} verdicts agree with Python`, () => {
    const cases = vector.cases.map(whole);
    const { agree, total, failures } = run([{ ...vector, cases }], both);

    assert.deepEqual(failures, []);
    assert.equal(agree, vector.cases.length);
    assert.equal(total, vector.cases.length);
  });
}

test("vectors are three hundred or more", () => {
  const cases = VECTORS.flatMap((vector) => vector.cases);

  assert.ok(cases.length >= 300, `${cases.length} cases`);
});

test("sets among them are sixty or more", () => {
  const cases = VECTORS.flatMap((vector) => vector.cases);
  const sets = cases.filter(({ find }) => find.items.length > 1);

  assert.ok(sets.length >= 60, `${sets.length} sets`);
  assert.ok(sets.every(({ verdict, find }) => verdict.members.length === find.items.length));
  assert.ok(cases.every(({ message }) => message.long && message.short));
});

test("another format is refused with both numbers", () => {
  assert.throws(() => engine.unpack({ ...VECTORS[0].guide, format: 2 }), {
    message: "This guide is format 2, the app reads 1: update the app when online.",
  });
});

test("guide and verdict cannot be changed", () => {
  const guide = engine.unpack(structuredClone(VECTORS[0].guide));
  const verdict = engine.judge(engine.prepare(guide), VECTORS[0].cases[0].find);

  assert.ok(Object.isFrozen(guide.clues[0].kind));
  assert.ok(Object.isFrozen(verdict) && Object.isFrozen(verdict.next[0]));
});

test("limits can be left out", () => {
  const [{ guide, cases }] = VECTORS;
  const tables = engine.prepare(engine.unpack(guide));
  const [{ find }] = cases;

  assert.deepEqual(
    engine.judge(tables, find),
    engine.judge(tables, find, { away: false, without: [], photos: false }),
  );
});

// Mitchell, Machine Learning (1997), section 3.4.2: the play-tennis table. Rows are
// the values of each attribute, counts of "yes" and "no".
test("what is kept of members belongs to its guide", () => {
  const { guide, cases } = VECTORS.find((vector) => vector.guide.members);
  const { find } = cases.findLast((each) => each.find.items.length > 1);
  const [tables, stranger] = [guide, { ...guide, outside: 0.5 }].map((packed) =>
    engine.prepare(engine.unpack(packed)),
  );
  const alone = ({ members }) => members.map(({ outside }) => outside);
  const first = engine.judge(tables, find);

  assert.notDeepEqual(alone(engine.judge(stranger, find)), alone(first));
  assert.deepEqual(engine.judge(tables, find), first);
});

test("the order of taps changes no set", () => {
  const { guide, cases } = VECTORS.find((vector) => vector.guide.members);
  const tables = engine.prepare(engine.unpack(guide));
  const { find } = cases.findLast((each) => each.find.items.length > 1);
  const items = find.items.map((item) => ({
    ...item,
    readings: item.readings.toReversed(),
  }));

  assert.deepEqual(engine.judge(tables, { ...find, items }), engine.judge(tables, find));
});

test("gain equals the published example", () => {
  const outlook = [
    [2, 3],
    [4, 0],
    [3, 2],
  ];
  const humidity = [
    [3, 4],
    [6, 1],
  ];
  const wind = [
    [6, 2],
    [3, 3],
  ];
  const temperature = [
    [2, 2],
    [4, 2],
    [3, 1],
  ];
  const published = [0.246, 0.151, 0.048, 0.029];

  [outlook, humidity, wind, temperature].forEach((rows, i) => {
    assert.ok(Math.abs(gain(rows) - published[i]) < 0.001, `${gain(rows)}`);
  });
});

// Abramowitz and Stegun (1964), table 7.1: erf 0.5, 1 and 2.
test("erfc equals the printed table", () => {
  assert.ok(Math.abs(1 - erfc(0.5) - 0.5204998778) < 1e-10);
  assert.ok(Math.abs(1 - erfc(1) - 0.8427007929) < 1e-10);
  assert.ok(Math.abs(1 - erfc(2) - 0.995322265) < 1e-10);
});

test("words come out as in Python", () => {
  assert.deepEqual([6, 6.25, 0.1, 100, -1.5, -0.001].map(figure), [
    ...["6", "6.25", "0.1", "100", "-1.5", "0"],
  ]);
  assert.equal(years([1954, 1956, 1957, 1958]), "1954 and 1956-1958");
  assert.equal(capital("élan"), "Élan");
});
