import assert from "node:assert/strict";
import { test } from "node:test";

import { differences } from "../../static/phone/log/differences.js";
import { entry } from "../../static/phone/log/record.js";
import { json } from "./kept.js";

const then = entry(json()).verdict;
const range = { say: "1963 to 1975" };
const ranged = { ...then, say: "1963 to 1975: virtually certain, over 99 %", range };

test("a verdict that moved is told from and to", () => {
  const now = { ...then, say: "leaning to 1958: 64 %", leading: 1958, probability: 0.64 };

  assert.deepEqual(differences(then, now), ["1957, 71 %, is now 1958, 64 %."]);
});

test("a verdict that is as sure is no difference", () => {
  assert.deepEqual(differences(then, { ...then, probability: 0.7149 }), []);
});

test("a verdict that is less sure is one", () => {
  const now = { ...then, probability: 0.5 };

  assert.deepEqual(differences(then, now), ["1957, 71 %, is now 1957, 50 %."]);
});

test("ranges and none of these have names", () => {
  const now = { ...ranged, leading: 1970, probability: 0.999 };
  const none = { ...ranged, leading: null, probability: 0.8 };

  assert.deepEqual(differences(then, now), ["1957, 71 %, is now 1963 to 1975, over 99 %."]);
  assert.deepEqual(differences(now, none), [
    "1963 to 1975, over 99 %, is now none of these, 80 %.",
  ]);
});

test("no year is told where none led", () => {
  const now = { ...then, say: "cannot tell: 5 years are level at 12 %", probability: 0.12 };

  assert.deepEqual(differences(then, now), [`1957, 71 %, is now ${now.say}.`]);
});

test("red flags that come and go are told", () => {
  const now = { ...then, flags: ["The grip is newer."] };

  assert.deepEqual(differences(then, now), [
    "New red flag: The grip is newer.",
    "No longer a red flag: There are no rings on the collar.",
  ]);
});
