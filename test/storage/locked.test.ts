import { describe, expect, it } from 'vitest';
import { createSealedStore } from '../../src/storage/keys.ts';
import { readRecoveryCode } from '../../src/storage/recovery-code.ts';
import { sealedSettings } from '../../src/storage/sealed-settings.ts';
import type { RewritableStore } from '../../src/storage/types.ts';
import { CHEAP, onDisk, openLocked, openUnlocked, PASSPHRASE, turnedOn, type Page } from './locked-device.ts';
import { facts, note, row } from './samples.ts';
import { alter, createDevice, level, openOn, openPaired, wipeDatabase, type Device } from './two-copies.ts';

const WORD = 'quagglewort';
const planted = (count: number, caseId = 'case-a') =>
  facts(1, count, caseId).map((fact, i) => note(i + 1, `${WORD} ${fact.seq}`, caseId));
const coded = (lastSeq: number, id = 'case-a') => ({ ...row(lastSeq, id), code: `${WORD}-${id}` });

async function plain(device: Device): Promise<void> {
  const store = openOn(device);
  for (const id of ['case-a', 'case-b']) await store.append(planted(40, id), coded(40, id));
  store.close();
}

async function expectAll({ store }: Page, ids: readonly string[] = ['case-a', 'case-b']): Promise<void> {
  const listed = await store.listCases();
  expect(listed.ok ? Object.fromEntries(listed.rows.map(({ id, code }) => [id, code])) : listed).toEqual(
    Object.fromEntries(ids.map((id) => [id, `${WORD}-${id}`])),
  );
  for (const id of ids)
    expect(await store.load(id)).toMatchObject({ ok: true, facts: planted(40, id), row: coded(40, id) });
}

describe('a passphrase', () => {
  it('seals what was there before, in both copies: nothing of it is left, and it opens again', async () => {
    const device = createDevice();
    await plain(device);
    expect((await onDisk(device)).split(WORD).length - 1).toBe(164);
    const on = await turnedOn(device);
    expect(on.keys.unfinished()).toBe(false);
    expect(await onDisk(device)).not.toContain(WORD);
    await expectAll(on);
    await expectAll(await openUnlocked(device));
  });

  it('seals what comes after it, and both copies agree', async () => {
    const device = createDevice();
    const { store } = await turnedOn(device);
    for (const id of ['case-a', 'case-b'])
      for (const fact of planted(40, id)) expect(await store.append([fact], coded(fact.seq, id))).toEqual({ ok: true });
    await level(device, new Map([['case-a', planted(40)]]));
    expect(await onDisk(device)).not.toContain(WORD);
    wipeDatabase(device);
    await expectAll(await openUnlocked(device));
  });

  it('without it, nothing is read and nothing is written', async () => {
    const device = createDevice();
    await plain(device);
    await turnedOn(device);
    const { store, keys } = openLocked(device);
    expect(await store.listCases()).toMatchObject({ ok: false, reason: 'refused' });
    expect(await store.load('case-a')).toMatchObject({ ok: false, reason: 'refused' });
    expect(await store.append([note(41, 'x')], row(41))).toMatchObject({ ok: false, reason: 'refused' });
    expect(keys.state()).toBe('locked');
    expect(await keys.unlock({ lock: 'passphrase', secret: 'seven grey heron' })).toMatchObject({ reason: 'wrong' });
    expect(await keys.unlock({ lock: 'recovery', secret: PASSPHRASE })).toMatchObject({ reason: 'wrong' });
    expect(keys.state()).toBe('locked');
    await expectAll(await openUnlocked(device, `  ${PASSPHRASE} `));
  });

  it('let go of takes the key and all that was read out of memory', async () => {
    const device = createDevice();
    await plain(device);
    const page = await turnedOn(device);
    page.keys.lock();
    expect(page.keys.state()).toBe('locked');
    expect(await page.store.load('case-a')).toMatchObject({ ok: false, reason: 'refused' });
    expect(await page.keys.unlock({ lock: 'passphrase', secret: PASSPHRASE })).toEqual({ ok: true });
    await expectAll(page);
  });

  it('of fewer than eight letters is not taken', async () => {
    const { keys } = openLocked(createDevice());
    expect(await keys.turnOn(' seven  ')).toMatchObject({ ok: false, reason: 'weak' });
    expect(keys.state()).toBe('none');
  });

  it('is changed without an entry being written again; the old one opens nothing', async () => {
    const device = createDevice();
    await plain(device);
    const page = await turnedOn(device);
    const before = await sealedEntries(device);
    expect(await page.keys.change({ lock: 'passphrase', secret: 'not this one' }, 'nine brown wrens')).toMatchObject({
      reason: 'wrong',
    });
    expect(await page.keys.change({ lock: 'passphrase', secret: PASSPHRASE }, 'nine brown wrens')).toEqual({
      ok: true,
    });
    expect(await sealedEntries(device)).toEqual(before);
    expect((await openUnlocked(device)).keys.state()).toBe('locked');
    await expectAll(await openUnlocked(device, 'nine brown wrens'));
  });

  it('is taken away with the passphrase only; then everything lies in clear again', async () => {
    const device = createDevice();
    await plain(device);
    const page = await turnedOn(device);
    expect(await page.keys.turnOff('something else')).toMatchObject({ ok: false, reason: 'wrong' });
    expect(await page.keys.turnOff(PASSPHRASE)).toEqual({ ok: true });
    expect(await page.keys.finish()).toBe(true);
    expect(page.keys.state()).toBe('none');
    await expectAll(page);
    await expectAll(openLocked(device));
    wipeDatabase(device);
    await expectAll(openLocked(device));
  });

  it('can be set again after it was taken away', async () => {
    const device = createDevice();
    await plain(device);
    const page = await turnedOn(device);
    await page.keys.turnOff(PASSPHRASE);
    await page.keys.finish();
    await turnedOn(device, 'nine brown wrens');
    expect(await onDisk(device)).not.toContain(WORD);
    await expectAll(await openUnlocked(device, 'nine brown wrens'));
  });

  it('a window that knows of none is told by looking again', async () => {
    const device = createDevice();
    await plain(device);
    const other = openLocked(device);
    expect(await other.keys.look()).toBe('none');
    await turnedOn(device);
    expect(await other.keys.look()).toBe('locked');
    expect(await other.store.listCases()).toMatchObject({ ok: false, reason: 'refused' });
  });

  it('what a window that knew of none wrote in clear is sealed at the next unlocking', async () => {
    const device = createDevice();
    await plain(device);
    const other = openLocked(device);
    await other.store.listCases();
    await turnedOn(device);
    await other.store.append([note(1, WORD, 'case-c')], { ...row(1, 'case-c'), code: WORD });
    const next = await openUnlocked(device);
    expect(next.keys.unfinished()).toBe(true);
    expect(await next.keys.finish()).toBe(true);
    expect(await onDisk(device)).not.toContain(WORD);
    expect(await next.store.load('case-c')).toMatchObject({ ok: true, facts: [note(1, WORD, 'case-c')] });
  });
});

