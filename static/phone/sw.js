// Keeps every file of one build on the phone, each checked against its hash.
// The build fills the two constants. Unfilled, as here, the worker retires and removes
// what it kept: put it in place of a filled one to take the app off its phones.

const BUILD = "dev";
const FILES = [];

const SCOPE = self.registration.scope;
// Several apps can share an origin, so a cache's name carries the scope.
const OURS = `fieldid:${SCOPE}:`;
const CACHE = OURS + BUILD;
const AT_ONCE = 4;
const PATIENCE = 1000;
// What only a server can answer.
const SERVER = /^(judge|workbench)(?=[/?#]|$)/;

const acts = { verify, mend, "take-over": () => self.skipWaiting() };
let isFirst = false;

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("activate", (event) => event.waitUntil(activate()));

self.addEventListener("message", (event) => {
  const act = acts[event.data?.type];
  if (!act) return;
  event.waitUntil(act().then((answer) => event.ports[0]?.postMessage(answer)));
});

self.addEventListener("fetch", (event) => {
  const { method, mode, url } = event.request;
  if (!FILES.length || method !== "GET" || !url.startsWith(SCOPE)) return;
  if (SERVER.test(url.slice(SCOPE.length))) return;
  event.respondWith(mode === "navigate" ? page(event.request) : file(event.request));
});

// Never takes over by itself: an open page still needs the build that it came from.
async function install() {
  if (!FILES.length) return forget();
  isFirst = !self.registration.active;
  try {
    await keep(FILES);
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  if (!FILES.length) return retire();
  if (isFirst) await self.clients.claim();
  return tidy();
}

async function page(request) {
  if (new URL(request.url).search === "?no-cache") {
    const response = await fetch(request);
    await retire();
    return response;
  }
  const found = await kept(CACHE, request);
  if (found) return found;
  // From another address the page would look for its files in the wrong place.
  if (request.url.split(/[?#]/)[0] !== SCOPE) return Response.redirect(SCOPE);
  return (await kept(CACHE, "./")) ?? fetch(request);
}

// The address carries the build, so a page of an older build gets its own files.
async function file(request) {
  for (const name of [CACHE, ...(await ours())]) {
    const found = await kept(name, request);
    if (found) return found;
  }
  return fetch(request);
}

async function keep(files) {
  if (!files.length) return;
  const cache = await caches.open(CACHE);
  const before = await earlier();
  const waiting = [...files];
  const lane = async () => {
    for (let next; (next = waiting.shift()); ) {
      await cache.put(next.url, (await reused(next, before)) ?? (await fetched(next)));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
}

// A half-written file or a login page in its place does not fit the hash, and throws.
async function fetched({ url, sha256 }) {
  const response = await fetch(url, {
    cache: "reload",
    credentials: "same-origin",
    integrity: sha256,
    redirect: "error",
  });
  if (!response.ok) throw new Error(`${url}: the server answered ${response.status}`);
  return response;
}

// Wrapped anew, since a script that kept its old address would import the old build.
async function reused({ url, sha256 }, before) {
  const response = await before.get(plain(url))?.();
  const body = await response?.arrayBuffer();
  if (!body || (await hash(body)) !== sha256) return null;
  return new Response(body, { headers: response.headers });
}

// What is kept already, by address without the build.
async function earlier() {
  const found = new Map();
  for (const name of await ours()) {
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) found.set(plain(url), () => kept(name, url));
  }
  return found;
}

async function verify() {
  const missing = [];
  for (const { url, sha256 } of FILES) {
    const body = await (await kept(CACHE, url))?.arrayBuffer();
    if (!body || (await hash(body)) !== sha256) missing.push(url);
  }
  await tidy();
  return { build: BUILD, files: FILES.length, missing };
}

async function mend() {
  const { missing } = await verify();
  const broken = FILES.filter(({ url }) => missing.includes(url));
  // What cannot be fetched now is still missing when it is counted again.
  await keep(broken).catch(() => {});
  return verify();
}

// Without a worker the browser's own cache answers, which goes on with the app's page for
// weeks where a host names no age. A failure throws: the browser will try again.
async function forget() {
  await fetch(SCOPE, { cache: "reload", credentials: "same-origin" });
}

// Removes older builds, once no page that is open says that it came from one.
async function tidy() {
  const open = await self.clients.matchAll({ includeUncontrolled: true, type: "window" });
  const pages = open.filter(({ url }) => url.startsWith(SCOPE));
  const builds = await Promise.all(pages.map(buildOf));
  const { installing, waiting } = self.registration;
  if (builds.includes(null) || installing || waiting) return;
  const old = (await ours()).filter(
    (name) => name !== CACHE && !builds.includes(name.slice(OURS.length)),
  );
  await Promise.all(old.map((name) => caches.delete(name)));
}

function buildOf(client) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    const told = (build) => {
      port1.close();
      resolve(build);
    };
    port1.onmessage = ({ data }) => told(data);
    setTimeout(told, PATIENCE, null);
    client.postMessage({ type: "build" }, [port2]);
  });
}

async function retire() {
  await Promise.all((await ours()).map((name) => caches.delete(name)));
  await self.registration.unregister();
}

async function ours() {
  return (await caches.keys()).filter((name) => name.startsWith(OURS));
}

// Unlike open, this makes no cache where there is none.
function kept(cacheName, request) {
  return caches.match(request, { cacheName, ignoreVary: true });
}

function plain(url) {
  return new URL(url, SCOPE).href.slice(SCOPE.length).replace(/^v\/[^/]+\//, "v/");
}

async function hash(body) {
  const digest = await crypto.subtle.digest("SHA-256", body);
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}
