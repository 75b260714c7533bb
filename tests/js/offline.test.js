import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";

const MODULE = new URL("../../static/phone/offline.js", import.meta.url);
// The bundle's root lies above v/<build>/phone/.
const ROOT = new URL("../../../", MODULE).href;
const GOOD = { build: "aaa", files: 3, missing: [] };

let loads = 0;
let world;

/** A browser that installs what it is told, with a worker that answers as given. */
function browser({ answers = {}, controller = null, refuse = null } = {}) {
  const asked = [];
  const active = Object.assign(new EventTarget(), {
    postMessage({ type }, [port]) {
      asked.push(type);
      port.postMessage(answers[type] ?? GOOD);
    },
  });
  const registration = Object.assign(new EventTarget(), {
    active,
    waiting: null,
    installing: null,
    updates: 0,
    update: async () => void (registration.updates += 1),
  });
  const serviceWorker = Object.assign(new EventTarget(), {
    controller,
    startMessages() {},
    registered: [],
    async register(address, options) {
      serviceWorker.registered.push([String(address), options]);
      if (refuse) throw refuse;
      return registration;
    },
    getRegistration: async () => ({ unregister: async () => asked.push("unregister") }),
  });
  const document = Object.assign(new EventTarget(), {
    readyState: "complete",
    visibilityState: "visible",
  });
  const location = { search: "", reloads: 0, reload: () => (location.reloads += 1) };
  const deleted = [];
  const names = [`fieldid:${ROOT}:aaa`, "other-app"];
  const caches = { keys: async () => names, delete: async (name) => deleted.push(name) };
  const globals = { navigator: { serviceWorker }, document, location, caches, isSecureContext: true };
  for (const [name, value] of Object.entries(globals)) {
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
  }
  globalThis.addEventListener = () => {};
  delete globalThis.trustedTypes;
  return { active, asked, registration, serviceWorker, document, location, deleted };
}

/** The module loaded anew and started; all states that it told, the last one last. */
async function started(save) {
  const offline = await import(`${MODULE}?${(loads += 1)}`);
  const states = [];
  await offline.start((state) => states.push(state), save);
  return { offline, states, last: () => states.at(-1) };
}

const settled = () => new Promise((go) => setTimeout(go, 20));

beforeEach(() => {
  world = browser();
});

test("ready is told after every file was checked", async () => {
  const { states } = await started();
  assert.deepEqual(world.asked, ["verify"]);
  assert.deepEqual(
    states.map(({ state }) => state),
    ["checking", "ready"],
  );
  assert.equal(states[1].say, "Ready for no signal: all 3 files checked.");
  assert.equal(states[1].files, 3);
  assert.ok(!Number.isNaN(Date.parse(states[1].date)));
});

test("what is broken is mended before it is told", async () => {
  world = browser({ answers: { verify: { ...GOOD, missing: ["./"] } } });
  const { last } = await started();
  assert.deepEqual(world.asked, ["verify", "mend"]);
  assert.equal(last().state, "ready");
});

test("what cannot be mended is told", async () => {
  const broken = { ...GOOD, missing: ["./"] };
  world = browser({ answers: { verify: broken, mend: broken } });
  const { last } = await started();
  assert.equal(last().state, "failed");
  assert.equal(last().files, 2);
  assert.match(last().say, /^1 of 3 files are not on this phone/);
});

test("plain http is told with its reason", async () => {
  globalThis.isSecureContext = false;
  const { last } = await started();
  assert.equal(last().state, "none");
  assert.match(last().say, /plain http/);
  assert.deepEqual(world.serviceWorker.registered, []);
});

test("a browser without workers is told", async () => {
  globalThis.navigator = {};
  const { last } = await started();
  assert.equal(last().state, "none");
  assert.match(last().say, /needs a signal each time/);
});

test("a live preview is not called ready", async () => {
  world = browser({ answers: { verify: { build: "dev", files: 0, missing: [] } } });
  const { last } = await started();
  assert.equal(last().state, "none");
});

test("a refused worker is told with its reason", async () => {
  world = browser({ refuse: new Error("the disk is full") });
  const { last } = await started();
  assert.equal(last().state, "failed");
  assert.match(last().say, /the disk is full/);
});

