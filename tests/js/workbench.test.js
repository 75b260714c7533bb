/** What the workbench's scripts decide, without a page. */

import assert from "node:assert/strict";
import { test } from "node:test";

import { stretch } from "../../static/workbench/lines.js";
import { afterPauses } from "../../static/workbench/preview.js";

/** @param {number} milliseconds */
const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

test("a preview waits for a pause in typing", async () => {
  let looks = 0;
  const typed = afterPauses(async () => {
    looks += 1;
  }, 20);

  for (let key = 0; key < 5; key += 1) typed();
  assert.equal(looks, 0);
  await pause(60);
  assert.equal(looks, 1);
});

test("what is typed while one looks is looked at afterwards, once", async () => {
  let looks = 0;
  let at = 0;
  let most = 0;
  const typed = afterPauses(async () => {
    at += 1;
    most = Math.max(most, at);
    looks += 1;
    await pause(50);
    at -= 1;
  }, 5);

  typed();
  await pause(20);
  typed();
  await pause(10);
  typed();
  await pause(200);
  assert.equal(most, 1);
  assert.equal(looks, 2);
});

test("a line is found in its text", () => {
  const text = "one\ntwo\n\nfour";

  assert.deepEqual([1, 2, 3, 4].map((line) => text.slice(...stretch(text, line))), ["one", "two", "", "four"]);
});
