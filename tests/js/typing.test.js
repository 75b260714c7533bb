// Codes and numbers while they are typed: what a key does, what is shown, what is wrong.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { answer } from "../../static/phone/session.js";
import * as counting from "../../static/phone/counting.js";
import * as spelling from "../../static/phone/spelling.js";
import { into, isLeft, meant, NOTHING, pressed, typing } from "../../static/phone/typing.js";
import { told } from "../../static/phone/view/reading.js";
import { clue, fresh } from "./walk.js";

const hosel = clue("code").kind;
const diamond = clue("diamond").kind;
const serial = clue("serial").kind;

/** What keys one after the other make of a question. */
const keyed = (kind, keys) =>
  [...keys].reduce((entry, key) => pressed(entry, kind, key), NOTHING).typed;

/** The names of each row, as they stand below the places. */
const names = (code, typed) => spelling.rows(code, typed).map((row) => row.map(({ name }) => name));

test("a code takes what its field knows, and no more", () => {
  assert.equal(keyed(hosel, "A17"), "A17");
  assert.equal(keyed(hosel, "1A718"), "A71");
  assert.equal(keyed(hosel, "a?7?"), "A?7");
});

test("one back takes one character", () => {
  for (const kind of [hosel, serial]) {
    const entry = typing(NOTHING, "12");
    const once = pressed(entry, kind, "back");

    assert.equal(once.typed, "1");
    assert.equal(pressed(pressed(once, kind, "back"), kind, "back").typed, "");
  }
});

test("letters of another plane are one character", () => {
  const code = { fields: [{ name: "sign", width: 2, alphabet: "𐌀𐌁" }], layouts: [] };

  assert.equal(spelling.press(code, "𐌀", "𐌁"), "𐌀𐌁");
  assert.equal(spelling.press(code, "𐌀𐌁", "back"), "𐌀");
  assert.equal(spelling.missing(code, "𐌀𐌁"), "");
});

test("keys are those of every layout that still fits", () => {
  const keys = (typed) => spelling.keys(diamond, typed).join("");

  assert.equal(keys(""), "0123456789CHWX");
  assert.equal(keys("X"), "0123456789");
  assert.equal(keys("04"), "0123456789CHX");
  assert.equal(keys("19?"), "0123456789");
  assert.equal(keys("195"), "0123456789");
  assert.equal(keys("X04"), "");
  assert.equal(keys("1951"), "");
});

test("a layout that no longer fits is not shown", () => {
  assert.deepEqual(names(diamond, ""), [
    ["top or letter", "left"],
    ["top", "left"],
    ["works", "year"],
  ]);
  assert.deepEqual(names(diamond, "X"), [["top or letter", "left"]]);
  assert.deepEqual(names(diamond, "W"), [["letter", "left"]]);
  assert.deepEqual(names(diamond, "04C"), [["top", "left"]]);
  assert.deepEqual(names(hosel, "A"), [["month", "pattern"]]);
});

test("an unreadable place rules out no layout", () => {
  assert.equal(names(diamond, "?").length, 3);
  assert.equal(names(diamond, "?4").length, 3);
  assert.equal(spelling.missing(diamond, "???"), "");
});

test("a whole code may still grow", () => {
  assert.equal(spelling.missing(diamond, "1??"), "");
  assert.equal(
    spelling.prompt(diamond, "1??"),
    "It may end here. If there is more: the year, 2\u00a0of\u00a02",
  );
  assert.equal(keyed(diamond, "1??1"), "1??1");
  assert.equal(spelling.prompt(diamond, "1??1"), "That is the whole code.");
});

test("what is missing is named", () => {
  const still = "Still missing: ";
  const how = ". Use “Unreadable” for what cannot be read.";

  assert.match(spelling.missing(hosel, ""), /^Type the code/);
  assert.equal(spelling.missing(hosel, "?"), `${still}the pattern${how}`);
  assert.equal(spelling.missing(hosel, "A1"), `${still}the pattern${how}`);
  assert.equal(spelling.missing(diamond, "1"), `${still}the top and left${how}`);
  assert.equal(spelling.missing(diamond, "195"), `${still}the year${how}`);
  assert.equal(spelling.missing(diamond, "X04"), "");
});

