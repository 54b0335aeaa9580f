/** Promises about impressions that have left the room: their times follow them until somebody says they are poured. */
import { describe, expect, it } from 'vitest';
import { nextOpeningFact } from '../../src/app/opening.ts';
import { foldCase } from '../../src/domain/case/fold.ts';
import { allClocks, ringingNow } from '../../src/domain/summary/clocks.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { visit2 } from '../../src/domain/protocol/visit2.ts';
import { bench, firstVisit, type Bench } from '../helpers/visit.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/** Upper impression taken, in its bath, and the visit signed and closed. */
function closedWithImpression(): Bench {
  const b = bench(firstVisit);
  for (const [intent, wait] of [
    ['goto:upper-impression', 0],
    ['material:alginate-regular', 0],
    ['start', 100],
    ['seated', 200],
    ['out', 0],
    ['goto:disinfect-upper', 0],
    ['material:iodophor', 0],
    ['start', 60],
    [`goto:${visit1.steps.at(-1)!.id}`, 0],
    ['sign:KV', 0],
    ['reason:not-possible', 0],
  ] as const) {
    b.press(intent);
    b.wait(wait * SECOND);
  }
  expect(b.session.context().closed).toBe(true);
  return b;
}

const running = (b: Bench) =>
  b
    .summary()
    .clocks.filter((row) => !row.stopped)
    .map((row) => [row.label, row.now]);

describe('after the visit is closed', () => {
  it('the time to pour and the bath run on', () => {
    const b = closedWithImpression();
    expect(running(b)).toEqual([
      ['upper impression', 'pourWithin'],
      ['upper disinfection', 'disinfect'],
    ]);
  });

  it('an alarm that rings can be acknowledged, and rings no more', () => {
    const b = closedWithImpression();
    b.wait(10 * MINUTE);
    const ringing = () =>
      ringingNow(b.session.view(), b.summary().clocks, b.at).map(({ clock, phase }) => [clock, phase]);
    expect(ringing()).toEqual([['disinfect-upper/1', 'disinfect']]);
    expect(b.session.send({ type: 'ALARM_SEEN', clock: 'disinfect-upper/1', phase: 'disinfect' }).trouble).toBe('');
    expect(ringing()).toEqual([]);
  });

  it('the bath can be ended and the impression said to be poured; then nothing runs', () => {
    const b = closedWithImpression();
    b.wait(11 * MINUTE);
    expect(b.press('clockDone:disinfect-upper').said).toBe('ended: upper disinfection');
    expect(b.press('taken:upper-primary').said).toBe('poured or taken over: upper impression');
    expect(running(b)).toEqual([]);
    expect(b.session.context().closed).toBe(true);
    expect(b.summary().clocks[0]).toMatchObject({ takenAt: b.at, findings: [] });
  });

  it('nothing else can be written into it', () => {
    const b = closedWithImpression();
    const before = b.facts.length;
    expect(b.session.send({ type: 'NOTE', text: 'late', source: 'keypad' }).trouble).toContain('closed');
    expect(b.session.send({ type: 'FLAG', flag: 'f', answer: 'keep', reason: 'r' }).trouble).toContain('closed');
    expect(b.press('goto:upper-impression').trouble).toContain('closed');
    expect(b.facts).toHaveLength(before);
  });

  it('it stands the same when it is opened again', () => {
    const b = closedWithImpression();
    const again = bench(firstVisit, b.facts);
    expect(again.press('taken:upper-primary').trouble).toBe('');
    expect(running(again)).toEqual([['upper disinfection', 'disinfect']]);
  });
});

describe('in the next visit', () => {
  function secondVisit(): { first: Bench; second: Bench } {
    const first = closedWithImpression();
    first.wait(2 * 24 * 60 * MINUTE);
    const view = first.session.view();
    const opening = { view, protocol: visit2, clinician: 'KV', assistant: 'BR', language: 'en' } as const;
    const fact = nextOpeningFact({ ...opening, at: first.at, app: 'test' });
    return { first, second: bench({ ...firstVisit, protocol: visit2 }, [...first.facts, fact]) };
  }
  const clocksOf = (b: Bench) =>
    allClocks(b.session.view(), { protocol: visit2, earlierProtocols: [visit1], now: b.at }).filter(
      (row) => !row.stopped,
    );

  it('what nobody has said to be poured is still there, named by its visit', () => {
    const { second } = secondVisit();
    expect(clocksOf(second)).toMatchObject([
      { id: 'upper-primary/1', label: 'upper impression', visit: 1, now: 'pourWithin' },
    ]);
    expect(second.summary().clocks).toEqual([]);
  });

  it('is told when somebody asks how long', () => {
    const { second } = secondVisit();
    expect(second.say('how long').speak).toMatch(/^upper primary: pour within, \d+ minutes .*over$/);
  });

  it('until it is, there', () => {
    const { second } = secondVisit();
    expect(second.press('taken:upper-primary').said).toContain('poured or taken over');
    expect(clocksOf(second)).toEqual([]);
    expect(foldCase('c1', second.facts).closed).toBeUndefined();
  });

  it('an alarm acknowledged in the visit before does not ring again', () => {
    const first = closedWithImpression();
    first.wait(40 * MINUTE);
    first.session.send({ type: 'ALARM_SEEN', clock: 'upper-primary/1', phase: 'pourWithin' });
    const opening = { view: first.session.view(), protocol: visit2, clinician: 'KV', assistant: 'BR' } as const;
    const fact = nextOpeningFact({ ...opening, language: 'en', at: first.at, app: 'test' });
    const second = bench({ ...firstVisit, protocol: visit2 }, [...first.facts, fact]);
    expect(clocksOf(second)).toHaveLength(1);
    expect(ringingNow(second.session.view(), clocksOf(second), second.at)).toEqual([]);
  });
});
