// A person's own prices and wants in a file of finds: out, in, and refused.

import assert from "node:assert/strict";
import { test } from "node:test";

import { findsText } from "../../static/phone/log/archive.js";
import { exported, inWords, lots, merged, opened, takenInWords } from "../../static/phone/log/transfer.js";
import { writtenEntry } from "../../static/phone/log/written.js";
import { id } from "./kept.js";
import { photosFrom, pictured } from "./pictured.js";
import { priced, wanted } from "./wanted.js";

const EARLY = "2026-11-24T10:00:00.000Z";
const LATE = "2026-11-26T10:00:00.000Z";
const OWN = { prices: [priced()], wants: [wanted(1), wanted(2, { member: null })] };
const here = (own = {}, unread = {}) => ({
  own: { prices: [], wants: [], ...own, unread: { prices: [], wants: [], ...unread } },
});
/** A file whose own table is this JSON text. */
const file = (own) =>
  new Blob([`{"format":1,"app":"fieldid","finds":[],"own":${own}}`]);
const fileOf = (own) => file(JSON.stringify(own));

test("prices and wants come back as they went", async () => {
  const kept = [pictured(1, [11])];
  const { file: made } = await exported([kept[0].entry], photosFrom(kept), OWN);
  const { own, incoming } = await opened(made);

  assert.deepEqual(own, { ...OWN, refused: [] });
  assert.equal(incoming.length, 1);
});

test("a file without them is as it always was", () => {
  assert.equal(findsText([]), '{"format":1,"app":"fieldid","finds":[\n\n]}\n');
  assert.equal(findsText(["{}"], { prices: [], wants: [] }), findsText(["{}"]));
});

test("the first lot alone takes them along", () => {
  const [{ entry }] = [pictured(1)];
  assert.deepEqual(lots([], OWN), [[]]);
  assert.deepEqual(lots([entry], OWN), [[entry]]);
});

test("what is owned takes its room in the file", async () => {
  const note = "\\u0001".repeat(330);
  const log = Array.from({ length: 4500 }, (_, i) =>
    pictured(i, [], { note: `${note}`.slice(0, 1900) }).entry,
  );
  const wants = Array.from({ length: 500 }, (_, i) => wanted(i, { note: "x".repeat(2000) }));
  const own = { prices: [], wants };
  const [lot] = lots(log, own);

  assert.ok(lot.length < lots(log)[0].length);
  const { file: made } = await exported(lot, async () => [], own);
  const { incoming, own: back } = await opened(made);
  assert.deepEqual([incoming.length, back.wants.length], [lot.length, 500]);
});

test("of two the one changed last is right", () => {
  const mine = here({
    wants: [wanted(1), wanted(2, { changed: LATE }), wanted(3, { changed: EARLY }), wanted(4)],
    prices: [priced({ changed: EARLY }), priced({ guide: "oxmere-grebe" })],
  });
  const rows = {
    wants: [
      wanted(1),
      wanted(2, { most: 1 }),
      wanted(3, { most: 2 }),
      wanted(4, { note: "other" }),
      wanted(5),
    ],
    prices: [priced({ other: 1 }), priced({ guide: "oxmere-grebe" }), priced({ guide: "new" })],
  };
  const plan = merged([], { incoming: [], refused: [], own: { ...rows, refused: [] } }, mine);
  const ids = (fate) => plan.own.wants[fate].map((one) => one.id);
  const guides = (fate) => plan.own.prices[fate].map((one) => one.guide);

  assert.deepEqual(["added", "changed", "same", "older"].map(ids), [
    [id(5)],
    [id(3)],
    [id(1)],
    [id(2)],
  ]);
  assert.deepEqual(["added", "changed", "same", "older"].map(guides), [
    ["new"],
    ["wrackham-teale-dotterel"],
    ["oxmere-grebe"],
    [],
  ]);
  assert.match(plan.own.refused[0].why, /changed at the same moment/);
  assert.deepEqual(inWords(plan), [
    "1 want is new.",
    "1 want is newer than here, and takes its place.",
    "1 want is here already.",
    "1 want is newer here, and stays.",
    "1 want cannot be taken.",
    "Your prices for 1 guide are new.",
    "Your prices for 1 guide are newer than here, and take their places.",
    "Your prices for 1 guide are here already.",
  ]);
});

