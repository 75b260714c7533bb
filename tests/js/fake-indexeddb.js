// As much of IndexedDB as the store uses, in memory, with faults to order.
// Requests answer in a later turn, as the real ones do.

/**
 * A factory whose `faults` are spent one by one: `open` takes an error's name,
 * "silent", "late" (waits for `answerLate`) or "throw"; `put` an error's name or
 * "forget"; `commit` an error's name or "quiet" (breaks off without an error);
 * `transaction` and `delete` an error's name. Null is no fault.
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

  function answer(request, name, version) {
    const disk = disks.get(name) ?? { version: 0, stores: new Map() };
    if (version < disk.version) return fail(request, "VersionError");
    if (version > disk.version) {
      for (const db of connections) db.onversionchange?.({});
      if (connections.size) {
        waiting.push(() => answer(request, name, version));
        return request.onblocked?.({});
      }
    }
    request.result = connect(disk);
    if (version > disk.version) {
      request.onupgradeneeded?.({ oldVersion: disk.version });
      disk.version = version;
    }
    disks.set(name, disk);
    return request.onsuccess?.({});
  }

  function connect(disk) {
    const db = {
      transaction(names, mode, options) {
        const fault = faults.transaction.shift();
        if (fault) throw new DOMException("the connection is closing", fault);
        if (!connections.has(db)) throw new DOMException("closed", "InvalidStateError");
        if (mode === "readwrite") log.durability.push(options?.durability);
        return begin(disk, names, faults);
      },
      createObjectStore(name, { keyPath, autoIncrement } = {}) {
        disk.stores.set(name, { keyPath, autoIncrement, next: 1, rows: new Map() });
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

function begin(disk, names, faults) {
  const rowsOf = (name) => disk.stores.get(name).rows;
  const before = new Map(names.map((name) => [name, new Map(rowsOf(name))]));
  const queue = [];
  const transaction = {
    error: null,
    objectStore: (name) => objectStore(disk.stores.get(name), queue, faults),
    abort() {
      for (const [name, rows] of before) disk.stores.get(name).rows = rows;
      queue.length = 0;
      transaction.done = true;
      later(() => transaction.onabort?.({}));
    },
  };
  const stop = (name) => {
    if (name !== "quiet") transaction.error = new DOMException("as ordered", name);
    transaction.abort();
  };
  later(() => {
    while (queue.length) {
      const { request, fault, work } = queue.shift();
      if (fault) return stop(fault);
      request.result = work();
    }
    if (transaction.done) return undefined;
    const fault = faults.commit.shift();
    return fault ? stop(fault) : transaction.oncomplete?.({});
  });
  return transaction;
}

function objectStore(store, queue, faults) {
  const ask = (work, fault) => {
    const request = {};
    queue.push({ request, work, fault });
    return request;
  };
  const write = (value, key) => {
    const row = structuredClone(value);
    const path = store.keyPath?.map((part) => row[part]) ?? key ?? store.next++;
    const at = keyed(path);
    const fault = faults.put.shift();
    if (fault === "forget") return ask(() => at);
    return ask(() => store.rows.set(at, row), fault);
  };
  return {
    put: write,
    add: write,
    get: (key) => ask(() => structuredClone(store.rows.get(keyed(key)))),
    getAll: () => ask(() => structuredClone([...store.rows.values()])),
    delete: (key) => {
      const at = keyed(key);
      return ask(() => store.rows.delete(at), faults.delete.shift());
    },
  };
}

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
