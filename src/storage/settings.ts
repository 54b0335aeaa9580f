import { get, type UseStore } from 'idb-keyval';
import { DATABASE_NAME } from './idb-store.ts';
import { Database } from './database.ts';
import { browserHost } from './host.ts';
import type { Failed, StorageHost } from './types.ts';
import { failure, refused } from './why.ts';

export type ReadResult = { readonly ok: true; readonly value: unknown } | Failed<'refused'>;
export type WriteResult = { readonly ok: true } | Failed<'full' | 'refused'>;

/** Preferences by name. `read` gives undefined for one never written; whoever reads it checks its shape. */
export interface Settings {
  read(name: string): Promise<ReadResult>;
  write(name: string, value: unknown): Promise<WriteResult>;
  close(): void;
}

export function createSettings(options: { host?: StorageHost; name?: string } = {}): Settings {
  const database = new Database(options.host ?? browserHost(), options.name ?? DATABASE_NAME);
  const inside =
    (tx: IDBTransaction): UseStore =>
    async (_mode, work) =>
      work(tx.objectStore('settings'));
  return {
    async read(name) {
      const read = await database.use('readonly', ['settings'], (tx) => get<unknown>(name, inside(tx)));
      return read.ok ? { ok: true, value: read.value } : refused(read.error);
    },
    async write(name, value) {
      const written = await database.use('readwrite', ['settings'], (tx) => {
        tx.objectStore('settings').put(value, name);
      });
      if (written.ok) return { ok: true };
      const failed = failure(written.error);
      return failed.reason === 'full' ? { ...failed, reason: 'full' } : refused(written.error);
    },
    close: () => database.close(),
  };
}
