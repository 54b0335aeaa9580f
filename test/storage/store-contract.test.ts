import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/domain/case/facts.ts';
import { createMemoryDisk, createMemoryStore } from '../../src/storage/fake.ts';
import { createIdbStore } from '../../src/storage/idb-store.ts';
import type { FactStore } from '../../src/storage/types.ts';
import { openUnlocked, turnedOn, type Page } from './locked-device.ts';
import { fact, facts, note, row } from './samples.ts';
import { createDevice, openOn } from './two-copies.ts';

const timers = { setTimeout: globalThis.setTimeout, clearTimeout: globalThis.clearTimeout };

/** A page that is asked at once, while its passphrase is still being given. */
function onceOpen(page: Promise<Page>): FactStore {
  return {
    append: async (batch, last) => (await page).store.append(batch, last),
    load: async (caseId) => (await page).store.load(caseId),
    listCases: async () => (await page).store.listCases(),
    close: () => void page.then(({ store }) => store.close()),
  };
}

/** Each kind gives a maker of windows that share one disk. */
const KINDS: Record<string, () => () => FactStore> = {
  'in IndexedDB': () => {
    const indexedDB = new IDBFactory();
    return () => createIdbStore({ host: { indexedDB, IDBKeyRange, ...timers } });
  },
  'in two copies': () => {
    const device = createDevice();
    return () => openOn(device);
  },
  'in two copies under a passphrase': () => {
    const device = createDevice();
    const first = turnedOn(device);
    return () => onceOpen(first.then(() => openUnlocked(device)));
  },
  'in memory': () => {
    const disk = createMemoryDisk();
    return () => createMemoryStore(disk);
  },
};

describe.each(Object.entries(KINDS))('facts %s', (_name, kind) => {
  it('come back in order, after the page is opened anew, and other cases stay apart', async () => {
    const open = kind();
    const store = open();
    for (let seq = 1; seq <= 120; seq += 1) await store.append([note(seq, `remark ${seq}`)], row(seq));
    await store.append(facts(1, 3, 'case-b'), row(3, 'case-b'));
    store.close();
    const loaded = await open().load('case-a');
    expect(loaded).toEqual({ ok: true, facts: facts(1, 120), row: row(120), unsaved: 0 });
    expect(await open().load('case-b')).toMatchObject({ ok: true, facts: facts(1, 3, 'case-b') });
  });

  it('keep text exactly, whatever it is', async () => {
    const store = kind()();
    const odd = note(1, 'zweiundsechzig Komma fünf \u0000 \ud83e\uddb7 <b>62</b>');
    await store.append([odd], row(1));
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: [odd] });
  });

  it('take a number only once: the second writer is told, and none of its batch is written', async () => {
    const open = kind();
    const [one, two] = [open(), open()];
    await one.append(facts(1, 2), row(2));
    const late = [note(2, 'other window'), note(3, 'other window'), note(4, 'other window')];
    expect(await two.append(late, row(4))).toMatchObject({ ok: false, reason: 'anotherWriter' });
    expect(await two.load('case-a')).toMatchObject({ ok: true, facts: facts(1, 2), row: row(2) });
  });

  it('lose none and double none when two windows contend for every number', async () => {
    const open = kind();
    const contend = async (store: FactStore, who: string): Promise<number> => {
      let written = 0;
      let seq = 1;
      while (written < 25) {
        const result = await store.append([note(seq, `${who} ${written}`)], row(seq));
        if (result.ok) written += 1;
        else expect(result.reason).toBe('anotherWriter');
        seq += 1;
      }
      return written;
    };
    await Promise.all([contend(open(), 'left'), contend(open(), 'right')]);
    const loaded = await open().load('case-a');
    const said = loaded.ok ? (loaded.facts as Fact[]).map(({ body }) => (body.kind === 'note' ? body.text : '')) : [];
    const wanted = ['left', 'right'].flatMap((who) => Array.from({ length: 25 }, (_, index) => `${who} ${index}`));
    expect([...said].sort()).toEqual([...wanted].sort());
  });

  it('count the same batch written twice once', async () => {
    const store = kind()();
    await store.append(facts(1, 3), row(3));
    expect(await store.append(facts(1, 3), row(3))).toEqual({ ok: true });
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: facts(1, 3) });
  });

  it.each([
    ['no facts', [], row(0)],
    ['a hole inside the batch', [fact(1), fact(3)], row(3)],
    ['a row that names another last fact', [fact(1)], row(2)],
    ['a row of another case', [fact(1)], row(1, 'case-b')],
    ['a number that is none', [fact(1, { kind: 'undone', act: NaN, what: '' })], row(1)],
    ['a value left undefined', [fact(1, { kind: 'note', step: 's', text: undefined as never, source: 'app' })], row(1)],
    ['a function', [fact(1), fact(2, { kind: 'note', step: 's', text: (() => '') as never, source: 'app' })], row(2)],
  ])('refuse %s before anything is written', async (_what, batch, caseRow) => {
    const store = kind()();
    expect(await store.append(batch, caseRow)).toMatchObject({ ok: false, reason: 'malformed' });
    expect(await store.load('case-a')).toMatchObject({ ok: false, reason: 'unknownCase' });
  });

  it('are listed by case, the one used last first, without reading them', async () => {
    const store = kind()();
    await store.append(facts(1, 2), row(2));
    await store.append(facts(1, 5, 'case-b'), row(5, 'case-b'));
    expect(await store.listCases()).toEqual({ ok: true, rows: [row(5, 'case-b'), row(2)], broken: 0 });
  });

  it('that are missing in the middle are named, with the good part before and the rest apart', async () => {
    const store = kind()();
    await store.append(facts(1, 2), row(2));
    await store.append(facts(4, 5), row(5));
    expect(await store.load('case-a')).toMatchObject({
      ok: false,
      reason: 'gap',
      missing: 3,
      facts: facts(1, 2),
      after: facts(4, 5),
      row: row(5),
    });
  });
});
