import assert from "node:assert/strict";
import { test } from "node:test";

import { story } from "../../static/phone/view/story.js";

const guide = {
  title: "Ashlar irons",
  fiction: true,
  parts: [
    { id: "head", name: "head" },
    { id: "grip", name: "grip" },
  ],
  members: { names: [["5", "5 iron"]] },
};
const verdict = {
  say: "leaning to 1957: likely, 71 %",
  runner_up: "1956, 12 %; the pad would best tell 1956 from 1957",
  built_say: "",
  replaced: [
    { part: "head", say: "not looked at" },
    { part: "grip", say: "gone" },
  ],
  whole_set: [],
  set_say: "",
  members: [],
  claim: { say: "What was read speaks neither for nor against 1955.", cited: [{ say: "A." }] },
  flags: [
    { say: "The grip is gone.", ask: "Do you have it?" },
    { say: "Worn thin.", ask: "" },
  ],
};

test("a verdict is told in paragraphs", () => {
  assert.equal(
    story({ guide, verdict }),
    `Ashlar irons (invented)

Leaning to 1957: likely, 71 %.
Runner-up: 1956, 12 %; the pad would best tell 1956 from 1957.

Grip gone.

What was read speaks neither for nor against 1955.
A.

The grip is gone. Ask: “Do you have it?”
Worn thin.

This is an estimate from what was read, not an authentication or an appraisal.
`,
  );
});

test("a set is told member by member", () => {
  const members = [
    { member: "5", say: "1957: likely, 70 %", stray_say: "" },
    { member: "6", say: "1959: likely, 70 %", stray_say: "The 6 is probably a stray." },
  ];
  const told = story({
    guide: { ...guide, fiction: false },
    verdict: { ...verdict, set_say: "Sold as 5 to 6: complete.", members, claim: null, flags: [] },
  });

  assert.match(
    told,
    /\n\nSold as 5 to 6: complete\.\n5 iron: 1957: likely, 70 %\.\nThe 6 is probably a stray\.\n\n/,
  );
  assert.doesNotMatch(told, /invented/);
});
