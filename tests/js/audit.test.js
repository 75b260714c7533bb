import assert from "node:assert/strict";
import { test } from "node:test";

import { watched } from "../../static/workbench/audit.js";

test("an audit is watched until nothing goes on", async () => {
  const answers = [3, 50, 99, null, 100];
  /** @type {number[]} */
  const shown = [];

  await watched(
    async () => /** @type {number | null} */ (answers.shift() ?? null),
    (percent) => shown.push(percent),
    0,
  );

  assert.deepEqual(shown, [3, 50, 99]);
  assert.deepEqual(answers, [100]);
});