describe('the recovery code', () => {
  it('opens the record, and sets another passphrase', async () => {
    const device = createDevice();
    await plain(device);
    const { code } = await turnedOn(device);
    const page = openLocked(device);
    expect(await page.keys.unlock({ lock: 'recovery', secret: code.toLowerCase().replaceAll('-', ' ') })).toEqual({
      ok: true,
    });
    await expectAll(page);
    expect(await page.keys.change({ lock: 'recovery', secret: code }, 'nine brown wrens')).toEqual({ ok: true });
    await expectAll(await openUnlocked(device, 'nine brown wrens'));
  });

  it('is nowhere on the device; a new one takes the place of the old one', async () => {
    const device = createDevice();
    const page = await turnedOn(device);
    expect(await onDisk(device)).not.toContain(page.code);
    const next = await page.keys.newCode(PASSPHRASE);
    if (!next.ok) throw new Error(next.why);
    expect(readRecoveryCode(next.code)).not.toBe(readRecoveryCode(page.code));
    const fresh = openLocked(device);
    expect(await fresh.keys.unlock({ lock: 'recovery', secret: page.code })).toMatchObject({ reason: 'wrong' });
    expect(await fresh.keys.unlock({ lock: 'recovery', secret: next.code })).toEqual({ ok: true });
  });
});

describe('under a passphrase, damage to either copy', () => {
  it('that took the whole database takes neither entries nor the record of the key', async () => {
    const device = createDevice();
    await plain(device);
    const { code } = await turnedOn(device);
    wipeDatabase(device);
    await expectAll(await openUnlocked(device));
    wipeDatabase(device);
    const page = openLocked(device);
    expect(await page.keys.unlock({ lock: 'recovery', secret: code })).toEqual({ ok: true });
    await expectAll(page);
  });

  it('that took the journal, or that altered an entry, is mended as ever', async () => {
    const device = createDevice();
    await plain(device);
    await turnedOn(device);
    await alter(device, ['case-a', 7], (entry) => ({ ...entry, sealed: String(entry['sealed']).replace(/^./, 'Z') }));
    await expectAll(await openUnlocked(device));
    device.journal.bytes = new Uint8Array(0);
    const page = await openUnlocked(device);
    await expectAll(page);
    await level(device, new Map([['case-a', planted(40)]]));
    page.store.close();
    wipeDatabase(device);
    await expectAll(await openUnlocked(device));
    expect(await onDisk(device)).not.toContain(WORD);
  });

  it('for good is named, with the good entries before it', async () => {
    const device = createDevice();
    await plain(device);
    await turnedOn(device);
    device.journal.bytes = new Uint8Array(0);
    await alter(device, ['case-a', 7], (entry) => ({ ...entry, sealed: 'AAAA' }));
    const page = createSealedStore(openPaired(device, { journal: true }), CHEAP);
    await page.keys.unlock({ lock: 'passphrase', secret: PASSPHRASE });
    expect(await page.store.load('case-a')).toMatchObject({ ok: false, reason: 'gap', missing: 7, facts: planted(6) });
  });

  it('a passphrase is not taken while the second copy cannot be written', async () => {
    const device = createDevice();
    await plain(device);
    const page = openLocked(device);
    await page.keys.look();
    device.journal.broken = true;
    expect(await page.keys.turnOn(PASSPHRASE)).toMatchObject({ ok: false, reason: 'notKept' });
    device.journal.broken = false;
    expect(page.keys.state()).toBe('none');
    expect(await openLocked(device).keys.look()).toBe('none');
    await expectAll(page);
  });
});

