// The points on a photo: moved by finger and by key, never off the photo, and undone.

import assert from "node:assert/strict";
import { test } from "node:test";

import { gap } from "../../static/phone/scale/circle.js";
import { CARD } from "../../static/phone/scale/objects.js";
import * as points from "../../static/phone/scale/points.js";
import { size } from "../../static/phone/scale/size.js";

const PHOTO = { width: 1600, height: 1200 };
const begun = () =>
  points.begin(PHOTO, [
    [100, 100],
    [200, 200],
  ]);
const nudged = (state, ...keys) => keys.reduce((s, key) => points.nudge(s, key, false), state);

test("arrow moves by one pixel, far by ten", () => {
  assert.deepEqual(nudged(begun(), "ArrowRight", "ArrowDown").points[0], [101, 101]);
  assert.deepEqual(points.nudge(begun(), "ArrowLeft", true).points[0], [90, 100]);
  assert.deepEqual(points.nudge(begun(), "ArrowUp", true).points[0], [100, 90]);
});

test("other keys change nothing", () => {
  const state = begun();

  assert.equal(points.nudge(state, "Enter", false), state);
});

test("only the active point moves", () => {
  const state = points.drag(points.grab(begun(), 1), [300, 300]);

  assert.deepEqual(state.points, [
    [100, 100],
    [300, 300],
  ]);
});

test("no point leaves the photo", () => {
  assert.deepEqual(points.drag(begun(), [-5, 5000]).points[0], [0, 1200]);
  assert.deepEqual(points.begin(PHOTO, [[1700, -1]]).points, [[1600, 0]]);
});

test("push against the edge is no move", () => {
  const state = points.begin(PHOTO, [[0, 50]]);

  assert.equal(points.nudge(state, "ArrowLeft", false), state);
});

test("points are taken in turn", () => {
  const state = begun();

  assert.equal(points.turn(state, 1).active, 1);
  assert.equal(points.turn(points.turn(state, 1), 1).active, 0);
  assert.equal(points.turn(state, -1).active, 1);
});

test("one drag is undone at once", () => {
  const dragged = points.drag(points.drag(points.grab(begun(), 0), [5, 5]), [9, 9]);

  assert.deepEqual(points.undo(dragged).points, begun().points);
});

test("two drags are undone one by one", () => {
  const first = points.drag(points.grab(begun(), 0), [5, 5]);
  const second = points.drag(points.grab(first, 0), [9, 9]);

  assert.deepEqual(points.undo(second).points, first.points);
  assert.deepEqual(points.undo(points.undo(second)).points, begun().points);
});

test("a row of arrow keys is undone at once", () => {
  const state = nudged(points.drag(begun(), [50, 50]), "ArrowUp", "ArrowUp", "ArrowLeft");

  assert.deepEqual(points.undo(state).points[0], [50, 50]);
});

test("undo of nothing changes nothing", () => {
  const state = begun();

  assert.equal(points.undo(state), state);
});

test("past has an end", () => {
  let state = begun();
  for (let i = 1; i <= 150; i++) state = points.drag(points.grab(state, 0), [i, i]);

  assert.equal(state.past.length, 100);
});

test("points to begin with are a card and a rim", () => {
  const marks = points.corners(PHOTO, CARD);
  const ends = marks.slice(0, 2);
  const rim = points.rim(PHOTO, 8);

  assert.ok(Math.abs(size({ scale: CARD, marks, ends, photo: PHOTO }).length - 85.6) < 1e-9);
  assert.ok(Math.abs(gap(rim) - Math.PI / 4) < 1e-9);
  assert.deepEqual(points.begin(PHOTO, rim).points, rim);
});
