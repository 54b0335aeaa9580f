import { describe, expect, it } from 'vitest';
import { codeFromCount, codeFromName, completeSet, toothFromCode } from '../../../src/domain/measure/notation.ts';
import { sources } from '../../../src/domain/measure/sources.ts';
import { lowerSixFromUpper, posteriorChoice, toothSizes } from '../../../src/domain/measure/teeth.ts';

describe('toothSizes', () => {
  it('uses every rule whose reading is at hand and no other', () => {
    const found = toothSizes({ interalar: 3520 });
    if (!found.ok) throw new Error(found.text);
    expect(found.value.estimates.map((e) => e.quantity)).toEqual(['six', 'sixStraight', 'tips']);
    for (const estimate of found.value.estimates) expect(sources).toHaveProperty(estimate.source);
  });

  it('compares only rules for the same quantity', () => {
    const found = toothSizes({ interalar: 3520, lowerSix: 3500, bizygomatic: 13600 });
    if (!found.ok) throw new Error(found.text);
    const six = found.value.spreads.find((s) => s.quantity === 'six');
    expect(six).toMatchObject({ judge: true });
    expect(six!.lowMm).toBeCloseTo(136 / 3.36, 9);
    expect(six!.highMm).toBeCloseTo(35.2 * 1.31, 9);
    expect(found.value.text).toContain('clinician to judge');
    expect(found.value.spreads.find((s) => s.quantity === 'central')).toMatchObject({ spreadMm: 0, judge: false });
  });

  it('leaves four millimetres to the rules and more to the clinician', () => {
    const judge = (lowerSix: number) => {
      const found = toothSizes({ lowerSix, commissureCurve: 4500 });
      return found.ok && found.value.spreads[0]!.judge;
    };
    expect(judge(3769)).toBe(false);
    expect(judge(3770)).toBe(true);
  });

  it('warns beside the rules that studies contradict', () => {
    const found = toothSizes({ bizygomatic: 13600, interpupillary: 6400 });
    if (!found.ok) throw new Error(found.text);
    const notes = found.value.estimates.flatMap((e) => e.note ?? []);
    expect(notes.join(' ')).toContain('starting point only');
    expect(notes.join(' ')).toContain('never alone');
  });

  it.each([
    [{}, 'missing'],
    [{ interalar: 0 }, 'outOfRange'],
    [{ interalar: -1 }, 'negative'],
    [{ bizygomatic: NaN }, 'notANumber'],
    [{ lowerSix: 35.5 }, 'offGrid'],
  ] as const)('refuses %j as %s', (face, reason) => {
    expect(toothSizes(face)).toMatchObject({ ok: false, reason });
  });
});

describe('back teeth', () => {
  it('takes the smaller side, whichever it is', () => {
    for (const [left, right] of [
      [3200, 2900],
      [2900, 3200],
    ] as const) {
      expect(posteriorChoice(left, right, [2800, 3000])).toMatchObject({ value: { set: 2800, teeth: 4, spaceMm: 29 } });
    }
  });

  it('names no set where none fits', () => {
    const found = posteriorChoice(2700, 2700, [2800]);
    expect(found.ok && 'set' in found.value).toBe(false);
    expect(found).toMatchObject({ value: { teeth: 3 } });
  });

  it.each([
    [posteriorChoice(3000, 3000, []), 'empty'],
    [posteriorChoice(NaN, 3000, [2800]), 'notANumber'],
    [posteriorChoice(3000, 3000, [-1]), 'negative'],
    [lowerSixFromUpper(-1), 'negative'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });
});

describe('designation of teeth', () => {
  it.each([
    ['30', 'area'],
    ['01', 'area'],
    ['51', 'primary'],
    ['85', 'primary'],
    ['58', 'no tooth'],
    ['19', 'no tooth'],
    ['', 'no tooth'],
    ['1', 'no tooth'],
    ['113', 'no tooth'],
    ['1 3', 'no tooth'],
  ])('refuses “%s” and says that it is %s', (code, why) => {
    const found = toothFromCode(code);
    expect(found).toMatchObject({ ok: false, reason: 'unknown' });
    if (!found.ok) expect(found.text).toContain(why);
  });

  it('reads a name whatever its case, and refuses half a name', () => {
    expect(codeFromName('  Upper Right Canine ')).toMatchObject({ value: '13' });
    for (const name of ['canine', 'upper right', 'upper right fang', 'middle canine', '']) {
      expect(codeFromName(name)).toMatchObject({ ok: false, reason: 'unknown' });
    }
  });

  it.each([0, 33, 1.5, NaN])('refuses the count %s', (count) => {
    expect(codeFromCount(count)).toMatchObject({ ok: false, reason: 'outOfRange' });
  });

  it('leaves the third molars out of a complete set', () => {
    expect(completeSet().filter((code) => code.endsWith('8'))).toEqual([]);
  });
});
