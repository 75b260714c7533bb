import assert from "node:assert/strict";
import { test } from "node:test";

import { examine, isJpeg, PhotoError, stripped } from "../../static/phone/log/exif.js";
import { honest, worked } from "./worked.js";

const PLAIN = {
  width: 40,
  height: 30,
  orientation: 1,
  exif: false,
  gps: false,
  bare: true,
};
const ORIENTATION = 0x0112;
const GPS = 0x8825;
const SHORT = 3;
const LONG = 4;

const ascii = (text) => [...text].map((letter) => letter.charCodeAt(0));
const two = (value) => [value >> 8, value & 255];
/** A part of a JPEG file: its marker, its length, what it carries. */
const part = (marker, inside) => [0xff, marker, ...two(inside.length + 2), ...inside];
const app1 = (inside) => part(0xe1, inside);

const QUANTA = part(0xdb, [0, ...Array(64).fill(1)]);
const FRAME = part(0xc0, [8, ...two(30), ...two(40), 1, 1, 0x11, 0]);
// A stuffed zero and a restart: neither is a marker.
const SCAN = [...part(0xda, [1, 1, 0, 0, 63, 0]), 1, 0xff, 0, 2, 0xff, 0xd3, 3];
const JFIF = part(0xe0, ascii("JFIF\0\x01\x01\0\0\x01\0\x01\0\0"));

/** A JPEG with what is given before its picture, and after its end. */
function jpeg(before = [], after = []) {
  return Uint8Array.from(
    [[0xff, 0xd8], before, QUANTA, FRAME, SCAN, [0xff, 0xd9], after].flat(),
  );
}

/** An EXIF part with one list of entries: tag, type and value; in either byte order. */
function exif(entries, { little = true, first = 8, count = entries.length } = {}) {
  const tiff = new DataView(new ArrayBuffer(8 + 2 + entries.length * 12 + 4));
  tiff.setUint16(0, little ? 0x4949 : 0x4d4d);
  tiff.setUint16(2, 42, little);
  tiff.setUint32(4, first, little);
  tiff.setUint16(8, count, little);
  entries.forEach(([tag, type, value], i) => {
    const at = 10 + i * 12;
    tiff.setUint16(at, tag, little);
    tiff.setUint16(at + 2, type, little);
    tiff.setUint32(at + 4, 1, little);
    if (type === SHORT) tiff.setUint16(at + 8, value, little);
    else tiff.setUint32(at + 8, value, little);
  });
  return app1([...ascii("Exif\0\0"), ...new Uint8Array(tiff.buffer)]);
}

const sentence = { name: "PhotoError", message: /^[A-Z].*\.$/ };

for (const little of [true, false]) {
  test(`all eight orientations, ${little ? "little" : "big"} end first`, () => {
    for (let way = 1; way <= 8; way++) {
      const entries = [[0x010f, SHORT, 7], [ORIENTATION, SHORT, way]];
      const found = examine(jpeg(exif(entries, { little })));

      assert.deepEqual(found, { ...PLAIN, orientation: way, exif: true, bare: false });
    }
  });

  test(`a place is found, ${little ? "little" : "big"} end first`, () => {
    const entries = [[ORIENTATION, SHORT, 6], [GPS, LONG, 26]];
    const found = examine(jpeg(exif(entries, { little })));

    assert.deepEqual([found.orientation, found.gps], [6, true]);
  });
}

test("a picture alone is bare", () => {
  assert.deepEqual(examine(jpeg()), PLAIN);
  assert.deepEqual(examine(jpeg(JFIF)), PLAIN);
});

test("a part of a larger buffer is read", () => {
  const file = jpeg(exif([[ORIENTATION, SHORT, 8]]));
  const padded = new Uint8Array(file.length + 10).fill(0xff);
  padded.set(file, 5);

  const found = examine(padded.subarray(5, 5 + file.length));
  assert.deepEqual(found, { ...PLAIN, orientation: 8, exif: true, bare: false });
});