test("the worker is the bundle's own, never from the browser's cache", async () => {
  await started();
  assert.deepEqual(world.serviceWorker.registered, [
    [`${ROOT}sw.js`, { updateViaCache: "none" }],
  ]);
});

test("the one trusted address does not depend on what is asked", async () => {
  let made;
  globalThis.trustedTypes = { createPolicy: (name, rules) => (made = { name, ...rules }) };
  await started();
  assert.equal(made.name, "fieldid");
  assert.deepEqual(Object.keys(made), ["name", "createScriptURL"]);
  assert.equal(made.createScriptURL("https://else.example/"), `${ROOT}sw.js`);
});

test("a first install is followed to its end", async () => {
  const installing = Object.assign(new EventTarget(), { state: "installing" });
  const { active } = world;
  Object.assign(world.registration, { active: null, installing });
  const { states, last } = await started();
  assert.equal(last().state, "getting");
  world.registration.active = active;
  installing.state = "activated";
  installing.dispatchEvent(new Event("statechange"));
  await settled();
  assert.deepEqual(
    states.map(({ state }) => state),
    ["getting", "checking", "ready"],
  );
});

test("a first install that fails is told", async () => {
  const installing = Object.assign(new EventTarget(), { state: "redundant" });
  Object.assign(world.registration, { active: null, installing });
  const { last } = await started();
  installing.dispatchEvent(new Event("statechange"));
  assert.equal(last().state, "failed");
});

test("an update is offered and taken by asking", async () => {
  const told = [];
  world.registration.waiting = { postMessage: (message) => told.push(message) };
  const { offline, last } = await started();
  assert.equal(last().state, "update");
  assert.deepEqual(told, []);
  offline.accept();
  assert.deepEqual(told, [{ type: "take-over" }]);
});

test("a page saves and reloads once for a new worker", async () => {
  world = browser({ controller: {} });
  const saved = [];
  await started(async () => void saved.push(world.location.reloads));
  for (let i = 0; i < 3; i += 1) {
    world.serviceWorker.dispatchEvent(new Event("controllerchange"));
  }
  await settled();
  assert.deepEqual(saved, [0]);
  assert.equal(world.location.reloads, 1);
});

test("a page whose worker was cleared away stays", async () => {
  const controller = {};
  world = browser({ controller });
  await started();
  world.serviceWorker.controller = null;
  world.serviceWorker.dispatchEvent(new Event("controllerchange"));
  await settled();
  assert.equal(world.location.reloads, 0);
});

test("the first worker ever reloads nothing", async () => {
  await started();
  world.serviceWorker.dispatchEvent(new Event("controllerchange"));
  await settled();
  assert.equal(world.location.reloads, 0);
});

test("a page that cannot save stays", async () => {
  world = browser({ controller: {} });
  const { last } = await started(() => Promise.reject(new Error("full")));
  world.serviceWorker.dispatchEvent(new Event("controllerchange"));
  await settled();
  assert.equal(world.location.reloads, 0);
  assert.match(last().say, /could not be saved/);
});

test("a newer version is looked for hourly at most", async (t) => {
  t.mock.timers.enable({ apis: ["Date"], now: 0 });
  await started();
  const back = () => world.document.dispatchEvent(new Event("visibilitychange"));
  back();
  assert.equal(world.registration.updates, 0);
  t.mock.timers.setTime(3600 * 1000);
  back();
  back();
  assert.equal(world.registration.updates, 1);
  world.document.visibilityState = "hidden";
  t.mock.timers.setTime(2 * 3600 * 1000);
  back();
  assert.equal(world.registration.updates, 1);
});

test("no-cache removes what is ours and keeps nothing", async () => {
  globalThis.location.search = "?no-cache";
  const { last } = await started();
  assert.equal(last().state, "none");
  assert.deepEqual(world.deleted, [`fieldid:${ROOT}:aaa`]);
  assert.deepEqual(world.asked, ["unregister"]);
  assert.deepEqual(world.serviceWorker.registered, []);
});

test("the page says which build it came from", async () => {
  await started();
  const { port1, port2 } = new MessageChannel();
  const said = new Promise((go) => (port1.onmessage = ({ data }) => go(data)));
  const message = Object.assign(new Event("message"), { data: { type: "build" }, ports: [port2] });
  world.serviceWorker.dispatchEvent(message);
  assert.equal(await said, MODULE.pathname.split("/").at(-3));
  port1.close();
});
