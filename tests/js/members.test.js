import assert from "node:assert/strict";
import { test } from "node:test";

import * as members from "../../static/phone/members.js";
import { targets } from "../../static/phone/scope.js";
import { answer, find, lose, regain, retract, undo } from "../../static/phone/session.js";
import { small } from "./small-guide.js";
import { clue, dice, fresh, wander } from "./walk.js";

const { addMember, addMembers, pick, removeMember, rename, takenAway } = members;
const setOf = (...ids) => addMembers(fresh(), ids, small);
const called = (session) => session.items.map(({ member }) => member);

test("one object of unknown number becomes the first member", () => {
  const read = answer(fresh(), clue("rings"), "navy");

  assert.deepEqual(addMembers(read, ["6", "3"], small).items, [
    { member: "3", readings: [], gone: [] },
    { member: "6", readings: [["rings", "navy"]], gone: [] },
  ]);
});

test("the order of adding is irrelevant", () => {
  const one = ["7", "3", "5"].reduce((s, id) => addMember(s, id, small), fresh());

  assert.deepEqual(one.items, setOf("3", "5", "7").items);
});

test("a member is never there twice", () => {
  const set = setOf("3", "5");

  assert.equal(addMember(set, "5", small), set);
  assert.deepEqual(called(addMembers(set, ["5", "6"], small)), ["3", "5", "6"]);
  assert.throws(() => rename(set, "3", "5", small), {
    name: "RangeError",
    message: 'The set has its "5" already; no member can be there twice.',
  });
});

test("the last member only loses its number", () => {
  const one = answer(addMember(fresh(), "5", small), clue("rings"), "navy");

  assert.deepEqual(removeMember(one, "5", small).items, [
    { member: null, readings: [["rings", "navy"]], gone: [] },
  ]);
});

test("a renamed member keeps its readings and its turn", () => {
  const set = answer(pick(setOf("3", "5", "7"), 1), clue("rings"), "navy");
  const other = rename(pick(set, 0), "3", "6", small);

  assert.deepEqual(called(other), ["5", "6", "7"]);
  assert.equal(other.at, 1);
  assert.deepEqual(other.items[0].readings, [["rings", "navy"]]);
});

test("who was asked about stays so while others come and go", () => {
  const set = pick(setOf("5", "6", "7"), 1);
  const more = addMember(set, "3", small);

  assert.equal(more.at, 2);
  assert.equal(removeMember(more, "3", small).at, 1);
  assert.equal(removeMember(set, "6", small).at, "all");
});

test("one that is left is asked about as one object", () => {
  assert.equal(removeMember(pick(setOf("5", "6"), 1), "5", small).at, "all");
});

test("what was read on a removed member is told and comes back", () => {
  const set = answer(setOf("3", "5"), clue("rings"), "navy");
  const fewer = removeMember(set, "5", small);

  assert.deepEqual(
    takenAway(fewer).map(({ member }) => member),
    ["5"],
  );
  assert.deepEqual(undo(fewer), set);
  assert.deepEqual(takenAway(rename(set, "5", "6", small)), []);
  assert.deepEqual(takenAway(removeMember(setOf("3", "5"), "5", small)), []);
});

test("an answer for all leaves exceptions alone", () => {
  const one = answer(pick(setOf("3", "5", "7"), 1), clue("rings"), "green");
  const all = answer(pick(one, "all"), clue("rings"), "navy");

  assert.deepEqual(
    all.items.map(({ readings }) => readings[0][1]),
    ["navy", "green", "navy"],
  );
});

test("an answer for all that all had is changed for all", () => {
  const all = answer(answer(setOf("3", "5"), clue("rings"), "navy"), clue("rings"), "green");

  assert.deepEqual(
    all.items.map(({ readings }) => readings),
    [[["rings", "green"]], [["rings", "green"]]],
  );
});

test("an answer for all does not bring a gone part back", () => {
  const gone = lose(pick(setOf("3", "5"), 1), "grip", small);
  const all = pick(gone, "all");

  assert.deepEqual(targets(all, clue("cap")), [0]);
  assert.deepEqual(targets(answer(all, clue("cap"), "bird"), clue("cap")), [0]);
  assert.deepEqual(targets(lose(all, "grip", small), clue("cap")), [0, 1]);
});

test("for all is the same as for each", () => {
  const events = [
    (s, places) => answer(s, clue("rings"), "navy", places),
    (s, places) => lose(s, "grip", small, places),
    (s, places) => regain(s, "grip", places),
    (s, places) => retract(s, "pad", places),
  ];
  for (let seed = 1; seed <= 100; seed += 1) {
    const walked = [...wander(seed, 20)].at(-1);
    const all = [...walked.items.keys()];
    const places = all.filter(() => dice(seed)() < 0.7);
    for (const event of events) {
      const each = places.reduce((s, place) => event(s, [place]), walked);
      assert.deepEqual(event(walked, places).items, each.items, `seed ${seed}`);
    }
    const at = pick(walked, "all");
    const some = targets(at, clue("rings"));
    const one = some.reduce((s, place) => answer(s, clue("rings"), "navy", [place]), at);
    assert.deepEqual(answer(at, clue("rings"), "navy").items, one.items);
  }
});

test("what did not change is the same object", () => {
  const set = answer(setOf("3", "5", "7"), clue("rings"), "navy");
  const one = answer(pick(set, 1), clue("rings"), "green");
  const [before, after] = [find(set, small), find(one, small)];

  assert.deepEqual(
    before.items.map((item, i) => item === after.items[i]),
    [true, false, true],
  );
  assert.equal(find(undo(undo(one)), small).items[1], before.items[1]);
});