test("an odd orientation is none", () => {
  for (const [type, value] of [[SHORT, 0], [SHORT, 9], [SHORT, 65535], [LONG, 6]]) {
    assert.equal(examine(jpeg(exif([[ORIENTATION, type, value]]))).orientation, 1);
  }
});

test("the first EXIF says which way up", () => {
  const [three, six] = [3, 6].map((way) => exif([[ORIENTATION, SHORT, way]]));

  assert.equal(examine(jpeg([...three, ...six])).orientation, 3);
});

test("a second EXIF may hold the place", () => {
  const twice = [...exif([[ORIENTATION, SHORT, 3]]), ...exif([[GPS, LONG, 26]])];

  assert.equal(examine(jpeg(twice)).gps, true);
});

test("EXIF that cannot be read may hold a place", () => {
  const turned = [[ORIENTATION, SHORT, 6]];
  const broken = [
    exif(turned, { first: 0xffffffff }),
    exif(turned, { first: 25 }),
    exif(turned, { count: 65535 }),
    exif(turned, { count: 3 }),
    app1(ascii("Exif\0\0")),
    app1(ascii("Exif\0\0II*\0")),
    app1(ascii("Exif\0\0XX\0*\0\0\0\x08\0\0\0\0\0\0")),
    app1(ascii("Exif\0\0II+\0\x08\0\0\0\0\0")),
  ];
  for (const segment of broken) {
    const found = examine(jpeg(segment));
    assert.deepEqual(found, { ...PLAIN, exif: true, gps: true, bare: false });
  }
});

test("a place in XMP is found", () => {
  const xmp = (text) => app1(ascii(`http://ns.adobe.com/xap/1.0/\0<x ${text}="1"/>`));

  assert.equal(examine(jpeg(xmp("exif:GPSLatitude"))).gps, true);
  assert.deepEqual(examine(jpeg(xmp("x:rating"))), { ...PLAIN, bare: false });
});

test("whatever is not the picture is stripped", () => {
  const profile = part(0xe2, ascii("ICC_PROFILE\0\x01\x01"));
  const colours = part(0xee, ascii("Adobe\0d\0\0\0\0\x01"));
  const looks = [...JFIF, ...profile, ...colours];
  const notes = [
    exif([[GPS, LONG, 26]]),
    app1(ascii("http://ns.adobe.com/xap/1.0/\0")),
    app1([]),
    part(0xe0, ascii("JFXX\0\x10")),
    part(0xe2, ascii("MPF\0II*\0")),
    part(0xed, ascii("Photoshop 3.0\0")),
    part(0xef, []),
    part(0xfe, ascii("taken at home")),
    part(0xf3, ascii("reserved")),
  ];
  for (const note of notes) {
    const file = jpeg([...looks, ...note]);
    assert.equal(examine(file).bare, false);
    assert.deepEqual(stripped(file), jpeg(looks));
  }
});

test("what follows the end is stripped", () => {
  const second = [...jpeg(exif([[GPS, LONG, 26]]))];
  const file = jpeg([], second);

  assert.equal(examine(file).bare, false);
  assert.deepEqual(stripped(file), jpeg());
});

test("what stands between the parts is stripped", () => {
  const file = jpeg([...JFIF, 0, 7, 0xff, ...QUANTA]);

  assert.equal(examine(file).bare, false);
  assert.deepEqual(stripped(file), jpeg([...JFIF, ...QUANTA]));
});

test("all scans are kept", () => {
  const file = jpeg([...FRAME, ...SCAN, ...QUANTA]);

  assert.deepEqual(stripped(file), file);
});

test("what is no JPEG is refused", () => {
  for (const bytes of [[], [0xff], [0xff, 0xd8], ascii("a text named photo.jpg")]) {
    const file = Uint8Array.from(bytes);
    assert.equal(isJpeg(file), false);
    assert.throws(() => examine(file), { ...sentence, message: /is not a JPEG/ });
  }
});

