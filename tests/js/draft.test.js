import assert from "node:assert/strict";
import { test } from "node:test";

import { addMembers, pick } from "../../static/phone/members.js";
import { answer, draft, restore, undo } from "../../static/phone/session.js";
import { small } from "./small-guide.js";
import { clue, fresh, wander } from "./walk.js";

const STAMP = "1a2b";

test("a kept draft comes back exactly", () => {
  for (let seed = 1; seed <= 50; seed += 1) {
    const session = [...wander(seed, 20)].at(-1);
    const text = JSON.stringify(draft(session, STAMP));
    const back = restore(JSON.parse(text), small, STAMP);

    assert.deepEqual(back, { session, lost: [] }, `seed ${seed}`);
    assert.ok(Object.isFrozen(back.session.items[0].readings));
  }
});

test("a newer draft is refused with both formats", () => {
  assert.throws(() => restore({ format: 3, guide: "?" }, small, STAMP), {
    name: "DraftError",
    message:
      "This draft was written by a newer version of the app (format 3; this one " +
      "reads 2). It is kept as it is; update when online.",
  });
});

test("an older draft is refused with both formats", () => {
  assert.throws(() => restore({ format: 1, guide: "?" }, small, STAMP), {
    name: "DraftError",
    message:
      "This draft was written by an older version of the app (format 1; this one " +
      "reads 2). It is set aside as it is; begin a new find.",
  });
});

test("a draft of another guide is refused", () => {
  const other = { ...small, id: "oxmere-reels" };

  assert.throws(() => restore(draft(fresh(), STAMP), other, STAMP), {
    name: "DraftError",
    message:
      'This draft belongs to the guide "ashlar-kittiwake", not to "oxmere-reels". ' +
      "It is kept as it is; open its own guide to go on.",
  });
});

test("what is no draft is refused with a sentence", () => {
  const good = JSON.parse(JSON.stringify(draft(answer(fresh(), clue("pad"), 6), STAMP)));
  const with_ = (change) => ({ ...good, session: { ...good.session, ...change } });
  const item = (change) => ({ ...good.session.items[0], ...change });
  const of = (change) => with_({ items: [item(change)] });
  const junk = {
    nothing: null,
    missing: undefined,
    text: "format",
    number: 7,
    list: [],
    empty: {},
    "format 0": { ...good, format: 0 },
    "format in text": { ...good, format: "2" },
    "no session": { ...good, session: null },
    "guide as number": with_({ guide: 7 }),
    "no items": with_({ items: [] }),
    "items as object": with_({ items: { 0: item({}) } }),
    "item as text": with_({ items: ["7"] }),
    "two items without members": with_({ items: [item({}), item({})] }),
    "one of two without a member": with_({ items: [item({}), item({ member: "7" })] }),
    "a member twice": with_({ items: [item({ member: "7" }), item({ member: "7" })] }),
    "place outside": with_({ at: 1 }),
    "place in text": with_({ at: "length" }),
    "readings as object": of({ readings: { pad: 6 } }),
    "reading alone": of({ readings: [["pad"]] }),
    "reading of three": of({ readings: [["pad", 6, 7]] }),
    "reading as object": of({ readings: [["pad", {}]] }),
    "reading not finite": of({ readings: [["pad", Infinity]] }),
    "clue as number": of({ readings: [[7, "7"]] }),
    "gone as text": of({ gone: "grip" }),
    "member as number": of({ member: 7 }),
    "claim as year": with_({ claim: 1952 }),
    "claimed year as text": with_({ claim: { model_year: "1952", cites: [] } }),
    "claim without cites": with_({ claim: { model_year: 1952 } }),
    "away as text": with_({ away: "yes" }),
    "photos as number": with_({ photos: 1 }),
    "tools as text": with_({ without: "callipers" }),
    "no past": with_({ past: undefined }),
    "junk in the past": with_({ past: [{}] }),
  };
  for (const [what, json] of Object.entries(junk)) {
    assert.throws(
      () => restore(json, small, STAMP),
      {
        name: "DraftError",
        message:
          "What was kept here is not a draft that this app can read. " +
          "It is set aside as it is; begin a new find.",
      },
      what,
    );
  }
});

test("what the guide lost is named, the rest restored", () => {
  const item = {
    member: "9",
    readings: [
      ["star", "yes"],
      ["rings", "mauve"],
      ["pad", 13],
      ["code", "D17"],
      ["cap", "bird"],
    ],
    gone: ["ferrule", "head", "collar"],
  };
  const kept = {
    ...fresh(),
    items: [item],
    claim: { model_year: 1960, cites: ["star"] },
  };
  const { session, lost } = restore(draft(kept, STAMP), small, STAMP);

  assert.deepEqual(session.items, [
    { member: null, readings: [["cap", "bird"]], gone: ["collar"] },
  ]);
  assert.equal(session.claim, null);
  assert.deepEqual(lost, [
    'The guide no longer has the set member "9"; it is left out.',
    'The guide no longer has the clue "star"; what was kept of it is left out.',
    'The guide no longer takes "mauve" for the collar rings; look again.',
    'The guide no longer takes "13" for the pad thickness; look again.',
    'The guide no longer takes "D17" for the hosel code; look again.',
    'The guide no longer has the part "ferrule", which was gone.',
    "The guide now says that the head is never replaced, so it is not gone.",
    "The guide no longer has the model year 1960; the claim is left out.",
  ]);
});

