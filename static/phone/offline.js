// Keeps the app on the phone and says how ready it is for no signal: only what was
// checked, file by file, and never what a browser merely promises.

const ROOT = new URL("../../../", import.meta.url);
const WORKER = new URL("sw.js", ROOT).href;
const BUILD = import.meta.url.split("/").at(-3);
const OURS = `fieldid:${ROOT.href}:`;
const HOUR = 3600 * 1000;
const PATIENCE = 30 * 1000;

const INSECURE =
  "This address is plain http, so browsers keep nothing from it: the app works only " +
  "while its server can be reached. Over https it can be kept for no signal.";
const UNABLE =
  "This browser cannot keep the app, or is in private mode: it needs a signal each time.";
const ASKED =
  "Nothing is kept on this visit, as its address asked. Open the app without ?no-cache " +
  "to keep it again.";
const LIVE = "This is a live preview: nothing is kept for no signal.";
const GETTING = "Keeping everything on this phone for when there is no signal…";
const CHECKING = "Checking every file on this phone…";
const UPDATE = "A newer version is on this phone, too. It is used once you take it.";
const STALE =
  "A newer version could not be kept whole. This one goes on working; the phone will try again.";
const UNSAVED =
  "The newer version is in use from the next start. This page stays as it is, because " +
  "its readings could not be saved.";

/**
 * @typedef {object} State
 * @property {"checking" | "getting" | "ready" | "update" | "none" | "failed"} state
 * @property {string} say A sentence for people.
 * @property {string | null} build What is kept, by its hash.
 * @property {number} files How many files were checked and found good.
 * @property {string | null} date When they were checked, in ISO form.
 */
/** @typedef {{build: string, files: number, missing: string[]}} Kept */

/** @type {ServiceWorkerRegistration | undefined} */
let registration;
/** @type {(state: State) => void} */
let onState;

// The one script address that may ever be made from text, and it does not change.
const policy = /** @type {any} */ (globalThis).trustedTypes?.createPolicy("fieldid", {
  createScriptURL: () => WORKER,
});

/**
 * Keeps the app, and tells its state whenever that changes.
 * @param {(state: State) => void} listener
 * @param {() => Promise<void>} [save] Saves what this page holds before it reloads.
 */
export async function start(listener, save = async () => {}) {
  onState = listener;
  const why = await obstacle();
  if (why) return tell("none", why);
  answerWorker();
  reloadOnce(save);
  await loaded();
  try {
    const address = policy ? policy.createScriptURL("") : WORKER;
    registration = await navigator.serviceWorker.register(address, { updateViaCache: "none" });
  } catch (error) {
    return tell("failed", `The app could not be kept on this phone: ${reason(error)}`);
  }
  registration.addEventListener("updatefound", follow);
  lookForUpdates(registration);
  if (registration.active) await check();
  else follow();
}

/** Takes the newer version that is waiting; each open page saves and reloads. */
export function accept() {
  registration?.waiting?.postMessage({ type: "take-over" });
}

/** Why nothing can be kept here; empty if it can. */
async function obstacle() {
  if (!isSecureContext) return INSECURE;
  if (!("serviceWorker" in navigator) || !("caches" in globalThis)) return UNABLE;
  if (location.search !== "?no-cache") return "";
  // The worker did this already, unless it is the worker that is broken.
  const names = (await caches.keys()).filter((name) => name.startsWith(OURS));
  await Promise.all(names.map((name) => caches.delete(name)));
  await (await navigator.serviceWorker.getRegistration(ROOT.href))?.unregister();
  return ASKED;
}

/** Tells a worker which build this page came from, so that it keeps those files. */
function answerWorker() {
  navigator.serviceWorker.addEventListener("message", ({ data, ports }) => {
    if (data?.type === "build") ports[0]?.postMessage(BUILD);
  });
  navigator.serviceWorker.startMessages();
}

