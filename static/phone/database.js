/**
 * The one database of this phone: made by steps, opened when first asked for, opened
 * again when it was lost. Nothing here deletes what cannot be read.
 */

import { LOST } from "./storeerror.js";

const NAME = "fieldid";
/** Milliseconds; opening has been seen to hang for ever after a forced restart. */
const PATIENCE = 5000;

export const DRAFTS = "drafts";
export const ASIDE = "aside";
export const ENTRIES = "entries";
export const PHOTOS = "photos";
export const SETTINGS = "settings";
/** The index of photos by the id of their entry. */
export const BY_ENTRY = "entry";

/**
 * How each version is made from the one before; only ever added to, so that an older
 * app can still read.
 * @type {readonly ((db: IDBDatabase) => void)[]}
 */
const STEPS = [
  (db) => {
    // A draft of a newer format has a place of its own: it is never written over.
    db.createObjectStore(DRAFTS, { keyPath: ["guide", "format"] });
    db.createObjectStore(ASIDE, { autoIncrement: true });
  },
  (db) => {
    db.createObjectStore(ENTRIES, { keyPath: "id" });
    // Photos lie apart, so that the whole log can be listed without them.
    db.createObjectStore(PHOTOS, { keyPath: "id" }).createIndex(BY_ENTRY, "entry");
    db.createObjectStore(SETTINGS, { keyPath: "key" });
  },
];

/**
 * What to do with the stores that were asked for. It may wait for their requests and
 * for nothing else (a transaction ends as soon as it has none), and it comes to the same
 * when it is done twice.
 * @template T
 * @typedef {(stores: IDBObjectStore[]) => Promise<T>} Work
 */
/** @typedef {ReturnType<typeof databaseIn>} Database */

/** The database of this page; asked for late, because where it is forbidden asking throws. */
export const here = databaseIn(() => globalThis.indexedDB);

/**
 * The database in the given IndexedDB, which may be absent, blocked, full or silent.
 * @param {() => IDBFactory | undefined} source
 */
export function databaseIn(source, patience = PATIENCE) {
  const connection = connectionTo(source);

  /**
   * What the work gives, once the whole transaction is on the disk; if anything fails,
   * nothing of it is.
   * @template T
   * @param {"readonly" | "readwrite"} mode
   * @param {string[]} names
   * @param {Work<T>} work
   * @returns {Promise<T>}
   */
  async function within(mode, names, work) {
    const attempt = async () => {
      const db = await inTime(connection.get(), patience);
      if (mode === "readwrite") assertOurs(db);
      const done = transact(db, mode, names, work);
      // WebKit was seen never to end one. Photos take as long as they take.
      return names.includes(PHOTOS) ? done : inTime(done, 3 * patience);
    };
    return attempt().catch((error) => {
      if (!LOST.includes(error.name)) throw error;
      connection.forget();
      return attempt();
    });
  }

  return { within };
}

/**
 * What a request of a running transaction gives.
 * @template T
 * @param {IDBRequest<T>} request
 * @returns {Promise<T>}
 */
export function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/**
 * A newer app's database can be read, but what is written there may mean something else.
 * @param {IDBDatabase} db
 */
function assertOurs(db) {
  if (db.version > STEPS.length) throw new DOMException("", "VersionError");
}

/**
 * The one connection, opened when first asked for and again when it was lost.
 * @param {() => IDBFactory | undefined} source
 */
function connectionTo(source) {
  /** @type {Promise<IDBDatabase> | null} */
  let current = null;

  function get() {
    if (current) return current;
    const opening = open(source);
    const forget = () => {
      if (current === opening) current = null;
    };
    opening.then((db) => {
      db.onclose = forget;
      db.onversionchange = () => {
        // Another page wants to upgrade; it would wait for ever.
        db.close();
        forget();
      };
    }, forget);
    current = opening;
    return opening;
  }

  return { get, forget: () => void (current = null) };
}

/** @param {() => IDBFactory | undefined} source */
async function open(source) {
  return openAt(source, STEPS.length).catch((error) => {
    if (error.name !== "VersionError") throw error;
    return openAt(source);
  });
}

/**
 * @param {() => IDBFactory | undefined} source
 * @param {number} [version] without it, whatever version there is
 * @returns {Promise<IDBDatabase>}
 */
function openAt(source, version) {
  return new Promise((resolve, reject) => {
    const factory = source();
    if (!factory) throw new DOMException("", "Absent");
    const request = factory.open(NAME, version);
    request.onupgradeneeded = ({ oldVersion }) => {
      // There is none any more: the next attempt makes it, in its right version.
      if (version === undefined) return request.transaction?.abort();
      for (const step of STEPS.slice(oldVersion)) step(request.result);
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => {
      // Should it open after all, it must not stand in another page's way.
      request.onsuccess = () => request.result.close();
      reject(new DOMException("", "Blocked"));
    };
  });
}

/**
 * The promise's value, if it comes in time; a later one is left to who asks next.
 * @template T
 * @param {Promise<T>} promise
 * @param {number} patience
 * @returns {Promise<T>}
 */
function inTime(promise, patience) {
  /** @type {ReturnType<typeof setTimeout>} */
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new DOMException("", "TimeoutError")), patience);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}

/**
 * @template T
 * @param {IDBDatabase} db
 * @param {"readonly" | "readwrite"} mode
 * @param {string[]} names
 * @param {Work<T>} work
 * @returns {Promise<T>}
 */
function transact(db, mode, names, work) {
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(names, mode, { durability: "strict" });
    /** @type {unknown} */
    let failure = new DOMException("", "AbortError");
    const done = begun(work, names.map((name) => transaction.objectStore(name)));
    transaction.oncomplete = () => resolve(done);
    transaction.onabort = () => reject(transaction.error ?? failure);
    done.catch((error) => {
      failure = error;
      breakOff(transaction);
    });
  });
}

/** @template T @param {Work<T>} work @param {IDBObjectStore[]} stores */
async function begun(work, stores) {
  return work(stores);
}

/** A request refused must not leave the others half done. @param {IDBTransaction} transaction */
function breakOff(transaction) {
  try {
    transaction.abort();
  } catch (error) {
    // It has broken off by itself, and says so.
    if (/** @type {Error} */ (error).name !== "InvalidStateError") throw error;
  }
}
