// Measuring in a photo: points to begin with, what they are called, what came of them.

import assert from "node:assert/strict";
import { test } from "node:test";

import { result, tapped } from "../../static/phone/dealing/sized.js";
import { LONGEST } from "../../static/phone/lengths.js";
import { begun, isStill, left, names, pointingIn, put as putAt, turned } from "../../static/phone/scale/marked.js";
import { CARD, COINS } from "../../static/phone/scale/objects.js";
import { drag, grab, nudge, turn, undo } from "../../static/phone/scale/points.js";
import { meant } from "../../static/phone/typing.js";
import { inPhoto, sizeSaid } from "../../static/phone/view/measure.js";
import { away, rimOf } from "../../static/phone/view/sizingphoto.js";

const PHOTO = { width: 1600, height: 1200 };
const MM = { name: "measure", unit: "mm", low: 10, high: 60, wear: 0, helper: null, sizes: [] };
/** A card straight from above, ten pixels a millimetre, and 50 millimetres below it. */
const FLAT = [
  [300, 300],
  [1156, 300],
  [1156, 839.8],
  [300, 839.8],
  [400, 900],
  [900, 900],
];

/** The points put there, one after the other. */
const put = (state, points) =>
  points.reduce((now, point, place) => ({ ...now, ...drag(grab(now, place), point) }), state);
const flat = (photo = PHOTO, by = 1) =>
  put(begun(photo, CARD), FLAT.map(([x, y]) => [x * by, y * by]));

for (const scale of [CARD, COINS[0]]) {
  test(`every point on ${scale.name} has a name and a place of its own`, () => {
    for (const photo of [PHOTO, { width: 900, height: 1600 }, { width: 1600, height: 200 }]) {
      const { points } = begun(photo, scale);

      assert.equal(new Set(names(scale)).size, points.length);
      assert.equal(new Set(points.map(String)).size, points.length);
      assert.ok(points.every(([x, y]) => x >= 0 && y >= 0 && x <= photo.width && y <= photo.height));
    }
  });
}

test("no size before every point was moved", () => {
  const state = begun(PHOTO, CARD);
  const all = put(state, FLAT.slice(0, 5));

  assert.equal(left(state), 6);
  assert.match(result(state, CARD, MM).todo, /^Put each point/);
  assert.match(result(all, CARD, MM).todo, /^One point is still/);
  assert.equal(result(all, CARD, MM).reading, null);
});

test("a tap puts the chosen point and keeps it chosen", () => {
  const third = { ...begun(PHOTO, CARD), ...grab(begun(PHOTO, CARD), 2) };
  const after = putAt(third, [5, 5]);

  assert.deepEqual(after.points[2], [5, 5]);
  assert.equal(after.active, 2);
});

test("each further tap puts the next point that was not put", () => {
  const spots = [[1, 1], [2, 2], [3, 3], [4, 4], [5, 5], [6, 6]];
  const third = { ...begun(PHOTO, CARD), ...grab(begun(PHOTO, CARD), 2) };
  const after = spots.reduce(putAt, third);

  assert.deepEqual(after.points, [...spots.slice(4), ...spots.slice(0, 4)]);
  assert.equal(left(after), 0);
  assert.equal(undo(after).points[1][0], begun(PHOTO, CARD).points[1][0]);
});

test("the next point after a tap is chosen by button or by tap alike", () => {
  const first = putAt(begun(PHOTO, CARD), [1, 1]);
  const asked = { ...first, ...turn(first, 1) };

  assert.equal(asked.active, 1);
  assert.deepEqual(putAt(asked, [2, 2]).points, putAt(first, [2, 2]).points);
});

test("a tap moves nothing once all points are put", () => {
  assert.deepEqual(putAt(flat(), [8, 8]).points, flat().points);
});

test("what the next tap puts is told, until nothing is left", () => {
  assert.equal(tapped(begun(PHOTO, CARD), CARD), "The next tap puts the first corner of the card, at a long side.");
  assert.match(tapped(putAt(begun(PHOTO, CARD), [1, 1]), CARD), /puts the second corner/);
  assert.match(tapped(begun(PHOTO, COINS[0]), COINS[0]), /puts point 1 of 6 on the coin’s rim\.$/);
  assert.match(tapped(flat(), CARD), /^All points are put/);
});

test("size is said with its error and can be taken", () => {
  const { say, wrong, reading } = result(flat(), CARD, MM);

  assert.deepEqual([wrong, reading.value], ["", 50]);
  assert.equal(say, `50 mm, give or take ${reading.error} mm`);
  assert.ok(0.2 < reading.error && reading.error < 0.3);
});

test("size comes in the guide's own unit", () => {
  const { reading } = result(flat(), CARD, { ...MM, unit: "in", low: 1, high: 3 });

  assert.ok(Math.abs(reading.value - 50 / 25.4) < 0.005);
});

test("size outside the question's range is said and not taken", () => {
  const { say, wrong, reading } = result(flat(), CARD, { ...MM, high: 40 });

  assert.match(say, /^50 mm/);
  assert.match(wrong, /^50 mm is outside the 10 to 40 mm that this question takes\./);
  assert.equal(reading, null);
});

test("size less certain than the whole range is not taken", () => {
  const { wrong, reading } = result(flat(), CARD, { ...MM, low: 49.9, high: 50.1 });

  assert.match(wrong, /too uncertain/);
  assert.equal(reading, null);
});