test("what comes next is told by name and place", () => {
  assert.equal(spelling.prompt(hosel, ""), "Now the month");
  assert.equal(spelling.prompt(hosel, "A1"), "Now the pattern, 2\u00a0of\u00a02");
  assert.equal(spelling.prompt(diamond, ""), "Now the top or the letter or the works");
  assert.equal(spelling.prompt(diamond, "04"), "Now the left or the year");
});

test("the diamond of registered designs is read either way", () => {
  const { guide } = JSON.parse(readFileSync("tests/vectors/registered-design.json", "utf-8"));
  const { kind } = guide.clues[0];

  assert.deepEqual(names(kind, "X"), [["year", "month", "day", "parcel"]]);
  assert.deepEqual(names(kind, "1"), [["day", "parcel", "year", "month"]]);
  assert.deepEqual(spelling.keys(kind, "1204").join(""), "-ACDEFHIJKLPSUVWXY");
  assert.equal(spelling.missing(kind, "1204WG"), "");
});

test("a code laid out in one way is shown in its fields", () => {
  const shown = (code) => told(clue("diamond"), code);

  assert.equal(shown("X04"), "X 04");
  assert.equal(shown("?4H"), "·4 H");
  assert.equal(shown("1951"), "19 51");
  assert.equal(shown("0??"), "0· ·");
  assert.equal(shown("???"), "···");
  assert.equal(told(clue("code"), "A?7"), "A·7");
});

test("a number takes digits, as many as can be told apart", () => {
  assert.equal(keyed(serial, "4a1?7 "), "417");
  assert.equal(keyed(serial, "1".repeat(20)), "1".repeat(15));
});

test("noughts in front do not count", () => {
  assert.deepEqual(meant(serial, "0417"), { wrong: "", reading: 417 });
});

test("a number beyond the last is told at once", () => {
  const [before, after] = ["3199", "31999"].map((typed) => pressed(typing(NOTHING, typed), serial, "9"));

  assert.equal(before.wrong, "");
  assert.equal(
    after.wrong,
    "This guide’s numbers end with 31\u202f999; a higher one is newer than it knows. " +
      "Look again, or choose “Can’t tell”.",
  );
  assert.equal(pressed(after, serial, "back").wrong, "");
});

test("a number below the first is told when it is taken", () => {
  assert.equal(pressed(typing(NOTHING, "11"), serial, "9").wrong, "");
  assert.match(meant(serial, "119").wrong, /begin with 120; a lower one is older/);
  assert.equal(meant(serial, "120").wrong, "");
  assert.match(meant(serial, "").wrong, /Type the number/);
});

test("long numbers are written in groups of three", () => {
  assert.equal(counting.grouped(""), "");
  assert.equal(counting.grouped("1954"), "1954");
  assert.equal(counting.grouped("19540"), "19\u202f540");
  assert.equal(counting.grouped("1234567"), "1\u202f234\u202f567");
  assert.equal(told(clue("serial"), 31999), "31\u202f999");
});

test("each question begins with what was read of it", () => {
  const { items } = answer(fresh(), clue("serial"), 417);
  const first = into(NOTHING, { clue: clue("serial"), places: [0] }, items);
  assert.equal(first.typed, "417");

  const more = pressed(first, serial, "9");
  assert.equal(into(more, { clue: clue("serial"), places: [0] }, items), more);
  assert.equal(into(more, { clue: clue("diamond"), places: [0] }, items).typed, "");
  assert.equal(into(more, { clue: null, places: [] }, items).typed, "");
});

test("another member begins anew", () => {
  const { items } = answer(fresh(), clue("serial"), 417);
  const question = (place) => ({ clue: clue("serial"), places: [place] });
  const [first] = items;
  const typed = typing(into(NOTHING, question(0), items), "12");

  assert.equal(into(typed, question(1), [first, { ...first, readings: [] }]).typed, "");
});

test("what was typed and not handed in is told from what was read", () => {
  const asked = clue("serial");
  const question = { clue: asked, places: [0] };
  const blank = [{ member: null, readings: [], gone: [] }];
  const typed = typing(into(NOTHING, question, blank), "417");

  assert.ok(isLeft(typed, question, blank));
  assert.ok(!isLeft(into(NOTHING, question, blank), question, blank));
  const read = [{ ...blank[0], readings: [["serial", 417]] }];
  assert.ok(!isLeft(typed, question, read));
  assert.ok(!isLeft(typed, { clue: { ...asked, id: "patent" }, places: [0] }, blank));
});
