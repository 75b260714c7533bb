import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { alone, asked, laid } from "../../static/phone/desk.js";
import { prepare, unpack } from "../../static/phone/engine/index.js";
import { addMembers, pick } from "../../static/phone/members.js";
import { WHICH } from "../../static/phone/routes.js";
import { answer, away, begin, claim } from "../../static/phone/session.js";
import { small } from "./small-guide.js";
import { clue, fresh } from "./walk.js";

const NEXTS = [
  { member: "5", clue: "code" },
  { member: "3", clue: "rings" },
  { member: "5", clue: "rings" },
  { member: "7", clue: "pad" },
];
const set = addMembers(fresh(), ["3", "5", "7"], small);

/** What is asked, by id, and for whom. */
function question(session, wanted = { clue: null }, nexts = NEXTS) {
  const verdict = { next: [...nexts, { member: "3", clue: "cap" }] };
  const found = asked({ guide: small, session, nexts, verdict }, wanted);
  return found && [found.clue.id, found.places, found.open];
}

test("one object is asked what tells most", () => {
  const nexts = [{ member: null, clue: "pad" }];

  assert.deepEqual(question(fresh(), { clue: null }, nexts), ["pad", [0], [0]]);
  assert.equal(question(fresh(), { clue: null }, []), null);
});

test("what shows at a glance is asked of all", () => {
  assert.deepEqual(question(set, { clue: "rings" }), ["rings", [0, 1, 2], [0, 1, 2]]);
});

test("what must be typed is asked of the one it tells most on", () => {
  assert.deepEqual(question(set), ["code", [1], [0, 1, 2]]);
  assert.deepEqual(question(set, { clue: "pad" }), ["pad", [2], [0, 1, 2]]);
});

test("what must be typed is never asked of one that has it", () => {
  const read = answer(set, clue("code"), "A17", [1]);

  assert.deepEqual(question(read, { clue: "code" }), ["code", [0], [0, 2]]);
});

test("a member is asked what tells most on it", () => {
  assert.deepEqual(question(pick(set, 0)), ["rings", [0], [0]]);
  assert.equal(question(pick(set, 0), { clue: null }, NEXTS.slice(2)), null);
});

test("the address may name a member for once", () => {
  assert.deepEqual(question(set, { clue: "code", member: "7" }), ["code", [2], [2]]);
  assert.deepEqual(question(set, { clue: "rings", member: "9" }), [
    "rings",
    [0, 1, 2],
    [0, 1, 2],
  ]);
});

test("who differs has yet to be said", () => {
  assert.deepEqual(question(set, { clue: "rings", member: WHICH })[1], []);
  assert.deepEqual(question(fresh(), { clue: "rings", member: WHICH })[1], [0]);
});

test("the rest is asked however little it tells", () => {
  assert.equal(question(set, { clue: null }, []), null);
  assert.equal(question(set, { rest: true }, [])[0], "cap");
});

test("a clue that the guide lacks is not asked", () => {
  assert.equal(question(set, { clue: "star" })[0], "code");
});

const VECTOR = new URL("../vectors/tarn-corncrake.json", import.meta.url);
const woods = unpack(JSON.parse(readFileSync(VECTOR, "utf8")).guide);
const shelved = { guide: woods, tables: prepare(woods), stamp: "1a2b" };
const [first] = woods.clues;
const pair = addMembers(begin(woods.id), ["3", "5"], woods);

test("what nothing is judged by is not judged again", () => {
  const desk = laid(shelved, pair);
  const picked = laid(desk, pick(pair, 1));

  assert.equal(picked.verdict, desk.verdict);
  assert.equal(picked.session.at, 1);
});

test("whatever is judged is judged anew", () => {
  const desk = laid(shelved, pair);
  const changes = [
    answer(pair, first, first.kind.options[0].id),
    claim(pair, { model_year: woods.years[0].year, cites: [] }),
    away(pair, true),
  ];

  for (const session of changes) {
    const again = laid(shelved, session);
    assert.deepEqual(laid(desk, session).verdict, again.verdict);
    assert.notDeepEqual(again.verdict, desk.verdict);
  }
});

test("a member's own desk is that of one object", () => {
  const desk = laid(shelved, answer(pair, first, first.kind.options[0].id, [1]));
  const own = alone(desk, "5");

  assert.deepEqual(own.find.items, [desk.find.items[1]]);
  assert.deepEqual(own.verdict.members, []);
  assert.equal(alone(desk, "W"), null);
  assert.equal(alone(laid(shelved, begin(woods.id)), null), null);
});
