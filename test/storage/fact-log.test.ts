import { describe, expect, it } from 'vitest';
import { createFactLog } from '../../src/storage/fact-log.ts';
import { createMemoryDisk, createMemoryStore } from '../../src/storage/fake.ts';
import type { FactLog, SaveStatus } from '../../src/storage/types.ts';
import { facts, manualTimers, note, row, settle } from './samples.ts';

function setUp() {
  const timers = manualTimers();
  const store = createMemoryStore();
  const log = createFactLog({ storage: store, host: timers });
  const seen: SaveStatus['state'][] = [];
  log.subscribe((status) => seen.push(status.state));
  return { timers, store, log, seen };
}

async function append(log: FactLog, from: number, to = from): Promise<unknown> {
  return log.append(facts(from, to), row(to));
}

describe('the log on a disk that works', () => {
  it('says keeping, then kept', async () => {
    const { log, seen, timers } = setUp();
    expect(log.status()).toEqual({ state: 'kept' });
    expect(await append(log, 1, 2)).toEqual({ ok: true });
    expect(seen).toEqual(['keeping', 'kept']);
    expect(timers.pending()).toBe(0);
  });

  it('writes in the order it was told, without being awaited', async () => {
    const { log, store } = setUp();
    const all = [append(log, 1), append(log, 2), append(log, 3, 5)];
    expect(await Promise.all(all)).toEqual([{ ok: true }, { ok: true }, { ok: true }]);
    expect(store.written).toEqual([facts(1, 1), facts(2, 2), facts(3, 5)]);
  });

  it('tells of a malformed batch at once and keeps none of it', async () => {
    const { log } = setUp();
    expect(await log.append(facts(1, 2), row(9))).toMatchObject({ ok: false, reason: 'malformed' });
    expect(log.status()).toEqual({ state: 'kept' });
  });
});

describe('a disk that refuses or is full', () => {
  it.each(['full', 'refused'] as const)(
    '%s: the facts stay in memory and are counted, with a sentence',
    async (trouble) => {
      const { log, store } = setUp();
      store.trouble = trouble;
      expect(await append(log, 1, 3)).toMatchObject({ ok: false, reason: 'memory', cause: trouble });
      expect(log.status()).toMatchObject({
        state: 'memory',
        cause: trouble,
        unsaved: 3,
        why: expect.stringMatching(/\.$/),
      });
      expect(log.unsaved('case-a')).toEqual(facts(1, 3));
    },
  );

  it('gets everything, in order, as soon as it works again', async () => {
    const { log, store, timers } = setUp();
    store.trouble = 'full';
    await append(log, 1);
    await append(log, 2, 3);
    store.trouble = 'none';
    await timers.pass(2000);
    expect(log.status()).toEqual({ state: 'kept' });
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: facts(1, 3) });
  });

  it('is asked again after 2, 5, 10 and then every 30 seconds', async () => {
    const { log, store, timers } = setUp();
    store.trouble = 'refused';
    await append(log, 1);
    let asked = 0;
    const real = store.append.bind(store);
    store.append = (...batch) => {
      asked += 1;
      return real(...batch);
    };
    const counts: number[] = [];
    for (const wait of [1999, 1, 5000, 10_000, 30_000, 30_000]) {
      await timers.pass(wait);
      counts.push(asked);
    }
    expect(counts).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('is asked again soon when it fails anew after having worked', async () => {
    const { log, store, timers } = setUp();
    store.trouble = 'refused';
    await append(log, 1);
    await timers.pass(20_000);
    store.trouble = 'none';
    await log.flush();
    store.trouble = 'refused';
    await append(log, 2);
    store.trouble = 'none';
    await timers.pass(2000);
    expect(log.status()).toEqual({ state: 'kept' });
  });

  it('is asked again by flush', async () => {
    const { log, store } = setUp();
    store.trouble = 'refused';
    await append(log, 1);
    expect(await log.flush()).toMatchObject({ state: 'memory', unsaved: 1 });
    store.trouble = 'none';
    expect(await log.flush()).toEqual({ state: 'kept' });
  });

  it('does not stop the case from being opened and listed in this window', async () => {
    const { log, store } = setUp();
    store.trouble = 'refused';
    await append(log, 1, 2);
    await append(log, 3);
    expect(await log.open('case-a')).toEqual({ ok: true, facts: facts(1, 3), row: row(3), unsaved: 3 });
    expect(await log.cases()).toEqual({ ok: true, rows: [row(3)], broken: 0 });
    expect(await log.open('case-b')).toMatchObject({ ok: false, reason: 'refused' });
  });

  it('in the middle of a visit: what was kept and what was not are one record', async () => {
    const { log, store } = setUp();
    await append(log, 1, 2);
    store.trouble = 'full';
    await append(log, 3);
    expect(await log.open('case-a')).toMatchObject({ ok: true, facts: facts(1, 3), unsaved: 1 });
    store.trouble = 'refused';
    expect(await log.open('case-a')).toMatchObject({ ok: true, facts: facts(1, 3), unsaved: 1 });
  });
});

