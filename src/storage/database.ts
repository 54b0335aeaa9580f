/**
 * One connection to the database, opened when first used and opened anew when the browser has cut it. Every write is
 * asked for with `durability: 'strict'`: the default acknowledges before the data are on disk, and a power cut then takes
 * up to half a minute of acknowledged work.
 */
import type { StorageHost } from './types.ts';
import { isFinal, named } from './why.ts';

export type StoreName = 'facts' | 'cases' | 'settings';
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown };

const STORES: readonly StoreName[] = ['facts', 'cases', 'settings'];
const VERSION = 1;
const OPEN_MS = 5000;
const WRITE_MS = 10_000;

/** Settles as the transaction does. An aborted one carries the error of the request that broke it. */
function finished(tx: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    tx.oncomplete = () => resolve();
    tx.onabort = () => reject(tx.error ?? named('Unanswered'));
  });
}

async function inTransaction<T>(tx: IDBTransaction, work: (tx: IDBTransaction) => T | Promise<T>): Promise<T> {
  const end = finished(tx);
  end.catch(() => undefined);
  try {
    const value = await work(tx);
    await end;
    return value;
  } catch (error) {
    abort(tx);
    throw tx.error ?? error;
  }
}

function abort(tx: IDBTransaction): void {
  try {
    tx.abort();
  } catch {
    // already over
  }
}

export class Database {
  readonly #host: StorageHost;
  readonly #name: string;
  #opened: Promise<IDBDatabase> | undefined;

  constructor(host: StorageHost, name: string) {
    this.#host = host;
    this.#name = name;
  }

  /** Runs `work` in one transaction. A connection that turns out dead is dropped, opened anew, and tried once more. */
  async use<T>(
    mode: 'readonly' | 'readwrite',
    stores: readonly StoreName[],
    work: (tx: IDBTransaction) => T | Promise<T>,
  ): Promise<Outcome<T>> {
    const attempt = async (): Promise<T> => {
      const db = await this.#connection();
      return this.#within(inTransaction(db.transaction([...stores], mode, { durability: 'strict' }), work));
    };
    try {
      return { ok: true, value: await attempt() };
    } catch (error) {
      if (isFinal(error)) return { ok: false, error };
      this.close();
    }
    try {
      return { ok: true, value: await attempt() };
    } catch (error) {
      return { ok: false, error };
    }
  }

  close(): void {
    const opened = this.#opened;
    this.#opened = undefined;
    opened?.then(
      (db) => db.close(),
      () => undefined,
    );
  }

  #connection(): Promise<IDBDatabase> {
    if (this.#opened) return this.#opened;
    const opened = this.#open();
    this.#opened = opened;
    const forget = (): void => {
      if (this.#opened === opened) this.#opened = undefined;
    };
    opened.then((db) => {
      db.onclose = forget;
      db.onversionchange = () => {
        forget();
        db.close();
      };
    }, forget);
    return opened;
  }

  #open(): Promise<IDBDatabase> {
    return new Promise((resolve, reject) => {
      const factory = this.#host.indexedDB;
      if (!factory) return reject(named('NoIndexedDb'));
      const request = factory.open(this.#name, VERSION);
      let waiting = true;
      const giveUp = (error: unknown): void => {
        waiting = false;
        this.#host.clearTimeout(timer);
        reject(error);
      };
      const timer = this.#host.setTimeout(() => giveUp(named('TimedOut')), OPEN_MS);
      request.onupgradeneeded = () => {
        for (const store of STORES) request.result.createObjectStore(store);
      };
      request.onblocked = () => giveUp(named('Blocked'));
      request.onerror = () => giveUp(request.error ?? named('TimedOut'));
      request.onsuccess = () => {
        this.#host.clearTimeout(timer);
        if (waiting) resolve(request.result);
        else request.result.close();
      };
    });
  }

  /** Browsers are known to leave requests unanswered after a sleep. */
  #within<T>(promise: Promise<T>): Promise<T> {
    return new Promise((resolve, reject) => {
      const timer = this.#host.setTimeout(() => reject(named('Unanswered')), WRITE_MS);
      promise.then(resolve, reject).finally(() => this.#host.clearTimeout(timer));
    });
  }
}
