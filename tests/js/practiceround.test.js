// A round of practice, and what it teaches, held against an enumeration of every cell
// with every combination of parts.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { prospects } from "../../static/phone/engine/gain.js";
import { unpack } from "../../static/phone/engine/guide.js";
import { weigh } from "../../static/phone/engine/one.js";
import { likelihood, prepare, tables_for } from "../../static/phone/engine/prepare.js";
import { borne } from "../../static/phone/practice/borne.js";
import { judged, KNOWN, told, WORD } from "../../static/phone/practice/feedback.js";
import { begin, BUDGET, evenly, laid, left, look, open, shown } from "../../static/phone/practice/round.js";
import { slips } from "../../static/phone/practice/truth.js";

const guideOf = (name) => {
  const file = new URL(`../vectors/${name}.json`, import.meta.url);
  return unpack(JSON.parse(readFileSync(file, "utf8")).guide);
};
const GUIDES = ["wrackham-teale-dotterel", "oxmere-grebe", "fen-bittern"].map(guideOf);
const [DOTTEREL, GREBE] = GUIDES;
const TABLES = new Map(GUIDES.map((guide) => [guide, prepare(guide)]));
/** Seeds as far apart as the phone's own are; near ones draw alike. */
const seed = (i) => (1103515245 * i + 12345) % 2 ** 31;
const near = (found, wanted, what) => assert.ok(Math.abs(found - wanted) < 1e-9, `${what}: ${found}, not ${wanted}`);

/** A round with its first looks, those that are left open in guide order. */
function walked(guide, seed, count, skip = 0) {
  let begun = begin(guide, [], seed);
  for (let i = 0; i < count; i++) {
    const possible = open(guide, begun.looks);
    const clue = possible[(skip * (i + 1)) % possible.length];
    if (clue) begun = look(guide, begun, clue.id);
  }
  return begun;
}

/** Joint weight of each year with these readings, by every cell and state of the parts. */
function enumerated(tables, member, readings) {
  const { guide, cells } = tables;
  const rows = tables_for(tables, member);
  const found = [...readings].filter(([, a]) => a !== null).map(([id, a]) => {
    const k = guide.clues.findIndex((clue) => clue.id === id);
    return [tables.part_of[k], likelihood(rows[k], a)];
  });
  const states = Array.from({ length: 2 ** guide.parts.length }, (_, bits) => guide.parts.map((_, p) => (bits >> p) & 1));
  return guide.years.map(({ year, opens, closes }) => {
    let total = 0;
    for (const [c, cell] of cells.entries()) {
      if (cell.year !== year) continue;
      for (const state of states) {
        let w = 1 / guide.years.length / (closes - opens + 1);
        for (const [p, part] of guide.parts.entries()) {
          const parent = guide.parts.findIndex(({ id }) => id === part.follows);
          const rate = parent >= 0 && state[parent] ? Math.max(part.share, part.replaced) : part.replaced;
          w *= state[p] ? rate : 1 - rate;
        }
        for (const [p, like] of found) w *= state[p] ? like.rep : like.orig[c];
        total += w;
      }
    }
    return total;
  });
}

/** What is enumerated after these looks, as shares. */
function sharesAfter(tables, { specimen, readings }, looks) {
  const found = enumerated(tables, specimen.member, new Map(looks.map((id) => [id, readings.get(id)])));
  return found.map((w) => w / sum(found));
}

const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);
const entropy = (weights) => -sum(weights.filter((w) => w > 0).map((w) => (w / sum(weights)) * Math.log2(w / sum(weights))));

/** What a choice is expected to tell, reading by reading. */
function bitsOf(tables, member, readings, clue) {
  const now = enumerated(tables, member, readings);
  const after = clue.kind.options.map(({ id }) => enumerated(tables, member, new Map([...readings, [clue.id, id]])));
  const expected = sum(after.map((row) => (sum(row) / sum(now)) * entropy(row)));
  return (1 - clue.unreadable) * (entropy(now) - expected);
}

