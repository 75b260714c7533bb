import assert from "node:assert/strict";
import { test } from "node:test";

import { changed, entry, MOST } from "../../static/phone/log/record.js";
import { search, sort } from "../../static/phone/log/search.js";
import { id, json, NOW } from "./kept.js";
import { honest, worked } from "./worked.js";

const irons = entry(json({ id: id(4), note: "A chip at the toe", place: "Zürich" }));
const reel = entry(
  json({
    id: id(2),
    title: "reel 10",
    guide: "dotterel",
    find: { ...json().find, guide: "dotterel", claim: null },
    date: "",
    paid: null,
    created: "2026-11-24T10:00:00Z",
  }),
);
const putter = entry(json({ id: id(3), title: "Reel 9", date: "2026-11-23", paid: 900 }));
const all = [irons, reel, putter];
const titles = (guide) => (guide === "dotterel" ? "Ashlar 'Dotterel' reels" : guide);

const found = (typed) => search(all, typed, titles).map(({ id }) => all.findIndex((e) => e.id === id));
const order = (by, entries = all) => sort(entries, by, titles).map((each) => all.indexOf(each));

for (const [where, typed] of [
  ["the title", "FAIR"],
  ["the note", "toe"],
  ["the place, whatever its accents", "zurich"],
  ["two fields at once", "chip irons"],
  ["parts of words", "iro zur"],
]) {
  test(`a find is found by ${where}`, () => {
    assert.deepEqual(found(typed), [0]);
  });
}

test("every word must be there", () => {
  assert.deepEqual(found("chip putter"), []);
});

test("no word finds all", () => {
  assert.deepEqual(found("  "), [0, 1, 2]);
});

test("any field is searched", () => {
  assert.deepEqual(found("2026-11-23"), [2]);
  assert.deepEqual(found("dotterel reels"), [1], "the guide's title");
  assert.deepEqual(found("900 EUR"), [2], "a price");
  assert.deepEqual(found("1952"), [0, 2], "the year claimed");
  assert.deepEqual(found("green 6.25 91.5 grip"), [0, 1, 2], "readings");
  assert.deepEqual(found("71 %"), [0, 1, 2], "the verdict");
  assert.deepEqual(found("no rings"), [0, 1, 2], "a red flag");
});

test("ids and stamps are not searched", () => {
  assert.deepEqual(found("a1b2c3"), []);
  assert.deepEqual(found(id(2)), []);
});

test("a changed find is searched anew", () => {
  assert.deepEqual(search([irons], "heel"), []);
  const now = changed(irons, { note: "A chip at the heel" }, NOW);

  assert.deepEqual(search([now], "heel"), [now]);
  assert.deepEqual(search([now], "toe"), []);
});

test("the newest day is on top", () => {
  // The reel has no day but that on which it was kept.
  assert.deepEqual(order("date"), [1, 2, 0]);
});

test("titles go by number, not by capital", () => {
  assert.deepEqual(order("title"), [0, 2, 1]);
});

test("the dearest is on top, the unpaid last", () => {
  assert.deepEqual(order("paid"), [2, 0, 1]);
});

test("guides go by title, then finds by theirs", () => {
  assert.deepEqual(order("guide"), [1, 0, 2]);
});

test("what is alike goes by the time of keeping", () => {
  const twins = [1, 2, 3].map((n) => ({ ...irons, id: id(n), created: `2026-01-0${n}` }));
  const back = sort(twins, "title").map(({ id }) => id);

  assert.deepEqual(back, [id(3), id(2), id(1)]);
  assert.deepEqual(sort(twins.toReversed(), "title").map(({ id }) => id), back);
});

test("sorting leaves the list as it was", () => {
  const list = [irons, reel, putter];
  sort(list, "paid");

  assert.deepEqual(list, [irons, reel, putter]);
});

test("a find is read once for all that is typed", () => {
  let reads = 0;
  const watched = Object.defineProperty({ ...irons }, "title", {
    enumerable: true,
    get: () => `Irons ${(reads += 1)}`,
  });
  search([watched], "i");
  const once = reads;
  search([watched], "ir");

  assert.ok(once > 0);
  assert.equal(reads, once);
});

test("a full log is searched while typing", () => {
  const full = Array.from({ length: MOST.entries }, (_, i) => ({ ...irons, id: id(i) }));
  search(full, "warm");
  const start = worked();
  const hits = search(full, "chip toe").length;

  assert.equal(hits, MOST.entries);
  const took = worked() - start;
  assert.ok(took < honest(), `${took} ms`);
});

test("a find without a title is found and sorted by its name", () => {
  const set = ["7", "8"].map((member) => ({ member, readings: [["rings", "red"]], gone: [] }));
  const unnamed = entry(
    json({ id: id(5), title: "", guide: "dotterel", find: { ...json().find, guide: "dotterel", items: set } }),
  );
  const entries = [...all, unnamed];

  assert.deepEqual(search(entries, "ashlar probably set of 2", titles), [unnamed]);
  assert.deepEqual(sort(entries, "title", titles)[0], unnamed, "A comes before I and R");
});
