/** What the laboratory has, what came back and what is due: from the record alone. */
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../../src/domain/case/facts.ts';
import { foldCase } from '../../../src/domain/case/fold.ts';
import { parseDay, shortDay, weekdayOf } from '../../../src/domain/measure/calendar.ts';
import {
  agreedDay,
  dueLines,
  labStandings,
  orderInHand,
  standingText,
} from '../../../src/domain/summary/lab-standing.ts';
import { smallPractice } from '../../helpers/small-visit.ts';
import { answered, stamp } from '../../helpers/facts.ts';

const THURSDAY = Date.parse('2026-11-26T10:00:00Z');
const dayAt = (at: number) => new Date(at).toISOString().slice(0, 10);

const opened: FactBody = { kind: 'caseOpened', code: 'T-1', demo: true, practice: smallPractice };
const visit = (number: number): FactBody => ({
  kind: 'visitOpened',
  visit: number,
  protocol: `visit-${number}`,
  version: 1,
  clinician: 'AB',
  assistant: 'CD',
  language: 'en',
});
const closed = (number: number): FactBody => ({ kind: 'visitClosed', visit: number });
const ordered = answered('lab-order', 'yes');
const none: FactBody = {
  kind: 'answered',
  step: 'lab-order',
  answer: 'no-order',
  reason: 'not-needed',
  source: 'touch',
};
const because = (step: string): FactBody => ({
  kind: 'answered',
  step,
  answer: 'no',
  reason: 'timing',
  source: 'touch',
});

const view = (...bodies: readonly FactBody[]) => foldCase('c1', stamp([opened, ...bodies], 1, THURSDAY));
const standings = (...bodies: readonly FactBody[]) =>
  labStandings(view(...bodies), { practice: smallPractice, dayAt }).map(
    ({ visit: name, what, state, due, reason }) => ({
      name,
      what,
      state,
      ...(due === undefined ? {} : { due: due.day, agreed: due.agreed }),
      ...(reason === undefined ? {} : { reason }),
    }),
  );

const first = [visit(1), ordered, closed(1)] as const;
const second = [visit(2), answered('work-returned', 'yes'), answered('work-right', 'yes'), ordered, closed(2)] as const;

describe('what the laboratory has', () => {
  it('is nothing before the visit that orders it is closed, and nothing without an order', () => {
    expect(standings(visit(1), ordered)).toEqual([]);
    expect(standings(visit(1), none, closed(1))).toEqual([]);
    expect(standings(visit(1), closed(1))).toEqual([]);
  });

  it('is the work of each visit by its name, due after the practice’s days', () => {
    // Seven days from Thursday the 26th: the 3rd of December.
    expect(standings(...first)).toEqual([
      { name: 'visit 1', what: 'custom trays', state: 'atLab', due: '2026-12-03', agreed: false },
    ]);
    expect(standings(...first, ...second).at(-1)).toMatchObject({ what: 'set-up for the try-in', state: 'atLab' });
  });

  it('the day agreed with the laboratory counts, the last one given, and a taken-back one does not', () => {
    const due = (day: string): FactBody => ({ kind: 'labDue', order: 2, day });
    expect(standings(...first, due('2026-12-04'), due('2026-12-07'))[0]).toMatchObject({
      due: '2026-12-07',
      agreed: true,
    });
    expect(standings(...first, due('2026-12-04'), { kind: 'undone', act: 5, what: '' })[0]).toMatchObject({
      due: '2026-12-03',
      agreed: false,
    });
  });

  it('is on its way once the laboratory says so, and here once the clinic says so', () => {
    const back: FactBody = { kind: 'workReturned', order: 2, text: '', by: 'MT' };
    expect(standings(...first, back)[0]).toMatchObject({ state: 'sentBack' });
    expect(standings(...first, back, visit(2), answered('work-returned', 'yes'))[0]).toMatchObject({ state: 'here' });
  });

  it('stays with the laboratory when the next visit finds it is not there, until one finds it', () => {
    const notHere = [visit(2), because('work-returned'), none, closed(2)] as const;
    expect(standings(...first, ...notHere)).toEqual([
      { name: 'visit 1', what: 'custom trays', state: 'notHere', due: '2026-12-03', agreed: false, reason: 'timing' },
    ]);
    expect(standings(...first, ...notHere, visit(3), answered('work-returned', 'yes'))[0]).toMatchObject({
      state: 'here',
    });
  });

  it('nothing of a visit that ended early, though its order was called right', () => {
    const early = [visit(2), because('work-returned'), ordered, closed(2)] as const;
    expect(standings(...first, ...early).map(({ what, state }) => [what, state])).toEqual([
      ['custom trays', 'notHere'],
    ]);
    expect(standings(...first, ...early, ...second).map(({ what, state }) => [what, state])).toEqual([
      ['custom trays', 'here'],
      ['set-up for the try-in', 'atLab'],
    ]);
  });

  it('is here and wrong when the check says so', () => {
    const wrong = [visit(2), answered('work-returned', 'yes'), because('work-right')] as const;
    expect(standings(...first, ...wrong)[0]).toMatchObject({ state: 'wrong', reason: 'timing' });
  });

  it('is a set-up by the new record when the bite was refused at the try-in', () => {
    const third = [visit(3), answered('work-returned', 'yes'), because('bite-agrees'), ordered, closed(3)] as const;
    expect(standings(...first, ...second, ...third).at(-1)).toMatchObject({ what: 'set-up by the new record' });
    const agreed = [visit(3), answered('work-returned', 'yes'), ordered, closed(3)] as const;
    // Ten days for finishing.
    expect(standings(...first, ...second, ...agreed).at(-1)).toMatchObject({
      what: 'finished dentures',
      due: '2026-12-06',
    });
  });

  it('is a changed set-up, not finished dentures, when there was no consent to finish', () => {
    const refused = [
      visit(3),
      answered('work-returned', 'yes'),
      because('finish-consent'),
      ordered,
      closed(3),
    ] as const;
    // Seven days from Thursday the 26th.
    expect(standings(...first, ...second, ...refused).at(-1)).toMatchObject({
      what: 'changed set-up',
      due: '2026-12-03',
    });
    const again = [visit(3), answered('work-returned', 'yes')] as const;
    expect(standings(...first, ...second, ...refused, ...again).at(-1)).toMatchObject({
      what: 'changed set-up',
      state: 'here',
    });
  });

  it('is counted in the practice’s own days', () => {
    const practice = { ...smallPractice, labDays: { customTrays: 2, setUp: 3, finish: 4 } };
    expect(labStandings(view(...first), { practice, dayAt })[0]?.due).toEqual({ day: '2026-11-28', agreed: false });
  });
});

