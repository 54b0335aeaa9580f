import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import { createIdbStore } from '../../src/storage/idb-store.ts';
import { createSettings } from '../../src/storage/settings.ts';
import { facts, row } from './samples.ts';

const timers = { setTimeout: globalThis.setTimeout, clearTimeout: globalThis.clearTimeout };

it('keeps preferences beside the facts, in the same database', async () => {
  const host = { indexedDB: new IDBFactory(), IDBKeyRange, ...timers };
  await createIdbStore({ host }).append(facts(1, 1), row(1));
  const settings = createSettings({ host });
  expect(await settings.read('practice')).toEqual({ ok: true, value: undefined });
  expect(await settings.write('practice', { restSpaceTarget: 300 })).toEqual({ ok: true });
  settings.close();
  expect(await createSettings({ host }).read('practice')).toEqual({ ok: true, value: { restSpaceTarget: 300 } });
  expect(await createIdbStore({ host }).load('case-a')).toMatchObject({ ok: true, facts: facts(1, 1) });
});

it('refuses what cannot be stored, and keeps the old value', async () => {
  const settings = createSettings({ host: { indexedDB: new IDBFactory(), IDBKeyRange, ...timers } });
  await settings.write('practice', 1);
  expect(await settings.write('practice', () => 2)).toMatchObject({ ok: false, reason: 'refused' });
  expect(await settings.read('practice')).toEqual({ ok: true, value: 1 });
});

it('says when there is no storage', async () => {
  const settings = createSettings({ host: { ...timers } });
  expect(await settings.read('practice')).toMatchObject({ ok: false, reason: 'refused' });
  expect(await settings.write('practice', 1)).toMatchObject({ ok: false, reason: 'refused' });
});
