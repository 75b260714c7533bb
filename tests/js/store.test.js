import assert from "node:assert/strict";
import { test } from "node:test";

import { asked, databaseIn } from "../../static/phone/database.js";
import { FORMAT } from "../../static/phone/draft.js";
import * as phone from "../../static/phone/store.js";
import { fakeIndexedDB, settled } from "./fake-indexeddb.js";

const { storeIn } = phone;
const NAME = "fieldid";
/** A version that only a newer app would know. */
const NEXT = 99;
const WORKS = "The questionnaire works; keep this page open";
const irons = { format: FORMAT, guide: "irons", stamp: "a", session: { gone: ["grip"] } };
const reels = { format: FORMAT, guide: "reels", stamp: "b", session: { gone: [] } };

const storeOn = (source, patience) => storeIn(databaseIn(source, patience));
const setUp = ({ patience } = {}) => {
  const idb = fakeIndexedDB();
  return { idb, store: storeOn(() => idb, patience) };
};
const nothing = (why) => ({
  name: "StoreError",
  message: `Nothing can be kept on this phone right now (${why}). ${WORKS}.`,
});

test("drafts are kept, one a guide", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  await store.saveDraft(reels);
  await store.saveDraft({ ...irons, stamp: "c" });

  const again = storeOn(() => idb);
  assert.deepEqual(await again.loadDrafts(), [{ ...irons, stamp: "c" }, reels]);
});

test("a newer format is neither written over nor set aside", async () => {
  const { store } = setUp();
  const newer = { format: FORMAT + 1, guide: "irons", anything: true };
  await store.saveDraft(newer);
  await store.saveDraft(irons);
  await store.setAside(irons);

  assert.deepEqual(await store.loadDrafts(), [newer]);
});

test("an unreadable draft makes room and is kept", async () => {
  const { idb, store } = setUp();
  const broken = { ...irons, session: "?" };
  await store.saveDraft(broken);
  await store.setAside(broken);

  assert.deepEqual(await store.loadDrafts(), []);
  assert.deepEqual(await keptIn(idb, "aside"), [broken]);
});

test("a draft is set aside wholly or not", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  idb.faults.delete.push("DataError");

  await assert.rejects(store.setAside(irons), nothing("DataError: as ordered"));
  const keyless = store.setAside({ guide: "irons" });
  await assert.rejects(keyless, nothing("DataError: not a key"));
  assert.deepEqual(await store.loadDrafts(), [irons]);
  assert.deepEqual(await keptIn(idb, "aside"), []);
});

test("what is written is on the disk", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  await store.saveDraft(reels);
  await store.setAside(irons);

  assert.deepEqual(idb.log.durability, ["strict", "strict", "strict"]);
});

test("one connection serves everything", async () => {
  const { idb, store } = setUp();
  await Promise.all([store.saveDraft(irons), store.loadDrafts(), store.setAside(reels)]);

  assert.equal(idb.log.opened, 1);
});

for (const name of ["InvalidStateError", "UnknownError", "AbortError"]) {
  test(`a connection lost with ${name} is opened again`, async () => {
    const { idb, store } = setUp();
    await store.loadDrafts();
    idb.faults.transaction.push(name);
    await store.saveDraft(irons);

    assert.equal(idb.log.opened, 2);
    assert.deepEqual(await store.loadDrafts(), [irons]);
  });
}

test("a connection that dies unsaid is opened again", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  idb.collapse({ say: false });

  assert.deepEqual(await store.loadDrafts(), [irons]);
});

test("a connection that says it closed is forgotten", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  idb.collapse({ say: true });
  idb.faults.transaction.push(null, "InvalidStateError");

  // The next connection is a new one already, so its one loss is still forgiven.
  assert.deepEqual(await store.loadDrafts(), [irons]);
  assert.deepEqual(await store.loadDrafts(), [irons]);
  assert.equal(idb.log.opened, 3);
});

test("a connection lost twice is said", async () => {
  const { idb, store } = setUp();
  idb.faults.transaction.push("InvalidStateError", "InvalidStateError");

  const why = "the storage broke off twice: start the app again";
  await assert.rejects(store.saveDraft(irons), nothing(why));
  await store.saveDraft(irons);
});

test("a commit that breaks off is tried again", async () => {
  const { idb, store } = setUp();
  idb.faults.commit.push("AbortError");
  await store.saveDraft(irons);
  idb.faults.commit.push("quiet");
  await store.saveDraft(reels);

  assert.deepEqual(await store.loadDrafts(), [irons, reels]);
});

test("an open that fails once is tried again", async () => {
  const { idb, store } = setUp();
  idb.faults.open.push("UnknownError");
  await store.saveDraft(irons);

  assert.deepEqual(await store.loadDrafts(), [irons]);
});

test("an open that fails is said, then tried afresh", async () => {
  const { idb, store } = setUp();
  idb.faults.open.push("ConstraintError");

  await assert.rejects(store.saveDraft(irons), nothing("ConstraintError: as ordered"));
  await store.saveDraft(irons);
  assert.deepEqual(await store.loadDrafts(), [irons]);
});

test("an open that never answers is said", async () => {
  const { idb, store } = setUp({ patience: 20 });
  idb.faults.open.push("silent");

  await assert.rejects(store.saveDraft(irons), nothing("the storage does not answer"));
  await assert.rejects(store.loadDrafts(), nothing("the storage does not answer"));
  assert.equal(idb.log.opened, 1);
});

