/**
 * Chromium keeps a database as files that are only ever added to: what was written over lies there until the browser
 * merges them. A page cannot ask for that, but deleting a database makes it merge the files that reach into it. So a
 * database large enough to reach through all levels is made for this alone, given time to sink, and deleted; two small
 * ones after it take along what lay in the browser's newest file. What the merge leaves to the file system (blocks no
 * longer in any file) is out of a page's reach.
 */
import type { StorageHost } from './types.ts';

const NAMES = ['rimwise-scrub-1', 'rimwise-scrub-2', 'rimwise-scrub-3'] as const;
/** Past the ten megabytes at which the browser merges the first level into the second; each value stays below 64 kB. */
const FILL_BYTES = 26_000_000;
const VALUE_BYTES = 30_000;
const VALUES_A_WRITE = 34;
const SINK_MS = 1500;
const ANSWER_MS = 30_000;

type Host = Pick<StorageHost, 'indexedDB' | 'setTimeout'>;

function opened(factory: IDBFactory, name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore('s');
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(name));
  });
}

function deleted(factory: IDBFactory, name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = factory.deleteDatabase(name);
    request.onsuccess = () => resolve();
    request.onerror = () => reject(request.error ?? new Error(name));
  });
}

function written(db: IDBDatabase, first: number, count: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const tx = db.transaction('s', 'readwrite');
    // Chance does not compress: the size in the files is the size that counts.
    for (let key = first; key < first + count; key += 1)
      tx.objectStore('s').put(crypto.getRandomValues(new Uint8Array(VALUE_BYTES)), key);
    tx.oncomplete = () => resolve();
    tx.onabort = () => reject(tx.error ?? new Error('aborted'));
  });
}

async function fill(factory: IDBFactory, name: string, bytes: number): Promise<void> {
  const db = await opened(factory, name);
  try {
    for (let key = 0; key * VALUE_BYTES < bytes; key += VALUES_A_WRITE) await written(db, key, VALUES_A_WRITE);
  } finally {
    db.close();
  }
}

async function scrub(factory: IDBFactory, wait: (ms: number) => Promise<void>): Promise<boolean> {
  const [large, ...small] = NAMES;
  try {
    for (const name of small) await fill(factory, name, 1);
    await fill(factory, large, FILL_BYTES);
    await wait(SINK_MS);
    return true;
  } catch {
    // No room for it: what was written over then lies there until the browser merges by itself.
    return false;
  } finally {
    for (const name of NAMES) await deleted(factory, name).catch(() => undefined);
    await wait(SINK_MS);
  }
}

/** Answers false when it could not be done, or took too long. */
export function scrubDatabase(host: Host): Promise<boolean> {
  const { indexedDB } = host;
  if (indexedDB === undefined) return Promise.resolve(false);
  const wait = (ms: number): Promise<void> => new Promise((resolve) => void host.setTimeout(resolve, ms));
  return Promise.race([scrub(indexedDB, wait), wait(ANSWER_MS).then(() => false)]);
}
