// @vitest-environment node
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/domain/case/facts.ts';
import { BackupMaker, readBackup } from '../../src/handoff/backup.ts';
import { toCaseFile, toFacts } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { opening, reading, stamp } from '../helpers/facts.ts';
import { good } from './tamper.ts';

const input = { at: 1_790_000_000_000, writer: 'chair-1', settings: { preferences: { language: 'de' } } } as const;

function caseOf(id: string, values: readonly number[] = [6750]): readonly Fact[] {
  return stamp([...opening, ...values.map((value) => reading(value))]).map((fact) => ({ ...fact, caseId: id }));
}

async function backupOf(cases: readonly (readonly Fact[])[]): Promise<string> {
  const maker = new BackupMaker(input);
  for (const facts of cases) good(await maker.add(facts));
  return good(await maker.text());
}

const three = () => backupOf([caseOf('a'), caseOf('b', [6100, 6200]), caseOf('c')]);

describe('a backup', () => {
  it('gives every case as it was, whatever they are, and its settings', () =>
    fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(fc.tuple(fc.stringMatching(/^[a-z0-9]{1,12}$/), fc.array(fc.integer({ min: 1, max: 20_000 }))), {
          selector: ([id]) => id,
          maxLength: 6,
        }),
        async (wanted) => {
          const cases = wanted.map(([id, values]) => caseOf(id, values));
          const read = good(await readBackup(await backupOf(cases)));
          expect(read.faults).toEqual([]);
          expect(read.cases.map((file) => toFacts(file, 'chair-1'))).toEqual(cases);
          expect(read.head).toMatchObject({ settings: input.settings, at: input.at, left: [] });
        },
      ),
      { numRuns: 30 },
    ));

  it('of the same cases is the same text', async () => {
    expect(await three()).toBe(await three());
  });

  it('names the cases that could not be read on the device', async () => {
    const maker = new BackupMaker(input);
    good(await maker.add(caseOf('a')));
    maker.leave({ id: 'b', code: 'K-2' });
    const read = good(await readBackup(good(await maker.text())));
    expect(read.head?.left).toEqual([{ id: 'b', code: 'K-2' }]);
  });
});

describe('a damaged backup', () => {
  it('cut anywhere names the place and still gives the cases before it', async () => {
    const text = await three();
    const lines = text.split('\n');
    const third = text.indexOf(lines[3] ?? '?');
    const read = good(await readBackup(text.slice(0, third + 40)));
    expect(read.cases.map((file) => file.caseId)).toEqual(['a', 'b']);
    expect(read.faults).toMatchObject([{ reason: 'cut', where: 'line 4' }]);
    const missing = good(await readBackup(text.slice(0, third)));
    expect(missing.faults).toMatchObject([{ reason: 'cut', where: 'line 4', text: 'This case is missing.' }]);
  });

  it('changed in one case names it; the other two are whole', async () => {
    const text = (await three()).replace('"value":6200', '"value":6300');
    const read = good(await readBackup(text));
    expect(read.cases.map((file) => file.caseId)).toEqual(['a', 'c']);
    expect(read.faults).toMatchObject([{ reason: 'changed', where: 'line 3, chair-1/4' }]);
  });

  it('with another sound case, or an older state of the same one, in the place of one does not take it', async () => {
    const lines = (await three()).split('\n');
    for (const other of [caseOf('z'), caseOf('b', [6100])]) {
      lines[2] = caseText(good(await toCaseFile(other, 'chair-1'))).trimEnd();
      const read = good(await readBackup(lines.join('\n')));
      expect(read.cases.map((file) => file.caseId)).toEqual(['a', 'c']);
      expect(read.faults).toMatchObject([{ reason: 'changed', where: 'line 3' }]);
    }
  });

  it('with a changed head gives its cases and no settings', async () => {
    const read = good(await readBackup((await three()).replace('"language":"de"', '"language":"fr"')));
    expect(read.head).toBeUndefined();
    expect(read.cases).toHaveLength(3);
    expect(read.faults).toMatchObject([{ reason: 'changed', where: 'line 1' }]);
  });

  it('with lines added says so', async () => {
    const text = await three();
    const read = good(await readBackup(`${text}${text.split('\n')[1]}\n`));
    expect(read.cases).toHaveLength(3);
    expect(read.faults).toMatchObject([{ where: 'line 5' }]);
  });

  it('of which any one letter was changed never gives something else as whole', async () => {
    const text = await three();
    const sound = new Set((await readBackup(text).then(good)).cases.map(caseText));
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: text.length - 1 }),
        fc.constantFrom('0', 'a', '"', '}', '\n'),
        async (at, put) => {
          const read = await readBackup(text.slice(0, at) + put + text.slice(at + 1));
          const cases = read.ok ? read.value.cases : [];
          expect(cases.filter((file) => !sound.has(caseText(file)))).toEqual([]);
          const same = text[at] === put;
          expect(read.ok && read.value.faults.length === 0).toBe(same);
        },
      ),
      { numRuns: 150 },
    );
  });
});

it.each([
  ['', 'This is not a backup.'],
  ['{}', 'This is not a backup.'],
  ['{"format":"rimwise-backup","v":2}', 'This backup was written by a newer version of the app.'],
])('%j is refused in words', async (text, why) => {
  expect(await readBackup(text)).toMatchObject({ ok: false, text: why });
});

it('a case file is no backup, and it is said where it belongs', async () => {
  const text = caseText(good(await toCaseFile(caseOf('a'), 'chair-1')));
  expect(await readBackup(text)).toMatchObject({ ok: false, text: expect.stringContaining('Take it in as a file') });
});
