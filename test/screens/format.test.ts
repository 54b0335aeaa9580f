import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  change,
  changeRange,
  day,
  digitsToMm,
  findingText,
  mm,
  moment,
  stretch,
  tenths,
  timeLeft,
  timeOfDay,
  valueWithUnit,
  withUnit,
} from '../../src/screens/format.ts';

const MIN = 60_000;

describe('times', () => {
  it.each([
    [0, '0:00'],
    [5_000, '0:05'],
    [65_000, '1:05'],
    [59 * MIN + 59_999, '59:59'],
    [60 * MIN, '1 h 0 min'],
    [130 * MIN, '2 h 10 min'],
    [24 * 60 * MIN, '1 d 0 h'],
    [(6 * 24 + 23) * 60 * MIN, '6 d 23 h'],
    [-1, '0:00'],
  ])('%d ms is %s', (ms, text) => {
    expect(stretch(ms)).toBe(text);
  });

  it('what is left is rounded up: 0:01 stands until the time is over', () => {
    expect(timeLeft(10_000, 9_999)).toEqual({ over: false, text: '0:01' });
    expect(timeLeft(10_000, 10_000)).toEqual({ over: true, text: '0:00' });
    expect(timeLeft(10_000, 13_500)).toEqual({ over: true, text: '0:03' });
  });

  it('never shows less than what is left, nor a second more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 59 * MIN }), (left) => {
        const [minutes = '', seconds = ''] = timeLeft(left, 0).text.split(':');
        const shown = (Number(minutes) * 60 + Number(seconds)) * 1000;
        expect(shown).toBeGreaterThanOrEqual(left);
        expect(shown - left).toBeLessThan(1000);
      }),
    );
  });

  it('names the day without a question of order', () => {
    const at = Date.UTC(2026, 4, 3, 9, 5);
    expect(day(at)).toBe('3 May 2026');
    expect(timeOfDay(at)).toBe('09:05');
    expect(moment(at)).toBe('3 May 09:05');
  });
});

describe('numbers', () => {
  it('keeps readings as they were said and computed values to the tenth', () => {
    expect(mm(62.5)).toBe('62.5');
    expect(mm(62.75)).toBe('62.75');
    expect(mm(71)).toBe('71');
    expect(tenths(71)).toBe('71.0');
    expect(tenths(2.773)).toBe('2.8');
    expect(tenths(-0.01)).toBe('0.0');
  });
  it('a change carries its sign', () => {
    expect(change(2)).toBe('+2.0 mm');
    expect(change(-1.25)).toBe('−1.3 mm');
    expect(change(0)).toBe('0.0 mm');
  });
  it.each([
    [[-3, -2.4], '−2.4 to −3.0 mm'],
    [[2.4, 3], '+2.4 to +3.0 mm'],
    [[0, 0], '0.0 mm'],
    [[-0.2, 0.3], '−0.2 to +0.3 mm'],
  ] as const)('%j is %s', (range, text) => {
    expect(changeRange(range)).toBe(text);
  });
  it('puts the unit where it belongs', () => {
    expect(withUnit('12', '°')).toBe('12°');
    expect(valueWithUnit(6250, 'mm')).toBe('62.5 mm');
  });
  it('reads its own digits back, or says that it cannot', () => {
    expect(digitsToMm('62.5')).toBe(62.5);
    expect(digitsToMm('–')).toBeUndefined();
  });
  it('names a finding of a clock with its amount', () => {
    expect(findingText({ id: 'seatedLate', byMs: 14_000 })).toBe(
      'Seated after the working time had ended, late by 0:14',
    );
  });
});
