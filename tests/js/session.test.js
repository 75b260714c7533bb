import assert from "node:assert/strict";
import { test } from "node:test";

import * as events from "../../static/phone/session.js";
import { small } from "./small-guide.js";

const { answer, begin, claim, draft, find, lose, member } = events;
const { regain, restore, retract, undo } = events;
const STAMP = "1a2b";
const fresh = () => begin(small.id);
const clue = (wanted) => small.clues.find(({ id }) => id === wanted);

test("a fresh session has read nothing", () => {
  assert.deepEqual(find(fresh(), small), {
    guide: small.id,
    items: [{ readings: [], gone: [], member: null }],
    claim: null,
  });
});

test("an answer replaces the earlier one", () => {
  const session = answer(answer(fresh(), clue("rings"), "green"), clue("rings"), "navy");

  assert.deepEqual(session.readings, [["rings", "navy"]]);
});

test("can't tell is kept as null", () => {
  const session = answer(fresh(), clue("rings"), null);

  assert.deepEqual(find(session, small).items[0].readings, [["rings", null]]);
});

test("a retracted reading is unread", () => {
  const session = retract(answer(fresh(), clue("rings"), null), "rings");

  assert.deepEqual(session.readings, []);
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

  assert.notDeepEqual(forth.readings, back.readings);
  assert.deepEqual(find(forth, small).items[0].readings, [
    ["pad", 6.1],
    ["code", "C?7"],
  ]);
  assert.deepEqual(find(forth, small), find(back, small));
});

test("what is read on a gone part brings it back in one step", () => {
  const gone = lose(fresh(), "grip", small);
  const read = answer(gone, clue("cap"), "bird");

  assert.deepEqual(read.gone, []);
  assert.deepEqual(undo(read), gone);
});

test("what cannot be told of a gone part leaves it gone", () => {
  const gone = lose(fresh(), "grip", small);

  assert.deepEqual(answer(gone, clue("cap"), null).gone, ["grip"]);
});

test("readings on a gone part do not count", () => {
  const read = answer(answer(fresh(), clue("cap"), "bird"), clue("rings"), "navy");
  const gone = lose(read, "grip", small);

  assert.deepEqual(find(gone, small).items[0].readings, [["rings", "navy"]]);
  assert.deepEqual(find(regain(gone, "grip"), small), find(read, small));
});

test("only the regained part comes back", () => {
  const session = lose(lose(fresh(), "grip", small), "collar", small);

  assert.deepEqual(regain(session, "grip").gone, ["collar"]);
});

test("a part that is never replaced cannot be lost", () => {
  assert.throws(() => lose(fresh(), "head", small), {
    name: "RangeError",
    message: "This guide says that the head is never replaced, so it cannot be gone.",
  });
});

test("a find carries member and claim", () => {
  const told = { model_year: 1952, cites: ["rings"] };
  const session = claim(member(fresh(), "7"), told);

  assert.equal(find(session, small).items[0].member, "7");
  assert.deepEqual(find(session, small).claim, told);
  assert.equal(claim(session, null).claim, null);
});

test("what cannot be done now is kept", () => {
  const session = events.without(events.away(fresh(), true), ["callipers"]);

  assert.equal(session.away, true);
  assert.deepEqual(session.without, ["callipers"]);
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
  assert.deepEqual(session.past[0].readings, [["pad", 3.2]]);
});

test("a session is frozen all the way down", () => {
  const tools = ["callipers"];
  const told = claim(fresh(), { model_year: 1951, cites: [] });
  const session = events.without(told, tools);

  assert.throws(() => session.readings.push(["pad", 6]), TypeError);
  assert.throws(() => (session.claim.model_year = 1952), TypeError);
  assert.throws(() => (session.past[0].away = true), TypeError);
  tools.push("the caller's own list stays free");
  assert.deepEqual(session.without, ["callipers"]);
});

