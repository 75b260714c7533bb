// What is kept on this phone: drafts, one a guide and format, in IndexedDB.
// Nothing that cannot be read is ever deleted; every failure is a sentence to show.

import { FORMAT } from "./draft.js";

/** @typedef {import("./session.js").Draft} Draft */

const NAME = "fieldid";
/** Milliseconds; opening has been seen to hang for ever after a forced restart. */
const PATIENCE = 5000;
const DRAFTS = "drafts";
const ASIDE = "aside";
const PROBE = "probe";

/**
 * How each version is made from the one before; only ever added to.
 * @type {readonly ((db: IDBDatabase) => void)[]}
 */
const STEPS = [
  (db) => {
    // A draft of a newer format has a place of its own: it is never written over.
    db.createObjectStore(DRAFTS, { keyPath: ["guide", "format"] });
    db.createObjectStore(ASIDE, { autoIncrement: true });
    db.createObjectStore(PROBE);
  },
];

/** What a connection throws that died while the app slept; a new one may do. */
const LOST = ["InvalidStateError", "AbortError", "UnknownError"];

const WORKS = "The questionnaire works; keep this page open";
const FULL =
  "The storage of this phone is full, so the last step is not kept. " +
  `${WORKS} and make room.`;
const NEWER =
  "What is kept on this phone was written by a newer version of the app and is left " +
  `as it is, so nothing can be added. ${WORKS}, and update when online.`;

/** @type {ReadonlyMap<string, string>} */
const REASONS = new Map([
  ["Absent", "this browser has no storage for pages"],
  ["Blocked", "another page of this app holds an older storage open: close that page"],
  ["Forgetful", "what was kept did not come back"],
  ["SecurityError", "this browser forbids pages to keep anything"],
  ["TimeoutError", "the storage does not answer"],
  ...LOST.map((name) => [name, "the storage broke off twice: start the app again"]),
]);

/** What could not be kept or read; the message is a sentence to show. */
export class StoreError extends Error {
  name = "StoreError";
}

export const { saveDraft, loadDrafts, dropDraft, setAside, health } = storeIn(
  // Asked for late: where storage is forbidden, asking alone throws.
  () => globalThis.indexedDB,
);

/**
 * A store in the given IndexedDB, which may be absent, blocked, full or silent.
 * @param {() => IDBFactory | undefined} source
 */
export function storeIn(source, patience = PATIENCE) {
  const connection = connectionTo(source);

  /**
   * @param {IDBTransactionMode} mode @param {string[]} names
   * @param {(...stores: IDBObjectStore[]) => IDBRequest} work gives the last request
   */
  async function within(mode, names, work) {
    const attempt = async () => {
      const db = await inTime(connection.get(), patience);
      return transact(db, mode, names, work);
    };
    try {
      return await attempt().catch((error) => {
        if (!LOST.includes(error.name)) throw error;
        connection.forget();
        // All that is done here comes to the same when it is done twice.
        return attempt();
      });
    } catch (error) {
      throw said(/** @type {Error} */ (error));
    }
  }

  return {
    /** Resolves when the draft is on the disk. @param {Draft} draft */
    saveDraft: (draft) => within("readwrite", [DRAFTS], (drafts) => drafts.put(draft)),

    /** All drafts, readable or not. @returns {Promise<unknown[]>} */
    loadDrafts: () => within("readonly", [DRAFTS], (drafts) => drafts.getAll()),

    /** Drops the guide's draft of this format alone. @param {string} guide */
    dropDraft: (guide) =>
      within("readwrite", [DRAFTS], (drafts) => drafts.delete([guide, FORMAT])),

    /** Makes room beside a draft that cannot be read. @param {Draft} draft */
    setAside: (draft) =>
      within("readwrite", [DRAFTS, ASIDE], (drafts, aside) => {
        aside.add(draft);
        return drafts.delete([draft.guide, draft.format]);
      }),

    /**
     * Keeps, reads and deletes something.
     * @returns {Promise<{works: boolean, why: string}>}
     */
    async health() {
      try {
        const back = await within("readwrite", [PROBE], (probe) => {
          probe.put("kept", 0);
          const request = probe.get(0);
          probe.delete(0);
          return request;
        });
        if (back !== "kept") throw said(new DOMException("", "Forgetful"));
        return { works: true, why: "" };
      } catch (error) {
        return { works: false, why: /** @type {StoreError} */ (error).message };
      }
    },
  };
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
      // Another page wants to upgrade; it would wait for ever.
      db.onversionchange = () => db.close();
    }, forget);
    current = opening;
    return opening;
  }

  return { get, forget: () => void (current = null) };
}

/** @param {() => IDBFactory | undefined} source @returns {Promise<IDBDatabase>} */
function open(source) {
  return new Promise((resolve, reject) => {
    const factory = source();
    if (!factory) throw new DOMException("", "Absent");
    const request = factory.open(NAME, STEPS.length);
    request.onupgradeneeded = ({ oldVersion }) => {
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
 * @template T @param {Promise<T>} promise @param {number} patience
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
 * The last request's result, once the whole transaction is on the disk.
 * @param {IDBDatabase} db @param {IDBTransactionMode} mode @param {string[]} names
 * @param {(...stores: IDBObjectStore[]) => IDBRequest} work
 */
function transact(db, mode, names, work) {
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(names, mode, { durability: "strict" });
    transaction.onabort = () =>
      reject(transaction.error ?? new DOMException("", "AbortError"));
    try {
      const request = work(...names.map((name) => transaction.objectStore(name)));
      transaction.oncomplete = () => resolve(request.result);
    } catch (error) {
      // A request refused at once must not leave the others half done.
      reject(error);
      transaction.abort();
    }
  });
}

/** What happened and what still works. @param {Error} error */
function said(error) {
  const { name } = error;
  const why = REASONS.get(name) ?? `${name}: ${error.message}`;
  const nothing = `Nothing can be kept on this phone right now (${why}). ${WORKS}.`;
  const special = new Map([
    ["QuotaExceededError", FULL],
    ["VersionError", NEWER],
  ]);
  return new StoreError(special.get(name) ?? nothing, { cause: error });
}
