import type { StorageHost } from './types.ts';

/** Reading `indexedDB` itself throws in some sandboxed frames; there it counts as absent. */
function findIndexedDb(): IDBFactory | undefined {
  try {
    return globalThis.indexedDB;
  } catch {
    return undefined;
  }
}

/** The browser the page runs in. */
export function browserHost(): StorageHost {
  return {
    indexedDB: findIndexedDb(),
    IDBKeyRange: globalThis.IDBKeyRange,
    setTimeout: (run, ms) => globalThis.setTimeout(run, ms),
    clearTimeout: (id) => globalThis.clearTimeout(id),
  };
}
