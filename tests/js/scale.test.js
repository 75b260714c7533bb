// Sizes off a photo: the plane's arithmetic by hand, every refusal, and the readings.
// Whole photographs with a known truth are in test_scale.py.

import assert from "node:assert/strict";
import { test } from "node:test";

import { circle, gap, offCircle } from "../../static/phone/scale/circle.js";
import { CARD, COINS, SCALES } from "../../static/phone/scale/objects.js";
import { homography, mapped } from "../../static/phone/scale/plane.js";
import { POINTING, reading, size } from "../../static/phone/scale/size.js";
import { spread } from "../../static/phone/scale/spread.js";
import { flattened } from "../../static/phone/scale/tilt.js";

const near = (found, wanted, within = 1e-9) =>
  assert.ok(Math.abs(found - wanted) <= within, `${found} is not ${wanted}`);

const PHOTO = { width: 1600, height: 1200 };
/** A card straight from above, ten pixels a millimetre. */
const FLAT = [
  [300, 300],
  [1156, 300],
  [1156, 839.8],
  [300, 839.8],
];
const ENDS = [
  [400, 900],
  [900, 900],
];
const EURO = COINS[0];
const round = (count, radius, [x, y] = [800, 600], stretch = 1) =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [x + stretch * radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

const byCard = (changes) => size({ scale: CARD, marks: FLAT, ends: ENDS, photo: PHOTO, ...changes });
const byCoin = (changes) =>
  size({ scale: EURO, marks: round(8, 200), ends: ENDS, photo: PHOTO, ...changes });
const wrong = (take) => {
  let told = "";
  assert.throws(take, (error) => {
    told = error.message;
    return error.name === "ScaleError" && told.endsWith(".");
  });
  return told;
};

test("flat card is a plain scale", () => {
  near(byCard({}).length, 50);
});

test("corners map to the card's", () => {
  const tilted = [
    [310, 290],
    [1100, 350],
    [1150, 800],
    [250, 870],
  ];
  const map = homography(tilted, CARD);
  const wanted = [
    [0, 0],
    [85.6, 0],
    [85.6, 53.98],
    [0, 53.98],
  ];

  for (const [i, corner] of tilted.entries()) {
    const [x, y] = mapped(map, corner);
    near(x, wanted[i][0]);
    near(y, wanted[i][1]);
  }
});

test("side midpoint of a trapeze lies beyond its half", () => {
  // Seen from below: the diagonals cross in the middle of the true rectangle.
  const map = homography(
    [
      [-1, 0],
      [1, 0],
      [2, 3],
      [-2, 3],
    ],
    { width: 2, height: 2 },
  );

  const [x, y] = mapped(map, [0, 1]);

  near(x, 1);
  near(y, 1);
});

test("beyond the horizon is no point", () => {
  // The sides meet at (0, -3).
  const map = homography(
    [
      [-1, 0],
      [1, 0],
      [2, 3],
      [-2, 3],
    ],
    { width: 2, height: 2 },
  );

  assert.equal(mapped(map, [0.5, -3]), null);
  assert.equal(mapped(map, [0, -4]), null);
});

test("corners may go either way round", () => {
  const [a, b, c, d] = FLAT;

  near(byCard({ marks: [b, a, d, c] }).length, 50);
  near(byCard({ marks: [c, d, a, b] }).length, 50);
});

test("spread of a distance is root two", () => {
  const far = ([[x, y], [u, v]]) => Math.hypot(u - x, v - y);

  near(spread(far, [[0, 0], [300, 400]], 1.5), 1.5 * Math.SQRT2, 1e-7);
});

test("error grows away from the card", () => {
  const at = (y) => byCard({ ends: [[400, y], [900, y]], photo: { width: 9e3, height: 9e3 } });

  assert.ok(at(2500).error > 1.5 * at(900).error);
  near(at(2500).length, 50);
});

test("error is in proportion to pointing", () => {
  const doubt = (50 * CARD.doubt) / CARD.width;
  const pointed = (pointing) => Math.sqrt(byCard({ pointing }).error ** 2 - doubt ** 2);

  near(pointed(3), 2 * pointed(1.5), 1e-9);
  near(byCard({}).error, byCard({ pointing: POINTING }).error);
  // Two ends alone, a tenth of a millimetre a pixel.
  assert.ok(pointed(1) > 0.1 * Math.SQRT2);
});

test("without pointing error the card's own doubt is left", () => {
  near(byCard({ pointing: 0 }).error, (50 * CARD.doubt) / CARD.width);
});

const [A, B, C, D] = FLAT;
for (const [name, changes, told] of [
  ["three corners", { marks: [A, B, C] }, /four corners/],
  ["twice the same corner", { marks: [A, A, C, D] }, /on one another/],
  ["corners in a line", { marks: [A, [700, 301], B, D] }, /in a line/],
  ["crossed corners", { marks: [A, C, B, D] }, /crossed/],
  ["a corner inside", { marks: [A, B, [500, 420], D] }, /between the other three/],
  ["a tiny card", { marks: FLAT.map(([x, y]) => [x / 20, y / 20]) }, /too small/],
  ["a card begun along a short side", { marks: [B, C, D, A] }, /wrong corner/],
  ["a card from far aside", { marks: FLAT.map(([x, y]) => [x, y / 3]) }, /too far aside/],
  ["an object out of reach", { ends: [ENDS[0], [9000, 900]] }, /too far from the card/],
  ["ends on one another", { ends: [ENDS[0], ENDS[0]] }, /too near to one another/],
]) {
  test(`${name} is refused`, () => {
    assert.match(wrong(() => byCard(changes)), told);
  });
}

test("ends beyond the horizon are refused", () => {
  const marks = [
    [600, 600],
    [1000, 600],
    [1150, 800],
    [450, 800],
  ];

  assert.match(wrong(() => byCard({ marks, ends: [[700, 500], [800, 10]] })), /too far/);
});

test("circle goes through its points", () => {
  const { centre, radius } = circle(round(7, 3, [5, -2]));

  near(centre[0], 5);
  near(centre[1], -2);
  near(radius, 3);
  near(Math.max(...offCircle(round(7, 3)).map(Math.abs)), 0);
});

test("gap is the widest arc without a point", () => {
  near(gap(round(8, 1, [0, 0])), Math.PI / 4);
});

test("plane straight ahead keeps its shape", () => {
  const flat = flattened(PHOTO, [0, 0]);
  const [[x, y], [u, v]] = [flat([800, 600]), flat([1100, 1000])];

  near(Math.hypot(u - x, v - y) * 0.75 * 1600, 500);
});

test("tilted plane is longer where it falls away", () => {
  // A tilt of 45 degrees about the upright: by hand, rays at 0 and at 1 / 4 meet the
  // plane x + z = 1 at (0, 1) and (0.2, 0.8).
  const flat = flattened(PHOTO, [1, 0]);
  const [[x, y], [u, v]] = [flat([800, 600]), flat([1100, 600])];

  near(Math.hypot(u - x, v - y), 0.2 * Math.SQRT2);
});

test("coin from above is nearly a plain scale", () => {
  const { length, error } = byCoin({});

  near(length, (500 / 400) * EURO.diameter, 0.5);
  assert.ok(error > 0.3 && error < 2, String(error));
});

test("coin tells less far away from it", () => {
  const at = (y) => byCoin({ ends: [[600, y], [1000, y]] });

  assert.ok(at(1150).error > 1.5 * at(620).error);
});

test("ellipse is taken for a tilted coin", () => {
  // Squeezed to cos 15 degrees: a length along the squeeze counts for more.
  const marks = round(12, 200, undefined, Math.cos(Math.PI / 12));
  const along = byCoin({ marks, ends: [[700, 600], [900, 600]] });
  const across = byCoin({ marks, ends: [[800, 500], [800, 700]] });

  near(along.length / across.length, 1 / Math.cos(Math.PI / 12), 0.01);
});

for (const [name, changes, told] of [
  ["four points", { marks: round(4, 200) }, /5 points/],
  ["half a rim", { marks: round(12, 200).slice(0, 6) }, /all around/],
  ["a tiny coin", { marks: round(8, 20), ends: [[790, 600], [810, 600]] }, /too small/],
  ["what is no rim", { marks: round(8, 200).map(([x, y], i) => [x + (i % 2) * 40, y]) }, /one round coin/],
  ["a coin from far aside", { marks: round(8, 200, undefined, 0.88) }, /straight above/],
  ["an object far from the coin", { marks: round(8, 35), ends: [[800, 600], [1590, 600]] }, /2 euro/],
  ["ends on one another", { ends: [ENDS[0], ENDS[0]] }, /too near to one another/],
]) {
  test(`${name} beside a coin is refused`, () => {
    assert.match(wrong(() => byCoin(changes)), told);
  });
}

test("reading has an error of two figures", () => {
  assert.deepEqual(reading({ length: 61.2345, error: 0.2345 }, "mm"), { value: 61.23, error: 0.23 });
  assert.deepEqual(reading({ length: 61.2345, error: 0.2345 }, "cm"), { value: 6.123, error: 0.023 });
  assert.deepEqual(reading({ length: 254, error: 2.54 }, "in"), { value: 10, error: 0.1 });
  assert.deepEqual(reading({ length: 912.3, error: 23 }, "mm"), { value: 912, error: 23 });
});

test("unit that is no length has no reading", () => {
  assert.equal(reading({ length: 61, error: 0.2 }, "g"), null);
});

test("scales have names of their own", () => {
  const ids = SCALES.map(({ id }) => id);

  assert.equal(new Set(ids).size, ids.length);
  assert.ok(ids.every((id) => /^[a-z0-9-]+$/.test(id)), ids.join());
  assert.ok(COINS.every(({ diameter }) => diameter > 15 && diameter < 32));
});
