// The posterior of a set: what is kept between two answers, and numbers that survive.
// That its numbers are those of Python is what the shared vectors are for.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { unpack } from "../../static/phone/engine/guide.js";
import { prepare } from "../../static/phone/engine/prepare.js";
import { set_prospects } from "../../static/phone/engine/setgain.js";
import { weigh_set } from "../../static/phone/engine/sets.js";

const TEN = [..."23456789WS"];
const ANYTHING = { claimed: null, away: false, without: [], photos: false };
const dotterel = packed("wrackham-teale-dotterel");
const tables = prepare(unpack(dotterel));

function packed(id) {
  const file = new URL(`../vectors/${id}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")).guide;
}

function item(member, ...readings) {
  return Object.freeze({ readings, gone: [], member });
}

function bag() {
  return TEN.map((member, i) =>
    item(
      member,
      ["toe-outline", i < 4 ? "round" : "square"],
      ["collar-rings", i === 2 ? "silver" : "navy-ivory"],
      ["grip-cap", "black"],
      ["pad", 5.5 + i / 10],
    ),
  );
}

function sum(numbers) {
  return numbers.reduce((total, x) => total + x, 0);
}

function close(got, want) {
  assert.equal(got.length, want.length);
  got.forEach((x, i) => assert.ok(Math.abs(x - want[i]) < 1e-9, `${x}, ${want[i]}`));
}

test("only the member that changed is worked out anew", () => {
  const items = bag();
  const before = weigh_set(tables, items);
  const changed = items.with(3, item("5", ["toe-outline", "round"]));

  const after = weigh_set(tables, changed);

  const kept = after.standing.map((one, i) => one === before.standing[i]);
  assert.deepEqual(
    kept,
    TEN.map((_, i) => i !== 3),
  );
});

test("what was kept says the same as what is new", () => {
  const items = bag();
  set_prospects(tables, items, weigh_set(tables, items), ANYTHING);
  const changed = items.with(3, item("5", ["toe-outline", "round"]));
  const fresh = structuredClone(changed);

  const kept = weigh_set(tables, changed);

  assert.deepEqual(kept, weigh_set(tables, fresh));
  assert.deepEqual(
    set_prospects(tables, changed, kept, ANYTHING),
    set_prospects(tables, fresh, weigh_set(tables, fresh), ANYTHING),
  );
});

test("another guide's tables are not mixed up with these", () => {
  const items = bag();
  const floor = prepare(unpack({ ...structuredClone(dotterel), floor: 0.2 }));
  const before = weigh_set(tables, items);

  assert.notDeepEqual(weigh_set(floor, items).years, before.years);
  assert.deepEqual(weigh_set(tables, items), before);
});

test("members that say the same share one record", () => {
  const members = dotterel.members.stray_for.map(([member]) => member);
  const [often] = members.filter((member) => !["3", "4"].includes(member));
  const items = ["3", "4", often].map((m) => item(m, ["collar-rings", "plain"]));

  const [three, four, other] = weigh_set(tables, items).standing;

  assert.equal(three, four);
  assert.notEqual(three, other);
});

test("permuting members permutes the answer", () => {
  const items = bag();
  const got = weigh_set(tables, items);
  const turned = weigh_set(tables, [...items].reverse());

  close(turned.cells, got.cells);
  close(turned.whole_set, got.whole_set);
  close([...turned.stray].reverse(), got.stray);
});

test("ten members with seventeen readings near 0.01 survive", () => {
  const guide = structuredClone(packed("ashlar-kittiwake"));
  const { kind } = guide.clues.find((clue) => clue.id === "stamp");
  const fields = kind.fields.filter((field) => field.name === "pattern");
  const number = { ...guide.clues[0], misread: 0.1, kind: { ...kind, fields } };
  guide.clues = Array.from({ length: 17 }, (_, k) => ({ ...number, id: `n-${k}` }));
  guide.members = { ...guide.members, all: TEN, stray_for: [] };
  const read = ["19", "28", "27", "18"];
  const items = TEN.map((member, m) =>
    item(member, ...guide.clues.map(({ id }, k) => [id, read[(k + m) % 4]])),
  );

  const got = weigh_set(prepare(unpack(guide)), items);

  assert.ok(got.log_evidence < Math.log(2 ** -1022), `${got.log_evidence}`);
  assert.ok(Math.abs(sum(got.cells) - 1) < 1e-9);
  got.without.forEach((years) => assert.ok(Math.abs(sum(years) - 1) < 1e-9));
});
