import assert from "node:assert/strict";
import { test } from "node:test";

import { changed, entry, judgedAgain, made, MOST, RecordError } from "../../static/phone/log/record.js";
import { id, json, notes, NOW } from "./kept.js";

const LATER = "2026-12-01T08:30:00.000Z";
const full = json({ photos: [{ ...notes(id(7))[0], clue: "rings" }] });
/** A verdict as the engine gives it, as far as an entry keeps it. */
const verdict = (fields = {}) => ({
  say: "1958: more likely than not, 64 %",
  model_years: [
    [1957, 0.3],
    [1958, 0.64],
  ],
  leading: 1958,
  outside: 0.06,
  range: null,
  flags: [{ kind: "outside", about: [], say: "Look twice.", ask: "", members: [] }],
  ...fields,
});
const desk = (fields) => ({
  guide: { id: "kittiwake", updated: "2026-11-30", years: [] },
  stamp: "d4",
  find: json().find,
  verdict: verdict(fields),
  session: { past: [] },
});
const make = (fields, own) => made(desk(fields), { id: id(1), now: NOW }, own);

/** The sentence with which fields are refused. */
const why = (fields) => {
  try {
    entry(json(fields));
  } catch (error) {
    assert.ok(error instanceof RecordError, error.stack);
    return error.message;
  }
  return "taken";
};
const whyFind = (find) => why({ find: { ...json().find, ...find } });
const whyItem = (item) => whyFind({ items: [{ ...json().find.items[0], ...item }] });
const whyVerdict = (fields) => why({ verdict: { ...json().verdict, ...fields } });
const whyPhoto = (photo) => why({ photos: [{ ...notes(id(7))[0], ...photo }] });

test("a desk becomes an entry", () => {
  const kept = make({}, { title: "Irons", asked: 120, photos: notes(id(7)) });

  assert.deepEqual(kept, {
    format: 1,
    id: id(1),
    guide: "kittiwake",
    find: json().find,
    version: { stamp: "d4", updated: "2026-11-30" },
    verdict: {
      say: "1958: more likely than not, 64 %",
      leading: 1958,
      probability: 0.64,
      outside: 0.06,
      range: null,
      flags: ["Look twice."],
    },
    judged: NOW,
    title: "Irons",
    note: "",
    place: "",
    date: "",
    asked: 120,
    paid: null,
    currency: "",
    photos: notes(id(7)),
    created: NOW,
    changed: NOW,
  });
});

test("none of these is as probable as it is said", () => {
  const { leading, probability } = make({ leading: null, outside: 0.8 }).verdict;

  assert.deepEqual([leading, probability], [null, 0.8]);
});

test("a range is as probable as it is said", () => {
  const range = {
    since: 1963,
    until: 1975,
    probability: 0.9,
    say: "1963 to 1975",
    start_say: "Not before 1963.",
    stop_say: "",
  };
  const { verdict } = make({ range });

  assert.equal(verdict.probability, 0.9);
  assert.deepEqual(verdict.range, range);
});

test("a desk that cannot be kept is refused", () => {
  assert.throws(() => make({}, { title: "x".repeat(201) }), RecordError);
});

test("an entry read twice is the same", () => {
  const once = entry(full);

  assert.deepEqual(once, full);
  assert.deepEqual(entry(JSON.parse(JSON.stringify(once))), once);
});

test("what is read shares nothing with its source", () => {
  const source = structuredClone(full);
  const read = entry(source);
  source.find.items[0].readings[0][1] = "navy";
  source.find.items[0].readings[2][1].value = 1;
  source.find.claim.cites.push("pad");
  source.verdict.flags.push("?");
  source.photos[0].width = 1;

  assert.deepEqual(read, full);
});

test("a change leaves the verdict and the old entry", () => {
  const before = entry(full);
  const after = changed(before, { paid: 90, note: "A chip." }, LATER);

  assert.deepEqual(after, { ...full, paid: 90, note: "A chip.", changed: LATER });
  assert.deepEqual(before, full);
});

test("a change cannot touch what is no one's own", () => {
  const after = changed(entry(full), { id: id(9), created: LATER, verdict: null }, LATER);

  assert.deepEqual(after, { ...full, changed: LATER });

test("the last change counts, though the clock was set back", () => {
  const ahead = changed(entry(full), { paid: 90 }, "2041-06-01T10:00:00.000Z");
  const back = changed(ahead, { paid: 80 }, NOW);

  assert.equal(back.changed, "2041-06-01T10:00:00.001Z");
});
});

