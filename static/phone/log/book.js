/**
 * The log as the app sees it. Every change lies on the disk before it is shown, and
 * other pages of the app are told of it.
 */

import { remind } from "./backup.js";
import { copiesIn } from "./copies.js";
import { log } from "./entries.js";
import { mirrored } from "./mirrored.js";
import { changed, entry as readable, judgedAgain } from "./record.js";

/** @typedef {import("./entries.js").Awaited} Awaited */
/** @typedef {import("./entries.js").Kept} Kept */
/** @typedef {import("./entries.js").Photo} Photo */
/** @typedef {import("./record.js").Entry} Entry */
/** @typedef {import("./record.js").Judged} Judged */
/** @typedef {import("./record.js").Own} Own */
/**
 * Entries by id, and why others cannot be read; those stay where they are.
 * @typedef {{entries: Map<string, Entry>, refused: string[]}} Known
 */
/**
 * What of the world a book needs.
 * @typedef {object} World
 * @property {() => string} now
 * @property {() => Pick<BroadcastChannel, "postMessage" | "onmessage"> | null} channel
 *   to the other pages of the app
 * @property {<T>(work: () => Promise<T>) => Promise<T>} alone while no other page does
 */

const CHANNEL = "fieldid-log";
const LOCK = "fieldid-import";
const EXPORTED = "exported";
const DISMISSED = "dismissed";

/** @type {World} */
const WORLD = {
  now: () => new Date().toISOString(),
  channel: () => ("BroadcastChannel" in globalThis ? new BroadcastChannel(CHANNEL) : null),
  // An old browser has no locks; two imports at once are then the person's to avoid.
  alone: async (work) => (navigator.locks ? navigator.locks.request(LOCK, work) : work()),
};

/** The log of this page, with its second copy. */
export const wholeLog = mirrored(log, copiesIn());

export const book = bookIn(wholeLog);

/**
 * The book of a log.
 * @param {import("./mirrored.js").Mirrored} stored
 * @param {World} [world]
 */
