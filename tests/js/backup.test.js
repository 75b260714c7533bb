import assert from "node:assert/strict";
import { test } from "node:test";

import { remind } from "../../static/phone/log/backup.js";
import { askToLast, lasts, room } from "../../static/phone/log/lasting.js";

const day = (number) => `2026-11-${String(number).padStart(2, "0")}T10:00:00.000Z`;
const finds = (count, changed) => Array(count).fill({ created: changed, changed });
const when = (times = {}) => ({
  exported: null,
  dismissed: null,
  now: day(20),
  lasts: true,
  ...times,
});

test("ten finds in no file are reminded of", () => {
  assert.equal(remind(finds(9, day(19)), when()), "");
  assert.equal(
    remind(finds(10, day(19)), when()),
    "10 finds are in no file yet. Make the file and keep it elsewhere, so that your finds outlive this phone.",
  );
});

test("one find is reminded of after a week", () => {
  assert.equal(remind(finds(1, day(14)), when()), "");
  assert.match(remind(finds(1, day(13)), when()), /^1 find is in no file yet\./);
});

test("three days will do where the log may be cleared", () => {
  assert.equal(remind(finds(1, day(18)), when({ lasts: false })), "");
  assert.notEqual(remind(finds(1, day(17)), when({ lasts: false })), "");
});

test("what is in a file is not reminded of", () => {
  assert.equal(remind(finds(50, day(1)), when({ exported: day(2) })), "");
});

test("an empty log is not reminded of", () => {
  assert.equal(remind([], when({ exported: day(1) })), "");
});

test("after an export the days count from it", () => {
  assert.equal(remind(finds(1, day(15)), when({ exported: day(14) })), "");
  assert.notEqual(remind(finds(1, day(19)), when({ exported: day(13) })), "");
});

test("a find changed since is in no file", () => {
  const old = { created: day(1), changed: day(12) };

  assert.notEqual(remind([old], when({ exported: day(11) })), "");
});

test("a clock that ran ahead silences nothing", () => {
  const ahead = "2041-06-01T10:00:00.000Z";

  for (const times of [{ exported: ahead }, { dismissed: ahead }]) {
    assert.notEqual(remind(finds(10, day(1)), when(times)), "");
  }
});

test("a dismissed reminder comes back next day", () => {
  const many = finds(10, day(1));
  const dismissed = "2026-11-19T10:00:00.001Z";

  assert.equal(remind(many, when({ dismissed })), "");
  assert.notEqual(remind(many, when({ dismissed: day(19) })), "");
});

const saying = (answer) => ({ persist: async () => answer, persisted: async () => answer });
const failing = () => Promise.reject(new Error("not now"));

for (const asked of [askToLast, lasts]) {
  test(`${asked.name} tells honestly how it stands`, async () => {
    const states = [];
    const broken = { persist: failing, persisted: failing };
    for (const storage of [saying(true), saying(false), {}, undefined, broken])
      states.push((await asked(storage)).state);

    assert.deepEqual(states, ["lasting", "clearable", "unknown", "unknown", "failed"]);
  });
}

test("only what may last without asking is not asked", async () => {
  let asks = 0;
  const storage = { ...saying(false), persist: async () => (asks += 1) > 0 };
  await lasts(storage);
  assert.equal(asks, 0);
  await askToLast(storage);

  assert.equal(asks, 1);
});

test("a log that may go says so, and how to save it", async () => {
  const { say } = await lasts(saying(false));

  assert.match(say, /may clear this log.*private window.*now and then, by “File of all finds”\.$/);
  assert.match((await lasts({ persisted: failing })).say, /\(not now\)\. Save a copy/);
});

test("a log that lasts does not outlive the data of the site", async () => {
  const { say } = await lasts(saying(true));

  assert.match(say, /clear the data of this site.*“File of all finds”/);
});

const roomOf = (usage, quota) => room({ estimate: async () => ({ usage, quota }) });

test("the room is told in megabytes", async () => {
  assert.equal(
    await roomOf(12_400_000, 3_000_000_000),
    "About 12 MB are used, and there is room for about 2988 MB.",
  );
  assert.match(await roomOf(0, 60e9), /room for about 60 GB\.$/);
});

test("little room is told", async () => {
  assert.match(await roomOf(95e6, 100e6), /5 MB\. Make room before you take more photos\.$/);
  assert.match(await roomOf(120e6, 100e6), /room for about 0 MB\. Make room/);
});

test("a browser that does not tell leaves nothing to say", async () => {
  assert.equal(await room({}), "");
  assert.equal(await room(undefined), "");
  assert.equal(await room({ estimate: failing }), "");
  assert.equal(await room({ estimate: async () => ({}) }), "");
});
