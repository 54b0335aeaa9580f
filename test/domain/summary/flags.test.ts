/** What does not agree is said with the numbers, the reason and the remedy; recomputed at once when the record changes. */
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../../src/domain/case/facts.ts';
import { foldCase } from '../../../src/domain/case/fold.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';
import { summarise } from '../../../src/domain/summary/summarise.ts';
import { answered, moved, opening, reading, stamp } from '../../helpers/facts.ts';

const at = (id: string, mm: number, more: object = {}): FactBody =>
  reading(Math.round(mm * 100), { step: id, reading: id, ...more });
const rest = (...mms: number[]) => mms.map((mm) => at('rest-height', mm));
const closed = (...mms: number[]) => mms.map((mm) => at('closed-height', mm));
const marks = answered('marks', 'made');

function summaryOf(...bodies: (FactBody | readonly FactBody[])[]) {
  const facts = stamp([opening, ...bodies.flat()]);
  return summarise(foldCase('c1', facts), {
    protocol: visit1,
    readings: readingDefs,
    practice: defaultPractice,
    now: facts.at(-1)!.at,
  });
}
const ids = (...bodies: (FactBody | readonly FactBody[])[]) =>
  summaryOf(...bodies).flags.map((flag) => flag.id.split(':')[0]);
const whole = [answered('bases-rest', 'both'), answered('bases-closed', 'both')];

describe('flags', () => {
  it('a good set raises none', () => {
    expect(ids(marks, ...whole, rest(70.5, 71, 70), closed(67.5, 67.5), moved('record-room'))).toEqual([]);
  });

  it('too few readings, once the step is passed', () => {
    expect(ids(marks, rest(70.5, 70))).toEqual([]);
    expect(ids(marks, rest(70.5, 70), moved('record-room'))).toContain('tooFew');
  });

  it.each([
    [[70, 71, 70.5], false],
    [[70, 71.1, 70.5], true],
    [[70, 72.5, 71], true],
  ])('range over 1 mm: %j → %s', (mms, flagged) => {
    expect(ids(marks, rest(...mms)).includes('range')).toBe(flagged);
  });

  it('an outlier is named with its number', () => {
    const { flags } = summaryOf(marks, rest(70.5, 74.5, 70));
    const flag = flags.find((f) => f.id.startsWith('suspect'));
    expect(flag?.what).toContain('74.5');
    expect(flag?.what).toContain('70.5, 70');
    expect(flag?.todo).not.toBe('');
  });

  it.each([
    ['transposed digits', [62.5, 62, 26.5], '62.5'],
    ['teen for ty', [50, 50.5, 15], '50'],
    ['a shifted point', [62.5, 62, 6.25], '62.5'],
  ])('%s: the likely number is offered', (_name, mms, likely) => {
    const { flags } = summaryOf(marks, rest(...mms));
    expect(flags.some((f) => f.id.startsWith('suspect') && f.why.includes(likely))).toBe(true);
  });

  it.each([
    [
      [67.5, 68],
      [70, 70],
    ],
    [
      [70, 70],
      [70, 70],
    ],
  ])('closed height not below rest: %j against %j', (restMm, closedMm) => {
    const { flags } = summaryOf(marks, ...whole, rest(...restMm), closed(...closedMm));
    const flag = flags.find((f) => f.id.startsWith('impossible'));
    expect(flag?.what).toContain('not below rest');
  });

  it.each([
    [71, 'small'],
    [69.5, 'usual'],
    [67.5, 'usual'],
    [66.5, 'large'],
  ])('rest 71.5 with closed %d: the space is %s, and only the unusual is flagged', (closedMm, verdict) => {
    const summary = summaryOf(marks, ...whole, rest(71.5, 71.5, 71.5), closed(closedMm, closedMm));
    expect(summary.vertical.verdict).toBe(verdict);
    expect(summary.flags.some((f) => f.id.startsWith('space'))).toBe(verdict !== 'usual');
  });

  it('a space from readings that disagree is not called usual, it is doubted', () => {
    const { vertical, computed } = summaryOf(marks, ...whole, rest(67.5, 76.5, 67), closed(67, 67));
    expect(vertical.doubt).toContain('disagree');
    expect(computed.find((row) => row.id === 'rest-space')?.text).toContain('disagree');
  });

  it('readings between different marks are never compared, and that is said', () => {
    const summary = summaryOf(marks, ...whole, rest(70, 70.5, 70), marks, closed(67, 67));
    expect(summary.vertical.restSpaceMm).toBeUndefined();
    const flag = summary.flags.find((f) => f.id.startsWith('marks'));
    expect(flag?.what).toContain('visit 1, marks 1');
    expect(flag?.what).toContain('visit 1, marks 2');
  });

  it('bases in the mouth that differ between rest and closed', () => {
    const { flags } = summaryOf(
      marks,
      answered('bases-rest', 'none'),
      rest(68, 68, 68),
      answered('bases-closed', 'both'),
      closed(66, 66),
    );
    const flag = flags.find((f) => f.id.startsWith('bases'));
    expect(flag?.what).toContain('none');
    expect(flag?.why).toContain('67.9');
  });

  it('bases that changed within one set', () => {
    expect(
      ids(marks, answered('bases-rest', 'none'), rest(68, 68), answered('bases-rest', 'both'), rest(70)),
    ).toContain('mixedBases');
  });

  it('a record made at another height than the convention says', () => {
    const { flags, vertical } = summaryOf(
      marks,
      rest(70, 70, 70),
      answered('record-at', 'restLessSpace'),
      at('record-height', 70),
    );
    expect(flags.some((f) => f.id.startsWith('record:'))).toBe(true);
    expect(vertical.lab?.chinMm).toBeCloseTo(-3, 9);
  });

  it('goes away at once when the reading is corrected or undone, and comes back when that is undone', () => {
    const before = [marks, ...rest(70.5, 74.5, 70)];
    expect(ids(before)).toContain('suspect');
    const corrected = [...before, at('rest-height', 70.5, { corrects: 5 })];
    expect(ids(corrected)).not.toContain('suspect');
    const undone: FactBody = { kind: 'undone', act: 7, what: '' };
    expect(ids([...corrected, undone])).toContain('suspect');
  });

  it('an answer stays with the disagreement it was given to', () => {
    const flagged = [marks, ...rest(70.5, 74.5, 70)];
    const id = summaryOf(flagged).flags.find((f) => f.id.startsWith('suspect'))!.id;
    const kept: FactBody = { kind: 'flagAnswered', flag: id, answer: 'keep', reason: 'clinical-judgement' };
    const flag = summaryOf([...flagged, kept]).flags.find((f) => f.id === id);
    expect(flag?.answer?.answer).toBe('keep');
    expect(flag?.answer?.reason).not.toBe('clinical-judgement');
    expect(summaryOf([...flagged, kept]).open.some((item) => item.includes('74.5 stands'))).toBe(false);
  });

  it('every one says what, why and what to do', () => {
    const { flags } = summaryOf(
      marks,
      answered('bases-rest', 'none'),
      rest(70.5, 74.5),
      closed(71, 75),
      at('upper-width', 72),
      at('lower-width', 41),
      moved('record-room'),
    );
    expect(flags.length).toBeGreaterThan(4);
    for (const flag of flags) for (const text of [flag.what, flag.why, flag.todo]) expect(text).toMatch(/\S.*\.$/);
  });
});
