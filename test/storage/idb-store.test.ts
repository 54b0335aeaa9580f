import { IDBDatabase as FakeDatabase, IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Fact } from '../../src/domain/case/facts.ts';
import { createIdbStore, DATABASE_NAME } from '../../src/storage/idb-store.ts';
import type { StorageHost } from '../../src/storage/types.ts';
import { facts, manualTimers, note, row, settle } from './samples.ts';

const timers = { setTimeout: globalThis.setTimeout, clearTimeout: globalThis.clearTimeout };

function host(indexedDB: IDBFactory = new IDBFactory()): StorageHost & { indexedDB: IDBFactory } {
  return { indexedDB, IDBKeyRange, ...timers };
}

function domException(name: string): Error {
  return Object.assign(new Error(name), { name });
}

/** Opens the raw database, as a debugging person would. */
function raw(indexedDB: IDBFactory): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE_NAME);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function rawDelete(indexedDB: IDBFactory, key: [string, number]): Promise<void> {
  const db = await raw(indexedDB);
  const tx = db.transaction('facts', 'readwrite');
  tx.objectStore('facts').delete(key);
  await new Promise<void>((resolve) => {
    tx.oncomplete = () => resolve();
  });
  db.close();
}

afterEach(() => vi.restoreAllMocks());

describe('durability', () => {
  it('asks for strict writes over both stores in one transaction', async () => {
    const store = createIdbStore({ host: host() });
    await store.load('case-a');
    const transaction = vi.spyOn(FakeDatabase.prototype, 'transaction');
    await store.append(facts(1, 3), row(3));
    expect(transaction.mock.calls).toEqual([[['facts', 'cases'], 'readwrite', { durability: 'strict' }]]);
  });

  it('keeps one key per fact, the case and the number', async () => {
    const at = host();
    await createIdbStore({ host: at }).append(facts(1, 2), row(2));
    const db = await raw(at.indexedDB);
    const keys = await new Promise((resolve) => {
      const request = db.transaction('facts').objectStore('facts').getAllKeys();
      request.onsuccess = () => resolve(request.result);
    });
    expect(keys).toEqual([
      ['case-a', 1],
      ['case-a', 2],
    ]);
  });
});

describe('a log that has lost something', () => {
  it('is named when its end is gone', async () => {
    const at = host();
    const store = createIdbStore({ host: at });
    await store.append(facts(1, 4), row(4));
    await rawDelete(at.indexedDB, ['case-a', 4]);
    expect(await store.load('case-a')).toMatchObject({
      ok: false,
      reason: 'gap',
      missing: 4,
      facts: facts(1, 3),
      after: [],
    });
  });

  it('is named when its beginning is gone', async () => {
    const at = host();
    const store = createIdbStore({ host: at });
    await store.append(facts(1, 4), row(4));
    await rawDelete(at.indexedDB, ['case-a', 1]);
    expect(await store.load('case-a')).toMatchObject({
      ok: false,
      reason: 'gap',
      missing: 1,
      facts: [],
      after: facts(2, 4),
    });
  });
});