for (const guide of GUIDES) {
  test(`${guide.id}: the exact answer is the enumerated one`, () => {
    const tables = TABLES.get(guide);
    for (const seed of [11, 4000, 987654321]) {
      const begun = walked(guide, seed, 5, 3);
      const all = laid(tables, begun);
      const seen = new Map(begun.looks.map((id) => [id, all.readings.get(id)]));
      const wanted = enumerated(tables, all.specimen.member, seen);
      const found = told(tables, begun, { said: guide.years[0].year, sure: 0.5 });

      assert.ok(begun.looks.length >= 3, String(begun.looks));
      found.years.forEach(([year, p], y) => near(p, wanted[y] / sum(wanted), year));
      assert.equal(found.likeliest, guide.years[wanted.indexOf(Math.max(...wanted))].year);
    }
  });

  test(`${guide.id}: each look shows what it made of the year`, () => {
    const tables = TABLES.get(guide);
    const begun = walked(guide, 4000, 5, 3);
    const all = laid(tables, begun);
    const y = guide.years.findIndex(({ year }) => year === begun.year);
    const { looks } = told(tables, begun, { said: begun.year, sure: 0.5 });

    assert.deepEqual(looks.map(({ clue }) => clue), begun.looks);
    looks.forEach(({ clue, share }, i) => near(share, sharesAfter(tables, all, begun.looks.slice(0, i + 1))[y], clue));
  });

  test(`${guide.id}: what is advised would have told more, in no more time`, () => {
    const tables = TABLES.get(guide);
    const clueOf = (id) => guide.clues.find((clue) => clue.id === id);
    const isChoice = (...ids) => ids.every((id) => clueOf(id).kind.name === "choice");
    const count = { advice: 0, held: 0 };
    for (let i = 0; i < 12; i++) {
      const begun = walked(guide, seed(i), 4, i + 1);
      const all = laid(tables, begun);
      const { advice, missed: timely } = told(tables, begun, { said: begun.year, sure: 0.5 });
      assert.ok(advice.length <= (timely ? 1 : 2) && new Set(advice.map(({ missed }) => missed.clue)).size === advice.length);
      for (const { look, missed, more } of advice) {
        const before = begun.looks.slice(0, begun.looks.indexOf(look));
        const shares = sharesAfter(tables, all, before);
        count.advice += 1;
        assert.ok(!begun.looks.includes(missed.clue) && clueOf(missed.clue).seconds <= clueOf(look).seconds);
        assert.ok(Math.max(...shares) < KNOWN && more >= WORD);
        if (missed.between) {
          const [one, other] = missed.between.map((year) => shares[guide.years.findIndex((each) => each.year === year)]);
          assert.ok(one + other >= 0.5, `${one} and ${other}`);
        }
        if (!isChoice(look, missed.clue)) continue;
        count.held += 1;
        const seen = new Map(before.map((id) => [id, all.readings.get(id)]));
        const bits = [missed.clue, look].map((id) => bitsOf(tables, all.specimen.member, seen, clueOf(id)));
        near(more, bits[0] - bits[1], `${missed.clue} for ${look}`);
      }
    }
    // The small guide has few choices; the others are held against the enumeration.
    const isSmall = guide.id === "fen-bittern";
    assert.ok(count.advice >= 3 && (isSmall || count.held >= 1), JSON.stringify(count));
  });

  test(`${guide.id}: no better choice is kept silent`, () => {
    const tables = TABLES.get(guide);
    for (let i = 0; i < 6; i++) {
      const begun = walked(guide, seed(i + 50), 3, i + 2);
      const all = laid(tables, begun);
      const { advice, missed: timely } = told(tables, begun, { said: begun.year, sure: 0.5 });
      if (advice.length === (timely ? 1 : 2)) continue;
      for (const [at, look] of begun.looks.entries()) {
        const before = begun.looks.slice(0, at);
        if (Math.max(...sharesAfter(tables, all, before)) >= KNOWN) continue;
        const seen = new Map(before.map((id) => [id, all.readings.get(id)]));
        const own = guide.clues.find(({ id }) => id === look);
        const others = open(guide, before).filter(({ id, seconds, kind }) => !begun.looks.includes(id) && seconds <= own.seconds && kind.name === "choice");
        if (own.kind.name !== "choice") continue;
        const bits = bitsOf(tables, all.specimen.member, seen, own);
        for (const each of others) {
          const more = bitsOf(tables, all.specimen.member, seen, each) - bits;
          const isSaid = advice.some((one) => one.look === look || one.missed.clue === each.id) || timely?.clue === each.id;
          assert.ok(more < WORD || isSaid, `${each.id} for ${look}: ${more}`);
        }
      }
    }
  });
}

test("nothing is advised once the year is as good as known", () => {
  // What is stamped here leaves one year; other clues would still tell a little.
  const tables = TABLES.get(DOTTEREL);
  const begun = { seed: seed(9), year: 1963, looks: ["catalogue-letters"] };
  const all = laid(tables, begun);
  const item = shown(all, ["catalogue-letters"]);
  const more = prospects(evenly(tables), item, weigh(evenly(tables), item), { claimed: null, away: false, without: [] });
  const { missed, years } = told(tables, begun, { said: 1963, sure: 0.9 });

  assert.ok(Math.max(...years.map(([, p]) => p)) >= KNOWN);
  const timely = open(DOTTEREL, begun.looks).map(({ id }) => id);
  assert.ok(more.some(({ k, bits }) => bits >= WORD && timely.includes(DOTTEREL.clues[k].id)));
  assert.equal(missed, null);
});

