/** Whether the browser keeps the log for good, and how much room it has. */

/** @typedef {Pick<StorageManager, "persist" | "persisted" | "estimate">} Storage */
/**
 * @typedef {object} Lasting
 * @property {"lasting" | "clearable" | "unknown" | "failed"} state
 * @property {string} say A sentence for people.
 */

const MEGABYTE = 1e6;
/** With less room than this a dozen photos may be too many. */
const LITTLE = 10 * MEGABYTE;
const EXPORT = "Save a copy now and then, by “File of all finds”.";

/** @type {Record<"lasting" | "clearable" | "unknown", string>} */
const SAYINGS = {
  lasting:
    "The browser does not clear this log by itself. It goes if you delete the app, or clear " +
    `the data of this site. ${EXPORT}`,
  clearable:
    "The browser may clear this log: when the phone runs short of room, when the app is " +
    `long unused, and always when a private window is closed. ${EXPORT}`,
  unknown: `This browser does not say whether it keeps this log for good. ${EXPORT}`,
};

/** @returns {Partial<Storage> | undefined} */
const own = () => globalThis.navigator?.storage;

/**
 * Asks the browser to keep the log for good; from a tap that saves, for some ask the
 * person in turn. A refusal is no last word: ask again after the app was installed.
 * @param {Partial<Storage> | undefined} [storage]
 * @returns {Promise<Lasting>}
 */
export async function askToLast(storage = own()) {
  return told(storage?.persist && (() => /** @type {Storage} */ (storage).persist()));
}

/**
 * How it stands, without asking for anything.
 * @param {Partial<Storage> | undefined} [storage]
 * @returns {Promise<Lasting>}
 */
export async function lasts(storage = own()) {
  return told(storage?.persisted && (() => /** @type {Storage} */ (storage).persisted()));
}

/**
 * The room that this app may use; nothing where the browser does not tell.
 * @param {Partial<Storage> | undefined} [storage]
 */
export async function room(storage = own()) {
  const { usage, quota } = (await storage?.estimate?.().catch(() => null)) ?? {};
  if (usage === undefined || quota === undefined) return "";
  const [used, free] = [usage, Math.max(0, quota - usage)];
  const rest = free < LITTLE ? "Make room before you take more photos." : "";
  return `About ${size(used)} are used, and there is room for about ${size(free)}. ${rest}`.trim();
}

/** @param {(() => Promise<boolean>) | undefined} ask @returns {Promise<Lasting>} */
async function told(ask) {
  if (!ask) return { state: "unknown", say: SAYINGS.unknown };
  try {
    const state = (await ask()) ? "lasting" : "clearable";
    return { state, say: SAYINGS[state] };
  } catch (error) {
    const { message } = /** @type {Error} */ (error);
    const failed = "The browser failed to say whether it keeps this log for good";
    return { state: "failed", say: `${failed} (${message}). ${EXPORT}` };
  }
}

/** @param {number} bytes */
function size(bytes) {
  const megabytes = Math.round(bytes / MEGABYTE);
  return megabytes < 10_000 ? `${megabytes} MB` : `${Math.round(megabytes / 1000)} GB`;
}
