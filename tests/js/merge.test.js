import assert from "node:assert/strict";
import { test } from "node:test";

import { inWords, merged } from "../../static/phone/log/merge.js";
import { id } from "./kept.js";
import { pictured } from "./pictured.js";

const EARLY = "2026-11-24T10:00:00.000Z";
const LATE = "2026-11-26T10:00:00.000Z";
const NO_ROWS = { prices: [], wants: [], refused: [] };
const FATES = ["added", "changed", "same", "older", "refused"];

/** Entries as a file brings them, with those of their photos that are held. */
const opened = (...kept) => ({
  incoming: kept.map(({ entry, held }, i) => ({
    place: i + 1,
    entry,
    held: held ?? entry.photos.map((note) => note.id),
    photos: async () => held ?? entry.photos.map((note) => note.id),
  })),
  refused: [],
  own: NO_ROWS,
});
const alone = (kept) => ({ ...kept, held: [] });
const titles = (plan, fate) =>
  plan[fate].map((one) => one.name ?? one.title ?? one.entry.title);
/** The titles under each fate that any find has. */
const fates = (plan) =>
  Object.fromEntries(
    FATES.filter((fate) => plan[fate].length).map((fate) => [fate, titles(plan, fate)]),
  );
const entries = (...kept) => kept.map(({ entry }) => entry);

test("each find gets the fate it should", () => {
  const here = [
    pictured(1, [], { title: "same" }),
    pictured(2, [], { title: "mine", changed: EARLY }),
    pictured(3, [], { title: "mine", changed: LATE }),
    pictured(4, [], { title: "untouched" }),
  ];
  const there = [
    pictured(5, [], { title: "new" }),
    pictured(3, [], { title: "stale" }),
    pictured(2, [], { title: "newer" }),
    pictured(1, [], { title: "same" }),
  ];

  const plan = merged(entries(...here), opened(...there));

  assert.deepEqual(fates(plan), {
    added: ["new"],
    changed: ["newer"],
    same: ["same"],
    older: ["stale"],
  });
  assert.deepEqual(inWords(plan), [
    "1 find is new.",
    "1 find is newer than here, and takes its place.",
    "1 find is here already.",
    "1 find is newer here, and stays.",
  ]);
});

test("counts agree with their verbs", () => {
  const file = opened(pictured(1), pictured(2));
  const refused = [1, 2].map((place) => ({ place, name: "", why: "Bad." }));

  assert.deepEqual(inWords(merged([], { ...file, refused })), [
    "2 finds are new.",
    "2 finds cannot be taken.",
  ]);
  assert.deepEqual(inWords(merged([], opened())), ["There is no find in this file."]);
});

test("nothing that comes in is touched", () => {
  const frozen = (value) => {
    if (value && typeof value === "object") Object.values(Object.freeze(value)).forEach(frozen);
    return value;
  };
  const log = frozen(entries(pictured(1), pictured(2, [12])));
  const file = frozen(opened(pictured(1, [], { changed: LATE }), pictured(3, [13])));

  assert.equal(merged(log, file).added.length, 1);
});

test("the order of readings is no difference", () => {
  const { entry } = pictured(1);
  const [item] = entry.find.items;
  const turned = { ...item, readings: [...item.readings].reverse() };
  const other = { ...entry, find: { ...entry.find, items: [turned] } };

  assert.deepEqual(fates(merged([entry], opened({ entry: other }))), { same: [entry.title] });
});

test("two truths of one moment are refused", () => {
  const plan = merged(entries(pictured(1)), opened(pictured(1, [], { note: "other" })));

  assert.deepEqual(Object.keys(fates(plan)), ["refused"]);
  assert.match(plan.refused[0].why, /the one in the log stays\.$/);
});

test("photos come along, each once", async () => {
  const plan = merged([], opened(pictured(1, [11, 12])));

  assert.deepEqual(await plan.added[0].photos(), [id(11), id(12)]);
  assert.equal(plan.added[0].entry.photos.length, 2);
  assert.deepEqual(plan.left, []);
});