const [A, B, C, D, E, F] = FLAT;
for (const [name, points, told] of [
  ["crossed corners", [A, C, B, D, E, F], /crossed/],
  ["all on one spot", FLAT.map(() => [7, 7]), /on one another/],
  ["ends off the photo", [A, B, C, D, [-900, 900], [-900, 900]], /too near/],
]) {
  test(`${name} give a sentence and no size`, () => {
    const { wrong, reading } = result(put(begun(PHOTO, CARD), points), CARD, MM);

    assert.match(wrong, told);
    assert.equal(reading, null);
  });
}

test("photo of one pixel gives a sentence", () => {
  const photo = { width: 1, height: 1 };
  const corners = [[0, 0], [1, 0], [1, 1], [0, 1], [0, 0.2], [1, 0.2]];

  assert.match(result(put(begun(photo, CARD), corners), CARD, MM).wrong, /\.$/);
});

test("pointing is the same share of any photo, but for the smallest", () => {
  assert.equal(pointingIn(PHOTO), 1.5);
  assert.equal(pointingIn({ width: 1200, height: 3200 }), 3);
  assert.equal(pointingIn({ width: 300, height: 400 }), 1);
  const [small, large] = [0.75, 1].map((by) =>
    result(flat({ width: 1600 * by, height: 1200 * by }, by), CARD, MM),
  );

  assert.deepEqual(small, large);
});

test("card that was not touched turns in the photo", () => {
  const state = turned(begun(PHOTO, CARD));
  const [[x, y], [u, v]] = state.points;

  assert.equal(left(state), 6);
  assert.ok(Math.abs(u - x) < 1 && Math.abs(v - y) > 500);
});

test("card with a corner put keeps its corners and begins at another side", () => {
  // Begun along a short side, as a card that lies upright is.
  const upright = put(begun(PHOTO, CARD), [B, C, D, A, E, F]);
  assert.match(result(upright, CARD, MM).wrong, /wrong corner/);

  const state = turned(upright);

  assert.deepEqual(state.points.slice(0, 4), [C, D, A, B]);
  assert.equal(result(state, CARD, MM).reading.value, 50);
  assert.equal(undo(state), state);
});

test("corner that stays is still known after the turn", () => {
  const state = turned({ ...begun(PHOTO, CARD), ...drag(begun(PHOTO, CARD), [5, 5]) });

  assert.deepEqual([0, 1, 2, 3].map((place) => isStill(state, place)), [true, true, true, false]);
});

test("push of an arrow keeps where points began", () => {
  const state = begun(PHOTO, CARD);

  assert.equal(left({ ...state, ...nudge(state, "ArrowUp", false) }), 5);
});

test("line of the rim is round between its points", () => {
  const at = (turn) => [Math.cos(turn), Math.sin(turn)];
  const six = Array.from({ length: 6 }, (_, i) => at((Math.PI * i) / 3).map((x) => 1000 * x));
  const [from, way] = rimOf(six).slice(1).split("C");
  const [x, y] = [0, 1].map((axis) => {
    const [a, b, c, d] = [from, ...way.match(/\S+ \S+/g)].map((p) => parseFloat(p.split(" ")[axis]));
    return (a + 3 * b + 3 * c + d) / 8;
  });

  assert.ok(Math.abs(Math.hypot(x, y) - 1000) < 1, `${x} ${y}`);
});

test("magnifier stands across from the finger and below the ribbon", () => {
  const lens = { size: 132, below: 90 };
  const photo = { left: 10, right: 310, top: 40 };

  assert.deepEqual(away(photo, [60, 100], lens), [170, 98]);
  assert.deepEqual(away(photo, [200, 300], lens), [18, 98]);
  assert.deepEqual(away({ ...photo, top: 200 }, [200, 300], lens), [18, 208]);
});

test("what is longer than a card reaches has no photo", () => {
  const photo = { width: 6000, height: 6000 };
  const wide = { ...MM, high: 1000 };
  const found = [LONGEST, 1.05 * LONGEST].map((long) => {
    const ends = [-5, 5].map((by) => [728 + by * long, 500]);
    const state = put(begun(photo, CARD), [A, B, C, D, ...ends].map(([x, y]) => [x + 2000, y + 2000]));
    return result(state, CARD, wide).wrong;
  });

  assert.equal(found[0], "");
  assert.match(found[1], /too far from the card/);
  assert.ok(inPhoto({ ...MM, low: LONGEST - 1 }));
  assert.ok(!inPhoto({ ...MM, low: LONGEST }));
});

test("measure with a helper or of no length has no photo", () => {
  assert.ok(inPhoto(MM));
  assert.ok(!inPhoto({ ...MM, unit: "g" }));
  assert.ok(!inPhoto({ ...MM, helper: "swing-weight" }));
});

test("size that is taken again as it stands keeps its error", () => {
  const before = { value: 15.34, error: 0.2 };

  assert.equal(meant(MM, "15.34", before).reading, before);
  assert.equal(meant(MM, "15,34 mm", before).reading, before);
  assert.equal(meant(MM, "15.4", before).reading, 15.4);
  assert.equal(meant(MM, "15.34", 15.34).reading, 15.34);
});

test("small error is never said to be nothing", () => {
  assert.equal(sizeSaid(MM, { value: 12, error: 0.002 }), "12 mm, give or take 0.01");
});
