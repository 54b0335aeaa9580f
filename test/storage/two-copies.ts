/** A device with both copies, and ways to damage either. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { browserDigest } from '../../src/storage/chain.ts';
import { createJournalDisk, createMemoryJournal, type JournalDisk } from '../../src/storage/fake-journal.ts';
import { createIdbStore, DATABASE_NAME } from '../../src/storage/idb-store.ts';
import { createPairedStore } from '../../src/storage/paired-store.ts';
import type { Mark } from '../../src/storage/sentinel.ts';
import type { CaseRow, FactStore, RewritableStore } from '../../src/storage/types.ts';

const timers = { setTimeout: globalThis.setTimeout, clearTimeout: globalThis.clearTimeout };

export interface Device {
  indexedDB: IDBFactory;
  readonly journal: JournalDisk;
  mark: Mark | undefined;
  ids: number;
}

export function createDevice(): Device {
  return { indexedDB: new IDBFactory(), journal: createJournalDisk(), mark: undefined, ids: 0 };
}

/** A page on this device. */
export function openOn(device: Device, without: { journal?: true } = {}): FactStore {
  return openPaired(device, without);
}

/** The two copies themselves. */
export function openPaired(device: Device, without: { journal?: true } = {}): RewritableStore {
  return createPairedStore({
    database: createIdbStore({ host: { indexedDB: device.indexedDB, IDBKeyRange, ...timers } }),
    journal: without.journal ? undefined : createMemoryJournal(device.journal),
    digest: browserDigest(),
    sentinel: {
      read: () => device.mark,
      write: (mark) => {
        device.mark = mark;
      },
    },
    newId: () => `id-${(device.ids += 1)}`,
  });
}

/** The stores as a debugging person would reach them. */
export function raw(device: Device, work: (tx: IDBTransaction) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = device.indexedDB.open(DATABASE_NAME);
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const tx = request.result.transaction(['facts', 'cases', 'settings'], 'readwrite');
      work(tx);
      tx.oncomplete = () => {
        request.result.close();
        resolve();
      };
    };
  });
}

/** As after a crash in which the browser threw its database away. */
export function wipeDatabase(device: Device): void {
  device.indexedDB = new IDBFactory();
}

/** The database as it stood some entries ago. */
export function shorten(device: Device, row: CaseRow, last: number): Promise<void> {
  return raw(device, (tx) => {
    for (let seq = last + 1; seq <= row.lastSeq; seq += 1) tx.objectStore('facts').delete([row.id, seq]);
    if (last === 0) tx.objectStore('cases').delete(row.id);
    else tx.objectStore('cases').put({ ...row, lastSeq: last }, row.id);
  });
}

export function alter(device: Device, key: [string, number], change: (entry: Record<string, unknown>) => unknown) {
  return raw(device, (tx) => {
    const request: IDBRequest<Record<string, unknown>> = tx.objectStore('facts').get(key);
    request.onsuccess = () => {
      const next = change(request.result);
      if (next === undefined) tx.objectStore('facts').delete(key);
      else tx.objectStore('facts').put(next, key);
    };
  });
}

/** Waits until the journal in the background has everything `facts` has. */
export async function level(device: Device, wanted: ReadonlyMap<string, readonly unknown[]>): Promise<void> {
  const journal = createMemoryJournal(device.journal);
  for (let turn = 0; turn < 500; turn += 1) {
    const read = await journal.read([...wanted.keys()]);
    const have = new Map(read.ok ? read.value.map(({ facts, row }) => [row.id, facts.length]) : []);
    if ([...wanted].every(([id, facts]) => (have.get(id) ?? 0) >= facts.length)) return;
    await new Promise((resolve) => setTimeout(resolve, 2));
  }
  throw new Error('the journal did not catch up');
}
