// A page of the tests' own on the app's log: it says what lies in the database, and it
// saves, changes and deletes finds until its browser is killed.

import { bookIn, newId, wholeLog as log } from "/phone/log/book.js";
import { entry } from "/phone/log/record.js";
import * as drafts from "/phone/store.js";

/** Browsers keep large values in files of their own; a photo is one. */
const BYTES = 100_000;
/** So many finds, and then the oldest goes: each round reads them all. */
const MANY = 12;

export const app = { log, ...drafts, bookIn, newId };

/** An invented find with photos. */
export function find(id = newId(), count = 2) {
  const made = entry({
    format: 1,
    id,
    guide: "kittiwake",
    find: {
      guide: "kittiwake",
      items: [{ member: null, readings: [["rings", "green"]], gone: [] }],
      claim: null,
    },
    version: { stamp: "a", updated: "2026-02-01" },
    verdict: { say: "1957", leading: 1957, probability: 0.7, outside: 0, range: null, flags: [] },
    judged: "2026-11-25T10:00:00Z",
    created: "2026-11-25T10:00:00Z",
    changed: "2026-11-25T10:00:00Z",
    photos: Array.from({ length: count }, () => note(newId())),
  });
  return { entry: made, photos: made.photos.map(({ id: photo }) => taken(photo, id)) };
}

const note = (id) => ({ id, clue: null, width: 800, height: 600, bytes: BYTES });
const taken = (id, owner) => ({ id, entry: owner, type: "image/jpeg", bytes: bytesOf(id) });

/** The bytes of a photo follow from its id, so that a wrong one is known. */
function bytesOf(id) {
  const bytes = new Uint8Array(BYTES);
  let state = parseInt(id.slice(0, 8), 16) || 1;
  for (let i = 0; i < BYTES; i += 1) {
    state = (state * 48271) % 2147483647;
    bytes[i] = state;
  }
  return bytes.buffer;
}

/** What lies in the database, without a look through the app's eyes. */
export async function lying() {
  // To open what is not there would make it.
  if ((await indexedDB.databases()).length === 0) return { entries: [], photos: [] };
  const db = await answered(indexedDB.open("fieldid"));
  const transaction = db.transaction(["entries", "photos"]);
  const [entries, photos] = await Promise.all(
    ["entries", "photos"].map((name) => answered(transaction.objectStore(name).getAll())),
  );
  db.close();
  return {
    entries: entries.map(({ id, photos }) => ({ id, photos: photos.map(({ id }) => id) })),
    photos: photos.map(({ id, entry, bytes }) => ({ id, entry, whole: isWhole(id, bytes) })),
  };
}

function isWhole(id, bytes) {
  const [is, should] = [bytes, bytesOf(id)].map((each) => new Uint8Array(each));
  return is.length === should.length && is.every((byte, i) => byte === should[i]);
}

const answered = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const tell = (what) => fetch("/told", { method: "POST", body: JSON.stringify(what) });

/**
 * Saves, changes and deletes for ever; what has returned is told, and what may be lost.
 * @param {number} round
 */
export async function work(round) {
  // What a browser has lost comes back with the first look.
  await log.loadEntries();
  const before = await lying();
  await tell({ lying: before, round });
  const mine = before.entries.map(({ id }) => id);
  for (let turn = 0; ; turn += 1) {
    const { entry: made, photos } = find();
    await log.saveEntry(made, photos);
    await tell({ saved: made.id, photos: 2 });
    mine.push(made.id);
    if (turn % 2) await more(made);
    if (mine.length > MANY) await less(mine.shift());
  }
}

/** A third photo for a find. */
async function more(before) {
  const added = note(newId());
  const changed = new Date().toISOString();
  const change = (kept) => entry({ ...kept, photos: [...kept.photos, added], changed });
  await log.changeEntry(before.id, change, [taken(added.id, before.id)]);
  await tell({ saved: before.id, photos: 3 });
}

async function less(id) {
  await tell({ doomed: id });
  await log.deleteEntry(id);
  await tell({ deleted: id });
}

window.test = { app, find, lying };
const [, round] = location.hash.match(/^#work-(\d+)$/) ?? [];
if (round) work(Number(round)).catch((error) => tell({ failed: String(error) }));