test("a transaction that never ends is said", async () => {
  const { idb, store } = setUp({ patience: 20 });
  idb.faults.commit.push("never");

  await assert.rejects(store.saveDraft(irons), nothing("the storage does not answer"));
});

test("an open that answers late is used", async () => {
  const { idb, store } = setUp({ patience: 20 });
  idb.faults.open.push("late");
  await assert.rejects(store.saveDraft(irons));
  idb.answerLate();
  await store.saveDraft(irons);

  assert.deepEqual(await store.loadDrafts(), [irons]);
  assert.equal(idb.log.opened, 1);
});

test("a full phone is said, nothing is half kept", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  const full = {
    name: "StoreError",
    message:
      "The storage of this phone is full, so the last step is not kept. " +
      `${WORKS} and make room.`,
  };
  idb.faults.put.push("QuotaExceededError");
  await assert.rejects(store.saveDraft({ ...irons, stamp: "c" }), full);
  idb.faults.commit.push("QuotaExceededError");
  await assert.rejects(store.saveDraft({ ...irons, stamp: "c" }), full);

  assert.deepEqual(await store.loadDrafts(), [irons]);
});

test("a newer store is left alone", async () => {
  const { idb, store } = setUp();
  const newer = idb.open(NAME, NEXT);
  await settled();
  newer.result.close();

  await assert.rejects(store.saveDraft(irons), {
    name: "StoreError",
    message:
      "What is kept on this phone was written by a newer version of the app and is " +
      `left as it is, so nothing can be added. ${WORKS}, and update when online.`,
  });
});

test("drafts of a newer store can be read", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  idb.open(NAME, NEXT);
  await settled();
  idb.collapse({ say: false });

  assert.deepEqual(await store.loadDrafts(), [irons]);
  await assert.rejects(store.saveDraft(reels), /written by a newer version/);
});

test("a store of the first version keeps its drafts", async () => {
  const { idb, store } = setUp();
  await firstVersion(idb, irons);
  await store.saveDraft(reels);

  assert.deepEqual(await store.loadDrafts(), [irons, reels]);
  assert.deepEqual(await keptIn(idb, "entries"), []);
});

test("a store that vanishes while it opens is made anew", async () => {
  const { idb, store } = setUp();
  // It was a newer one a moment ago.
  idb.faults.open.push("VersionError");
  await store.saveDraft(irons);

  assert.deepEqual(await store.loadDrafts(), [irons]);
  idb.collapse({ say: false });
  assert.deepEqual(await storeOn(() => idb).loadDrafts(), [irons]);
});

test("a request that fails is no wait without end", async () => {
  const { idb } = setUp();
  const seen = [];
  idb.faults.put.push("DataError");
  const work = ([aside]) =>
    asked(aside.put("kept")).catch(({ name }) => {
      seen.push(name);
      throw new RangeError("of our own");
    });

  // What the transaction broke off for counts, not what followed.
  await assert.rejects(databaseIn(() => idb).within("readwrite", ["aside"], work), {
    name: "DataError",
  });
  assert.deepEqual(seen, ["DataError"]);
});

test("a newer page may upgrade at once", async () => {
  const { idb, store } = setUp();
  await store.saveDraft(irons);
  const upgrade = idb.open(NAME, NEXT);
  await settled();

  assert.ok(upgrade.result);
  await assert.rejects(store.saveDraft(irons), /written by a newer version/);
});

test("an older page that holds on is named", async () => {
  const { idb, store } = setUp();
  idb.open(NAME, 0.5);
  await settled();

  const why = "another page of this app holds an older storage open: close that page";
  await assert.rejects(store.saveDraft(irons), nothing(why));
  idb.collapse({ say: false });
  idb.answerLate();
  assert.equal(idb.connections.size, 0, "the late connection closes itself");
  await store.saveDraft(irons);
});

test("a browser without storage is said", async () => {
  const why = "this browser has no storage for pages";

  await assert.rejects(storeOn(() => undefined).saveDraft(irons), nothing(why));
});

test("this very page has no storage", async () => {
  // Node has no IndexedDB, so the app's own store says so.
  const why = "this browser has no storage for pages";

  await assert.rejects(phone.saveDraft(irons), nothing(why));
});

test("forbidden storage is said", async () => {
  const why = "this browser forbids pages to keep anything";
  const forbidden = () => {
    throw new DOMException("insecure", "SecurityError");
  };
  const { idb, store } = setUp();
  idb.faults.open.push("throw");

  await assert.rejects(storeOn(forbidden).saveDraft(irons), nothing(why));
  await assert.rejects(store.saveDraft(irons), nothing(why));
});

test("what is no draft is refused", async () => {
  const { store } = setUp();

  await assert.rejects(store.saveDraft({}), nothing("DataError: not a key"));
  assert.deepEqual(await store.loadDrafts(), []);
});

/** What the app's first version made, with a draft in it. */
async function firstVersion(idb, draft) {
  const request = idb.open(NAME, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("drafts", { keyPath: ["guide", "format"] });
    request.result.createObjectStore("aside", { autoIncrement: true });
    request.result.createObjectStore("probe");
  };
  await settled();
  request.result.transaction(["drafts"], "readwrite").objectStore("drafts").put(draft);
  await settled();
  request.result.close();
}

/** All rows of a store of the app's database. */
async function keptIn(idb, name) {
  const request = idb.open(NAME);
  await settled();
  const transaction = request.result.transaction([name], "readonly");
  const rows = transaction.objectStore(name).getAll();
  await settled();
  return rows.result;
}
