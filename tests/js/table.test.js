import assert from "node:assert/strict";
import { test } from "node:test";

import { table } from "../../static/phone/log/table.js";
import { entry } from "../../static/phone/log/record.js";
import { json } from "./kept.js";
import { small } from "./small-guide.js";

const GUIDE = {
  ...small,
  id: "kittiwake",
  title: "Kittiwake irons",
  parts: [{ id: "grip", name: "grip" }],
  clues: small.clues.map((clue) =>
    clue.id === "rings"
      ? { ...clue, kind: { name: "choice", options: [{ id: "green", label: "a green ring" }] } }
      : clue,
  ),
};

/** The rows of a table without its mark, read as RFC 4180 says. */
function rows(text) {
  const cells = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n)/gy;
  const [made, row] = [[], []];
  let at = 1;
  for (const [whole, cell, end] of text.slice(1).matchAll(cells)) {
    row.push(cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell);
    at += whole.length;
    if (end === "\r\n") made.push(row.splice(0));
  }
  assert.equal(at, text.length, "is not as RFC 4180 says");
  return made;
}

/** One entry's row by the heads of its columns, where these guides are there. */
function row(fields, guides = []) {
  const known = new Map(guides.map((guide) => [guide.id, guide]));
  const [heads, cells, ...rest] = rows(table([entry(json(fields))], undefined, known));
  assert.deepEqual(rest, []);
  return Object.fromEntries(heads.map((head, i) => [head, cells[i]]));
}

test("a find is one row under its heads", () => {
  assert.deepEqual(row({ note: "", place: "Fair" }), {
    date: "2026-11-22",
    title: "Irons from the fair",
    guide: "kittiwake",
    "guide id": "kittiwake",
    objects: "1",
    members: "",
    verdict: "1957: likely, 71 %",
    "model year": "1957",
    probability: "0.71",
    "red flags": "There are no rings on the collar.",
    claimed: "1952",
    asked: "120",
    paid: "80.5",
    currency: "EUR",
    place: "Fair",
    note: "",
    readings: "rings: green; pad: 6.25; face: 91.5, give or take 0.4; code: can’t tell; grip: gone",
    photos: "0",
    judged: "2026-11-25T10:00:00.000Z",
    "guide of": "2026-02-01",
    id: "00000000-0000-4000-8000-000000000001",
    "reading ids": "rings=green, pad=6.25, face=91.5 ± 0.4, code=?, grip gone",
  });
});

test("years that are level give no model year", () => {
  const verdict = { ...json({}).verdict, say: "cannot tell: 5 years are level at 12 %" };

  assert.equal(row({ verdict })["model year"], "");
  assert.equal(row({ verdict }).verdict, verdict.say);
});

test("what the guide knows is told in its words", () => {
  const { readings } = row({}, [GUIDE]);

  assert.equal(
    readings,
    "collar rings: a green ring; pad thickness: 6.25 mm; face: 91.5, give or take 0.4; " +
      "hosel code: can’t tell; grip: gone",
  );
});

test("an option that the guide has no more is told by its id", () => {
  const items = [{ member: null, readings: [["rings", "navy"]], gone: [] }];
  const { readings } = row({ find: { guide: "kittiwake", items, claim: null } }, [GUIDE]);

  assert.equal(readings, "collar rings: navy");
});

test("a probability is a share of four digits", () => {
  const { verdict } = json();

  assert.equal(row({ verdict: { ...verdict, probability: 0.70714285 } }).probability, "0.7071");
});

test("the file begins with its mark and ends its lines", () => {
  const text = table([]);

  assert.deepEqual([...new TextEncoder().encode(text).slice(0, 3)], [0xef, 0xbb, 0xbf]);
  assert.match(text, /^\uFEFFdate,title,[^\r\n]*,id,reading ids\r\n$/);
});

test("commas, quotes and lines stay in their cell", () => {
  const note = 'a "b", c;\r\nd\ne, "';

  assert.equal(row({ note }).note, note);
});

for (const begin of ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"]) {
  test(`a cell from ${JSON.stringify(begin)} on is text`, () => {
    const title = `${begin}HYPERLINK("http://x.invalid","y")`;

    assert.equal(row({ title }).title, `'${title}`);
  });
}

test("what is no formula stays as it is", () => {
  for (const title of ["a=b", " =1", "'=1", "1-2"]) assert.equal(row({ title }).title, title);
});

test("a price of nothing is not a missing one", () => {
  const { asked, paid } = row({ asked: 0, paid: null });

  assert.deepEqual([asked, paid], ["0", ""]);
});

test("the items of a set stand apart", () => {
  const items = ["6", "7"].map((member) => ({ member, readings: [["pad", 6]], gone: [] }));
  const find = { guide: "kittiwake", items, claim: null };
  const cells = row({ find });

  assert.equal(cells.readings, "6: pad: 6\n7: pad: 6");
  assert.equal(cells["reading ids"], "6: pad=6; 7: pad=6");
  assert.deepEqual([cells.objects, cells.members, cells.claimed], ["2", "6, 7", ""]);
});

test("a find without a title has its name", () => {
  const titles = (guide) => `The ${guide}`;
  const text = table([entry(json({ title: "" }))], titles);

  assert.equal(rows(text)[1][1], "The kittiwake, probably 1957");
});
