/**
 * Promises held under a random hand: taps, words, mishearings, nonsense, keys, undo, hold, corrections, retakes, flags and
 * reloads. Never an exception, never a dead end, never a kept fact lost; the record read whole is the record read in parts.
 */
import { describe, expect, it } from 'vitest';
import { visitInput } from '../../src/app/resume.ts';
import { bench, small } from '../helpers/visit.ts';
import { runWalks } from '../helpers/walks/run.ts';

/** Few enough for every run of the tests; `npm run walks` asks for 2,000. */
const WALKS = Number(process.env['WALKS'] ?? 150);
const SEED = process.env['WALKS_SEED'];
const MOVES = 60;

describe('random walks through all visits', () => {
  it('never fail, never end nowhere and never lose a kept fact', { timeout: 60_000 + WALKS * 500 }, () => {
    const began = performance.now();
    const seen = runWalks({ walks: WALKS, moves: MOVES, ...(SEED === undefined ? {} : { seed: Number(SEED) }) });
    expect(seen.walks).toBe(WALKS);
    expect(seen.moves).toBe(WALKS * MOVES);
    for (const happened of ['readings', 'refusals', 'undone', 'reloads', 'retakes', 'closed'] as const)
      expect(seen[happened], happened).toBeGreaterThan(0);
    if (process.env['WALKS'] === undefined) return;
    const { steps, ...counts } = seen;
    console.log({ ...counts, steps: steps.size, seconds: Math.round((performance.now() - began) / 1000) });
  });
});

describe('found by a random walk', () => {
  it('an answer that is passed by later no longer counts, before and after a reload', () => {
    const b = bench();
    for (const intent of ['next', 'answer:yes', 'back', 'skip', 'reason:notNeeded']) b.press(intent);
    const resumed = visitInput(b.session.view(), small.protocol, small.readings);
    expect(resumed.answers).toEqual({});
    expect(b.session.context().answers).toEqual(resumed.answers);
  });

  it('a reading that no step asks for does not pass the step it was called at, nor count there after a reload', () => {
    const b = bench();
    for (const intent of ['next', 'answer:yes']) b.press(intent);
    expect(b.step()).toBe('width');
    const loose = { reading: 'loose', value: 1800, unit: 'mm', text: 'x', source: 'voice', certainty: 'sure' } as const;
    b.session.send({ type: 'HEARD', ...loose, why: [], correction: false });
    b.press('yes');
    expect(b.facts.at(-1)?.body).toMatchObject({ kind: 'reading', reading: 'loose', outOfTurn: true });
    expect(b.session.send({ type: 'NEXT' }).trouble).not.toBe('');
    expect(b.step()).toBe('width');
    expect(visitInput(b.session.view(), small.protocol, small.readings).kept).toEqual({});
  });

  it('a remark after the close is refused with a sentence, not swallowed', () => {
    const b = bench();
    for (const intent of ['goto:sign', 'sign:KV', 'reason:notNeeded']) b.press(intent);
    expect(b.session.view().closed).toBeDefined();
    const outcome = b.session.send({ type: 'NOTE', text: 'too late', source: 'keypad' });
    expect(outcome.facts).toEqual([]);
    expect(outcome.trouble).toContain('The visit is closed');
  });
});
