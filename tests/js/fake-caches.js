// Cache storage in memory, as far as copies need it; it can be full or torn.

/** @param {{full?: boolean}} [faults] read at each call */
export function fakeCaches(faults = {}) {
  const all = new Map();
  return {
    files: () => all.values().next().value ?? new Map(),
    open: async (name) => {
      if (!all.has(name)) all.set(name, new Map());
      const files = all.get(name);
      return {
        keys: async () => [...files.keys()].map((url) => ({ url })),
        match: async (url) => files.has(url) && new Response(files.get(url)) || undefined,
        put: async (url, response) => {
          if (faults.full) throw new DOMException("full", "QuotaExceededError");
          files.set(url, await response.arrayBuffer());
        },
        delete: async (url) => files.delete(url),
      };
    },
  };
}