test("a kept draft comes back exactly", () => {
  for (let seed = 1; seed <= 50; seed += 1) {
    const session = [...wander(seed, 20)].at(-1);
    const text = JSON.stringify(draft(session, STAMP));
    const back = restore(JSON.parse(text), small, STAMP);

    assert.deepEqual(back, { session, lost: [] }, `seed ${seed}`);
    assert.ok(Object.isFrozen(back.session.readings));
  }
});

test("a newer draft is refused with both formats", () => {
  assert.throws(() => restore({ format: 2, guide: "?" }, small, STAMP), {
    name: "DraftError",
    message:
      "This draft was written by a newer version of the app (format 2; this one " +
      "reads 1). It is kept as it is; update when online.",
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
    "readings as object": with_({ readings: { pad: 6 } }),
    "reading alone": with_({ readings: [["pad"]] }),
    "reading of three": with_({ readings: [["pad", 6, 7]] }),
    "reading as object": with_({ readings: [["pad", {}]] }),
    "reading not finite": with_({ readings: [["pad", Infinity]] }),
    "clue as number": with_({ readings: [[7, "7"]] }),
    "gone as text": with_({ gone: "grip" }),
    "member as number": with_({ member: 7 }),
    "claim as year": with_({ claim: 1952 }),
    "claimed year as text": with_({ claim: { model_year: "1952", cites: [] } }),
    "claim without cites": with_({ claim: { model_year: 1952 } }),
    "away as text": with_({ away: "yes" }),
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
  const kept = {
    ...fresh(),
    readings: [
      ["star", "yes"],
      ["rings", "mauve"],
      ["pad", 13],
      ["code", "D17"],
      ["cap", "bird"],
    ],
    gone: ["ferrule", "head", "collar"],
    member: "9",
    claim: { model_year: 1960, cites: ["star"] },
  };
  const { session, lost } = restore(draft(kept, STAMP), small, STAMP);

  assert.deepEqual(session.readings, [["cap", "bird"]]);
  assert.deepEqual(session.gone, ["collar"]);
  assert.equal(session.member, null);
  assert.equal(session.claim, null);
  assert.deepEqual(lost, [
    'The guide no longer has the clue "star"; what was kept of it is left out.',
    'The guide no longer takes "mauve" for the collar rings; look again.',
    'The guide no longer takes "13" for the pad thickness; look again.',
    'The guide no longer takes "D17" for the hosel code; look again.',
    'The guide no longer has the part "ferrule", which was gone.',
    "The guide now says that the head is never replaced, so it is not gone.",
    'The guide no longer has the set member "9"; it is left out.',
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
  const read = { ...fresh(), readings: [["star", "yes"]] };
  const kept = answer(read, clue("cap"), "bird");
  const { session } = restore(draft(kept, STAMP), small, STAMP);

  assert.deepEqual(undo(session).readings, []);
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

/** Sessions of a random walk, seeded; every one differs from the one before. */
function* wander(seed, steps) {
  const random = dice(seed);
  const pick = (list) => list[Math.floor(random() * list.length)];
  const taps = [
    (s) => answer(s, clue("rings"), pick(["green", "navy", null])),
    (s) => answer(s, clue("pad"), pick([3, 6.25, 12, null])),
    (s) => answer(s, clue("code"), pick(["A17", "?52", "???", null])),
    (s) => retract(s, pick(["rings", "pad", "code"])),
    (s) => lose(s, pick(["collar", "grip"]), small),
    (s) => regain(s, pick(["collar", "grip"])),
    (s) => member(s, pick(["5", "7", null])),
    (s) => claim(s, pick([null, { model_year: 1951, cites: ["pad"] }])),
    (s) => events.away(s, pick([true, false])),
    (s) => events.without(s, pick([[], ["callipers"]])),
  ];
  let session = fresh();
  yield session;
  for (let i = 0; i < steps; i += 1) {
    const next = pick(taps)(session);
    if (next !== session) yield (session = next);
  }
}

/** Numbers from 0 to 1 that a seed decides (a linear congruence, Park and Miller). */
function dice(seed) {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
