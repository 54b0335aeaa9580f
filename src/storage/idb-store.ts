import { promisifyRequest } from 'idb-keyval';
import type { Fact } from '../domain/case/facts.ts';
import { checkBatch, isCaseRow, sameFacts } from './batch.ts';
import { Database } from './database.ts';
import { browserHost } from './host.ts';
import { sift } from './sift.ts';
import type { AppendResult, CaseRow, Failed, ListResult, LoadResult, RepairableStore, StorageHost } from './types.ts';
import { failure, named, nameOf, refused } from './why.ts';

export const DATABASE_NAME = 'rimwise';
const ID_KEY = 'dbId';
const KEYRING_KEY = 'keyring';

class IdbStore implements RepairableStore {
  readonly #host: StorageHost;
  readonly #database: Database;

  constructor(host: StorageHost, name: string) {
    this.#host = host;
    this.#database = new Database(host, name);
  }

  async append(facts: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    const wrong = checkBatch(facts, row);
    if (wrong) return wrong;
    const written = await this.#database.use('readwrite', ['facts', 'cases'], async (tx) => {
      const store = tx.objectStore('facts');
      // Asked for beside the writes, in one go with them: a database that was deleted under this window is noticed.
      const before = promisifyRequest(tx.objectStore('cases').getKey(row.id));
      before.catch(() => undefined);
      for (const fact of facts) store.add(fact, [fact.caseId, fact.seq]);
      tx.objectStore('cases').put(row, row.id);
      if (facts[0]?.seq !== 1 && (await before) === undefined) throw named('Gone');
    });
    if (written.ok) return { ok: true };
    if (nameOf(written.error) === 'ConstraintError' && (await this.#isThere(facts))) return { ok: true };
    return failure(written.error);
  }

  async load(caseId: string): Promise<LoadResult> {
    const read = await this.#database.use('readonly', ['facts', 'cases'], (tx) => {
      const facts: IDBRequest<unknown[]> = tx.objectStore('facts').getAll(this.#range(caseId, 0, Infinity));
      const row: IDBRequest<unknown> = tx.objectStore('cases').get(caseId);
      return Promise.all([promisifyRequest(facts), promisifyRequest(row)]);
    });
    if (!read.ok) return refused(read.error);
    const [facts, row] = read.value;
    return sift(caseId, facts, isCaseRow(row) ? row : undefined);
  }

  async listCases(): Promise<ListResult> {
    const read = await this.#database.use('readonly', ['cases'], (tx) => {
      const rows: IDBRequest<unknown[]> = tx.objectStore('cases').getAll();
      return promisifyRequest(rows);
    });
    if (!read.ok) return refused(read.error);
    const rows = read.value.filter(isCaseRow).sort((a, b) => b.lastAt - a.lastAt);
    return { ok: true, rows, broken: read.value.length - rows.length };
  }

  async restore(entries: readonly unknown[], row: CaseRow): Promise<AppendResult> {
    const written = await this.#database.use('readwrite', ['facts', 'cases'], async (tx) => {
      const store = tx.objectStore('facts');
      const first = row.lastSeq - entries.length + 1;
      for (const [index, entry] of entries.entries()) store.put(entry, [row.id, first + index]);
      const there: unknown = await promisifyRequest(tx.objectStore('cases').get(row.id));
      if (!isCaseRow(there) || there.lastSeq <= row.lastSeq) tx.objectStore('cases').put(row, row.id);
    });
    return written.ok ? { ok: true } : failure(written.error);
  }

  async identity(proposed: string): Promise<{ dbId: string; fresh: boolean } | undefined> {
    const read = await this.#database.use('readwrite', ['settings'], async (tx) => {
      const store = tx.objectStore('settings');
      const there: unknown = await promisifyRequest(store.get(ID_KEY));
      if (typeof there === 'string') return { dbId: there, fresh: false };
      store.put(proposed, ID_KEY);
      return { dbId: proposed, fresh: true };
    });
    return read.ok ? read.value : undefined;
  }

  async keyring(): Promise<{ readonly ok: true; readonly value: unknown } | Failed<'refused'>> {
    const read = await this.#database.use('readonly', ['settings'], (tx) => {
      const found: IDBRequest<unknown> = tx.objectStore('settings').get(KEYRING_KEY);
      return promisifyRequest(found);
    });
    return read.ok ? { ok: true, value: read.value } : refused(read.error);
  }

  async keepKeyring(keyring: unknown): Promise<AppendResult> {
    const written = await this.#database.use('readwrite', ['settings'], (tx) => {
      tx.objectStore('settings').put(keyring, KEYRING_KEY);
    });
    return written.ok ? { ok: true } : failure(written.error);
  }

  close(): void {
    this.#database.close();
  }

  /** A write that got no answer may have succeeded all the same; the second try then finds its own facts. */
  async #isThere(facts: readonly Fact[]): Promise<boolean> {
    const first = facts[0];
    const last = facts[facts.length - 1];
    if (!first || !last) return false;
    const read = await this.#database.use('readonly', ['facts'], (tx) => {
      const range = this.#range(first.caseId, first.seq, last.seq);
      const stored: IDBRequest<unknown[]> = tx.objectStore('facts').getAll(range);
      return promisifyRequest(stored);
    });
    return read.ok && sameFacts(read.value, facts);
  }

  #range(caseId: string, first: number, last: number): IDBKeyRange {
    return (this.#host.IDBKeyRange ?? IDBKeyRange).bound([caseId, first], [caseId, last]);
  }
}

/** Facts in IndexedDB, one key `[caseId, seq]` each, written with `add`: a number can be taken only once. */
export function createIdbStore(options: { host?: StorageHost; name?: string } = {}): RepairableStore {
  return new IdbStore(options.host ?? browserHost(), options.name ?? DATABASE_NAME);
}
