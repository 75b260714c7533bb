// Files that lie, from tests/hostile.py, and good ones with flipped bytes.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, openAsBlob, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";

import { exported, inWords, merged, opened } from "../../static/phone/log/transfer.js";
import { findsText } from "../../static/phone/log/archive.js";
import { writtenEntry } from "../../static/phone/log/written.js";
import { photosFrom, pictured } from "./pictured.js";
import { honest, worked } from "./worked.js";

const MAKER = fileURLToPath(new URL("../hostile.py", import.meta.url));
/** No file takes so many times what honest JSON takes. */
const TIMES = 40;
const TOLD = ["ZipError", "TransferError"];
const ROUNDS = 3000;

const folder = mkdtempSync(join(tmpdir(), "hostile-"));
after(() => rmSync(folder, { recursive: true }));
execFileSync("python3", [MAKER, folder]);
const cases = JSON.parse(readFileSync(join(folder, "cases.json"), "utf8"));

const most = TIMES * honest();

/** A file as a browser hands it over: with its name, its bytes not yet read. */
const file = async (name) => Object.assign(await openAsBlob(join(folder, name)), { name });

/** What was opened, or the error, which can only be of our own kinds. */
async function tried(blob) {
  try {
    return await opened(blob);
  } catch (error) {
    assert.ok(TOLD.includes(error.name), error.stack);
    return error;
  }
}

const sentence = (text) => assert.match(text, /^\p{Lu}[^]{5,250}\.$/u);

test("the honest file is taken", async () => {
  const { incoming, refused } = await opened(await file("good.zip"));

  assert.deepEqual(refused, []);
  assert.equal(incoming[0].held.length, 1);
});

for (const { file: name, says, refused } of cases) {
  test(`${name} is refused in a sentence`, async () => {
    const blob = await file(name);
    const started = worked();
    const answer = await tried(blob);
    const took = worked() - started;

    assert.ok(took < most, `${took} ms`);
    assert.equal({}.polluted, undefined);
    assert.equal(`${{}}`, "[object Object]");
    if (refused === 0) {
      assert.ok(answer instanceof Error, "was taken");
      sentence(answer.message);
      assert.ok(answer.message.includes(says), answer.message);
      return;
    }
    assert.ok(!(answer instanceof Error), answer.message);
    const plan = merged([], answer);
    assert.deepEqual([plan.added, plan.changed], [[], []]);
    assert.equal(plan.refused.length, refused);
    for (const { why } of plan.refused) {
      sentence(why);
      assert.ok(why.includes(says), why);
    }
    assert.deepEqual(inWords(plan).length, 1);
  });
}

test("fields that do harm are dropped from a good find", async () => {
  const { entry } = pictured(1);
  const forged = '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},';
  const text = findsText([JSON.stringify(writtenEntry(entry))]).replaceAll("{", forged);

  const { incoming } = await opened(new Blob([text]));

  assert.deepEqual(incoming[0]?.entry, entry);
  assert.equal({}.polluted, undefined);
  assert.equal(incoming[0].entry.polluted, undefined);
});

/** Random numbers that are the same every time (mulberry32, public domain). */
function dice(seed) {
  return (sides) => {
    seed = (seed + 0x6d2b79f5) | 0;
    let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) % sides;
  };
}

/** The bytes with one to four of them changed, or with their end cut off. */
function spoilt(bytes, roll) {
  if (roll(10) === 0) return bytes.slice(0, roll(bytes.length));
  const changed = bytes.slice();
  for (let left = 1 + roll(4); left > 0; left -= 1) {
    changed[roll(bytes.length)] ^= 1 + roll(255);
  }
  return changed;
}

test("no flipped byte gets into the log", async () => {
  const kept = [pictured(1, [11, 12]), pictured(2, [13]), pictured(3)];
  const { file: good } = await exported(kept.map(({ entry }) => entry), photosFrom(kept));
  const bytes = new Uint8Array(await good.arrayBuffer());
  const wanted = new Map(kept.map((one) => [one.entry.id, one]));
  let [taken, told] = [0, 0];

  for (let seed = 1; seed <= ROUNDS; seed += 1) {
    const answer = await tried(new Blob([spoilt(bytes, dice(seed))]));
    if (answer instanceof Error) {
      sentence(answer.message);
      continue;
    }
    for (const { entry, photos } of answer.incoming) {
      const { entry: original, photos: originals } = wanted.get(entry.id);
      assert.deepEqual(entry, original, `seed ${seed}`);
      assert.deepEqual(await photos(), originals, `seed ${seed}`);
      taken += 1;
    }
    told += answer.refused.length;
    for (const { why } of answer.refused) sentence(why);
  }

  // Both happen, or nothing was shown.
  assert.ok(taken > 100 && told > 100, `${taken} taken, ${told} refused`);
});

test("no flipped byte in JSON does harm", async () => {
  const finds = [1, 2, 3].map((number) => JSON.stringify(writtenEntry(pictured(number).entry)));
  const bytes = new TextEncoder().encode(findsText(finds));

  for (let seed = 1; seed <= ROUNDS; seed += 1) {
    const answer = await tried(new Blob([spoilt(bytes, dice(seed))]));
    if (answer instanceof Error) sentence(answer.message);
    else for (const { why } of answer.refused) sentence(why);
  }
  assert.equal({}.polluted, undefined);
});
