import assert from "node:assert/strict";
import { test } from "node:test";

import {
  entered,
  named,
  needed,
  points,
  pointsOf,
  sought,
  spread,
  START,
  worked,
} from "../../static/phone/swing.js";

const GRAMS = 28.349523125;

/** What is typed, control by control. */
const typed = (controls) =>
  Object.entries(controls).reduce((swing, [at, value]) => entered(swing, at, value), START);

const club = { weight: "425", balance: "700" };

// Moments in inch-ounces, out of a published table of the 14-inch scale, with its own
// example last ("Golf clubs: dates from the rules, and the arithmetic", found there).
const TABLE = [
  [161.0, "A0"],
  [178.5, "B0"],
  [196.0, "C0"],
  [213.5, "D0"],
  [217.0, "D2"],
  [231.0, "E0"],
  [248.5, "F0"],
  [266.0, "G0"],
  [216.32, "D1.6"],
];

test("the published table comes out exactly", () => {
  for (const [moment, name] of TABLE) {
    assert.equal(named(points(moment / 10, 24)), name);
  }
});

test("a point is 1.75 inch-ounces", () => {
  assert.ok(Math.abs(points(17.5, 24) - points(17.325, 24) - 1) < 1e-9);
});

// Three irons that a club builder listed on a forum: balance point, weight, and what his
// own scale said.
for (const [inches, grams, said] of [
  [27.21, 460, "D0.6"],
  [27.66, 438, "C8.7"],
  [28.11, 418, "C7.0"],
]) {
  test(`the club builder's ${said} iron is met`, () => {
    const off = points(grams / GRAMS, inches) - pointsOf(said);

    assert.ok(Math.abs(off) < 0.15, `off by ${off}`);
  });
}

test("there and back is the same balance point", () => {
  for (let at = 0; at <= 69; at += 0.7) {
    for (const weight of [10, 13.3, 15, 22]) {
      assert.ok(Math.abs(points(weight, needed(at, weight)) - at) < 1e-9);
    }
  }
});

test("names and points are one to one", () => {
  for (let tenth = 0; tenth <= 690; tenth += 1) {
    assert.equal(Math.round(10 * pointsOf(named(tenth / 10))), tenth);
  }
  assert.equal(named(29.96), "D0");
});

test("a swing weight may be typed loosely", () => {
  for (const text of ["D1.6", " d 1,6 ", "31.6", "31,6"]) {
    assert.ok(Math.abs(pointsOf(text) - 31.6) < 1e-9, text);
  }
  for (const text of ["", "H2", "D", "D12", "DD", "2D", "-3", "G9.5", "75"]) {
    assert.equal(pointsOf(text), null, text);
  }
});

test("the error is that of both readings", () => {
  const [weight, off, balance, aside] = [15, 0.04, 27.5, 0.08];
  const alone = [spread([weight, off], [balance, 0]), spread([weight, 0], [balance, aside])];

  assert.ok(Math.abs(alone[0] - (points(weight + off, balance) - points(weight, balance))) < 1e-9);
  assert.ok(Math.abs(alone[1] - (points(weight, balance + aside) - points(weight, balance))) < 1e-9);
  assert.ok(Math.abs(spread([weight, off], [balance, aside]) - Math.hypot(...alone)) < 1e-9);
});

test("a club is told with its error", () => {
  const { points: found, say } = worked(typed(club));

  // 14.991 oz * (27.559 - 14) in = 203.27 inch-ounces.
  assert.ok(Math.abs(found - 24.154) < 0.002, String(found));
  assert.equal(say, "C4.2, give or take 0.7");
});

test("a changed error changes what is told", () => {
  const wide = typed({ ...club, "weight off": "3", "balance off": "6" });
  const exact = typed({ ...club, "weight off": "0", "balance off": "0" });
  const fine = typed({ ...club, "weight off": "0.01", "balance off": "0.01" });

  assert.equal(worked(wide).say, "C4.2, give or take 2.2");
  assert.equal(worked(exact).say, "C4.2");
  assert.equal(worked(fine).say, "C4.2");
});

test("another unit leaves the number as read", () => {
  const inches = typed({ weight: "15", balance: "27.5", "weight unit": "oz", "balance unit": "in" });

  assert.deepEqual(inches.weight, { typed: "15", unit: "oz", off: "0.05" });
  assert.deepEqual(inches.balance, { typed: "27.5", unit: "in", off: "0.1" });
  // 15 * 13.5 = 202.5; 0.05 * 13.5 = 0.675 and 15 * 0.1 = 1.5 may be off.
  assert.equal(worked(inches).say, "C3.7, give or take 0.9");
});

test("an error of one's own stays", () => {
  const { weight } = typed({ "weight off": "3", "weight unit": "oz" });

  assert.equal(weight.off, "3");
});

const REFUSED = [
  [{}, "weight", "Type the weight in g, for example 425."],
  [{ weight: "heavy" }, "weight", "“heavy” is no weight. Type a number, for example 425."],
  [{ weight: "0" }, "weight", "“0” is no weight. Type a number, for example 425."],
  [{ weight: "-4" }, "weight", "“-4” is no weight. Type a number, for example 425."],
  [{ weight: "425" }, "balance", "Type the balance point in mm, for example 700."],
  [
    { ...club, "weight off": "a bit" },
    "weight off",
    "Type by how many g the weight may be off, for example 1.",
  ],
  [
    { ...club, "balance off": "" },
    "balance off",
    "Type by how many mm the balance point may be off, for example 2.",
  ],
  [
    { weight: "425", balance: "355" },
    "balance",
    "The balance point of a club lies more than 14 inches (356 mm) from the butt end. " +
      "Measure from the end of the grip, and check the unit.",
  ],
  [
    { weight: "42", balance: "700" },
    "weight",
    "That is lighter than the scale, which runs from A0 to G9. Check both readings and their units.",
  ],
  [
    { weight: "900", balance: "700" },
    "weight",
    "That is heavier than the scale, which runs from A0 to G9. Check both readings and their units.",
  ],
];

for (const [controls, at, wrong] of REFUSED) {
  test(`${JSON.stringify(controls)} is refused in words`, () => {
    assert.deepEqual(worked(typed(controls)), { wrong, at });
  });
}

test("the balance point for a swing weight is told", () => {
  assert.equal(
    sought(typed({ weight: "425", aim: "D2" })).say,
    "For D2 it balances 723 mm from the butt end, give or take 1 mm",
  );
  assert.equal(
    sought(typed({ weight: "425", aim: "c 4.2", "balance unit": "in" })).say,
    "For C4.2 it balances 27.56 in from the butt end, give or take 0.03 in",
  );
});

const UNSOUGHT = [
  [{ weight: "425" }, "aim", "Type the swing weight that you want, for example D2."],
  [
    { weight: "425", aim: "H1" },
    "aim",
    "“H1” is no swing weight from A0 to G9. Type it as D2 or D1.6.",
  ],
  [
    { weight: "425", aim: "75" },
    "aim",
    "“75” is no swing weight from A0 to G9. Type it as D2 or D1.6.",
  ],
  [{ aim: "D2" }, "weight", "Type the weight in g, for example 425."],
  [
    { weight: "100", aim: "D2" },
    "weight",
    "So light a club would have to balance farther out than any club is long. " +
      "Check the weight and its unit.",
  ],
];

for (const [controls, at, wrong] of UNSOUGHT) {
  test(`${JSON.stringify(controls)} has no balance point`, () => {
    assert.deepEqual(sought(typed(controls)), { wrong, at });
  });
}
