import assert from "node:assert/strict";
import { test } from "node:test";

import { halves, leads } from "../../static/phone/view/ribbon.js";

const cut = (say, leading) => halves({ say, leading, range: null });

test("a sentence is cut at the year that leads", () => {
  assert.deepEqual(cut("leaning to 1956: likely, 71 %", 1956), ["leaning to ", "1956", ": likely, 71 %"]);
});

test("two years that lead alike stay together", () => {
  assert.deepEqual(cut("1956 or 1957: 49 % each", 1957), ["", "1956 or 1957", ": 49 % each"]);
  assert.deepEqual(cut("leaning to 1956 or 1957: 38 % each", 1956), [
    "leaning to ",
    "1956 or 1957",
    ": 38 % each",
  ]);
});

test("no year leads where others are level with it", () => {
  const lead = (say, leading) => leads({ say, leading, range: null });

  assert.equal(lead("leaning to 1956: likely, 71 %", 1956), true);
  assert.equal(lead("leaning to 1956 or 1957: 38 % each", 1956), false);
  assert.equal(lead("cannot tell: 8 years are level at 12 %", 1956), false);
});

test("a sentence without a year stays whole", () => {
  assert.deepEqual(cut("nothing read yet", 1956), ["nothing read yet", "", ""]);
});