describe('a browser that will not store', () => {
  it('has no IndexedDB: refused with a sentence, reading and writing', async () => {
    const store = createIdbStore({ host: { ...timers } });
    for (const result of [
      await store.append(facts(1, 1), row(1)),
      await store.load('case-a'),
      await store.listCases(),
    ]) {
      expect(result).toMatchObject({ ok: false, reason: 'refused', why: expect.stringContaining('no storage') });
    }
  });

  it.each(['SecurityError', 'UnknownError', 'InvalidStateError'])('throws %s on opening: refused', async (name) => {
    const at = host();
    vi.spyOn(at.indexedDB, 'open').mockImplementation(() => {
      throw domException(name);
    });
    expect(await createIdbStore({ host: at }).append(facts(1, 1), row(1))).toMatchObject({
      ok: false,
      reason: 'refused',
    });
  });

  it('is used by a newer version of the app: refused, and says so', async () => {
    const at = host();
    await new Promise<void>((resolve) => {
      const request = at.indexedDB.open(DATABASE_NAME, 99);
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
    });
    const result = await createIdbStore({ host: at }).load('case-a');
    expect(result).toMatchObject({ ok: false, reason: 'refused', why: expect.stringContaining('newer version') });
  });

  it('never answers: refused after a while, and a late answer is closed again', async () => {
    const clock = manualTimers();
    const request = { onsuccess: () => undefined, result: { close: vi.fn() } };
    const at = host();
    vi.spyOn(at.indexedDB, 'open').mockReturnValue(request as unknown as IDBOpenDBRequest);
    const result = createIdbStore({ host: { ...at, ...clock } }).append(facts(1, 1), row(1));
    await clock.pass(5000);
    expect(await result).toMatchObject({
      ok: false,
      reason: 'refused',
      why: expect.stringContaining('does not answer'),
    });
    request.onsuccess();
    expect(request.result.close).toHaveBeenCalledOnce();
  });

  it('is full: named, nothing of the batch is there, and what was there stays', async () => {
    const at = host();
    const store = createIdbStore({ host: at });
    await store.append(facts(1, 2), row(2));
    const prototype = Object.getPrototypeOf(await factStore(at.indexedDB)) as IDBObjectStore;
    const real = prototype.add;
    vi.spyOn(prototype, 'add').mockImplementation(function (this: IDBObjectStore, value, key) {
      if ((value as Fact).seq === 4) throw domException('QuotaExceededError');
      return real.call(this, value, key);
    });
    expect(await store.append(facts(3, 4), row(4))).toMatchObject({ ok: false, reason: 'full' });
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: facts(1, 2), row: row(2) });
  });
});

async function factStore(indexedDB: IDBFactory): Promise<IDBObjectStore> {
  const db = await raw(indexedDB);
  const store = db.transaction('facts').objectStore('facts');
  db.close();
  return store;
}

describe('a connection that the browser has cut', () => {
  it('is opened anew and the write tried once more', async () => {
    const at = host();
    const store = createIdbStore({ host: at });
    await store.append(facts(1, 1), row(1));
    const open = vi.spyOn(at.indexedDB, 'open');
    vi.spyOn(FakeDatabase.prototype, 'transaction').mockImplementationOnce(() => {
      throw domException('InvalidStateError');
    });
    expect(await store.append(facts(2, 2), row(2))).toEqual({ ok: true });
    expect(open).toHaveBeenCalledOnce();
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: facts(1, 2) });
  });

  it('twice in a row is refused, not tried for ever', async () => {
    const store = createIdbStore({ host: host() });
    await store.append(facts(1, 1), row(1));
    const transaction = vi.spyOn(FakeDatabase.prototype, 'transaction').mockImplementation(() => {
      throw domException('InvalidStateError');
    });
    expect(await store.append(facts(2, 2), row(2))).toMatchObject({ ok: false, reason: 'refused' });
    expect(transaction).toHaveBeenCalledTimes(2);
  });

  it('after the data were written, but before the answer: the facts are found, not doubled, not lost', async () => {
    const at = host();
    const store = createIdbStore({ host: at });
    const clock = manualTimers();
    const quiet = createIdbStore({ host: { ...at, ...clock } });
    await quiet.load('case-a');
    const transaction = FakeDatabase.prototype.transaction;
    vi.spyOn(FakeDatabase.prototype, 'transaction').mockImplementationOnce(function (this: IDBDatabase, ...args) {
      const tx = transaction.apply(this as never, args as never);
      Object.defineProperty(tx, 'oncomplete', { set() {} });
      return tx;
    });
    const result = quiet.append([note(1, 'written, unanswered')], row(1));
    await new Promise((resolve) => setTimeout(resolve, 30));
    await clock.pass(10_000);
    await settle();
    expect(await result).toEqual({ ok: true });
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: [note(1, 'written, unanswered')] });
  });

  it('because a newer version wants to upgrade: lets go of it', async () => {
    const at = host();
    const store = createIdbStore({ host: at });
    await store.append(facts(1, 1), row(1));
    const upgraded = new Promise<string>((resolve) => {
      const request = at.indexedDB.open(DATABASE_NAME, 2);
      request.onblocked = () => resolve('blocked');
      request.onsuccess = () => resolve('upgraded');
    });
    expect(await upgraded).toBe('upgraded');
  });
});
