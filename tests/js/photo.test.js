import assert from "node:assert/strict";
import { test } from "node:test";

import { HEAD, kindOf, mayBeRead, unreadable } from "../../static/phone/log/kind.js";
import { fitted, roomLeft, thumbSize } from "../../static/phone/log/photo.js";

const bytes = (text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

test("six photos fit, and no more", () => {
  const left = [0, 1, 5, 6, 7].map((count) => roomLeft(Array(count).fill({})));

  assert.deepEqual(left, [6, 5, 1, 0, 0]);
});

/** The size that one comes to, as numbers. */
const by = (sizing) => (width, height) => Object.values(sizing({ width, height }));

test("the longer edge is made to fit", () => {
  assert.deepEqual(by(fitted)(4000, 3000), [1600, 1200]);
  assert.deepEqual(by(fitted)(3000, 4000), [1200, 1600]);
  assert.deepEqual(by(fitted)(5712, 4284), [1600, 1200]);
});

test("nothing is made larger or vanishes", () => {
  assert.deepEqual(by(fitted)(1600, 9), [1600, 9]);
  assert.deepEqual(by(fitted)(1, 1), [1, 1]);
  assert.deepEqual(by(fitted)(90_000, 1), [1600, 1]);
});

test("a thumbnail is as a photo, smaller", () => {
  assert.deepEqual(by(thumbSize)(1600, 1200), [240, 180]);
  assert.deepEqual(by(thumbSize)(100, 200), [100, 200]);
});

test("the first bytes say what a file is", () => {
  const heads = [
    ["\xff\xd8\xff\xe0\0\x10JFIF\0", "jpeg"],
    ["\xff\xd8\xff\xe1", "jpeg"],
    ["\x89PNG\r\n\x1a\n\0\0\0\r", "png"],
    ["RIFF\x20\0\0\0WEBPVP8 ", "webp"],
    ["RIFF\x20\0\0\0WAVEfmt ", "none"],
    ["\0\0\0\x18ftypheic", "heic"],
    ["\0\0\0\x18ftypmif1", "heic"],
    ["\0\0\0\x18ftypavif", "avif"],
    ["\0\0\0\x18ftypisom", "none"],
    ["II*\0\x08\0\0\0", "raw"],
    ["MM\0*\0\0\0\x08", "raw"],
    ["GIF89a", "none"],
    ["PK\x03\x04", "none"],
    ["photo.jpg", "none"],
    ["\xff", "none"],
    ["", "none"],
  ];
  for (const [head, kind] of heads) assert.equal(kindOf(bytes(head)), kind, head);
});

test("what follows the first bytes does not count", () => {
  const head = "RIFF\x20\0\0\0WEBP";
  assert.equal(head.length, HEAD);

  assert.equal(kindOf(bytes(`${head}VP8X and much more`)), "webp");
  assert.equal(kindOf(bytes(`I am a text: ${head}`)), "none");
});

test("what browsers may know is tried", () => {
  const tried = ["jpeg", "png", "webp", "avif", "heic"].map(mayBeRead);

  assert.ok(tried.every(Boolean));
  assert.deepEqual(["raw", "none"].map(mayBeRead), [false, false]);
});

test("each kind has its own sentence", () => {
  const kinds = ["heic", "avif", "raw", "none", "jpeg"];
  const said = kinds.map(unreadable);

  assert.equal(new Set(said).size, kinds.length);
  assert.equal(unreadable("png"), unreadable("jpeg"));
  for (const sentence of said) assert.match(sentence, /^[A-Z][^!]*\.$/);
});
