import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../../src/domain/case/facts.ts';
import {
  addFact,
  addFacts,
  emptyLog,
  extendCase,
  foldCase,
  lastAct,
  liveOf,
  liveReadings,
  readCase,
} from '../../../src/domain/case/fold.ts';
import { answered, moved, opening, reading, stamp } from '../../helpers/facts.ts';

const bodies: fc.Arbitrary<FactBody> = fc.oneof(
  fc.integer({ min: 4000, max: 9000 }).map((value) => reading(value)),
  fc.constantFrom(answered('ask', 'yes'), answered('ask', 'no'), answered('marks', 'made')),
  fc.constantFrom('tell', 'ask', 'rest-height').map(moved),
  fc.constantFrom<FactBody>(
    { kind: 'held' },
    { kind: 'carriedOn' },
    { kind: 'attemptStarted', step: 'keep', goto: 'rest-height', steps: ['rest-height', 'ask'], reason: 'r' },
  ),
);

describe('folding the record', () => {
  it('gives the same view from a prefix and the rest as from all facts at once', () => {
    const acts = fc.array(
      fc.oneof(
        bodies,
        fc.integer({ min: 1, max: 40 }).map((act): FactBody => ({ kind: 'undone', act, what: '' })),
      ),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(acts, fc.nat(), (list, cut) => {
        const facts = stamp([opening, ...list]);
        const at = cut % (facts.length + 1);
        const stepwise = facts.slice(at).reduce(addFact, addFacts(emptyLog('c1'), facts.slice(0, at)));
        expect(readCase(stepwise)).toEqual(foldCase('c1', facts));
      }),
      { numRuns: 300 },
    );
  });

  it('goes on from a view, act by act, to the view of all facts; and from an older view as well', () => {
    const more = fc.oneof(
      { weight: 6, arbitrary: bodies },
      {
        weight: 1,
        arbitrary: fc.oneof(
          fc.integer({ min: 1, max: 40 }).map((act): FactBody => ({ kind: 'undone', act, what: '' })),
          fc.integer({ min: 3, max: 20 }).map((corrects) => reading(6300, { corrects })),
          fc.constant(answered('bases-rest', 'both')),
          fc.constantFrom<FactBody>(
            { kind: 'visitClosed', visit: 1 },
            { ...(opening[1] as Extract<FactBody, { kind: 'visitOpened' }>), visit: 2 },
          ),
        ),
      },
    );
    const acts = fc.array(fc.array(more, { minLength: 1, maxLength: 3 }), { maxLength: 30 });
    fc.assert(
      fc.property(acts, fc.nat(), (list, branch) => {
        const facts = stamp([opening, ...list]);
        const views = [foldCase('c1', facts.slice(0, 2))];
        let written = 2;
        for (const act of list) {
          const before = views.at(-1)!;
          const next = facts.slice(written, written + act.length);
          written += act.length;
          views.push(extendCase(before, next));
          expect(views.at(-1)).toEqual(foldCase('c1', facts.slice(0, written)));
          expect(liveReadings(views.at(-1)!)).toEqual(liveOf(views.at(-1)!, 'reading'));
        }
        // Somebody goes on from an older view in another way: nothing of the newer ones shows through.
        const older = views[branch % views.length]!;
        const other = stamp([reading(7777), answered('ask', 'no')], older.log.facts.length + 1);
        const scratch = foldCase('c1', [...older.log.facts, ...other]);
        const forked = extendCase(older, other);
        expect(forked.step).toBe(scratch.step);
        expect(forked.markSetOf.get(other[0]!.seq)).toBe(scratch.markSetOf.get(other[0]!.seq));
        expect(forked).toEqual(scratch);
        const [newest, whole] = [views.at(-1)!, foldCase('c1', facts)];
        for (const { seq } of facts) expect(newest.markSetOf.get(seq)).toBe(whole.markSetOf.get(seq));
        expect(liveOf(newest, 'reading')).toEqual(liveOf(whole, 'reading'));
        expect(liveReadings(older)).toEqual(liveOf(older, 'reading'));
      }),
      { numRuns: 300 },
    );
  });

  it('strikes a corrected reading and revives it when the correction is undone', () => {
    const facts = stamp([opening, reading(6250), reading(6520, { corrects: 3 })]);
    const view = foldCase('c1', facts);
    expect(view.strikes.get(3)?.why).toBe('corrected');
    expect(liveOf(view, 'reading').map((f) => f.body.value)).toEqual([6520]);
    const undone = readCase(addFacts(view.log, stamp([{ kind: 'undone', act: 4, what: '' }], 5)));
    expect(liveOf(undone, 'reading').map((f) => f.body.value)).toEqual([6250]);
    expect(undone.log.facts).toHaveLength(5);
  });

  it('takes back a whole act, the move included', () => {
    const facts = stamp([opening, moved('ask'), [answered('ask', 'yes'), moved('rest-height')]]);
    const view = foldCase('c1', facts);
    expect(view.step).toBe('rest-height');
    const act = lastAct(view)!;
    expect(act.facts.map((f) => f.body.kind)).toEqual(['answered', 'moved']);
    const undone = readCase(addFacts(view.log, stamp([{ kind: 'undone', act: act.act, what: '' }], 6)));
    expect(undone.step).toBe('ask');
    expect(undone.answers.has('ask')).toBe(false);
  });

  it('undoes further back each time and never the opening', () => {
    let facts = stamp([opening, moved('ask'), reading(6250)]);
    for (let i = 0; i < 2; i += 1) {
      const act = lastAct(foldCase('c1', facts))!;
      facts = [...facts, ...stamp([{ kind: 'undone', act: act.act, what: '' }], facts.length + 1)];
    }
    const view = foldCase('c1', facts);
    expect(view.step).toBe('');
    expect(liveOf(view, 'reading')).toHaveLength(0);
    expect(lastAct(view)).toBeUndefined();
  });

  it('counts marks made again as another set, and files a correction under the set of its original', () => {
    const facts = stamp([
      opening,
      answered('marks', 'made'),
      reading(6250),
      answered('marks', 'made'),
      reading(6300),
      reading(6260, { corrects: 4 }),
    ]);
    const view = foldCase('c1', facts);
    expect([4, 6, 7].map((seq) => view.markSetOf.get(seq))).toEqual([1, 2, 1]);
  });

  it('keeps a given-up attempt on record, struck', () => {
    const facts = stamp([
      opening,
      reading(6250),
      { kind: 'attemptStarted', step: 'keep', goto: 'rest-height', steps: ['rest-height'], reason: 'void' },
      reading(6300),
    ]);
    const view = foldCase('c1', facts);
    expect(view.strikes.get(3)).toMatchObject({ why: 'newAttempt', by: 4 });
    expect(liveOf(view, 'reading').map((f) => f.body.value)).toEqual([6300]);
  });
});