test("a price can be taken back", () => {
  assert.equal(changed(entry(full), { paid: null }, LATER).paid, null);
});

test("a change that is wrong is refused", () => {
  assert.throws(() => changed(entry(full), { paid: -1 }, LATER), {
    name: "RecordError",
    message: "The price paid cannot be -1: a number from 0 to 1000000000000 is needed.",
  });
});

test("an entry judged again keeps its own fields", () => {
  const again = judgedAgain(entry(full), desk(), LATER);

  assert.equal(again.verdict.leading, 1958);
  assert.deepEqual(again.version, { stamp: "d4", updated: "2026-11-30" });
  assert.deepEqual([again.judged, again.changed], [LATER, LATER]);
  assert.deepEqual([again.title, again.created], [full.title, NOW]);
});

test("unknown fields are left out", () => {
  const more = { more: 1, toJSON: "x", verdict: { ...full.verdict, more: 1 } };

  assert.deepEqual(entry({ ...full, ...more }), full);
});

test("nothing is read through a prototype", () => {
  const text = JSON.stringify(json({ title: undefined }));
  const hostile = JSON.parse(text.replace("{", '{"__proto__": {"title": "polluted"},'));
  const inherited = Object.assign(Object.create({ place: "polluted" }), json());
  delete inherited.place;

  assert.equal(entry(hostile).title, "");
  assert.equal(entry(inherited).place, "");
  assert.equal({}.title, undefined);
});

test("a prototype is no clue", () => {
  const wrong = whyItem({ readings: [["__proto__", "x"]] });

  assert.match(wrong, /^The clue cannot be "__proto__": small letters/);
});

test("what may be missing has a default", () => {
  const own = ["title", "note", "place", "date", "asked", "paid", "currency", "photos"];
  const bare = entry(json(Object.fromEntries(own.map((key) => [key, undefined]))));
  const found = own.map((key) => bare[key]);

  assert.deepEqual(found, ["", "", "", "", null, null, "", []]);
});

test("times come in one form that sorts", () => {
  const { judged, changed } = entry(
    json({ judged: "2026-11-25T10:00:00Z", changed: "2026-11-25T10:00:00.5Z" }),
  );

  assert.deepEqual([judged, changed], [NOW, "2026-11-25T10:00:00.500Z"]);
});

test("an id in capitals is the same id", () => {
  const capital = "ABCDEF00-0000-4000-8000-000000000001";

  assert.equal(entry(json({ id: capital })).id, capital.toLowerCase());
});

test("half a character is replaced", () => {
  const { title, note } = entry(json({ title: "a\uD83D", note: "\u{1F426}" }));

  assert.deepEqual([title, note], ["a\uFFFD", "\u{1F426}"]);
});

test("a newer format is told as such", () => {
  assert.equal(
    why({ format: 2 }),
    "This find was written by a newer version of the app (format 2; this one reads 1): " +
      "update when online.",
  );
});

for (const junk of [null, undefined, 0, "find", [], true, () => 1]) {
  test(`${String(junk) || "a list"} is no entry`, () => {
    assert.throws(() => entry(junk), RecordError);
  });
}