test("every truncation is refused", () => {
  const file = jpeg([...JFIF, ...exif([[ORIENTATION, SHORT, 6], [GPS, LONG, 26]])]);
  for (let length = 0; length < file.length; length++) {
    assert.throws(() => examine(file.slice(0, length)), sentence, `${length} bytes`);
    assert.throws(() => stripped(file.slice(0, length)), sentence, `${length} bytes`);
  }
});

test("a lying length is refused", () => {
  for (const length of [0, 1, 0xffff]) {
    const file = jpeg([0xff, 0xe1, ...two(length), 1, 2]);
    const message = new RegExp(`claims ${length} bytes where ${file.length - 4} are`);
    assert.throws(() => examine(file), { ...sentence, message });
  }
});

test("a picture without a size is refused", () => {
  const frames = [[8, 0, 30, 0, 0], [8, 0, 0, 0, 40], [8, 0, 30, 0], []];
  // A table of codes only looks like a frame.
  const codes = part(0xc4, [8, 0, 3, 0, 4]);
  for (const odd of [...frames.map((frame) => part(0xc2, frame)), codes]) {
    const file = Uint8Array.from([0xff, 0xd8, ...odd, ...SCAN, 0xff, 0xd9]);
    assert.throws(() => examine(file), { ...sentence, message: /how large/ });
  }
});

test("millions of parts are refused at once", () => {
  const file = new Uint8Array(30_000_000).fill(0xff);
  const many = new DataView(file.buffer);
  many.setUint16(0, 0xffd8);
  for (let at = 2; at + 4 <= file.length; at += 4) many.setUint32(at, 0xffe10002);
  const start = worked();

  assert.throws(() => examine(file), { ...sentence, message: /too many parts/ });
  const took = worked() - start;
  assert.ok(took < 10 * honest(), `${took} ms`);
});

/** The same numbers from 0 to 1 for the same seed, by a generator of 32 bits. */
function randomness(seed) {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** The file with some bytes changed, and at times a piece cut out or doubled. */
function spoilt(file, random) {
  const bytes = [...file];
  for (let i = random(6); i >= 0; i--) {
    bytes[random(bytes.length)] = random(4) ? random(256) : 0xff;
  }
  const from = random(bytes.length);
  const piece = bytes.slice(from, from + random(40));
  const how = random(4);
  if (how === 1) bytes.splice(from, piece.length);
  if (how === 2) bytes.splice(random(bytes.length), 0, ...piece);
  return Uint8Array.from(bytes);
}

/** What came of it, or the sentence it was refused with. */
function outcome(work) {
  try {
    return work();
  } catch (error) {
    assert.ok(error instanceof PhotoError, error.stack);
    assert.match(error.message, sentence.message);
    return error.message;
  }
}

test("spoilt files are read or refused, never more", () => {
  const entries = [[ORIENTATION, SHORT, 6], [GPS, LONG, 26]];
  const file = jpeg([...JFIF, ...exif(entries, { little: false }), ...exif(entries)]);
  const outcomes = new Map();
  for (let seed = 0; seed < 20_000; seed++) {
    const bytes = spoilt(file, randomness(seed));
    const found = outcome(() => examine(bytes));
    const kind = typeof found === "string" ? found.replace(/\d+/g, "N") : "read";
    outcomes.set(kind, (outcomes.get(kind) ?? 0) + 1);
    if (kind !== "read") continue;

    const { width, height, orientation } = found;
    assert.ok(width > 0 && height > 0 && orientation >= 1 && orientation <= 8);
    const bare = { ...PLAIN, width, height };
    assert.deepEqual(examine(stripped(bytes)), bare, `seed ${seed}`);
  }
  // All but "too many parts" occur, so the files are spoilt in every way there is.
  assert.equal(outcomes.size, 5, [...outcomes.keys()].join("\n"));
  assert.ok(outcomes.get("read") > 2000);
});