describe('a disk that does not answer', () => {
  it('lets the visit go on after four seconds, and says kept when the answer comes', async () => {
    const { log, store, timers, seen } = setUp();
    store.trouble = 'slow';
    const first = append(log, 1);
    await timers.pass(3999);
    expect(log.status()).toEqual({ state: 'keeping', unsaved: 1 });
    await timers.pass(1);
    expect(await first).toMatchObject({ ok: false, reason: 'memory', cause: 'slow' });
    expect(log.status()).toMatchObject({ state: 'memory', cause: 'slow', unsaved: 1 });
    void append(log, 2);
    store.letGo();
    await settle();
    expect(log.status()).toEqual({ state: 'kept' });
    expect(seen.at(-1)).toBe('kept');
    expect(await store.load('case-a')).toMatchObject({ ok: true, facts: facts(1, 2) });
  });
});

describe('a second window', () => {
  async function twoWindows() {
    const disk = createMemoryDisk();
    const [left, right] = [createMemoryStore(disk), createMemoryStore(disk)];
    const log = createFactLog({ storage: left, host: manualTimers() });
    await append(log, 1, 2);
    await log.open('case-a');
    await right.append([note(3, 'from the other window')], row(3));
    return { log, left, disk };
  }

  it('that wrote first is noticed: nothing is overwritten, ours is held apart and the reason named', async () => {
    const { log, left } = await twoWindows();
    expect(await log.append([note(3, 'ours')], row(3))).toMatchObject({ ok: false, cause: 'anotherWriter' });
    expect(await log.append([note(4, 'ours too')], row(4))).toMatchObject({ ok: false, cause: 'anotherWriter' });
    expect(log.status()).toMatchObject({ state: 'memory', cause: 'anotherWriter', unsaved: 2 });
    expect(await left.load('case-a')).toMatchObject({
      ok: true,
      facts: [...facts(1, 2), note(3, 'from the other window')],
    });
    expect(await log.open('case-a')).toMatchObject({ ok: true, unsaved: 1 });
  });

  it('does not hold up the other cases', async () => {
    const { log } = await twoWindows();
    await log.append([note(3, 'ours')], row(3));
    expect(await log.append(facts(1, 1, 'case-b'), row(1, 'case-b'))).toEqual({ ok: true });
  });

  it('lost nothing of ours: taken back, numbered anew, kept', async () => {
    const { log } = await twoWindows();
    await log.append([note(3, 'ours')], row(3));
    const back = log.takeBack('case-a');
    expect(back).toEqual([note(3, 'ours')]);
    expect(log.status()).toEqual({ state: 'kept' });
    expect(await log.append([{ ...note(4, 'ours') }], row(4))).toEqual({ ok: true });
    expect(await log.open('case-a')).toMatchObject({
      ok: true,
      facts: [...facts(1, 2), note(3, 'from the other window'), note(4, 'ours')],
      unsaved: 0,
    });
  });
});

describe('the file', () => {
  const read = (text: string) => JSON.parse(text) as { facts: unknown[]; apart: unknown[]; complete: boolean };

  it('holds every fact, kept or not', async () => {
    const { log, store } = setUp();
    await append(log, 1, 2);
    store.trouble = 'full';
    await append(log, 3);
    const file = await log.exportFile('case-a');
    expect(file).toMatchObject({ name: 'case-case-a.json', facts: 3, unsaved: 1, complete: true, why: '' });
    expect(read(file.text)).toMatchObject({
      format: 'rimwise-facts',
      v: 1,
      facts: facts(1, 3),
      apart: [],
      complete: true,
    });
  });

  it('can be saved when the disk died in the middle of the visit', async () => {
    const { log, store } = setUp();
    await append(log, 1, 2);
    store.trouble = 'refused';
    await append(log, 3);
    const file = await log.exportFile('case-a');
    expect(file).toMatchObject({ facts: 3, unsaved: 1, complete: true });
    expect(read(file.text).facts).toEqual(facts(1, 3));
  });

  it('says when older facts could not be read', async () => {
    const { log, store } = setUp();
    store.trouble = 'refused';
    await append(log, 7, 8);
    const file = await log.exportFile('case-a');
    expect(file).toMatchObject({ facts: 2, complete: false, why: expect.stringContaining('storage') });
    expect(read(file.text).apart).toEqual(facts(7, 8));
  });

  it('keeps apart what another window made impossible to file', async () => {
    const { log, store } = setUp();
    await append(log, 1, 2);
    store.disk.facts.get('case-a')?.push(note(3, 'theirs'));
    await log.append([note(3, 'ours')], row(3));
    expect(read((await log.exportFile('case-a')).text)).toMatchObject({
      facts: [...facts(1, 2), note(3, 'theirs')],
      apart: [note(3, 'ours')],
    });
  });

  it('of a damaged log holds the good part and, apart, the rest', async () => {
    const { log, store } = setUp();
    await store.append(facts(1, 2), row(2));
    await store.append(facts(4, 5), row(5));
    const file = await log.exportFile('case-a');
    expect(file).toMatchObject({ facts: 4, complete: false, why: expect.stringContaining('Entry 3') });
    expect(read(file.text)).toMatchObject({ facts: facts(1, 2), apart: facts(4, 5), complete: false });
  });
});