test("a claim outlives a clue that it cited", () => {
  const kept = { ...fresh(), claim: { model_year: 1952, cites: ["star", "rings"] } };
  const { session, lost } = restore(draft(kept, STAMP), small, STAMP);

  assert.deepEqual(session.claim, { model_year: 1952, cites: ["rings"] });
  assert.equal(lost.length, 1);
});

test("undo does not bring back what the guide lost", () => {
  const old = { member: null, readings: [["star", "yes"]], gone: [] };
  const read = { ...fresh(), items: [old] };
  const kept = answer(read, clue("cap"), "bird");
  const { session } = restore(draft(kept, STAMP), small, STAMP);

  assert.deepEqual(undo(session).items[0].readings, []);
});

test("a member that the guide lost goes with its readings", () => {
  const set = addMembers(fresh(), ["3", "5", "7"], small);
  const read = answer(pick(answer(set, clue("rings"), "navy"), 2), clue("pad"), 6);
  const fewer = { ...small, members: { ...small.members, all: ["3", "5", "6"] } };
  const { session, lost } = restore(draft(read, STAMP), fewer, STAMP);

  assert.deepEqual(
    session.items.map(({ member }) => member),
    ["3", "5"],
  );
  assert.equal(session.at, "all");
  assert.deepEqual(lost, [
    'The guide no longer has the set member "7"; what was read on it is left out.',
  ]);
});

test("a set that the guide lost is one object", () => {
  const set = answer(addMembers(fresh(), ["3", "5"], small), clue("rings"), "navy");
  const { session } = restore(draft(set, STAMP), { ...small, members: null }, STAMP);

  assert.deepEqual(session.items, [
    { member: null, readings: [["rings", "navy"]], gone: [] },
  ]);
});

test("who was asked about is still asked about", () => {
  const set = pick(addMembers(fresh(), ["3", "5", "7"], small), 2);
  const fewer = { ...small, members: { ...small.members, all: ["5", "7"] } };

  assert.equal(restore(draft(set, STAMP), fewer, STAMP).session.at, 1);
});

test("what all members lost is said once", () => {
  const set = answer(addMembers(fresh(), ["3", "5"], small), clue("rings"), "navy");
  const kept = JSON.parse(JSON.stringify(draft(set, STAMP)));
  for (const item of kept.session.items) item.readings.push(["star", "yes"]);

  assert.equal(restore(kept, small, STAMP).lost.length, 1);
});

test("what states of the past share stays shared", () => {
  const set = answer(addMembers(fresh(), ["3", "5"], small), clue("rings"), "navy");
  const read = answer(pick(set, 0), clue("pad"), 6);
  const { session } = restore(structuredClone(draft(read, STAMP)), small, STAMP);

  assert.equal(session.items[1], session.past.at(-1).items[1]);
});

test("codes are held against their alphabets", () => {
  for (const code of ["A17", "???", "C?8"]) assert.ok(isTaken("code", code), code);
  for (const code of ["A1", "A178", "17A", "a17", 17]) {
    assert.ok(!isTaken("code", code), code);
  }
});

test("measures are held against their range", () => {
  for (const size of [3, 6.25, 12]) assert.ok(isTaken("pad", size), size);
  for (const size of [2.99, 12.01, "6.25"]) assert.ok(!isTaken("pad", size), size);
});

test("a size with its error is taken where both fit the range", () => {
  for (const error of [0.1, 9]) assert.ok(isTaken("pad", { value: 6, error }), error);
  for (const size of [{ value: 13, error: 0.1 }, { value: 6, error: 9.1 }]) {
    assert.ok(!isTaken("pad", size), size.value);
  }
});

test("numbers are held against the first and the last", () => {
  for (const n of [120, 417, 31999]) assert.ok(isTaken("serial", n), n);
  for (const n of [119, 32000, 417.5, "417"]) assert.ok(!isTaken("serial", n), n);
});

test("a code may be laid out in any of its ways", () => {
  for (const code of ["X04", "W04", "04C", "1951", "???", "????", "?4H"]) {
    assert.ok(isTaken("diamond", code), code);
  }
  for (const code of ["X", "X0", "04W", "XX4", "19511", "", 195]) {
    assert.ok(!isTaken("diamond", code), code);
  }
});

test("a changed guide is said", () => {
  const { session, lost } = restore(draft(fresh(), "older"), small, STAMP);

  assert.deepEqual(session, fresh());
  assert.deepEqual(lost, [
    "The guide has changed since this draft was kept; years may move.",
  ]);
});

test("keys that are not ours do not come back", () => {
  const kept = JSON.parse(JSON.stringify(draft(fresh(), STAMP)));
  const hostile = { value: { polluted: true }, enumerable: true };
  Object.defineProperty(kept.session, "__proto__", hostile);
  kept.session.extra = 1;

  assert.deepEqual(restore(kept, small, STAMP).session, fresh());
  assert.equal({}.polluted, undefined);
});

/** Whether a kept reading outlives a look into the guide. */
function isTaken(id, reading) {
  const kept = draft(answer(fresh(), clue(id), reading), STAMP);
  return restore(kept, small, STAMP).lost.length === 0;
}
