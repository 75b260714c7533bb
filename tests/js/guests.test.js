// Guides that are given: what is refused, in Python's words, and what a file looks like.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { plan, stands } from "../../static/phone/guests/adding.js";
import { problems } from "../../static/phone/guests/across.js";
import { DESCRIBED, LIMITS, REFUSALS } from "../../static/phone/guests/described.js";
import { hash, taken, written } from "../../static/phone/guests/file.js";
import { misfits } from "../../static/phone/guests/fit.js";
import { place } from "../../static/phone/guests/told.js";

const { guide, cases } = JSON.parse(
  readFileSync(new URL("../given.json", import.meta.url), "utf-8"),
);

/** The guide with values set, or dropped where a change names none. */
function changed(changes) {
  const made = structuredClone(guide);
  for (const [path, ...value] of changes) {
    const at = path.slice(0, -1).reduce((inner, key) => inner[key], made);
    const last = path.at(-1);
    if (!value.length) delete at[last];
    // A name from which all objects come would otherwise not be set.
    else Object.defineProperty(at, last, { value: value[0], enumerable: true, configurable: true, writable: true });
  }
  return made;
}

/** What is said of a packed guide: place, code and words. */
function found(packed) {
  const shaped = [...misfits(packed, DESCRIBED)].slice(0, LIMITS.told);
  const all = shaped.length ? shaped : problems(packed).slice(0, LIMITS.told);
  return all.map(([path, code, wrong]) => [place(path), code, wrong]);
}

for (const { says, changes, found: expected } of cases) {
  test(`Python and the phone say the same of ${says}`, () => {
    assert.deepEqual(found(changed(changes)), expected);
  });
}

test("every refusal has a guide that is refused with it", () => {
  const seen = new Set(cases.flatMap(({ found: all }) => all.map(([, code]) => code)));
  const of_the_file = ["too-large", "too-deep", "later-format", "no-guide", "damaged"];

  assert.deepEqual(Object.keys(REFUSALS).filter((code) => !seen.has(code) && !of_the_file.includes(code)), []);
});

const HEAD = { app: "fieldid", kind: "guide", format: 1 };
const blob = async (text, said = {}) =>
  new Blob([`${JSON.stringify({ ...HEAD, sha256: await hash(text), ...said })}\n${text}\n`]);
/** The sentence with which a file is refused. */
async function refused(file) {
  const error = await taken(file).then(() => null, (reason) => reason);
  assert.equal(error?.name, "TransferError");
  return error.message;
}

test("a written file is taken again, to its last byte", async () => {
  const text = JSON.stringify(guide);
  const file = await written(guide.id, text);

  const given = await taken(file);

  assert.equal(file.name, `${guide.id}.guide.txt`);
  assert.equal(given.text, text);
  assert.deepEqual(given.guide, guide);
});

test("mail may change the ends of lines", async () => {
  const file = await written(guide.id, JSON.stringify(guide));
  const mailed = new Blob([`\ufeff${(await file.text()).replaceAll("\n", "\r\n")}`]);

  assert.equal((await taken(mailed)).guide.id, guide.id);
});

test("what is no guide is refused in a sentence", async () => {
  const none = "This file cannot be added: it is no file of a guide.";
  const newer = "This guide cannot be added: format 2 cannot be read by this version; update the app when online.";

  for (const [file, said] of [
    [new Blob([]), none],
    [new Blob([new Uint8Array([0xff, 0xd8])]), none],
    [await blob("[]"), none],
    [await blob("{"), none],
    [await blob("{}", { app: "other" }), none],
    [await blob("{}", { extra: 1 }), none],
    [await blob('{"format": true}'), none],
    [await blob('{"format": 2}'), newer],
    [await blob("{}", { format: 2 }), newer],
    [await blob("{}", { sha256: "0" }), "This file cannot be added: it is not what it was when it was given."],
    [await blob("[".repeat(100_000)), "This file cannot be added: it is nested too deeply."],
    [new Blob([" ".repeat(LIMITS.bytes + 1)]), "This file cannot be added: it is larger than 1500000 bytes."],
    [await blob(JSON.stringify({ ...guide, title: 5 })), "This guide cannot be added. title: 5 does not fit here."],
    [await blob(JSON.stringify({ ...guide, title: 5, kind: 6 })), "This guide cannot be added. title: 5 does not fit here (and 1 more)."],
  ]) assert.equal(await refused(file), said);
});

const at = (updated, title = guide.title) => ({ ...guide, updated, title });
const last = ({ says }) => says.at(-1);

test("a guide of a name that is here asks first", () => {
  const mine = at("2026-05-01");

  assert.equal(plan(mine, { guest: null, own: null }).take, "Add it");
  assert.equal(plan(mine, { guest: null, own: at("2026-04-01") }).take, "Put it in its place");
  assert.match(last(plan(mine, { guest: null, own: at("2026-04-01") })), /^The app comes with .* 1 April 2026: this one is newer/);
  assert.match(last(plan(mine, { guest: at("2026-06-01"), own: at("2026-04-01") })), /^A guide of this name was added before.*is older/);
  assert.match(last(plan(mine, { guest: at("2026-05-01"), own: null })), /is of the same day/);
});

test("what is added is said not to be checked by the site", () => {
  for (const own of [null, at("2026-04-01")]) {
    assert.ok(plan(guide, { guest: null, own }).says.some((say) => say.startsWith("Whoever runs this site has not checked it.")));
  }
});

test("an update's newer guide takes its place back", () => {
  assert.ok(stands(at("2026-05-01"), null, null));
  assert.ok(stands(at("2026-05-01"), "2026-04-01", at("2026-04-01")));
  // An older one that was wanted all the same.
  assert.ok(stands(at("2026-03-01"), "2026-04-01", at("2026-04-01")));
  assert.ok(stands(at("2026-05-01"), "2026-04-01", at("2026-04-15")));
  assert.ok(!stands(at("2026-05-01"), "2026-04-01", at("2026-05-02")));
});