/** The entries as they lie there. */
async function sealedEntries(device: Device): Promise<unknown> {
  const found = await openPaired(device).load('case-a');
  return found.ok ? found.facts : found;
}

/** A store that dies at its `at`th write: everything from there on is lost, as when the browser is killed. */
function dying(inner: RewritableStore, at: number): RewritableStore {
  let writes = 0;
  const killed = (): boolean => (writes += 1) > at;
  const dead = { ok: false, reason: 'refused', why: 'killed' } as const;
  return {
    append: async (f, r) => (killed() ? dead : inner.append(f, r)),
    load: (id) => inner.load(id),
    listCases: () => inner.listCases(),
    keyrings: () => inner.keyrings(),
    keepKeyring: async (ring) => (killed() ? dead : inner.keepKeyring(ring)),
    replace: async (f, r) => (killed() ? dead : inner.replace(f, r)),
    purge: async () => !killed() && inner.purge(),
    close: () => inner.close(),
  };
}

describe('killed in the middle', () => {
  it.each([0, 1, 2, 3, 4, 5])(
    'of sealing, after %i writes, nothing is lost, and the next unlocking goes on with it',
    async (at) => {
      const device = createDevice();
      await plain(device);
      const page = createSealedStore(dying(openPaired(device), at), CHEAP);
      await page.keys.look();
      const on = await page.keys.turnOn(PASSPHRASE);
      if (on.ok) await page.keys.finish();
      const next = openLocked(device);
      const state = await next.keys.look();
      expect(state).toBe(at === 0 ? 'none' : 'locked');
      if (state === 'locked') {
        expect(await next.keys.unlock({ lock: 'passphrase', secret: PASSPHRASE })).toEqual({ ok: true });
        await expectAll(next);
        expect(await next.keys.finish()).toBe(true);
        expect(await onDisk(device)).not.toContain(WORD);
      }
      await expectAll(next);
    },
  );

  it.each([0, 1, 2, 3, 4])('of putting it in clear again, after %i writes, nothing is lost', async (at) => {
    const device = createDevice();
    await plain(device);
    await turnedOn(device);
    const page = createSealedStore(dying(openPaired(device), at), CHEAP);
    await page.keys.unlock({ lock: 'passphrase', secret: PASSPHRASE });
    await page.keys.turnOff(PASSPHRASE);
    await page.keys.finish();
    const next = await openUnlocked(device);
    await next.keys.finish();
    await expectAll(next);
    expect(next.keys.state()).toBe(at === 0 ? 'open' : 'none');
  });

  it('of a change, the old passphrase or the new one opens: whichever copy has come first', async () => {
    for (const lost of ['none', 'database'] as const) {
      const device = createDevice();
      await plain(device);
      const page = await turnedOn(device);
      const journal = device.journal.bytes.slice();
      expect(await page.keys.change({ lock: 'passphrase', secret: PASSPHRASE }, 'nine brown wrens')).toEqual({
        ok: true,
      });
      await new Promise((resolve) => setTimeout(resolve, 20));
      // As if the second copy had not been reached.
      device.journal.bytes = journal;
      if (lost === 'database') wipeDatabase(device);
      const opens = lost === 'database' ? PASSPHRASE : 'nine brown wrens';
      await expectAll(await openUnlocked(device, opens));
      wipeDatabase(device);
      await expectAll(await openUnlocked(device, opens));
    }
  });
});

describe('a setting that tells of a case', () => {
  it('lies under the key, is not written while locked, and others are left as they are', async () => {
    const disk = new Map<string, unknown>();
    const settings = {
      read: (name: string) => Promise.resolve({ ok: true as const, value: disk.get(name) }),
      write: (name: string, value: unknown) => {
        disk.set(name, value);
        return Promise.resolve({ ok: true as const });
      },
      close: () => undefined,
    };
    const page = await turnedOn(createDevice());
    const sealed = sealedSettings(settings, page.keys, ['waiting']);
    await sealed.write('waiting', { what: WORD });
    await sealed.write('preferences', { language: 'de' });
    expect(JSON.stringify([...disk])).not.toContain(WORD);
    expect(disk.get('preferences')).toEqual({ language: 'de' });
    expect(await sealed.read('waiting')).toEqual({ ok: true, value: { what: WORD } });
    page.keys.lock();
    expect(await sealed.read('waiting')).toEqual({ ok: true, value: undefined });
    expect(await sealed.write('waiting', { what: 'x' })).toMatchObject({ ok: false });
  });
});
