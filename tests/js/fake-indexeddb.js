// As much of IndexedDB as the store uses, in memory, with faults to order.
// Requests answer in a later turn, as the real ones do; a transaction ends as soon as it
// has none, and begins when the one before has ended.

/**
 * A factory whose `faults` are spent one by one: `open` takes an error's name,
 * "silent", "late" (waits for `answerLate`) or "throw"; `put` an error's name or
 * "throw" (refuses at once, as a full disk may); `commit` an error's name, "quiet"
 * (breaks off without an error) or "never" (never ends); `transaction` and `delete` an
 * error's name. Null is no fault.
 */
export function fakeIndexedDB() {
  const disks = new Map();
  const connections = new Set();
  const faults = { open: [], transaction: [], put: [], delete: [], commit: [] };
  const waiting = [];
  const log = { opened: 0, durability: [] };

  function open(name, version) {
    const fault = faults.open.shift();
    if (fault === "throw") throw new DOMException("forbidden", "SecurityError");
    log.opened += 1;
    const request = {};
    if (fault === "silent") return request;
    if (fault === "late") waiting.push(() => answer(request, name, version));
    else if (fault) later(() => fail(request, fault));
    else later(() => answer(request, name, version));
    return request;
  }

  function answer(request, name, asked) {
    const disk = disks.get(name) ?? { version: 0, stores: new Map(), turns: [] };
    const version = asked ?? Math.max(disk.version, 1);
    if (version < disk.version) return fail(request, "VersionError");
    if (version > disk.version) {
      for (const db of connections) db.onversionchange?.({});
      if (connections.size) {
        waiting.push(() => answer(request, name, version));
        return request.onblocked?.({});
      }
    }
    request.result = connect(disk, version);
    if (version > disk.version && !upgrade(request, disk)) return fail(request, "AbortError");
    disk.version = version;
    disks.set(name, disk);
    return request.onsuccess?.({});
  }

  /** Whether the upgrade was not broken off. */
  function upgrade(request, disk) {
    let aborted = false;
    request.transaction = { abort: () => (aborted = true) };
    request.onupgradeneeded?.({ oldVersion: disk.version });
    if (aborted) request.result.close();
    return !aborted;
  }

  function connect(disk, version) {
    const db = {
      version,
      transaction(names, mode, options) {
        const fault = faults.transaction.shift();
        if (fault) throw new DOMException("the connection is closing", fault);
        if (!connections.has(db)) throw new DOMException("closed", "InvalidStateError");
        if (mode === "readwrite") log.durability.push(options?.durability);
        return begin(disk, { names, mode, faults });
      },
      createObjectStore(name, { keyPath, autoIncrement } = {}) {
        if (disk.stores.has(name)) throw new DOMException("is there", "ConstraintError");
        const store = { keyPath, autoIncrement, next: 1, rows: new Map(), indexes: new Map() };
        disk.stores.set(name, store);
        return { createIndex: (index, path) => store.indexes.set(index, path) };
      },
      close: () => connections.delete(db),
    };
    connections.add(db);
    return db;
  }

  /** All connections end, as when the system takes the memory. */
  function collapse({ say }) {
    for (const db of connections) {
      db.close();
      if (say) db.onclose?.({});
    }
  }

  const answerLate = () => waiting.splice(0).forEach((go) => go());
  return { open, faults, log, connections, collapse, answerLate };
}

function begin(disk, { names, mode, faults }) {
  const queue = [];
  let [before, ended] = [new Map(), false];
  const transaction = {
    error: null,
    objectStore: (name) => objectStore(disk.stores.get(name), { ask, mode, faults }),
    abort() {
      if (ended) throw new DOMException("it has ended", "InvalidStateError");
      for (const [name, rows] of before) disk.stores.get(name).rows = rows;
      for (const { request } of queue.splice(0)) later(() => fail(request, "AbortError"));
      end(() => transaction.onabort?.({}));
    },
  };

  function ask(work, fault) {
    if (ended) throw new DOMException("it has ended", "TransactionInactiveError");
    const request = {};
    queue.push({ request, work, fault });
    return request;
  }

  function start() {
    for (const name of names) before.set(name, new Map(disk.stores.get(name).rows));
    later(turn);
  }

  function turn() {
    if (ended) return undefined;
    if (queue.length === 0) return commit();
    const { request, fault, work } = queue.shift();
    if (fault) {
      fail(request, fault);
      return stop(fault);
    }
    request.result = work();
    request.onsuccess?.({});
    return later(turn);
  }

  function commit() {
    const fault = faults.commit.shift();
    if (fault === "never") return undefined;
    return fault ? stop(fault) : end(() => transaction.oncomplete?.({}));
  }

  function stop(name) {
    if (name !== "quiet") transaction.error = new DOMException("as ordered", name);
    transaction.abort();
  }

  function end(say) {
    ended = true;
    later(() => {
      say();
      disk.turns.shift();
      disk.turns[0]?.();
    });
  }

  disk.turns.push(start);
  if (disk.turns.length === 1) start();
  return transaction;
}

function objectStore(store, { ask, mode, faults }) {
  const assertMayWrite = () => {
    if (mode !== "readwrite") throw new DOMException("for reading", "ReadOnlyError");
  };
  const write = (value, key) => {
    assertMayWrite();
    const row = structuredClone(value);
    const path = at(row, store.keyPath) ?? key ?? store.next++;
    const place = keyed(path);
    const fault = faults.put.shift();
    if (fault === "throw") throw new DOMException("full", "QuotaExceededError");
    return ask(() => void store.rows.set(place, row) ?? path, fault);
  };
  const all = (fits) => structuredClone([...store.rows.values()].filter(fits));
  return {
    put: write,
    add: write,
    get: (key) => ask(() => structuredClone(store.rows.get(keyed(key)))),
    getAll: () => ask(() => all(() => true)),
    count: (key) =>
      ask(() => (key === undefined ? store.rows.size : Number(store.rows.has(keyed(key))))),
    delete: (key) => {
      assertMayWrite();
      const place = keyed(key);
      return ask(() => void store.rows.delete(place), faults.delete.shift());
    },
    index(name) {
      const path = store.indexes.get(name);
      const of = (key) => all((row) => at(row, path) === key);
      return {
        getAll: (key) => ask(() => of(key)),
        getAllKeys: (key) => ask(() => of(key).map((row) => at(row, store.keyPath))),
      };
    },
  };
}

/** What lies at a key path, which may be several. */
const at = (row, path) =>
  Array.isArray(path) ? path.map((part) => row[part]) : path && row[path];

/** A key as text; what is no key is refused at once. */
function keyed(key) {
  if ([key].flat().some((part) => !["string", "number"].includes(typeof part))) {
    throw new DOMException("not a key", "DataError");
  }
  return JSON.stringify(key);
}

function fail(request, name) {
  request.error = new DOMException("as ordered", name);
  request.onerror?.({});
}

const later = (go) => setImmediate(go);

/** Some turns later, when all has answered that will by itself. */
export async function settled() {
  for (let turn = 0; turn < 40; turn += 1) await new Promise(later);
}
