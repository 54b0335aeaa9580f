import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../../src/domain/case/facts.ts';
import { addFact, addFacts, emptyLog, foldCase, lastAct, liveOf, readCase } from '../../../src/domain/case/fold.ts';
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
