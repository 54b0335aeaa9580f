import fc from 'fast-check';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { changedSince, lastBackupIn } from '../../src/app/backing-up.ts';
import type { BackupRequest, BackupView } from '../../src/app/backup.types.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { demoOpen, fakeApp, type FakeApp, type FakeAppOptions } from '../helpers/app.ts';
import { good } from '../handoff/tamper.ts';

vi.setConfig({ testTimeout: 60_000 });

/** What is fetched when first wanted is to be there at once. */
beforeAll(async () => {
  await Promise.all([
    import('../../src/app/visit-kit.ts'),
    import('../../src/app/file-desk.ts'),
    import('../../src/app/backup-desk.ts'),
    import('../../src/app/handoff.ts'),
    import('../../src/handoff/case-import.ts'),
    import('../../src/handoff/sealed.ts'),
  ]);
});

const DAY = 86_400_000;
const model = (app: FakeApp) => app.runtime.model.getState();
const backup = (app: FakeApp): BackupView => {
  const view = model(app).files?.backup;
  if (view === undefined) throw new Error('there is no backup view');
  return view;
};

async function until(app: FakeApp, done: () => boolean): Promise<void> {
  for (let i = 0; i < 2000 && !done(); i += 1) {
    await new Promise((resolve) => setTimeout(resolve, 2));
    await app.pass();
  }
  expect(done()).toBe(true);
}

async function ask(app: FakeApp, request: BackupRequest): Promise<void> {
  app.runtime.askFiles({ ask: 'backup', backup: request });
  await app.pass();
  await until(app, () => backup(app).busy === '');
}

async function newCase(app: FakeApp, code: string, notes: readonly string[]): Promise<void> {
  const before = model(app).caseId;
  app.runtime.newCase({ code, clinician: 'KV', assistant: 'BR', demo: false });
  await until(app, () => model(app).caseId !== before && model(app).step !== undefined);
  for (const text of notes) {
    app.runtime.note(text);
    await app.pass();
  }
  app.runtime.go('cases');
  await app.pass();
}

/** Every case as it would be handed over, by its id. */
async function allCases(app: FakeApp): Promise<readonly string[]> {
  const all = [...app.disk.facts.values()].map((facts) => facts as Fact[]);
  const writer = app.settings.get('writer') as string;
  return (await Promise.all(all.map(async (facts) => caseText(good(await toCaseFile(facts, writer)))))).toSorted();
}

const text = (app: FakeApp) => app.files.at(-1)?.text ?? '';
const bytes = (content: string) => new Uint8Array(Buffer.from(content, 'utf8'));
const read = (app: FakeApp, content: string) => ask(app, { do: 'read', name: 'b.json', bytes: bytes(content) });

async function clinic(options: FakeAppOptions = {}): Promise<FakeApp> {
  const app = await fakeApp(options);
  await newCase(app, 'K-1', ['one']);
  await newCase(app, 'K-2', ['two', 'three']);
  return app;
}

async function backedUp(): Promise<{ app: FakeApp; file: string }> {
  const app = await clinic();
  await ask(app, { do: 'make' });
  return { app, file: text(app) };
}

describe('a backup', () => {
  it('then a wiped device, then restoring: the same entries in every case; a second time brings nothing', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }), { maxLength: 3 }), {
          minLength: 1,
          maxLength: 3,
        }),
        async (cases) => {
          const app = await fakeApp();
          for (const [i, notes] of cases.entries()) await newCase(app, `K-${i}`, notes);
          await ask(app, { do: 'make' });
          const before = await allCases(app);
          const wiped = await fakeApp();
          await read(wiped, text(app));
          expect(backup(wiped).found).toMatchObject({ cases: cases.length, faults: [] });
          await ask(wiped, { do: 'restore', settings: false });
          expect(backup(wiped).lines[0]).toMatch(new RegExp(`^Restored: ${cases.length} cases?, \\d+ new entries`));
          wiped.settings.set('writer', 'somebody-else');
          expect(await allCases(wiped)).toEqual(before);
          await read(wiped, text(app));
          await ask(wiped, { do: 'restore', settings: false });
          expect(backup(wiped).lines).toEqual([
            expect.stringMatching(/^Restored: 0 cases, 0 new entries\. \d cases?: nothing new\.$/),
          ]);
          expect(await allCases(wiped)).toEqual(before);
        },
      ),
      { numRuns: 6 },
    ));

  it('adds to what is here, and overwrites nothing that was written since', async () => {
    const { app, file } = await backedUp();
    app.runtime.openCase('case-1');
    await until(app, () => model(app).caseId === 'case-1');
    app.runtime.note('later');
    await app.pass();
    const before = structuredClone([...app.disk.facts]);
    await read(app, file);
    await ask(app, { do: 'restore', settings: true });
    expect([...app.disk.facts]).toEqual(before);
    expect(backup(app).lines[0]).toBe('Restored: 0 cases, 0 new entries. 2 cases: nothing new.');
  });

  it('under a passphrase shows nothing of a case, asks for the words, and opens with them alone', async () => {
    const app = await clinic();
    await ask(app, { do: 'make', passphrase: 'seven wet gloves' });
    expect(text(app)).not.toContain('K-1');
    const wiped = await fakeApp();
    await read(wiped, text(app));
    expect(backup(wiped)).toMatchObject({ locked: { name: 'b.json' } });
    await ask(wiped, { do: 'open', passphrase: 'seven dry gloves' });
    expect(model(wiped).trouble).toContain('does not open this file');
    await ask(wiped, { do: 'open', passphrase: 'seven wet gloves' });
    await ask(wiped, { do: 'restore', settings: false });
    expect(
      model(wiped)
        .cases.map(({ code }) => code)
        .toSorted(),
    ).toEqual(['K-1', 'K-2']);
  });

  it('leaves out a case that cannot be read here, and says which; the others are in it', async () => {
    const app = await clinic();
    (app.disk.facts.get('case-1') as { body: Record<string, unknown> }[])[2]!.body['text'] = 7;
    await ask(app, { do: 'make' });
    expect(backup(app).lines).toEqual([
      expect.stringContaining('1 case,'),
      'Not in it, because it cannot be read here: K-1.',
    ]);
    expect(backup(app).changed).toBe(1);
  });
});

