import assert from "node:assert/strict";
import { test } from "node:test";

import { run } from "../../static/phone/check.js";

const VERDICT = {
  model_years: [
    [1951, 0.3],
    [1952, 0.7],
  ],
  leading: 1952,
  say: "leaning to 1952: likely, 70 %",
  claim: null,
  log_evidence: -7.5,
  weights: [
    { clue: "rings", factor: 40_000 },
    { clue: "pad", factor: 1.5 },
  ],
  exhausted: "",
};
const item = { readings: [["pad", 6.1]], gone: [], member: null };
const find = { guide: "irons", items: [item] };
const vector = (...verdicts) => ({
  guide: { id: "irons" },
  cases: verdicts.map((verdict) => ({ find, away: true, without: ["rule"], verdict })),
});

/** An engine that always answers with the verdict, changed. */
function engine(change = (verdict) => verdict) {
  const judge = () => change(structuredClone(VERDICT));
  return { unpack: (guide) => guide, prepare: (guide) => ({ guide }), judge };
}

/** The one line about an engine whose verdict is changed. */
function failure(change) {
  const { agree, failures } = run([vector(VERDICT)], engine(change));
  assert.equal(agree, 0);
  assert.equal(failures.length, 1);
  return failures[0];
}

test("an engine that agrees has no failures", () => {
  const report = run([vector(VERDICT, VERDICT), vector(VERDICT)], engine());

  assert.deepEqual(report, { agree: 3, total: 3, worst: 0, failures: [] });
});

test("nothing to check agrees with nothing", () => {
  assert.deepEqual(run([], engine()), { agree: 0, total: 0, worst: 0, failures: [] });
});

test("what was measured off a photo is named with its error", () => {
  const measured = { ...item, readings: [["pad", { value: 6.1, error: 0.2 }]] };
  const broken = vector(VERDICT);
  broken.cases[0].find = { ...find, items: [measured] };
  const { failures } = run([broken], engine((verdict) => ({ ...verdict, say: "" })));

  assert.match(failures[0], /^irons pad=6\.1 ± 0\.2: say/);
});

test("a broken number is caught", () => {
  const line = failure((verdict) => ((verdict.model_years[1][1] += 2e-9), verdict));

  assert.equal(line, "irons pad=6.1: model_years.1.1 is 0.700000002, not 0.7");
});

test("a number within the tolerance agrees", () => {
  const nearly = (verdict) => ({ ...verdict, log_evidence: -7.5 + 4e-9 });
  const report = run([vector(VERDICT)], engine(nearly));

  assert.equal(report.agree, 1);
  assert.ok(Math.abs(report.worst - 4e-9 / 7.5) < 1e-15, report.worst);
});

test("large numbers are held by their share", () => {
  const by = (step) => (verdict) => ((verdict.weights[0].factor += step), verdict);

  assert.equal(run([vector(VERDICT)], engine(by(1e-5))).agree, 1);
  assert.match(failure(by(1e-3)), /weights\.0\.factor is 40000\.001, not 40000$/);
});

test("what is no number is caught", () => {
  for (const odd of [NaN, Infinity, null, "0.7", undefined]) {
    assert.match(failure((v) => ({ ...v, log_evidence: odd })), /log_evidence/, odd);
  }
});

test("a changed word is caught", () => {
  const line = failure((v) => ({ ...v, say: "leaning to 1952: very likely, 70 %" }));

  assert.match(line, /say is "leaning to 1952: very likely, 70 %", not "leaning/);
});

test("a changed word is no distance", () => {
  const { worst } = run([vector(VERDICT)], engine((v) => ({ ...v, say: "?" })));

  assert.equal(worst, 0);
});

test("a swapped order is caught", () => {
  const swapped = failure((v) => ({ ...v, weights: v.weights.toReversed() }));

  assert.match(swapped, /weights\.0\.clue is "pad", not "rings"/);
});

test("what is too much or too little is caught", () => {
  const more = (v) => ({ ...v, model_years: [...v.model_years, [1953, 0]] });
  const less = (v) => ({ ...v, weights: v.weights.slice(1) });
  const keyless = ({ exhausted, ...rest }) => rest;

  assert.match(failure(more), /model_years\.2 is \[1953,0\], not missing/);
  assert.match(failure(less), /weights\.0\.clue/);
  assert.match(failure(keyless), /exhausted is missing, not ""/);
  assert.match(failure((v) => ({ ...v, claim: {} })), /claim is \{\}, not null/);
  assert.match(failure((v) => ({ ...v, weights: {} })), /weights is \{\}, not \[/);
});

test("an engine that stops is a failure", () => {
  const stop = () => {
    throw new Error("no such clue");
  };
  const lines = ["irons pad=6.1: no verdict: no such clue"];

  assert.deepEqual(run([vector(VERDICT)], engine(stop)).failures, lines);
  for (const step of ["unpack", "prepare"]) {
    const stopped = { ...engine(), [step]: stop };
    assert.deepEqual(run([vector(VERDICT)], stopped).failures, lines, step);
  }
});

test("one failure spoils no other", () => {
  const other = { ...VERDICT, leading: 1951 };
  const report = run([vector(VERDICT, other, VERDICT)], engine());

  assert.equal(report.agree, 2);
  assert.deepEqual(report.failures, ["irons pad=6.1: leading is 1952, not 1951"]);
});

test("a failure names what was read", () => {
  const readings = [
    ["rings", "green"],
    ["pad", null],
  ];
  const asked = { guide: "irons", items: [{ readings, gone: ["grip"], member: null }] };
  const cases = [{ find: asked, away: false, without: [], verdict: { say: "" } }];
  const { failures } = run([{ guide: { id: "irons" }, cases }], engine());

  assert.match(failures[0], /^irons rings=green pad=\? grip gone: /);
});

test("a failure names each member of a set", () => {
  const items = ["6", "W"].map((member) => ({ ...item, member }));
  const cases = [{ find: { guide: "irons", items }, verdict: { say: "" } }];
  const { failures } = run([{ guide: { id: "irons" }, cases }], engine());

  assert.match(failures[0], /^irons member 6 pad=6\.1 member W pad=6\.1: /);
});

test("the limits reach the engine", () => {
  const seen = [];
  const watched = {
    ...engine(),
    judge: (tables, asked, limits) => (seen.push(tables, asked, limits), VERDICT),
  };
  run([vector(VERDICT)], watched);

  const tables = { guide: { id: "irons" } };
  assert.deepEqual(seen, [tables, find, { away: true, without: ["rule"] }]);
});
