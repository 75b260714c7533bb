import assert from "node:assert/strict";
import { test } from "node:test";

import { addMembers, pick, rename } from "../../static/phone/members.js";
import { answer, lose, retract } from "../../static/phone/session.js";
import * as steps from "../../static/phone/steps.js";
import { small } from "./small-guide.js";
import { clue, fresh } from "./walk.js";

const { cited, claimed, lacking, spread, withMember } = steps;
const set = addMembers(fresh(), ["3", "5", "7"], small);

test("a tool is missing until it is there again", () => {
  const session = lacking(lacking(fresh(), "ruler", true), "callipers", true);

  assert.deepEqual(session.without, ["ruler", "callipers"]);
  assert.deepEqual(lacking(session, "ruler", false).without, ["callipers"]);
});

test("what was cited outlives another claimed year", () => {
  const session = cited(claimed(fresh(), "1951"), "rings", true);

  assert.deepEqual(claimed(session, "1952").claim, { model_year: 1952, cites: ["rings"] });
  assert.deepEqual(cited(session, "rings", false).claim.cites, []);
  assert.equal(claimed(session, "").claim, null);
  assert.equal(cited(fresh(), "rings", true).claim, null);
});

test("a second tap takes a member away", () => {
  const more = withMember(set, "6", small);

  assert.equal(more.items.length, 4);
  assert.deepEqual(withMember(more, "6", small).items, set.items);
});

test("an answer for all says how far it spread", () => {
  const all = answer(set, clue("rings"), "navy");
  const told = { clue: clue("rings"), count: 3, total: 3, gone: false };

  assert.deepEqual(spread(all, small), told);
  const other = answer(all, clue("rings"), "green", [1]);
  assert.deepEqual(spread(other, small), { ...told, count: 2 });
});

test("a part gone on all is told as gone", () => {
  const { clue: cap, gone } = spread(lose(set, "grip", small), small);

  assert.deepEqual([cap.id, gone], ["cap", true]);
});

test("only what spread is told of", () => {
  const all = answer(set, clue("rings"), "navy");

  assert.equal(spread(answer(set, clue("code"), "A17", [1]), small), null);
  assert.equal(spread(retract(all, "rings"), small), null);
  assert.equal(spread(pick(all, 1), small), null);
  assert.equal(spread(answer(pick(all, 1), clue("rings"), "green"), small), null);
  assert.equal(spread(claimed(all, "1951"), small), null);
  assert.equal(spread(withMember(all, "6", small), small), null);
  assert.equal(spread(rename(all, "3", "4", small), small), null);
  assert.equal(spread(answer(fresh(), clue("rings"), "navy"), small), null);
});