export function bookIn(stored, { now, channel, alone } = WORLD) {
  /** @type {Promise<Known> | null} */
  let known = null;
  /** @type {ReturnType<World["channel"]>} */
  let others = null;
  let onOthers = () => {};

  /** All entries, read once and again when another page has changed them. */
  function loaded() {
    listen();
    const loading = (known ??= stored.loadEntries().then(readAll));
    // A failure is not kept: the next attempt may do.
    loading.catch(() => known === loading && forget());
    return loading;
  }

  const forget = () => void (known = null);

  function listen() {
    if (others) return;
    others = channel();
    if (!others) return;
    others.onmessage = () => {
      forget();
      onOthers();
    };
  }

  /** @param {(entries: Map<string, Entry>) => void} change what the disk holds already */
  async function show(change) {
    // What was not read yet is read with the change in it.
    const read = await known?.catch(() => null);
    if (read) change(read.entries);
    tell();
  }

  function tell() {
    listen();
    others?.postMessage(null);
  }

  /** @param {Entry} entry */
  async function shown(entry) {
    await show((entries) => entries.set(entry.id, entry));
    return entry;
  }

  return {
    /**
     * The entries, in no order that means anything, and a sentence for each that cannot
     * be read.
     */
    async list() {
      const { entries, refused } = await loaded();
      return { entries: [...entries.values()], refused };
    },

    /**
     * How many finds the browser had lost and came back from their second copy; and a
     * sentence where there is none. To be asked for after the entries.
     */
    copies: () => ({ restored: stored.restored(), trouble: stored.trouble() }),

    /** @param {Entry} entry @param {readonly Photo[]} [photos] */
    async add(entry, photos = []) {
      await stored.saveEntry(entry, photos);
      return shown(entry);
    },

    /**
     * The entry with other fields; photos that are new to it come along, and those that
     * it no longer names go.
     * @param {string} id
     * @param {Partial<Own>} own
     * @param {readonly Photo[]} [photos]
     */
    async change(id, own, photos = []) {
      const at = now();
      const change = (/** @type {unknown} */ kept) => changed(readable(kept), own, at);
      return shown(await stored.changeEntry(id, change, photos));
    },

    /** The entry with today's verdict. @param {string} id @param {Judged} judged */
    async judgeAgain(id, judged) {
      const at = now();
      const change = (/** @type {unknown} */ kept) => judgedAgain(readable(kept), judged, at);
      return shown(await stored.changeEntry(id, change));
    },

    /** Removes an entry with its photos. @param {string} id */
    async remove(id) {
      await stored.deleteEntry(id);
      await show((entries) => entries.delete(id));
    },

    /** An entry's photos in its own order. @param {Entry} entry @returns {Promise<Photo[]>} */
    async photosOf({ id, photos }) {
      const found = new Map((await stored.loadPhotos(id)).map((photo) => [photo.id, photo]));
      return photos.flatMap((note) => found.get(note.id) ?? []);
    },

    /**
     * Takes in what an import brings, each batch wholly or not at all; a batch that
     * fails ends it, and those before it stay.
     * @param {Iterable<readonly Kept[]> | AsyncIterable<readonly Kept[]>} batches
     */
    takeIn: (batches) =>
      alone(async () => {
        try {
          for await (const batch of batches) await stored.saveEntries(batch);
        } finally {
          forget();
          tell();
        }
      }),

    /**
     * To be waited for before the camera opens: the photo that is meant, and the session
     * if one lies open, are on the disk then, should the phone end the page. The entry is
     * kept already.
     * @param {import("../session.js").Draft | null} draft
     * @param {{entry: string, clue: string | null}} meant
     */
    beforeCamera: (draft, meant) => stored.saveAwaited(draft, { ...meant, since: now() }),

    /** The photo that never came, to be said at the start. */
    awaited: () => stored.loadAwaited(),

    /** No photo was taken, or the person knows. */
    awaitNoMore: () => stored.dropAwaited(),

    /** @param {string} key */
    setting: (key) => stored.loadSetting(key),

    /** @param {string} key @param {unknown} value plain data */
    set: (key, value) => stored.saveSetting(key, value),

    /** The whole log is in a file since then. @param {string} since when it was read for it */
    exported: (since) => stored.saveSetting(EXPORTED, since),

    /** The reminder is not wanted now. */
    dismiss: () => stored.saveSetting(DISMISSED, now()),

    /** A sentence if it is time for an export, else nothing. @param {boolean} lasts */
    async reminder(lasts) {
      const { entries } = await loaded();
      const [exported, dismissed] = await Promise.all(
        [EXPORTED, DISMISSED].map((key) => stored.loadSetting(key)),
      );
      const times = { exported, dismissed, now: now() };
      return remind([...entries.values()], { ...times, lasts });
    },

    /** Calls when another page has changed the log. @param {() => void} listener */
    onOthers(listener) {
      onOthers = listener;
      listen();
    },
  };
}

/**
 * A new id, also where an address is plain http and the browser makes none.
 * @param {(bytes: Uint8Array) => Uint8Array} [random]
 */
export function newId(random = (bytes) => crypto.getRandomValues(bytes)) {
  const bytes = random(new Uint8Array(16));
  // RFC 9562, section 5.4: a random one says so in six of its bits.
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}

/** @param {unknown[]} rows @returns {Known} */
function readAll(rows) {
  const known = { entries: new Map(), refused: /** @type {string[]} */ ([]) };
  for (const row of rows) {
    try {
      const entry = readable(row);
      known.entries.set(entry.id, entry);
    } catch (error) {
      const { name, message } = /** @type {Error} */ (error);
      if (name !== "RecordError") throw error;
      known.refused.push(message);
    }
  }
  return known;
}