describe('the order in hand', () => {
  it('is offered a day from the moment it is right until the next visit begins', () => {
    const at = (...bodies: readonly FactBody[]) =>
      orderInHand(view(...bodies), { practice: smallPractice, dayAt }, THURSDAY);
    expect(at(visit(1))).toBeUndefined();
    expect(at(visit(1), ordered)).toEqual({ order: 2, what: 'custom trays', day: '2026-12-03', agreed: false });
    expect(at(...first)).toMatchObject({ order: 2, day: '2026-12-03' });
    expect(at(...first, { kind: 'labDue', order: 2, day: '2026-12-09' })).toMatchObject({
      day: '2026-12-09',
      agreed: true,
    });
    expect(at(...first, visit(2))).toBeUndefined();
    expect(at(visit(1), none, closed(1))).toBeUndefined();
  });

  it('takes a day of the calendar that has not passed, and says why not otherwise', () => {
    const agree = (day: string, ...bodies: readonly FactBody[]) =>
      agreedDay(view(...bodies), { day, today: '2026-11-26' });
    expect(agree('2026-12-04', ...first)).toEqual({ ok: true, body: { kind: 'labDue', order: 2, day: '2026-12-04' } });
    expect(agree('2026-11-26', ...first)).toMatchObject({ ok: true });
    expect(agree('2026-11-25', ...first)).toEqual({ ok: false, text: 'Wed 25 Nov has passed.' });
    expect(agree('2026-02-30', ...first)).toEqual({ ok: false, text: '“2026-02-30” is no day of the calendar.' });
    expect(agree('2026-12-04', visit(1))).toEqual({ ok: false, text: 'Nothing is ordered from the laboratory.' });
    expect(agree('2026-12-04', ...first, visit(2))).toMatchObject({ ok: false });
  });
});

describe('the order to the laboratory', () => {
  it('names the day once it was agreed, and none that was only counted', () => {
    const due: FactBody = { kind: 'labDue', order: 2, day: '2026-12-04' };
    expect(dueLines(view(...first))).toEqual([]);
    expect(dueLines(view(...first, due))).toEqual([
      { id: 'due', text: 'Work wanted back by Fri 4 Dec.', detail: '2026-12-04, as agreed.' },
    ]);
    expect(dueLines(view(...first, due, visit(2)))).toEqual([]);
  });
});

describe('in words', () => {
  const text = (today: string, ...bodies: readonly FactBody[]) => {
    const [standing] = labStandings(view(...bodies), { practice: smallPractice, dayAt });
    return standingText(standing!, { today, reason: (id) => (id === 'timing' ? 'set too early' : id) });
  };

  it.each([
    ['2026-12-02', [...first], 'lab has: custom trays, due Thu 3 Dec', false],
    ['2026-12-03', [...first], 'lab has: custom trays, due Thu 3 Dec', false],
    ['2026-12-04', [...first], 'lab has: custom trays, was due Thu 3 Dec', true],
    [
      '2026-12-04',
      [...first, { kind: 'workReturned', order: 2, text: '', by: 'MT' } as const],
      'lab sent back: custom trays',
      false,
    ],
    ['2026-12-04', [...first, visit(2), answered('work-returned', 'yes')], 'work returned: custom trays', false],
    [
      '2026-12-04',
      [...first, visit(2), because('work-returned')],
      'not here Thu 26 Nov: custom trays (set too early)',
      true,
    ],
    [
      '2026-12-04',
      [...first, visit(2), answered('work-returned', 'yes'), because('work-right')],
      'work returned, something is wrong: custom trays (set too early)',
      true,
    ],
  ])('on %s', (today, bodies, words, late) => {
    expect(text(today, ...bodies)).toEqual({ text: words, late });
  });

  it('days are named as people say them', () => {
    expect(shortDay('2026-12-03')).toBe('Thu 3 Dec');
    expect(shortDay('nonsense')).toBe('nonsense');
  });

  // 2000-01-01 was a Saturday, 2024-02-29 a Thursday, 1970-01-01 a Thursday (published calendars).
  it.each([
    ['2000-01-01', 6],
    ['2024-02-29', 4],
    ['1970-01-01', 4],
    ['1900-03-01', 4],
    ['2026-11-29', 0],
  ])('%s is weekday %d', (date, weekday) => {
    expect(weekdayOf(parseDay(date)!)).toBe(weekday);
    expect(new Date(`${date}T00:00:00Z`).getUTCDay()).toBe(weekday);
  });
});
