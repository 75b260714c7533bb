import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { foresee, led } from "../../static/phone/ahead.js";
import { asked, laid } from "../../static/phone/desk.js";
import { prepare, unpack } from "../../static/phone/engine/index.js";
import { addMembers } from "../../static/phone/members.js";
import { answer, begin } from "../../static/phone/session.js";

// Node paints nothing.
globalThis.requestAnimationFrame = setImmediate;

const VECTOR = new URL("../vectors/tarn-corncrake.json", import.meta.url);
const woods = unpack(JSON.parse(readFileSync(VECTOR, "utf8")).guide);
const shelved = { guide: woods, tables: prepare(woods), stamp: "1a2b" };
const isEver = ({ part }) => woods.parts.find(({ id }) => id === part).replaced > 0;
const choices = woods.clues.filter(({ kind }) => kind.name === "choice");
const [first] = choices.filter(isEver);
const second = choices.find((each) => each !== first);
const alone = laid(shelved, begin(woods.id));
const pair = laid(shelved, addMembers(begin(woods.id), ["3", "5"], woods));

const cannot = { means: "cannot", value: "" };
const gone = { means: "gone", value: "" };
const options = first.kind.options.map(({ id }) => ({ means: "reading", value: id }));
const all = [...options, cannot, gone];
const [reading] = options;

const about = (desk, clue) => asked(desk, { clue: clue.id });
const isKnown = (desk, question, each) => led(desk, question, each) === led(desk, question, each);

test("where an answer leads is the same, worked out before or now", async () => {
  for (const desk of [alone, pair]) {
    const question = about(desk, first);
    const now = all.map((each) => led(desk, question, each));
    await foresee(desk, question);
    const before = all.map((each) => led(desk, question, each));

    assert.deepEqual(
      before.map(({ session, verdict }) => ({ session, verdict })),
      now.map(({ session, verdict }) => ({ session, verdict })),
    );
  }
});

test("each answer that can be tapped is worked out before it is", async () => {
  const desk = laid(shelved, begin(woods.id));
  const question = about(desk, first);

  assert.ok(all.every((each) => !isKnown(desk, question, each)));
  await foresee(desk, question);
  assert.ok(all.every((each) => isKnown(desk, question, each)));
});

test("what was foreseen counts for its desk, question and places alone", async () => {
  await foresee(pair, about(pair, first));
  const [one, other] = led(pair, { ...about(pair, first), places: [1] }, reading).session.items;
  assert.deepEqual([one.readings, other.readings], [[], [[first.id, reading.value]]]);
  const [item] = led(pair, about(pair, second), cannot).session.items;
  assert.deepEqual(item.readings, [[second.id, null]]);
  const later = laid(pair, answer(pair.session, second, null));
  assert.equal(led(later, about(later, first), reading).session.items[0].readings.length, 2);
});

test("another question ends the looking ahead from the one before", async () => {
  const desk = laid(shelved, begin(woods.id));
  const [before, now] = [first, second].map((clue) => about(desk, clue));
  await Promise.all([foresee(desk, before), foresee(desk, now)]);

  assert.ok(!isKnown(desk, before, reading));
  assert.ok(isKnown(desk, now, cannot));
});

test("a part that is never replaced is not foreseen gone", async () => {
  const never = choices.find((each) => !isEver(each));
  const desk = laid(shelved, begin(woods.id));
  await foresee(desk, about(desk, never));

  assert.throws(() => led(desk, about(desk, never), gone), RangeError);
  assert.ok(isKnown(desk, about(desk, never), cannot));
});
