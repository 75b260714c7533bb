// An entry of the log and photos for it, invented, with sane values in every field.

import { bookIn } from "../../static/phone/log/book.js";
import { copiesIn } from "../../static/phone/log/copies.js";
import { logIn } from "../../static/phone/log/entries.js";
import { mirrored } from "../../static/phone/log/mirrored.js";
import { databaseIn } from "../../static/phone/database.js";
import { entry } from "../../static/phone/log/record.js";
import { fakeIndexedDB, settled } from "./fake-indexeddb.js";

export const NOW = "2026-11-25T10:00:00.000Z";

/** An id that ends in a number. */
export const id = (number) => `00000000-0000-4000-8000-${String(number).padStart(12, "0")}`;

/** What an entry is read from; fields can be given, or left out as undefined. */
export const json = (fields = {}) => ({
  format: 1,
  id: id(1),
  guide: "kittiwake",
  find: {
    guide: "kittiwake",
    items: [
      {
        member: null,
        readings: [
          ["rings", "green"],
          ["pad", 6.25],
          ["face", { value: 91.5, error: 0.4 }],
          ["code", null],
        ],
        gone: ["grip"],
      },
    ],
    claim: { model_year: 1952, cites: ["rings"] },
  },
  version: { stamp: "a1b2c3", updated: "2026-02-01" },
  verdict: {
    say: "1957: likely, 71 %",
    leading: 1957,
    probability: 0.71,
    outside: 0.02,
    range: null,
    flags: ["There are no rings on the collar."],
  },
  judged: NOW,
  title: "Irons from the fair",
  note: "",
  place: "",
  date: "2026-11-22",
  asked: 120,
  paid: 80.5,
  currency: "EUR",
  photos: [],
  created: NOW,
  changed: NOW,
  ...fields,
});

/** What an entry says of photos with these ids. */
export const notes = (...ids) =>
  ids.map((id) => ({ id, clue: null, width: 1600, height: 1200, bytes: 3 }));

/** Photos of an entry, of three bytes each. */
export const photos = (owner, ...ids) =>
  ids.map((id, i) => ({
    id,
    entry: owner.id,
    type: "image/jpeg",
    bytes: new Uint8Array([1, 2, i]).buffer,
  }));

/** An entry with photos whose ids end in these numbers. */
export function withPhotos(fields, ...numbers) {
  const ids = numbers.map((number) => id(1000 + number));
  const made = entry(json({ ...fields, photos: notes(...ids) }));
  return { entry: made, photos: photos(made, ...ids) };
}

/** A log in a database of its own. */
export function freshLog() {
  const idb = fakeIndexedDB();
  return { idb, log: logIn(databaseIn(() => idb)) };
}

/** A book on a log, with a clock that ticks and pages to tell. */
export function bookOn(log, channel = () => null) {
  let ticks = 0;
  const now = () => new Date(Date.parse(NOW) + 1000 * (ticks += 1)).toISOString();
  const copied = mirrored(log, copiesIn(() => undefined, ""));
  return bookIn(copied, { now, channel, alone: (work) => work() });
}

/** All rows of a store of the app's database, whatever its version. */
export async function rowsIn(idb, name) {
  const request = idb.open("fieldid");
  await settled();
  const rows = request.result.transaction([name], "readonly").objectStore(name).getAll();
  await settled();
  request.result.close();
  return rows.result;
}
