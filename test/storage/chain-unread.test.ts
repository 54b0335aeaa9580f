/** An entry is chained to the one before it; when that cannot be read at the moment, nothing wrong is written. */
import { IDBKeyRange } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import { browserDigest } from '../../src/storage/chain.ts';
import { createIdbStore } from '../../src/storage/idb-store.ts';
import { createPairedStore } from '../../src/storage/paired-store.ts';
import { refused } from '../../src/storage/why.ts';
import { facts, row } from './samples.ts';
import { createDevice, openOn } from './two-copies.ts';

it('an entry whose predecessor cannot be read now is not written, and is written whole at the next try', async () => {
  const device = createDevice();
  await openOn(device).append(facts(1, 3), row(3));
  const { indexedDB } = device;
  const timers = { setTimeout: globalThis.setTimeout, clearTimeout: globalThis.clearTimeout };
  const database = createIdbStore({ host: { indexedDB, IDBKeyRange, ...timers } });
  const load = database.load.bind(database);
  const store = createPairedStore({ database, digest: browserDigest(), newId: () => 'id' });
  await store.listCases();
  database.load = () => Promise.resolve(refused({ name: 'TimedOut' }));
  expect(await store.append(facts(4, 4), row(4))).toMatchObject({ ok: false, reason: 'refused' });
  database.load = load;
  expect(await store.append(facts(4, 4), row(4))).toMatchObject({ ok: true });
  expect(await openOn(device).load('case-a')).toMatchObject({ ok: true, facts: facts(1, 4) });
});
