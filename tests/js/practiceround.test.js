// A round of practice, and what it teaches, held against an enumeration of every cell
// with every combination of parts.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { unpack } from "../../static/phone/engine/guide.js";
import { likelihood, prepare, tables_for } from "../../static/phone/engine/prepare.js";
import { judged, told } from "../../static/phone/practice/feedback.js";
import { begin, BUDGET, evenly, laid, left, look, open } from "../../static/phone/practice/round.js";
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

  test(`${guide.id}: the best look then is the enumerated one`, () => {
    const tables = TABLES.get(guide);
    const begun = walked(guide, 5, 3, 2);
    const { specimen, readings } = laid(tables, begun);
    const { looks } = told(tables, begun, { said: guide.years[0].year, sure: 0.5 });
    const last = begun.looks.length - 1;
    const before = begun.looks.slice(0, last);
    const seen = new Map(before.map((id) => [id, readings.get(id)]));
    const timely = open(guide, before).filter(({ kind }) => kind.name === "choice");
    const worth = new Map(timely.map((clue) => [clue.id, bitsOf(tables, specimen.member, seen, clue)]));

    for (const each of [looks[last], looks[last].best]) {
      if (worth.has(each.clue)) near(each.bits, worth.get(each.clue), each.clue);
    }
    // The first look was made with nothing read.
    const unread = guide.clues.filter(({ kind }) => kind.name === "choice");
    for (const { id } of unread.filter(({ id }) => [looks[0].clue, looks[0].best.clue].includes(id))) {
      const wanted = bitsOf(tables, specimen.member, new Map(), guide.clues.find((clue) => clue.id === id));
      near([looks[0], looks[0].best].find(({ clue }) => clue === id).bits, wanted, id);
    }
    const { best } = looks[last];
    for (const clue of timely) assert.ok(best.bits / best.seconds > worth.get(clue.id) / clue.seconds - 1e-9, clue.id);
  });
}

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
