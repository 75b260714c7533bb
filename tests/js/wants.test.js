import assert from "node:assert/strict";
import { test } from "node:test";

import { readWants, want, withoutWant, withWants } from "../../static/phone/log/wants.js";
import { id } from "./kept.js";
import { wanted } from "./wanted.js";

const NEWER = { id: id(9), format: 2, colour: "green" };

test("a want is built anew from known fields", () => {
  const made = want({ ...wanted(), id: id(1).toUpperCase(), more: 1 });

  assert.deepEqual(made, wanted());
  const open = { since: null, until: undefined, member: null, most: null, currency: "" };
  assert.deepEqual(want(wanted(1, open)), wanted(1, { ...open, until: null }));
});

for (const [fields, says] of [
  [{ id: "1" }, "a UUID is needed"],
  [{ guide: "../x" }, "single hyphens are needed"],
  [{ since: "1957" }, "a number is needed"],
  [{ since: 1957.5 }, "a whole number is needed"],
  [{ until: 1956 }, "1957 or later is needed"],
  [{ until: 10_000 }, "a number from 1 to 9999 is needed"],
  [{ member: 5 }, "a text is needed"],
  [{ most: -1 }, "a number from 0"],
  [{ most: NaN }, "a number is needed"],
  [{ currency: "Euro" }, "three capital letters are needed"],
  [{ note: "x".repeat(2001) }, "at most 2000 are taken"],
  [{ changed: "yesterday" }, "a time is needed"],
  [{ format: 2 }, "written by a newer version"],
  [{ format: "1" }, "1 is needed"],
]) {
  test(`a want with ${JSON.stringify(fields).slice(0, 40)} is refused`, () => {
    assert.throws(
      () => want(wanted(1, fields)),
      ({ name, message }) => name === "RecordError" && message.includes(says),
    );
  });
}

test("a row that cannot be read is said and stays", () => {
  const kept = [wanted(1), NEWER, "rubbish", null];
  const { wants, refused, unread } = readWants(kept);

  assert.deepEqual(wants, [wanted(1)]);
  assert.equal(refused.length, 3);
  assert.deepEqual(unread, [id(9), "", ""]);
  assert.deepEqual(withWants(kept, [wanted(1, { most: 5 }), wanted(2)]), [
    wanted(1, { most: 5 }),
    NEWER,
    "rubbish",
    null,
    wanted(2),
  ]);
  assert.deepEqual(withoutWant(kept, id(1)), [NEWER, "rubbish", null]);
});

test("what cannot be read is never written over", () => {
  assert.throws(() => withWants([NEWER], [wanted(9)]), /same id cannot be read/);
  assert.throws(() => withoutWant([NEWER], id(9)), /no longer there/);
  for (const kept of ["wants", 7, { list: [] }]) {
    assert.deepEqual(readWants(kept).wants, []);
    assert.match(readWants(kept).refused[0], /left as they are/);
    assert.throws(() => withWants(kept, [wanted()]), { name: "RecordError" });
    assert.throws(() => withoutWant(kept, id(1)), { name: "RecordError" });
  }
});

test("five hundred wants are the most", () => {
  const kept = Array.from({ length: 500 }, (_, i) => wanted(i));

  assert.throws(() => withWants(kept, [wanted(500)]), /room for 500 wants/);
  assert.equal(withWants(kept, [wanted(7, { most: 1 })]).length, 500);
  assert.equal(withWants(kept.slice(1), [wanted(500)]).length, 500);
  assert.deepEqual(withWants(null, [wanted()]), [wanted()]);
});
