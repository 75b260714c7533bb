// A service worker's world for tests: caches, clients and a server, all in memory.

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { runInNewContext } from "node:vm";

const SOURCE = new URL("../../static/phone/sw.js", import.meta.url);
export const SCOPE = "https://host.example/x/";

export const sri = (text) => `sha256-${createHash("sha256").update(text).digest("base64")}`;

/** The files of a build as the worker lists them; the page names its build. */
export function bundle(build, files = {}) {
  const all = { "./": `page ${build}`, [`v/${build}/a.js`]: "a", [`v/${build}/b.js`]: "b", ...files };
  const kept = Object.entries(all).map(([url, text]) => ({
    url,
    sha256: sri(text),
    bytes: text.length,
  }));
  return { build, all, kept };
}

/** One origin: what its browser keeps, and what its server answers. */
export function origin() {
  const stores = new Map();
  const served = new Map();
  const asked = [];
  const serve = ({ all }) => {
    for (const [url, text] of Object.entries(all)) served.set(new URL(url, SCOPE).href, text);
  };
  const names = () => [...stores.keys()];
  return { stores, served, asked, serve, names };
}

/** A worker with its files, in the world of an origin. */
export function worker(world, { build = "dev", kept = [] } = {}, { active = null, pages = [] } = {}) {
  const listeners = {};
  const did = [];
  const registration = {
    scope: SCOPE,
    active,
    unregister: async () => did.push("unregister"),
  };
  const self = {
    registration,
    addEventListener: (name, listener) => (listeners[name] = listener),
    skipWaiting: async () => did.push("skipWaiting"),
    clients: {
      claim: async () => did.push("claim"),
      matchAll: async () => pages,
    },
  };
  const text = readFileSync(SOURCE, "utf8")
    .replace('const BUILD = "dev";', `const BUILD = ${JSON.stringify(build)};`)
    .replace("const FILES = [];", `const FILES = ${JSON.stringify(kept)};`);
  runInNewContext(text, {
    self,
    caches: cacheStorage(world.stores),
    fetch: fetching(world),
    Response,
    URL,
    MessageChannel,
    setTimeout,
    btoa,
    crypto: globalThis.crypto,
    Uint8Array,
  });
  return { did, registration, ...events(listeners) };
}

function events(listeners) {
  const extended = async (name, event) => {
    let waiting;
    listeners[name]({ ...event, waitUntil: (promise) => (waiting = promise) });
    return waiting;
  };
  return {
    install: () => extended("install"),
    activate: () => extended("activate"),
    tell: async (type) => {
      let answer;
      await extended("message", { data: { type }, ports: [{ postMessage: (data) => (answer = structuredClone(data)) }] });
      return answer;
    },
    /** What the worker answers; undefined if it leaves the request to the network. */
    ask: async (path, { method = "GET", mode = "no-cors" } = {}) => {
      let answer;
      const request = { method, mode, url: new URL(path, SCOPE).href };
      listeners.fetch({ request, respondWith: (promise) => (answer = promise) });
      return answer;
    },
  };
}

/** An open page that came from a build; null never answers. */
export function page(build, url = SCOPE) {
  const postMessage = (_, [port]) => build !== null && port.postMessage(build);
  return { url, postMessage };
}

function cacheStorage(stores) {
  const address = (request) => new URL(request.url ?? request, SCOPE).href;
  const cache = (store) => ({
    put: async (request, response) => {
      store.set(address(request), { body: await response.arrayBuffer(), url: response.url });
    },
    keys: async () => [...store.keys()].map((url) => ({ url })),
  });
  return {
    keys: async () => [...stores.keys()],
    delete: async (name) => stores.delete(name),
    open: async (name) => {
      if (!stores.has(name)) stores.set(name, new Map());
      return cache(stores.get(name));
    },
    match: async (request, { cacheName }) => {
      const found = stores.get(cacheName)?.get(address(request));
      return found && new Response(found.body);
    },
  };
}

/** A server that keeps to what is asked of it: integrity, and no redirects. */
function fetching({ served, asked }) {
  return async (request, options = {}) => {
    const url = new URL(request.url ?? request, SCOPE).href;
    asked.push({ url, ...options });
    const text = served.get(url);
    if (text === undefined) return new Response("nowhere", { status: 404 });
    if (text === null) throw new TypeError("no signal");
    if (options.integrity && options.integrity !== sri(text)) throw new TypeError("integrity");
    const response = new Response(text);
    Object.defineProperty(response, "url", { value: url });
    return response;
  };
}