test("time that was left is told only in doubt", () => {
  const tables = TABLES.get(DOTTEREL);
  const begun = begin(DOTTEREL, [], 5);
  const { missed, looks, advice } = told(tables, begun, { said: begun.year, sure: 0.1 });

  assert.deepEqual([looks, advice], [[], []]);
  const most = DOTTEREL.clues.filter(({ kind }) => kind.name === "choice").map((clue) => bitsOf(tables, laid(tables, begun).specimen.member, new Map(), clue));
  const best = DOTTEREL.clues.find(({ id }) => id === missed.clue);
  if (best.kind.name === "choice") near(bitsOf(tables, laid(tables, begun).specimen.member, new Map(), best), Math.max(...most), missed.clue);
  assert.equal(missed.between, null);
});

test("an option shows the number of its own object", () => {
  const own = [["numerals", "boxed", "4", "four"], ["setting", "along", null, "worn"]];
  const boxed = { id: "boxed", picture: "seven" };

  assert.equal(borne({ own }, "numerals", boxed, "4"), "four");
  assert.equal(borne({ own }, "numerals", boxed, "7"), "seven");
  assert.equal(borne({ own }, "setting", { id: "along", picture: "F624" }, "4"), "worn");
  assert.equal(borne({ own }, "setting", { id: "along", picture: "F624" }, null), "worn");
});

test("practice counts all years alike, and nothing from outside", () => {
  const even = evenly(TABLES.get(DOTTEREL));

  near(sum(even.prior), 1, "sum");
  assert.equal(even.prior.at(-1), 0);
  for (const [start, stop] of even.stretches) near(sum(even.prior.slice(start, stop)), 1 / 12, start);
});

test("a round comes back from what is kept of it", () => {
  const tables = TABLES.get(DOTTEREL);
  const begun = begin(DOTTEREL, [], 77);
  const again = JSON.parse(JSON.stringify(begun));

  assert.deepEqual(laid(tables, again).specimen, laid(tables, begun).specimen);
  assert.equal(tables.cells[laid(tables, begun).specimen.cell].year, begun.year);
});

test("one of the set as it was sold is drawn", () => {
  const drawn = new Set(Array.from({ length: 200 }, (_, i) => laid(TABLES.get(DOTTEREL), begin(DOTTEREL, [], seed(i))).specimen.member));

  assert.deepEqual([...drawn].sort(), [...DOTTEREL.members.usual].sort());
  assert.equal(laid(TABLES.get(GREBE), begin(GREBE, [], 3)).specimen.member, null);
});

test("a look takes its seconds, once", () => {
  const begun = begin(DOTTEREL, [], 1);
  const [code, setting] = DOTTEREL.clues;
  const once = look(DOTTEREL, begun, code.id);

  assert.equal(left(DOTTEREL, once.looks), BUDGET - code.seconds);
  assert.equal(look(DOTTEREL, once, code.id), once);
  assert.equal(look(DOTTEREL, once, "no-such-clue"), once);
  assert.deepEqual(look(DOTTEREL, once, setting.id).looks, [code.id, setting.id]);
});

test("no look goes beyond the time", () => {
  const begun = walked(DOTTEREL, 3, 99);

  assert.ok(left(DOTTEREL, begun.looks) >= 0);
  assert.deepEqual(open(DOTTEREL, begun.looks), []);
  const rest = DOTTEREL.clues.filter(({ id }) => !begun.looks.includes(id));
  assert.ok(rest.length && rest.every(({ seconds }) => seconds > left(DOTTEREL, begun.looks)));
});

test("where every look takes too long, one answers at once", () => {
  const slow = { ...GREBE, clues: GREBE.clues.map((clue) => ({ ...clue, seconds: BUDGET + 1 })) };
  const tables = prepare(slow);
  const begun = walked(slow, 3, 5);
  const found = told(tables, begun, { said: 1950, sure: 0.1 });

  assert.deepEqual([begun.looks, found.looks, found.missed], [[], [], null]);
  for (const [year, p] of found.years) near(p, 1 / slow.years.length, year);
});

test("a clue that the guide has lost is no look any more", () => {
  const begun = walked(DOTTEREL, 3, 2);
  const lost = { ...DOTTEREL, clues: DOTTEREL.clues.filter(({ id }) => id !== begun.looks[0]) };

  assert.equal(left(lost, begun.looks), BUDGET - lost.clues.find(({ id }) => id === begun.looks[1]).seconds);
});

