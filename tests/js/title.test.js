import assert from "node:assert/strict";
import { test } from "node:test";

import { entry } from "../../static/phone/log/record.js";
import { nameOf } from "../../static/phone/log/title.js";
import { json } from "./kept.js";

const GUIDE = "Ashlar 'Dotterel' irons";
const range = { since: 1900, until: 1909, probability: 0.8, start_say: "", stop_say: "" };
const items = (...members) =>
  members.map((member) => ({ member, readings: [["rings", "green"]], gone: [] }));

/** The name of a find that nobody has named, of which this is known. */
function unnamed({ found = items(null), ...verdict } = {}, title = "") {
  const { find, verdict: usual } = json();
  return nameOf(
    entry(json({ title, find: { ...find, items: found }, verdict: { ...usual, ...verdict } })),
    GUIDE,
  );
}

test("a person's own title is the name", () => {
  assert.equal(unnamed({}, "Iron from the barn"), "Iron from the barn");
});

for (const [probability, year] of [
  [0.9, "1957"],
  [0.89, "probably 1957"],
  [0.51, "probably 1957"],
  [0.5, "perhaps 1957"],
  [0.2, "perhaps 1957"],
]) {
  test(`a year of ${probability} is named no surer than it is`, () => {
    assert.equal(unnamed({ probability }, " "), `${GUIDE}, ${year}`);
  });
}

test("a range is named as it is said", () => {
  const told = { leading: 1904, range: { ...range, say: "1900 to 1909" } };

  assert.equal(unnamed({ ...told, probability: 0.95 }), `${GUIDE}, 1900 to 1909`);
  assert.equal(unnamed({ ...told, probability: 0.6 }), `${GUIDE}, probably 1900 to 1909`);
});

test("no year is named where none is told", () => {
  assert.equal(unnamed({ leading: null, probability: 0.96 }), GUIDE);
});

test("years that are level are named together, or not at all", () => {
  const both = { leading: 1957, probability: 0.38, say: "leaning to 1956 or 1957: 38 % each" };

  assert.equal(unnamed(both), `${GUIDE}, perhaps 1956 or 1957`);
  assert.equal(unnamed({ ...both, say: "cannot tell: 4 years are level at 23 %" }), GUIDE);
});

test("no year is named where nothing was read", () => {
  const unread = [{ member: null, readings: [["rings", null]], gone: [] }];

  assert.equal(unnamed({ found: unread, probability: 0.1 }), GUIDE);
});

test("a member and a set are named apart", () => {
  const sure = { probability: 0.99 };

  assert.equal(unnamed({ ...sure, found: items("7") }), `${GUIDE}, 1957, member 7`);
  assert.equal(unnamed({ ...sure, found: items("W") }), `${GUIDE}, 1957, member W`);
  assert.equal(unnamed({ ...sure, found: items("7", "8", "9") }), `${GUIDE}, 1957, set of 3`);
});