describe('a damaged backup', () => {
  it('says the place and how many cases can be read; those may be taken', async () => {
    const { file } = await backedUp();
    const wiped = await fakeApp();
    await read(wiped, file.slice(0, -200));
    expect(model(wiped).trouble).toBe('');
    expect(backup(wiped).found).toMatchObject({
      cases: 1,
      lines: [expect.stringContaining('This backup is damaged. 1 of 2 cases can be read.')],
      faults: [expect.stringContaining('line 3')],
    });
    expect(wiped.disk.facts.size).toBe(0);
    await ask(wiped, { do: 'restore', settings: false });
    expect(model(wiped).cases).toHaveLength(1);
  });

  it('left alone changes nothing', async () => {
    const { file } = await backedUp();
    const wiped = await fakeApp();
    await read(wiped, file);
    await ask(wiped, { do: 'leave' });
    expect(backup(wiped).found).toBeUndefined();
    expect(wiped.disk.facts.size).toBe(0);
  });

  it.each(['', '{', 'x\n', '{"format":"rimwise-case"}'])('%j is refused in words', async (content) => {
    const app = await fakeApp();
    await read(app, content);
    expect(model(app).trouble).toMatch(/\.$/);
    expect(backup(app).found).toBeUndefined();
  });
});

describe('settings in a backup', () => {
  it('are told before they are taken, and taken only when that is chosen', async () => {
    const app = await clinic({
      settings: new Map<string, unknown>([['preferences', { volume: 0.5, standsAt: 'lab' }]]),
    });
    await ask(app, { do: 'make' });
    const wiped = await fakeApp();
    await read(wiped, text(app));
    expect(backup(wiped).found?.settings).toEqual([
      'volume: now 1, then 0.5',
      'where this device stands: now chair, then lab',
    ]);
    await ask(wiped, { do: 'restore', settings: false });
    expect(model(wiped).preferences).toMatchObject({ volume: 1, standsAt: 'chair' });
    await read(wiped, text(app));
    await ask(wiped, { do: 'restore', settings: true });
    expect(model(wiped).preferences).toMatchObject({ volume: 0.5, standsAt: 'lab' });
    expect(backup(wiped).lines).toContain('Settings taken from the backup.');
  });
});

describe('the reminder', () => {
  it('comes when the last one is too old and something has changed, survives a reload, and can be turned off', async () => {
    const { app: before } = await backedUp();
    const lastAt = before.time.host.now();
    expect(backup(before)).toMatchObject({ changed: 0, due: false, lastAt });
    const app = await before.reload(8 * DAY);
    await until(app, () => backup(app).lastAt === lastAt);
    expect(backup(app).due).toBe(false);
    await newCase(app, 'K-3', []);
    expect(backup(app)).toMatchObject({ changed: 1, due: true });
    const next = await app.reload();
    await until(next, () => backup(next).lastAt !== undefined);
    expect(backup(next)).toMatchObject({ changed: 1, due: true });
    next.runtime.setPreferences({ backupEveryDays: 30 });
    expect(backup(next).due).toBe(false);
    next.runtime.setPreferences({ backupEveryDays: 1 });
    expect(backup(next).due).toBe(true);
    next.runtime.setPreferences({ backupEveryDays: 0 });
    expect(backup(next).due).toBe(false);
  });

  it('does not count demo cases, and takes what is no backup time for none', async () => {
    const app = await demoOpen();
    expect(backup(app)).toMatchObject({ changed: 0, due: false });
    for (const odd of [undefined, null, 7, {}, { at: 'x', ends: [] }, { at: Number.NaN, ends: [] }])
      expect(lastBackupIn(odd)).toBeUndefined();
    expect(lastBackupIn({ at: 1, ends: [['a', 2], 7] })).toEqual({ at: 1, ends: [['a', 2]] });
    expect(changedSince(undefined, model(app).cases)).toBe(0);
  });
});
