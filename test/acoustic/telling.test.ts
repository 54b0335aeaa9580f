import { describe, expect, it } from 'vitest';
import type { Judged } from '../../scripts/acoustic/judge.ts';
import { atReading } from '../../scripts/acoustic/moments.ts';
import type { Outcome } from '../../scripts/acoustic/outcome.ts';
import { promises } from '../../scripts/acoustic/promises.ts';
import type { Scene } from '../../scripts/acoustic/scenes.ts';
import type { Level } from '../../scripts/acoustic/studio.ts';
import { curveTable, nothingTable, pointAt, readingsTable } from '../../scripts/acoustic/tables.ts';

const expectation = atReading('closed-height', []);

interface Wish {
  readonly kind?: Scene['kind'];
  readonly level?: Level;
  readonly confidence?: number;
}

/** One judged hearing with this outcome; a number heard is sure, right or wrong. */
function judged(outcome: Outcome, { kind = 'reading', level = 'clean', confidence = 0.9 }: Wish = {}): Judged {
  const nothing = kind === 'talk' || kind === 'noise';
  const value = outcome === 'wrong' ? 5000 : 6000;
  const certainty = outcome === 'asked' ? ('check' as const) : ('sure' as const);
  const why = outcome === 'asked' ? ['heard faintly'] : [];
  return {
    scene: {
      id: `${kind}/1`,
      group: 'held-out',
      kind,
      text: 'sixty',
      expectation,
      truth: nothing ? { kind: 'nothing' } : { kind: 'reading', value: 6000, reading: 'closed-height' },
    },
    level,
    hearing: { frames: 0, loops: [], sentences: [], agree: 0 },
    got:
      outcome === 'nothing'
        ? { kind: 'none', text: '' }
        : { kind: 'reading', value, certainty, correction: false, text: 'sixty', confidence, why },
    outcome,
    topRight: outcome === 'right',
  };
}

const many = (count: number, outcome: Outcome, wish?: Wish): readonly Judged[] =>
  Array.from({ length: count }, () => judged(outcome, wish));
const talk: Wish = { kind: 'talk' };

describe('promises', () => {
  const kept = (list: readonly Judged[]): readonly boolean[] => promises(list).map(({ ok }) => ok);
  const idle = [...many(98, 'nothing', talk), ...many(2, 'wrong', talk)];
  it('hold at their limits', () => {
    expect(kept([...many(97, 'right'), ...many(3, 'wrong'), ...many(150, 'asked'), ...idle])).toEqual([
      true,
      true,
      true,
    ]);
  });
  it('break one by one', () => {
    expect(kept([...many(96, 'right'), ...many(4, 'wrong'), ...idle])).toEqual([false, true, true]);
    expect(kept([...many(39, 'right'), ...many(61, 'asked'), ...idle])).toEqual([true, false, true]);
    expect(kept([...many(50, 'right'), ...many(96, 'nothing', talk), ...many(4, 'wrong', talk)])).toEqual([
      true,
      true,
      false,
    ]);
  });
  it('are not kept by having heard nothing', () => expect(kept([])).toEqual([false, false, false]));
  it('look at readings at clean and 20 dB only, at talk and noise everywhere', () => {
    const loud = [...many(50, 'right', { level: 20 }), ...many(50, 'wrong', { level: 10 })];
    expect(kept([...loud, ...many(9, 'nothing', talk), ...many(1, 'wrong', { kind: 'noise', level: 10 })])).toEqual([
      true,
      true,
      false,
    ]);
  });
});

describe('tables', () => {
  it('count for each level, and for each noise', () => {
    const rows = readingsTable([...many(3, 'right'), ...many(1, 'wrong'), ...many(4, 'asked', { level: 10 })]).split(
      '\n',
    );
    expect(rows).toHaveLength(1 + 1 + 3 * 4);
    expect(rows[1]).toMatch(/^clean\s+4\s+75\.0 %\s+75\.0 %\s+0\.0 %\s+0\.0 %\s+25\.0 %\s+25\.0 %/);
    expect(rows.filter((row) => /^ {2}(pink|suction|babble) +4 /.test(row))).toHaveLength(1);
  });
  it('say what was taken that nobody said', () => {
    expect(nothingTable([...many(3, 'nothing', talk), ...many(1, 'wrong', talk)])).toMatch(
      /clean\s+4\s+75\.0 %\s+0\.0 %\s+25\.0 %/,
    );
  });
  it('tell what another threshold would have kept', () => {
    const list = [
      ...many(2, 'right', { confidence: 0.9 }),
      judged('wrong', { confidence: 0.8 }),
      ...many(2, 'asked', { confidence: 0.5 }),
    ];
    expect(pointAt(0.85, list)).toEqual({ threshold: 0.85, sure: 2, wrong: 0, of: 5 });
    expect(pointAt(0.7, list)).toEqual({ threshold: 0.7, sure: 3, wrong: 1, of: 5 });
    expect(pointAt(0.4, list)).toEqual({ threshold: 0.4, sure: 5, wrong: 1, of: 5 });
    expect(curveTable(list, [0.7])).toMatch(/0\.70\s+60\.0 %\s+33\.3 %\s+1 of 3/);
  });
});
