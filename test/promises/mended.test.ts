/** Faults that were found by use; each stays here so that it does not come back. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { FactBody } from '../../src/domain/case/facts.ts';
import { foldCase, liveOf, readCase, addFacts } from '../../src/domain/case/fold.ts';
import { reading, stamp, opening } from '../helpers/facts.ts';
import { demoOpen, type FakeApp } from '../helpers/app.ts';
import { atRestHeight, bench, firstVisit } from '../helpers/visit.ts';

const model = (app: FakeApp) => app.runtime.model.getState();

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

describe('a new attempt', () => {
  it('in a later visit gives up nothing that an earlier visit wrote under the same step', () => {
    const second: FactBody = { ...(opening[1] as FactBody & { kind: 'visitOpened' }), visit: 2 };
    const again: FactBody = {
      kind: 'attemptStarted',
      step: 'keep',
      goto: 'rest-height',
      steps: ['rest-height'],
      reason: 'r',
    };
    const facts = stamp([opening, reading(6250), { kind: 'visitClosed', visit: 1 }, second, reading(6300), again]);
    const view = foldCase('c1', facts);
    expect(view.strikes.has(3)).toBe(false);
    expect(view.strikes.get(6)?.why).toBe('newAttempt');
    expect(liveOf(readCase(addFacts(view.log, [])), 'reading')).toEqual([]);
  });
});

describe('a clock', () => {
  it('whose seating nobody recorded still holds the impression to its set time, its pouring and the lab order', () => {
    const b = bench(firstVisit);
    b.press('goto:upper-impression');
    b.press('material:alginate-regular');
    b.press('start');
    b.wait(30_000);
    b.press('out');
    const ids = b.summary().clocks[0]!.findings.map((f) => f.id);
    expect(ids).toEqual(['notSeated', 'removedEarly']);
    expect(b.summary().labWork.some((line) => line.text === 'Pour the upper impression.')).toBe(true);
    expect(b.summary().open.some((item) => item.includes('not recorded as disinfected'))).toBe(true);
  });

  it('ticks and rings after a reload although nobody has opened the case again', async () => {
    const app = await demoOpen();
    app.runtime.press('goto:upper-impression');
    await app.pass();
    app.runtime.press('material:alginate-regular');
    app.runtime.press('start');
    await app.pass(10_000);
    const next = await app.reload(200_000);
    for (let i = 0; i < 30 && model(next).clocks.length === 0; i += 1) await next.pass(50);
    expect(model(next).place).toBe('cases');
    expect(model(next).clocks.map((c) => c.label)).toEqual(['upper impression']);
    expect(model(next).ringing.map((r) => r.phase)).toContain('working');
  });
});

describe('undo', () => {
  it('reaches past a pause to what was written before it', () => {
    const b = atRestHeight();
    b.say('sixty-two point five');
    b.say('yes');
    b.press('hold');
    b.press('carryOn');
    expect(b.press('undo').said).toBe('Undone: Rest height 62.5 mm');
    expect(b.session.context().held).toBe(false);
  });
});

describe('an answer to a flag', () => {
  it('does not cover the same disagreement with other numbers', () => {
    const b = bench(firstVisit);
    b.press('goto:marks');
    b.press('answer:made');
    b.press('goto:rest-height');
    for (const mm of ['67', '68.5', '67.5']) {
      b.type(mm);
      b.press('yes');
    }
    const range = () => b.summary().flags.find((f) => f.id.startsWith('range:'))!;
    b.press(`flagKeep:${range().id}|clinician`);
    expect(range().answer?.reason).toBe('clinician');
    b.type('72');
    b.press('yes');
    expect(range().what).toContain('5.0 mm');
    expect(range().answer).toBeUndefined();
    expect(b.summary().open.some((item) => item.includes('differ by'))).toBe(true);
  });

  it('is wanted before hand-over for a look as well as for a disagreement', () => {
    const b = bench(firstVisit);
    b.press('goto:upper-width');
    b.type('80');
    b.press('yes');
    expect(b.summary().flags.some((f) => f.level === 'look')).toBe(true);
    expect(b.summary().open.some((item) => item.includes('Upper ridge width 80'))).toBe(true);
  });
});

describe('a number that waits', () => {
  it('goes on record as not kept when the same number is said for another reading', () => {
    const b = bench(firstVisit);
    b.press('goto:upper-width');
    b.say('fifty-eight');
    b.say('lower width fifty-eight');
    expect(b.facts.at(-1)?.body).toMatchObject({ kind: 'proposalDropped', reading: 'upper-width', value: 5800 });
  });
});