/** @param {() => Promise<void>} save */
function reloadOnce(save) {
  let controlled = Boolean(navigator.serviceWorker.controller);
  let leaving = false;
  navigator.serviceWorker.addEventListener("controllerchange", async () => {
    // The first worker ever takes a page that is whole already; and who clears the
    // browser's data leaves a page without a worker, which alone still has the find.
    const isFirst = !controlled;
    controlled = Boolean(navigator.serviceWorker.controller);
    if (isFirst || leaving || !controlled) return;
    leaving = true;
    try {
      await save();
    } catch {
      leaving = false;
      return tell("update", UNSAVED);
    }
    location.reload();
  });
}

/** Asks for a newer version when the app comes back, hourly at most: an app that
 * stays open never navigates, so the browser would never look.
 * @param {ServiceWorkerRegistration} kept
 */
function lookForUpdates(kept) {
  let last = Date.now();
  const look = () => {
    if (document.visibilityState !== "visible" || Date.now() - last < HOUR) return;
    last = Date.now();
    // Without a signal this fails, and the next time will do.
    kept.update().catch(() => {});
  };
  document.addEventListener("visibilitychange", look);
  addEventListener("online", look);
}

/** Follows a worker that is being installed to its end. */
function follow() {
  const worker = registration?.installing;
  if (!worker) return check();
  if (!registration?.active) tell("getting", GETTING);
  worker.addEventListener("statechange", () => {
    if (worker.state === "redundant") return lost();
    const done = registration?.active ? "installed" : "activated";
    if (worker.state === done || worker.state === "activated") return check();
  });
}

function lost() {
  if (registration?.active) return check(STALE);
  return tell(
    "failed",
    "Not every file could be kept on this phone. Open the app again while there is a signal.",
  );
}

/** Has every kept file read again and hashed, mends what is broken, and tells.
 * @param {string} [more]
 */
async function check(more = "") {
  const worker = registration?.active;
  if (!worker) return;
  try {
    tell("checking", CHECKING);
    let kept = await ask(worker, "verify");
    if (kept.missing.length) {
      tell("getting", GETTING);
      kept = await ask(worker, "mend");
    }
    report(kept, more);
  } catch (error) {
    tell("failed", `What is kept on this phone could not be checked: ${reason(error)}`);
  }
}

/** @param {Kept} kept @param {string} more */
function report({ build, files, missing }, more) {
  if (!files) return tell("none", LIVE);
  const found = { build, files: files - missing.length, date: new Date().toISOString() };
  if (missing.length) {
    const say =
      `${missing.length} of ${files} files are not on this phone as they should be. ` +
      "The app needs a signal until they are: open it again where there is one.";
    return tell("failed", say, found);
  }
  const ready = `Ready for no signal: all ${files} files checked.`;
  if (registration?.waiting) return tell("update", `${ready} ${UPDATE}`, found);
  tell("ready", more ? `${ready} ${more}` : ready, found);
}

/**
 * @param {State["state"]} state @param {string} say
 * @param {Partial<State>} [found]
 */
function tell(state, say, found = {}) {
  onState({ state, say, build: null, files: 0, date: null, ...found });
}

/** @param {ServiceWorker} worker @param {string} type @returns {Promise<Kept>} */
function ask(worker, type) {
  const { port1, port2 } = new MessageChannel();
  /** @type {Promise<Kept>} */
  const answer = new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("no answer came.")), PATIENCE);
    port1.onmessage = ({ data }) => {
      clearTimeout(late);
      resolve(data);
    };
  });
  worker.postMessage({ type }, [port2]);
  return answer.finally(() => port1.close());
}

/** Once the page has all it needs, so that keeping files does not slow it down. */
function loaded() {
  if (document.readyState === "complete") return Promise.resolve();
  return new Promise((resolve) => addEventListener("load", resolve, { once: true }));
}

/** @param {unknown} error */
function reason(error) {
  return error instanceof Error ? error.message : String(error);
}