test("finds alone keep the photos that are here", async () => {
  const newer = alone(pictured(1, [11, 12], { changed: LATE }));
  const plan = merged(entries(pictured(1, [11])), opened(newer));

  const [{ entry, photos }] = plan.changed;
  assert.deepEqual(entry.photos.map((note) => note.id), [id(11)]);
  assert.deepEqual(await photos(), []);
  assert.deepEqual(inWords(plan).slice(1), [
    `1 photo of "${entry.title}" cannot be taken: this file has finds alone.`,
  ]);
});

test("a photo of other bytes is not the one here", () => {
  const { entry } = pictured(1, [11], { changed: LATE });
  const photos = entry.photos.map((note) => ({ ...note, bytes: note.bytes + 1 }));
  const file = opened(alone({ entry: { ...entry, photos } }));
  const plan = merged(entries(pictured(1, [11])), file);

  assert.deepEqual(plan.changed[0].entry.photos, []);
  assert.equal(plan.left.length, 1);
});

test("photos that were left out come back", () => {
  const bare = merged([], opened(alone(pictured(1, [11, 12])))).added[0].entry;
  assert.deepEqual(bare.photos, []);

  const again = merged([bare], opened(pictured(1, [11, 12])));
  assert.deepEqual(again.changed[0].entry, pictured(1, [11, 12]).entry);

  const whole = entries(pictured(1, [11, 12]));
  const plan = merged(whole, opened(alone(pictured(1, [11, 12]))));
  assert.deepEqual(Object.keys(fates(plan)), ["same"]);
});

test("photos are not lost to a find of the same moment", () => {
  const plan = merged(entries(pictured(1, [11, 12])), opened(pictured(1, [11])));

  assert.deepEqual(Object.keys(fates(plan)), ["refused"]);
});

test("a photo of another find is not taken away", () => {
  const told = [{ place: 9, name: "", why: "Bad." }];
  const file = { ...opened(pictured(2, [11])), refused: told };
  const plan = merged(entries(pictured(1, [11])), file);

  assert.deepEqual(Object.keys(fates(plan)), ["refused"]);
  assert.deepEqual(plan.refused.map(({ place }) => place), [1, 9]);
  assert.match(plan.refused[0].why, /another find in the log has the same id/);
});

test("a full log takes changes and nothing new", () => {
  const log = Array.from({ length: 5000 }, (_, i) => ({ ...pictured(1).entry, id: id(i + 1) }));
  const plan = merged(
    log.slice(0, 4999),
    opened(
      pictured(6000, [], { title: "last" }),
      pictured(6001),
      pictured(1, [], { changed: LATE }),
    ),
  );

  assert.deepEqual(titles(plan, "added"), ["last"]);
  assert.equal(plan.changed.length, 1);
  assert.deepEqual(plan.refused.map(({ place, why }) => [place, why]), [
    [2, "The log has room for 5000 finds."],
  ]);
});

test("a find that cannot be read here is not written over", () => {
  const plan = merged([], opened(pictured(1), pictured(2)), { unread: [id(1)] });

  assert.deepEqual(plan.added.map(({ entry }) => entry.id), [id(2)]);
  assert.deepEqual(plan.refused.map(({ place, why }) => [place, why]), [
    [
      1,
      "A find with the same id lies in the log and cannot be read here: " +
        "it is left as it is.",
    ],
  ]);
});

test("finds that cannot be read take their room", () => {
  const log = Array.from({ length: 4998 }, (_, i) => ({ ...pictured(1).entry, id: id(i + 1) }));
  const unread = [id(5998), id(5999)];
  const plan = merged(log, opened(pictured(6000), pictured(1, [], { changed: LATE })), { unread });

  assert.deepEqual(Object.keys(fates(plan)), ["changed", "refused"]);
  assert.match(plan.refused[0].why, /room for 5000 finds/);
});
