import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/domain/case/facts.ts';
import type { FactStore } from '../../src/storage/types.ts';
import { facts, note, row } from './samples.ts';
import { alter, createDevice, level, openOn, raw, shorten, wipeDatabase, type Device } from './two-copies.ts';

const CASES = ['case-a', 'case-b', 'case-c'] as const;
type Kept = Map<string, Fact[]>;

async function write(store: FactStore, kept: Kept, [caseId, count]: readonly [string, number]): Promise<void> {
  const known = kept.get(caseId) ?? [];
  const more = Array.from({ length: count }, (_, i) => note(known.length + i + 1, `${caseId} ${Math.sin(i)}`, caseId));
  const result = await store.append(more, row(known.length + count, caseId));
  if (result.ok) kept.set(caseId, [...known, ...more]);
}

async function expectAll(store: FactStore, kept: Kept): Promise<void> {
  const listed = await store.listCases();
  expect(listed.ok ? Object.fromEntries(listed.rows.map(({ id, lastSeq }) => [id, lastSeq])) : listed).toEqual(
    Object.fromEntries([...kept].map(([id, all]) => [id, all.length])),
  );
  for (const [caseId, all] of kept) expect(await store.load(caseId)).toMatchObject({ ok: true, facts: all });
}

/** What can happen to one copy. `at` is a place in it, 0…1. */
const DAMAGES = [
  'none',
  'database wiped',
  'database shortened',
  'entry deleted',
  'entry altered',
  'row deleted',
  'journal wiped',
  'journal shortened',
  'journal torn',
] as const;
type Damage = (typeof DAMAGES)[number];

async function damage(device: Device, kept: Kept, what: { damage: Damage; at: number }): Promise<void> {
  const [caseId, all] = [...kept][Math.floor(what.at * 97) % Math.max(1, kept.size)] ?? ['', []];
  const seq = 1 + Math.floor(what.at * all.length);
  const { journal } = device;
  const byte = Math.floor(what.at * journal.bytes.length);
  if (what.damage === 'database wiped') wipeDatabase(device);
  if (what.damage === 'journal wiped') journal.bytes = new Uint8Array(0);
  if (what.damage === 'journal shortened') journal.bytes = journal.bytes.slice(0, byte);
  if (what.damage === 'journal torn') journal.bytes[byte] = (journal.bytes[byte] ?? 0) ^ 0x15;
  if (all.length === 0) return;
  if (what.damage === 'database shortened') await shorten(device, row(all.length, caseId), seq - 1);
  if (what.damage === 'entry deleted') await alter(device, [caseId, seq], () => undefined);
  if (what.damage === 'entry altered')
    await alter(device, [caseId, seq], (entry) => ({ ...entry, at: Number(entry['at']) + 1 }));
  if (what.damage === 'row deleted') await raw(device, (tx) => tx.objectStore('cases').delete(caseId));
}

const writes = fc.array(fc.tuple(fc.constantFrom(...CASES), fc.integer({ min: 1, max: 4 })), {
  minLength: 1,
  maxLength: 6,
});
const life = fc.record({
  writes,
  damage: fc.constantFrom(...DAMAGES),
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
});

