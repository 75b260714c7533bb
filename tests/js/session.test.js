import assert from "node:assert/strict";
import { test } from "node:test";

import * as events from "../../static/phone/session.js";
import { addMember } from "../../static/phone/members.js";
import { small } from "./small-guide.js";
import { clue, fresh, wander } from "./walk.js";

const { answer, claim, find, lose } = events;
const { regain, retract, undo } = events;

test("a fresh session has read nothing", () => {
  assert.deepEqual(find(fresh(), small), {
    guide: small.id,
    items: [{ readings: [], gone: [], member: null }],
    claim: null,
  });
});

test("an answer replaces the earlier one", () => {
  const session = answer(answer(fresh(), clue("rings"), "green"), clue("rings"), "navy");

  assert.deepEqual(session.items[0].readings, [["rings", "navy"]]);
});

test("can't tell is kept as null", () => {
  const session = answer(fresh(), clue("rings"), null);

  assert.deepEqual(find(session, small).items[0].readings, [["rings", null]]);
});

test("a retracted reading is unread", () => {
  const session = retract(answer(fresh(), clue("rings"), null), "rings");

  assert.deepEqual(session.items[0].readings, []);
});

test("the order of taps is irrelevant", () => {
  const taps = [
    (s) => answer(s, clue("pad"), 6.1),
    (s) => answer(s, clue("code"), "C?7"),
    (s) => lose(s, "collar", small),
    (s) => lose(s, "grip", small),
  ];
  const forth = taps.reduce((s, tap) => tap(s), fresh());
  const back = taps.reduceRight((s, tap) => tap(s), fresh());

  assert.notDeepEqual(forth.items, back.items);
  assert.deepEqual(find(forth, small).items[0].readings, [
    ["pad", 6.1],
    ["code", "C?7"],
  ]);
  assert.deepEqual(find(forth, small), find(back, small));
});

test("what is read on a gone part brings it back in one step", () => {
  const gone = lose(fresh(), "grip", small);
  const read = answer(gone, clue("cap"), "bird");

  assert.deepEqual(read.items[0].gone, []);
  assert.deepEqual(undo(read), gone);
});

test("what cannot be told of a gone part leaves it gone", () => {
  const gone = lose(fresh(), "grip", small);

  assert.deepEqual(answer(gone, clue("cap"), null).items[0].gone, ["grip"]);
});

test("readings on a gone part do not count", () => {
  const read = answer(answer(fresh(), clue("cap"), "bird"), clue("rings"), "navy");
  const gone = lose(read, "grip", small);

  assert.deepEqual(find(gone, small).items[0].readings, [["rings", "navy"]]);
  assert.deepEqual(find(regain(gone, "grip"), small), find(read, small));
});

test("only the regained part comes back", () => {
  const session = lose(lose(fresh(), "grip", small), "collar", small);

  assert.deepEqual(regain(session, "grip").items[0].gone, ["collar"]);
});

test("a part that is never replaced cannot be lost", () => {
  assert.throws(() => lose(fresh(), "head", small), {
    name: "RangeError",
    message: "This guide says that the head is never replaced, so it cannot be gone.",
  });
});

test("a find carries member and claim", () => {
  const told = { model_year: 1952, cites: ["rings"] };
  const session = claim(addMember(fresh(), "7", small), told);

  assert.equal(find(session, small).items[0].member, "7");
  assert.deepEqual(find(session, small).claim, told);
  assert.equal(claim(session, null).claim, null);
});

test("what cannot be done now is kept", () => {
  const session = events.without(events.away(fresh(), true), ["callipers"]);

  assert.equal(session.away, true);
  assert.deepEqual(session.without, ["callipers"]);
});

test("photos and a look from a step away exclude each other", () => {
  const photos = events.photos(events.away(fresh(), true), true);

  assert.deepEqual([photos.photos, photos.away], [true, false]);
  assert.equal(events.away(photos, true).photos, false);
  assert.deepEqual(undo(photos).away, true);
});

test("a tap that changes nothing is no step", () => {
  const session = lose(answer(fresh(), clue("pad"), 6.1), "grip", small);

  assert.equal(answer(session, clue("pad"), 6.1), session);
  assert.equal(lose(session, "grip", small), session);
  assert.equal(retract(session, "rings"), session);
});

test("undo at the start changes nothing", () => {
  assert.deepEqual(undo(fresh()), fresh());
});

test("undo restores exactly, step by step", () => {
  for (let seed = 1; seed <= 200; seed += 1) {
    const walk = [...wander(seed, 30)];
    for (let i = walk.length - 1; i > 0; i -= 1) {
      assert.deepEqual(undo(walk[i]), walk[i - 1], `seed ${seed}, step ${i}`);
    }
  }
});

test("a hundred steps can be undone", () => {
  let session = fresh();
  for (let i = 0; i <= 120; i += 1) session = answer(session, clue("pad"), 3 + i / 100);

  assert.equal(session.past.length, 100);
  assert.deepEqual(session.past[0].items[0].readings, [["pad", 3.2]]);
});

test("a session is frozen all the way down", () => {
  const tools = ["callipers"];
  const told = claim(fresh(), { model_year: 1951, cites: [] });
  const session = events.without(told, tools);

  assert.throws(() => session.items[0].readings.push(["pad", 6]), TypeError);
  assert.throws(() => (session.claim.model_year = 1952), TypeError);
  assert.throws(() => (session.past[0].away = true), TypeError);
  tools.push("the caller's own list stays free");
  assert.deepEqual(session.without, ["callipers"]);
});