test("rows that cannot be read here stay", () => {
  const rows = { wants: [wanted(1)], prices: [priced()], refused: [] };
  const unread = { wants: [id(1)], prices: ["wrackham-teale-dotterel"] };
  const plan = merged([], { incoming: [], refused: [], own: rows }, here({}, unread));

  assert.deepEqual([plan.own.wants.added, plan.own.prices.added], [[], []]);
  assert.deepEqual(plan.own.refused.map(({ kind }) => kind), ["prices", "wants"]);
  assert.match(plan.own.refused[0].why, /is left as it is/);
});

test("no more wants come in than there is room for", () => {
  const wants = Array.from({ length: 499 }, (_, i) => wanted(i));
  const rows = { wants: [wanted(600), wanted(601)], prices: [], refused: [] };
  const plan = merged([], { incoming: [], refused: [], own: rows }, here({ wants }));

  assert.equal(plan.own.wants.added.length, 1);
  assert.match(plan.own.refused[0].why, /room for 500 wants/);
});

for (const [own, says] of [
  ["7", "no table"],
  ["[]", "no table"],
  ["null", "no table"],
  ['{"wants":{}}', "The wants in this file are no list."],
  ['{"prices":"all"}', "The prices in this file are no list."],
  [JSON.stringify({ wants: Array(5001).fill(wanted()) }), "holds 5001 wants; at most 500"],
  [JSON.stringify({ prices: Array(201).fill(priced()) }), "holds 201 prices; at most 200"],
  [`{"wants":${"[".repeat(30)}${"]".repeat(30)}}`, "nested too deeply"],
]) {
  test(`a file with ${own.slice(0, 30)} is refused`, async () => {
    await assert.rejects(
      opened(file(own)),
      ({ name, message }) => name === "TransferError" && message.includes(says),
    );
  });
}

for (const [name, rows, says] of [
  ["a want of wrong types", { wants: [wanted(1, { most: "120" })] }, "a number is needed"],
  ["a want that is a list", { wants: [[1]] }, "a table is needed"],
  ["a want of a newer version", { wants: [wanted(1, { format: 2 })] }, "newer version"],
  ["prices of wrong types", { prices: [priced({ worth: { 1957: 9 } })] }, "a list is needed"],
  ["prices for no guide", { prices: [priced({ guide: undefined })] }, "guide of the prices"],
  ["one id twice", { wants: [wanted(1), wanted(1, { most: 1 })] }, "for the same"],
]) {
  test(`${name} costs itself only`, async () => {
    const good = wanted(7);
    const answer = await opened(fileOf({ ...rows, wants: [...(rows.wants ?? []), good] }));
    const plan = merged([], answer, here());

    assert.deepEqual(plan.own.wants.added, [good]);
    assert.deepEqual(plan.own.prices.added, []);
    assert.ok(plan.own.refused.length > 0);
    for (const { why } of plan.own.refused) {
      assert.match(why, /^\p{Lu}[^]{5,250}\.$/u);
      assert.ok(why.includes(says), why);
    }
  });
}

test("keys that do harm do not get in", async () => {
  const forged = '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},';
  const text = findsText([JSON.stringify(writtenEntry(pictured(1).entry))], OWN);
  const { own } = await opened(new Blob([text.replaceAll("{", forged)]));

  assert.deepEqual(own, { ...OWN, refused: [] });
  assert.equal({}.polluted, undefined);
  assert.equal(own.wants[0].polluted, undefined);
});

test("what was taken in is told in one sentence", () => {
  const plan = (found, wants, prices) => {
    const some = (length) => ({ added: Array(length), changed: [] });
    return { ...some(found), own: { wants: some(wants), prices: some(prices) } };
  };

  assert.equal(takenInWords(plan(1, 0, 0)), "1 find was taken in.");
  assert.equal(takenInWords(plan(0, 1, 0)), "1 want was taken in.");
  assert.equal(takenInWords(plan(0, 0, 1)), "Your prices for 1 guide were taken in.");
  assert.equal(
    takenInWords(plan(3, 2, 2)),
    "3 finds, 2 wants and your prices for 2 guides were taken in.",
  );
});
