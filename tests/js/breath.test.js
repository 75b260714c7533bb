import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { paced } from "../../static/phone/breath.js";
import { ended, judge, judging, prepare, preparing, unpack } from "../../static/phone/engine/index.js";

const VECTOR = new URL("../vectors/wrackham-teale-dotterel.json", import.meta.url);
const packed = JSON.parse(readFileSync(VECTOR, "utf8"));
const guide = unpack(packed.guide);
const LIMITS = { away: false, without: [], photos: false };
const blank = { guide: guide.id, items: [{ member: null, readings: [], gone: [] }], claim: null };

/** How often the steps pause, and what they come to. */
function counted(steps) {
  let pauses = 0;
  for (;;) {
    const { done, value } = steps.next();
    if (done) return [pauses, value];
    pauses += 1;
  }
}

test("a guide is opened step by step, one for each member and each clean reading", () => {
  const [pauses, tables] = counted(preparing(guide));
  const coded = tables.clues[0].filter(({ name }) => name === "code");
  const readings = coded.reduce((total, { clean }) => total + clean.length, 0);

  assert.ok(readings > 0);
  assert.ok(pauses >= guide.clues.length * tables.members.length + readings, `${pauses} pauses`);
  assert.deepEqual(tables, prepare(guide));
});

test("a find is judged step by step, one for each clue that is left", () => {
  const tables = prepare(guide);
  const [pauses, verdict] = counted(judging(tables, blank, LIMITS));

  assert.ok(pauses > verdict.next.length, `${pauses} pauses`);
  assert.deepEqual(verdict, judge(tables, blank));
});

test("what takes long lets the page answer between its steps", async () => {
  const order = [];
  function* slow() {
    for (const step of ["one", "two"]) {
      const until = performance.now() + 6;
      while (performance.now() < until);
      order.push(step);
      yield;
    }
    return "done";
  }
  const tap = setInterval(() => order.push("tap"), 0);
  const came = await paced(slow());
  clearInterval(tap);

  assert.equal(came, "done");
  assert.ok(order.slice(0, order.indexOf("two")).includes("tap"), order.join());
});

test("steps that are all there already come to the same", async () => {
  function* none() {
    return 3;
  }
  assert.equal(await paced(none()), 3);
  assert.equal(ended(none()), 3);
});