for (const [sure, exact, wanted] of [
  [0.8, 0.76, "near"],
  [0.9, 0.78, "near"],
  [0.95, 0.4, "more"],
  [0.99, 0.8, "more"],
  [0.35, 0.97, "less"],
  [0.1, 0.004, "near"],
]) {
  test(`${sure} where the looks say ${exact} is ${wanted}`, () => {
    assert.equal(judged(sure, exact, 12), wanted);
  });
}

test("a year that the looks do not speak for is never judged well", () => {
  for (let i = 0; i < 40; i++) {
    const begun = walked(DOTTEREL, seed(i), 6);
    const { years, likeliest } = told(TABLES.get(DOTTEREL), begun, { said: begun.year, sure: 0.2 });
    const most = Math.max(...years.map(([, p]) => p));
    for (const [said, p] of years) {
      const { judged: found } = told(TABLES.get(DOTTEREL), begun, { said, sure: 0.2 });
      assert.equal(found === "elsewhere", p < most / 2, `${said} beside ${likeliest}`);
    }
  }
});

test("options and sizes are misread as often as the guide says", () => {
  const tables = TABLES.get(DOTTEREL);
  const asked = DOTTEREL.clues.filter(({ kind }) => kind.name === "choice" || kind.name === "measure");
  const counts = new Map(asked.map(({ id }) => [id, { read: 0, misread: 0 }]));
  for (let i = 0; i < 6000; i++) {
    const all = laid(tables, { seed: seed(i), year: DOTTEREL.years[i % 12].year });
    for (const { id, part } of asked) {
      const p = DOTTEREL.parts.findIndex((each) => each.id === part);
      if (all.readings.get(id) !== null && !all.specimen.replaced[p]) counts.get(id).read += 1;
    }
    for (const { clue } of slips(tables, all)) if (counts.has(clue)) counts.get(clue).misread += 1;
  }
  for (const { id, misread } of asked) {
    const { read, misread: found } = counts.get(id);
    const apart = Math.abs(found / read - misread) / Math.sqrt((misread * (1 - misread)) / read);
    assert.ok(apart < 4, `${id}: ${found} of ${read}`);
  }
});

test("a size that was misread lies anywhere", () => {
  const tables = TABLES.get(DOTTEREL);
  const near = { right: 0, misread: 0 };
  const all = { right: 0, misread: 0 };
  for (let i = 0; i < 6000; i++) {
    const drawn = laid(tables, { seed: seed(i), year: 1955 });
    const size = drawn.readings.get("pad");
    if (size === null || drawn.specimen.replaced[0]) continue;
    const name = slips(tables, drawn).some(({ clue }) => clue === "pad") ? "misread" : "right";
    all[name] += 1;
    // Made 5.2 wide, give or take 0.2, less the wear, in a range from 3 to 12.
    if (size > 4.2 && size < 5.8) near[name] += 1;
  }

  assert.ok(near.right / all.right > 0.98, `${near.right} of ${all.right}`);
  assert.ok(all.misread > 60 && near.misread / all.misread < 0.35, `${near.misread} of ${all.misread}`);
});

test("what was misread was made in its year", () => {
  const tables = TABLES.get(GREBE);
  const found = Array.from({ length: 3000 }, (_, i) => {
    const all = laid(tables, { seed: seed(i), year: 1953 });
    return slips(tables, all).map((slip) => ({ ...slip, all }));
  }).flat();
  const [serials, stamps, ends] = ["serial", "foot-stamp", "foot-ends"].map((id) => found.filter(({ clue }) => clue === id));

  for (const { all, truly } of ends) assert.notEqual(truly, all.readings.get("foot-ends"));
  const serial = GREBE.clues.find(({ id }) => id === "serial").kind;
  for (const { all } of serials) {
    const [year] = serial.first.findLast(([, n]) => n <= all.readings.get("serial"));
    assert.notEqual(year, Math.floor(tables.cells[all.specimen.cell].t / 12));
  }
  assert.ok(serials.length > 20 && stamps.length > 20 && ends.length > 20, [serials, stamps, ends].map((x) => x.length).join());
});

test("a clean code is never said to be misread", () => {
  const clean = { ...GREBE, clues: GREBE.clues.map((clue) => ({ ...clue, misread: 0, kind: clue.kind.name === "code" ? noOdd(clue.kind) : clue.kind })) };
  const tables = prepare(clean);
  for (let i = 0; i < 1000; i++) {
    const year = clean.years[i % clean.years.length].year;
    const found = slips(tables, laid(tables, { seed: seed(i), year }));
    assert.deepEqual(found.map(({ clue }) => clue), []);
  }
});

/** The code without letters for special orders. */
const noOdd = (kind) => {
  const plain = (fields) => fields.map((field) => ({ ...field, odd: 0 }));
  return { ...kind, fields: plain(kind.fields), layouts: kind.layouts.map((layout) => ({ ...layout, fields: plain(layout.fields) })) };
};
