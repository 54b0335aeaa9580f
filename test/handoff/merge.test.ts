// @vitest-environment node
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { Fact, FactBody } from '../../src/domain/case/facts.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { mergeCaseFiles, readCaseText, toCaseFile } from '../../src/handoff/case-file.ts';
import type { CaseFile } from '../../src/handoff/case-file.types.ts';
import { arrivalOf } from '../../src/handoff/case-import.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { opening, reading, stamp } from '../helpers/facts.ts';
import { good } from './tamper.ts';

vi.setConfig({ testTimeout: 60_000 });

const MACHINES = ['chair-1', 'chair-2', 'lab-1'] as const;

/** What points at another entry. */
const POINTING = ['correct', 'undo', 'flag', 'done', 'taken', 'ask', 'answer', 'returned'] as const;

/** What three machines do with one case: write on their own record, or take in what another has. */
type Move =
  | { readonly kind: 'write'; readonly by: number; readonly value: number; readonly late: number }
  | { readonly kind: (typeof POINTING)[number]; readonly by: number; readonly of: number; readonly late: number }
  | { readonly kind: 'take'; readonly by: number; readonly from: number };

const machine = fc.nat({ max: MACHINES.length - 1 });
const late = fc.integer({ min: -5000, max: 5000 });
const moves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.oneof(
    fc.record({ kind: fc.constant('write' as const), by: machine, value: fc.integer({ min: 1, max: 9999 }), late }),
    fc.record({
      kind: fc.constantFrom(...POINTING),
      by: machine,
      of: fc.nat(),
      late,
    }),
    fc.record({ kind: fc.constant('take' as const), by: machine, from: machine }),
  ),
  { maxLength: 14 },
);

function bodyOf(move: Exclude<Move, { kind: 'take' }>, record: readonly Fact[]): FactBody {
  if (move.kind === 'write') return reading(move.value);
  const seq = (move.of % record.length) + 1;
  if (move.kind === 'correct') return reading(7000, { corrects: seq });
  if (move.kind === 'undo') return { kind: 'undone', act: record[seq - 1]?.act ?? 1, what: 'x' };
  if (move.kind === 'done') return { kind: 'benchDone', order: seq, line: 'trim', what: 'x', by: 'MT' };
  if (move.kind === 'taken') return { kind: 'takenOver', clock: 'upper', by: 'MT', order: seq };
  if (move.kind === 'ask') return { kind: 'benchQuestion', order: seq, line: '', what: '', text: 'x', by: 'MT' };
  if (move.kind === 'answer') return { kind: 'benchAnswer', question: seq, text: 'x', by: 'KV' };
  if (move.kind === 'returned') return { kind: 'workReturned', order: seq, text: '', by: 'MT' };
  return { kind: 'flagAnswered', flag: `suspect:${seq}`, answer: 'keep', reason: 'x' };
}

const base = stamp(opening);

/** Each machine's record after the moves; all began with chair-1's opening. */
async function play(all: readonly Move[]): Promise<Fact[][]> {
  const opened = good(await toCaseFile(base, MACHINES[0]));
  const records = await Promise.all(
    MACHINES.map(async (own, i) => (i === 0 ? [...base] : [...good(await arrivalOf([], opened, own)).facts])),
  );
  for (const move of all) {
    const record = records[move.by]!;
    if (move.kind === 'take') {
      // oxlint-disable-next-line no-await-in-loop
      const file = good(await toCaseFile(records[move.from]!, MACHINES[move.from]!));
      // oxlint-disable-next-line no-await-in-loop
      record.push(...good(await arrivalOf(record, file, MACHINES[move.by]!)).facts);
    } else record.push(...stamp([bodyOf(move, record)], record.length + 1, 1_000_000 + move.late));
  }
  return records;
}

const filesOf = (records: readonly (readonly Fact[])[]) =>
  Promise.all(records.map(async (record, i) => good(await toCaseFile(record, MACHINES[i]!))));

const merged = async (a: CaseFile, b: CaseFile) => good(await mergeCaseFiles(a, b));

describe('merging', () => {
  it('commutes, is idempotent and associative, loses nothing, and the result reads', async () => {
    await fc.assert(
      fc.asyncProperty(moves, async (all) => {
        const [a, b, c] = (await filesOf(await play(all))) as [CaseFile, CaseFile, CaseFile];
        const ab = await merged(a, b);
        expect(await merged(b, a)).toEqual(ab);
        expect(await merged(a, a)).toEqual(a);
        expect(await merged(ab, b)).toEqual(ab);
        const abc = await merged(ab, c);
        expect(await merged(a, await merged(b, c))).toEqual(abc);
        const hashes = new Set([...a.entries, ...b.entries, ...c.entries].map((entry) => entry.hash));
        expect(new Set(abc.entries.map((entry) => entry.hash))).toEqual(hashes);
        expect(abc.entries).toHaveLength(hashes.size);
        expect(good(await readCaseText(caseText(abc)))).toEqual(abc);
      }),
      { numRuns: 150 },
    );
  });

  it('brings every machine to the same case, touches nothing that was there, and every record stays readable', async () => {
    await fc.assert(
      fc.asyncProperty(moves, async (all) => {
        const records = await play(all);
        const before = structuredClone(records);
        const files = await filesOf(records);
        const after = await Promise.all(
          records.map(async (record, i) => {
            let now = record;
            for (const file of files) {
              // oxlint-disable-next-line no-await-in-loop
              now = [...now, ...good(await arrivalOf(now, file, MACHINES[i]!)).facts];
            }
            return now;
          }),
        );
        for (const [i, now] of after.entries()) {
          expect(now.slice(0, before[i]!.length)).toEqual(before[i]);
          expect(parseFacts(now)).toMatchObject({ ok: true });
        }
        const [x, y, z] = await filesOf(after);
        expect(y).toEqual(x);
        expect(z).toEqual(x);
      }),
      { numRuns: 100 },
    );
  });
});