describe('two copies', () => {
  it('lose nothing that was acknowledged, whichever of them is wiped, shortened, torn or altered, time after time', async () => {
    let damaged = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(life, { minLength: 2, maxLength: 5 }), async (lives) => {
        const device = createDevice();
        const kept: Kept = new Map();
        for (const one of lives) {
          const store = openOn(device);
          await expectAll(store, kept);
          for (const batch of one.writes) await write(store, kept, batch);
          await level(device, kept);
          store.close();
          await damage(device, kept, one);
          if (one.damage !== 'none') damaged += 1;
        }
        await expectAll(openOn(device), kept);
      }),
      { numRuns: 120, seed: 20261125 },
    );
    expect(damaged).toBeGreaterThan(250);
  }, 120_000);

  it('say what was lost and mended', async () => {
    const device = createDevice();
    await openOn(device).append(facts(1, 7), row(7));
    wipeDatabase(device);
    const listed = await openOn(device).listCases();
    expect(listed).toMatchObject({ ok: true, recovered: expect.stringContaining('had deleted') });
    expect(listed).toMatchObject({ recovered: expect.stringContaining('1 case (7 entries) restored') });
    expect(await openOn(device).listCases()).not.toHaveProperty('recovered');
  });

  it('say how much is in neither of them', async () => {
    const device = createDevice();
    const store = openOn(device);
    await store.append(facts(1, 7), row(7));
    await store.append(facts(8, 10), row(10));
    wipeDatabase(device);
    device.journal.bytes = device.journal.bytes.slice(0, -5);
    const listed = await openOn(device).listCases();
    expect(listed).toMatchObject({ rows: [{ lastSeq: 7 }], recovered: expect.stringContaining('3 entries that this') });
  });

  it('say that everything is gone when there was no second one', async () => {
    const device = createDevice();
    await openOn(device, { journal: true }).append(facts(1, 7), row(7));
    wipeDatabase(device);
    const store = openOn(device, { journal: true });
    expect(await store.listCases()).toMatchObject({ rows: [], recovered: expect.stringContaining('7 entries') });
    expect(store.secondCopy?.()).toMatchObject({ state: 'none', why: expect.stringContaining('kept once') });
  });

  it('catch up when the journal had failed for a while, and say so meanwhile', async () => {
    const device = createDevice();
    const store = openOn(device);
    await store.append(facts(1, 2), row(2));
    device.journal.broken = true;
    expect(await store.append(facts(3, 4), row(4))).toEqual({ ok: true });
    expect(store.secondCopy?.()).toMatchObject({ state: 'failing' });
    device.journal.broken = false;
    await store.append(facts(5, 5), row(5));
    await level(device, new Map([['case-a', facts(1, 5)]]));
    expect(store.secondCopy?.()).toEqual({ state: 'kept' });
    wipeDatabase(device);
    expect(await openOn(device).load('case-a')).toMatchObject({ ok: true, facts: facts(1, 5) });
  });

  it('begin with what was stored before there were two', async () => {
    const device = createDevice();
    await openOn(device, { journal: true }).append(facts(1, 5), row(5));
    await openOn(device).listCases();
    await level(device, new Map([['case-a', facts(1, 5)]]));
    wipeDatabase(device);
    expect(await openOn(device).load('case-a')).toMatchObject({ ok: true, facts: facts(1, 5) });
  });

  it('of two windows that write in turn, a late journal entry takes nothing back', async () => {
    const device = createDevice();
    const [one, two] = [openOn(device), openOn(device)];
    await one.append(facts(1, 1), row(1));
    await two.load('case-a');
    for (let seq = 2; seq <= 9; seq += 1) {
      const store = seq % 2 === 0 ? two : one;
      await store.append(facts(seq, seq), row(seq));
    }
    wipeDatabase(device);
    expect(await openOn(device).load('case-a')).toMatchObject({ ok: true, facts: facts(1, 9) });
  });
});

describe('an entry that was changed after it was written', () => {
  it('is named, with the good ones before it, when there is no second copy', async () => {
    const device = createDevice();
    const store = openOn(device, { journal: true });
    await store.append(facts(1, 5), row(5));
    await alter(device, ['case-a', 3], (entry) => ({ ...entry, at: 1 }));
    expect(await store.load('case-a')).toMatchObject({
      ok: false,
      reason: 'gap',
      missing: 3,
      facts: facts(1, 2),
      why: expect.stringContaining('Entry 3 of this case does not fit'),
    });
  });

  it('is put right from the second copy, and that is said', async () => {
    const device = createDevice();
    const store = openOn(device);
    await store.append(facts(1, 5), row(5));
    await alter(device, ['case-a', 3], (entry) => ({ ...entry, at: 1 }));
    const loaded = await openOn(device).load('case-a');
    expect(loaded).toMatchObject({ ok: true, facts: facts(1, 5), recovered: expect.stringContaining('restored') });
    expect(await openOn(device).load('case-a')).not.toHaveProperty('recovered');
  });
});
