/**
 * A second copy of the log, apart from the database: a browser that was ended while it
 * wrote has been seen to begin with an empty database the next time. Each find, each photo
 * and each setting is a file of its own among the browser's cached ones, so that one which
 * was torn spoils no other.
 */

/** @typedef {import("./entry.js").Entry} Entry */
/** @typedef {import("./entries.js").Photo} Photo */
/**
 * What there are copies of: of each entry when it was last changed, newest first, and
 * which photos; and the keys of settings.
 * @typedef {object} Copied
 * @property {Map<string, {changed: string[], photos: string[]}>} entries
 * @property {string[]} settings
 */
/** @typedef {ReturnType<typeof copiesIn>} Copies */

const NAME = "fieldid-log:";
const [FIND, PHOTO, SETTING] = ["find", "photo", "setting"];
const TYPE = "image/jpeg";
const NONE =
  "No second copy of the finds can be kept here, so make the file of all finds now and then.";

/** What a browser throws that cannot keep files: none at all, forbidden, full, broken. */
const KNOWN = ["TypeError", "SecurityError", "QuotaExceededError", "UnknownError", "InvalidStateError", "NotSupportedError", "NetworkError"];

/**
 * The copies in the given cache storage, which may be absent, forbidden or full: nothing
 * fails here, for the log itself is elsewhere. `trouble` says so in a sentence.
 * @param {() => CacheStorage | undefined} [source]
 * @param {string} [base] the folder of this app, whose log it is
 */
export function copiesIn(source = () => globalThis.caches, base = folder()) {
  let trouble = "";

  /**
   * @template T
   * @param {(cache: Cache) => Promise<T>} work
   * @param {T} without what it gives where there are no copies
   */
  async function within(work, without) {
    try {
      const storage = source();
      if (!storage) throw new TypeError("no cache storage");
      const done = await work(await storage.open(NAME + base));
      trouble = "";
      return done;
    } catch (error) {
      if (!KNOWN.includes(/** @type {Error} */ (error).name)) throw error;
      trouble = NONE;
      return without;
    }
  }

  /** @param {...string} parts */
  const at = (...parts) => `${base}log/${parts.map(encodeURIComponent).join("/")}`;

  return {
    /** Why there are no copies; empty while there are. */
    trouble: () => trouble,

    /** @returns {Promise<Copied>} */
    all: () =>
      within(async (cache) => {
        const names = (await cache.keys()).map(({ url }) => parts(url, at()));
        return gathered(names);
      }, gathered([])),

    /**
     * Copies an entry with photos that are new, the photos first: an entry never names a
     * photo that is not there.
     * @param {Entry} entry @param {readonly Photo[]} photos
     */
    keep: ({ ...entry }, photos) =>
      within(async (cache) => {
        for (const { id, bytes } of photos) {
          const headers = { "content-type": TYPE };
          await cache.put(at(PHOTO, entry.id, id), new Response(bytes, { headers }));
        }
        await cache.put(at(FIND, entry.id, entry.changed), json(entry));
      }, undefined),

    /** Removes older copies of an entry, and photos. @param {string} id @param {readonly string[]} changed @param {readonly string[]} photos */
    drop: (id, changed, photos) =>
      within(async (cache) => {
        for (const time of changed) await cache.delete(at(FIND, id, time));
        for (const photo of photos) await cache.delete(at(PHOTO, id, photo));
      }, undefined),

    /** A copied entry, not checked; undefined if it was torn. @param {string} id @param {string} changed @returns {Promise<unknown>} */
    entry: (id, changed) => within((cache) => read(cache, at(FIND, id, changed)), undefined),

    /** The bytes of a copied photo. @param {string} id @param {string} photo @returns {Promise<ArrayBuffer | undefined>} */
    photo: (id, photo) =>
      within(async (cache) => (await cache.match(at(PHOTO, id, photo)))?.arrayBuffer(), undefined),

    /** @param {string} key @param {unknown} value */
    keepSetting: (key, value) =>
      within((cache) => cache.put(at(SETTING, key), json(value)), undefined),

    /** @param {string} key @returns {Promise<unknown>} */
    setting: (key) => within((cache) => read(cache, at(SETTING, key)), undefined),
  };
}

/** @param {unknown} value */
const json = (value) =>
  new Response(JSON.stringify(value), { headers: { "content-type": "application/json" } });

/** What lies in a file; undefined if nothing does, or half of it. @param {Cache} cache @param {string} address */
async function read(cache, address) {
  const found = await cache.match(address);
  const text = await found?.text();
  try {
    return text === undefined ? undefined : JSON.parse(text);
  } catch {
    // Torn, and so as good as not there.
    return undefined;
  }
}

/** What an address names, piece by piece. @param {string} url @param {string} root */
const parts = (url, root) =>
  url.startsWith(root) ? url.slice(root.length).split("/").map(decodeURIComponent) : [];

/** @param {string[][]} names @returns {Copied} */
function gathered(names) {
  /** @type {Copied["entries"]} */
  const entries = new Map();
  const settings = [];
  for (const [kind, id, last] of names) {
    if (kind === SETTING) settings.push(id);
    if (kind !== FIND && kind !== PHOTO) continue;
    const known = entries.get(id) ?? { changed: [], photos: [] };
    known[kind === FIND ? "changed" : "photos"].push(last);
    entries.set(id, known);
  }
  for (const { changed } of entries.values()) changed.sort().reverse();
  return { entries, settings };
}

/** The folder that this page lies in; outside of a browser there is none. */
const folder = () => (globalThis.location ? new URL(".", location.href).href : "");