for (const [wrong, sentence] of [
  [why({ format: "1" }), `The find's format cannot be "1": 1 is needed.`],
  [why({ id: undefined }), "The find's id cannot be missing: a UUID is needed."],
  [why({ id: "1" }), `The find's id cannot be "1": a UUID is needed.`],
  [why({ guide: "../x" }), /^The guide cannot be "..\/x": small letters/],
  [why({ guide: "dotterel" }), `The guide of the readings cannot be "kittiwake": "dotterel" is needed.`],
  [why({ find: undefined }), "The find's readings cannot be missing: a table is needed."],
  [why({ version: [] }), "The guide's version cannot be an empty list: a table is needed."],
  [why({ judged: "yesterday" }), /^The time of the verdict cannot be "yesterday": a time/],
  [why({ changed: "2026-13-01T00:00:00Z" }), /^The time of the last change cannot be/],
  [why({ title: 7 }), "The title cannot be 7: a text is needed."],
  [why({ title: "x".repeat(201) }), "The title has 201 characters; at most 200 are taken."],
  [why({ place: "x".repeat(201) }), "The place has 201 characters; at most 200 are taken."],
  [why({ note: "x".repeat(2001) }), "The note has 2001 characters; at most 2000 are taken."],
  [why({ date: "2026-02-30" }), /^The date cannot be "2026-02-30": a day/],
  [why({ date: "25.11.2026" }), /^The date cannot be "25.11.2026": a day/],
  [why({ asked: "120" }), `The price asked cannot be "120": a number is needed.`],
  [why({ asked: Infinity }), "The price asked cannot be Infinity: a number is needed."],
  [why({ paid: NaN }), "The price paid cannot be NaN: a number is needed."],
  [why({ paid: 2e12 }), /^The price paid cannot be 2000000000000: a number from 0/],
  [why({ currency: "euro" }), /^The currency cannot be "euro": three capital letters/],
  [why({ photos: {} }), "The photos cannot be a table: a list is needed."],
  [why({ photos: notes(1, 2, 3, 4, 5, 6, 7) }), "There are 7 photos; at most 6 are taken."],
  [why({ photos: notes(id(7), id(7)) }), /^The photo cannot be "0{8}-.*": it is there twice/],
  [whyPhoto({ id: "x.jpg" }), `The photo's id cannot be "x.jpg": a UUID is needed.`],
  [whyPhoto({ width: 0 }), "The photo's width cannot be 0: a number from 1 to 100000 is needed."],
  [whyPhoto({ height: 1.5 }), "The photo's height cannot be 1.5: a whole number is needed."],
  [whyPhoto({ bytes: MOST.photo + 1 }), /^The photo's number of bytes cannot be 5000001: a number/],
  [whyPhoto({ clue: "No" }), /^The photo's clue cannot be "No": small letters/],
  [whyVerdict({ leading: 1957.5 }), /^The leading model year cannot be 1957.5: a whole/],
  [whyVerdict({ probability: 1.1 }), "The verdict's probability cannot be 1.1: a number from 0 to 1 is needed."],
  [whyVerdict({ outside: undefined }), /^The probability of none of these cannot be missing: a number/],
  [whyVerdict({ flags: "none" }), `The red flags cannot be "none": a list is needed.`],
  [whyVerdict({ range: { since: 1951 } }), /^The range's last year cannot be missing: a number/],
  [whyFind({ items: [] }), "The items cannot be an empty list: one at least is needed."],
  [whyFind({ items: Array(101).fill({}) }), "There are 101 items; at most 100 are taken."],
  [whyFind({ claim: { model_year: "1952" } }), /^The model year claimed cannot be "1952": a number/],
  [whyItem({ member: 6 }), "The member cannot be 6: a text is needed."],
  [whyItem({ readings: {} }), "The readings cannot be a table: a list is needed."],
  [whyItem({ readings: [["rings"]] }), "The reading cannot be missing: a table is needed."],
  [whyItem({ readings: [["rings", []]] }), "The reading cannot be an empty list: a table is needed."],
  [whyItem({ readings: [["pad", { value: 1, error: -1 }]] }), /^The measure's error cannot be -1: a number from 0 is/],
  [whyItem({ readings: [["pad", 1], ["pad", 2]] }), `The clue cannot be "pad": it is there twice.`],
  [whyItem({ gone: [7] }), "The parts that are gone cannot be 7: a text is needed."],
]) {
  test(`refused: ${wrong}`, () => {
    if (sentence instanceof RegExp) assert.match(wrong, sentence);
    else assert.equal(wrong, sentence);
  });
}

const member = (member) => ({ member, readings: [], gone: [] });

test("members of a set are told apart", () => {
  assert.equal(whyFind({ items: [member("3"), member("4")] }), "taken");
  assert.equal(
    whyFind({ items: [member("3"), member(null)] }),
    "The member cannot be empty: each item of a set names its own.",
  );
  assert.equal(
    whyFind({ items: [member("3"), member("3")] }),
    'The member cannot be "3": it is there twice.',
  );
});

test("a refusal shows no more than a line", () => {
  assert.ok(why({ currency: "x".repeat(150) }).length < 120);
});

test("a value nested deeply is refused, not followed", () => {
  let deep = [];
  for (let i = 0; i < 100_000; i += 1) deep = [deep];

  assert.equal(why({ title: deep }), "The title cannot be a list: a text is needed.");
});
