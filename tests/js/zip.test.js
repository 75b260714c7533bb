import assert from "node:assert/strict";
import { test } from "node:test";

import { crc32 } from "../../static/phone/log/crc.js";
import { unzip, zip, ZipError } from "../../static/phone/log/zip.js";

const bytes = (text) => new TextEncoder().encode(text);
const text = (data) => new TextDecoder().decode(data);
const room = () => 1000;
const FILES = [
  { name: "a.txt", bytes: bytes("one") },
  { name: "ä/ö.txt", bytes: bytes("") },
  { name: "b.txt", bytes: bytes("three") },
];

/** Everything in a ZIP, by name. */
async function all(blob, roomFor = room) {
  const found = await unzip(blob, roomFor);
  const pairs = [...found].map(async ([name, file]) => [name, text(await file.bytes())]);
  return Object.fromEntries(await Promise.all(pairs));
}

test("the check sum is the published one", () => {
  // The check value of CRC-32 in every catalogue of check sums.
  assert.equal(crc32(bytes("123456789")), 0xcbf43926);
  assert.equal(crc32(bytes("")), 0);
});

test("what goes in comes out", async () => {
  assert.deepEqual(await all(await zip(FILES)), {
    "a.txt": "one",
    "ä/ö.txt": "",
    "b.txt": "three",
  });
  assert.deepEqual(await all(await zip([])), {});
});

test("the same files are the same bytes", async () => {
  const [one, other] = await Promise.all([zip(FILES), zip(FILES)]);

  assert.equal(one.type, "application/zip");
  assert.deepEqual(await one.arrayBuffer(), await other.arrayBuffer());
});

test("pieces may come one after the other", async () => {
  async function* pieces() {
    for (const file of FILES) yield file;
  }
  const [listed, streamed] = await Promise.all([zip(FILES), zip(pieces())]);

  assert.deepEqual(await listed.arrayBuffer(), await streamed.arrayBuffer());
});

test("a piece is not held until the end", async () => {
  const shared = bytes("first");
  function* pieces() {
    yield { name: "a", bytes: shared };
    shared.fill(0);
  }

  assert.deepEqual(await all(await zip(pieces())), { a: "first" });
});

test("more files than ZIP counts are refused", async () => {
  const none = bytes("");
  const many = Array.from({ length: 65535 }, (_, i) => ({ name: `${i}`, bytes: none }));

  assert.equal((await unzip(await zip(many.slice(1)), room)).size, 65534);
  await assert.rejects(zip(many), { name: "ZipError", message: /fewer than 65535 files/ });
});

test("only names with room are taken", async () => {
  const blob = await zip(FILES);
  const only = (name) => (name === "a.txt" ? 1000 : undefined);
  const tight = (name) => (name === "b.txt" ? 4 : 1000);

  await assert.rejects(all(blob, only), { name: "ZipError", message: /"ä\/ö.txt"/ });
  await assert.rejects(all(blob, tight), { name: "ZipError", message: /b\.txt is too large/ });
});

test("one broken file leaves the others", async () => {
  const data = new Uint8Array(await (await zip(FILES)).arrayBuffer());
  data[Buffer.from(data).indexOf("one")] = 0;
  const found = await unzip(new Blob([data]), room);

  await assert.rejects(found.get("a.txt").bytes(), /a\.txt is damaged/);
  assert.equal(text(await found.get("b.txt").bytes()), "three");
});

test("a hostile name is short and on one line", async () => {
  const name = `<img\n\u202e${"x".repeat(200)}`;
  const blob = await zip([{ name, bytes: bytes("") }]);

  await assert.rejects(unzip(blob, () => undefined), (error) => {
    assert.ok(error instanceof ZipError);
    assert.match(error.message, /^This ZIP file holds "<img x{50,60}\.\.\.", which .*\.$/);
    return true;
  });
});

test("a file that went away is a sentence", async () => {
  const gone = { size: 22, slice: () => ({ arrayBuffer: () => Promise.reject(new Error()) }) };
  const short = { size: 22, slice: () => new Blob(["x"]) };

  for (const blob of [gone, short]) {
    await assert.rejects(unzip(blob, room), { name: "ZipError", message: /no longer be read/ });
  }
});
