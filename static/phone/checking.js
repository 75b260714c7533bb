/** "Check this phone": the worked examples run in slices, so that the page never stops. */

import { run } from "./check.js";
import { judge, prepare, unpack } from "./engine/index.js";
import { fetched, ownText } from "./shelf.js";
import { drawCheck } from "./view/check.js";
import { listen } from "./view/dom.js";

const ENGINE = { judge, prepare, unpack };
const IDLE = { done: 0, total: 0, running: false, result: null };

/**
 * Runs the check when asked.
 * @param {HTMLElement} root
 * @param {import("./kept.js").App} app
 */
export function startCheck(root, { failed }) {
  let running = false;
  listen(root, {
    "run-check": () => {
      if (running) return;
      running = true;
      runAll(root)
        .catch((error) => {
          drawCheck(root, IDLE);
          failed(error);
        })
        .finally(() => {
          running = false;
        });
    },
  });
}

/** Draws the page of the check; what a run has told stays. @param {HTMLElement} root */
export function drawCheckOnce(root) {
  if (!root.firstChild) drawCheck(root, IDLE);
}

/** @param {HTMLElement} root */
async function runAll(root) {
  drawCheck(root, { ...IDLE, running: true });
  const slices = await examples();
  /** @type {import("./check.js").Report} */
  let result = { agree: 0, total: 0, worst: 0, failures: [] };
  for (const slice of slices) {
    drawCheck(root, { done: result.total, total: slices.length, running: true, result: null });
    await painted();
    result = added(result, run([slice], ENGINE));
  }
  drawCheck(root, { done: result.total, total: slices.length, running: false, result });
}

/**
 * The worked examples one by one, each with its guide as it lies on this phone.
 * @returns {Promise<import("./check.js").Vector[]>}
 */
async function examples() {
  const worked = JSON.parse(await fetched("vectors.json", "The worked examples are"));
  const slices = [];
  for (const { guide: id, cases } of worked) {
    const guide = JSON.parse(await ownText(id));
    for (const each of cases) slices.push({ guide, cases: [each] });
  }
  return slices;
}

/** @param {import("./check.js").Report} sum @param {import("./check.js").Report} more */
function added(sum, more) {
  return {
    agree: sum.agree + more.agree,
    total: sum.total + more.total,
    worst: Math.max(sum.worst, more.worst),
    failures: [...sum.failures, ...more.failures],
  };
}

/** Once the page was painted, or soon after where nothing is painted. */
function painted() {
  return new Promise((go) => setTimeout(go, 0));
}
