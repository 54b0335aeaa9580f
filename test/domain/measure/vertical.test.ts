import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { describeSet, pinChange, restSpace, setAdvice, suspects } from '../../../src/domain/measure/vertical.ts';

const FACE: readonly [number, number] = [4000, 11000];
const hundredths = (values: readonly number[]) => values.map((mm) => Math.round(mm * 100));
const named = (values: readonly number[], range = FACE) =>
  suspects(hundredths(values), range).map((s) => [s.index, s.why, s.perhaps]);

describe('describeSet', () => {
  it('gives the figures of three readings', () => {
    const set = describeSet([7050, 7100, 7000]);
    expect(set).toMatchObject({ ok: true, value: { n: 3, medianMm: 70.5, meanMm: 70.5, rangeMm: 1, sdMm: 0.5 } });
    if (set.ok) expect(set.value.standardErrorMm).toBeCloseTo(0.5 / Math.sqrt(3), 12);
  });

  it('has no spread for a single reading, and says how uncertain it is all the same', () => {
    const set = describeSet([7050]);
    expect(set).toMatchObject({ ok: true, value: { n: 1, medianMm: 70.5, rangeMm: 0 } });
    if (set.ok) {
      expect(set.value.sdMm).toBeUndefined();
      expect(set.value.standardErrorMm).toBeUndefined();
      expect(set.uncertainty).toBeCloseTo(1.96, 2);
    }
  });

  it('keeps the half hundredth of an even count', () => {
    expect(describeSet([7050, 7055])).toMatchObject({ value: { medianMm: 70.525 } });
  });

  it.each([
    [[], 'empty'],
    [[NaN], 'notANumber'],
    [[Infinity, 7000], 'notANumber'],
    [[7000, -1], 'negative'],
    [[70.5], 'offGrid'],
  ] as const)('refuses %j as %s', (values, reason) => {
    expect(describeSet(values)).toMatchObject({ ok: false, reason });
  });

  it('does not claim certainty because three readings were equal', () => {
    const set = describeSet([7000, 7000, 7000]);
    expect(set.ok && set.uncertainty).toBeGreaterThan(0.3);
  });
});

describe('suspects', () => {
  it('names the one reading of three that stands apart', () => {
    expect(named([70.5, 74.5, 70])).toEqual([[1, 'outlier', undefined]]);
  });

  it.each([[[70.5, 71, 70]], [[70, 71.2, 72.4]], [[70, 70, 72]], [[70.5]], [[]], [[70, 74]]])(
    'names none in %j',
    (values) => {
      expect(named(values)).toEqual([]);
    },
  );

  it.each([
    [
      [62.5, 62, 26.5],
      [2, 'transposed', 6250],
    ],
    [
      [62.5, 65.2, 62],
      [1, 'transposed', 6250],
    ],
    [
      [70.5, 7.05, 70],
      [1, 'decimalShift', 7050],
    ],
    [
      [625, 62, 62.5],
      [0, 'decimalShift', 6250],
    ],
    [
      [70.5, 17.5, 70],
      [1, 'teenTy', 7050],
    ],
    [
      [70, 17, 70.5],
      [1, 'teenTy', 7000],
    ],
    [
      [75, 17.5, 75.5],
      [1, 'teenTy', 7500],
    ],
  ] as const)('names the slip in %j', (values, expected) => {
    expect(named(values)).toEqual([expected]);
  });

  it('hears fifty where fifteen does not fit, and fifteen where fifty does not', () => {
    expect(named([15, 50.5], [3000, 8500])).toEqual([[0, 'teenTy', 5000]]);
    expect(named([50, 15, 15.5], [200, 6000])).toEqual([[0, 'teenTy', 1500]]);
  });

  it('names both of two readings that are each other’s slip', () => {
    expect(named([56, 65])).toEqual([
      [0, 'transposed', 6500],
      [1, 'transposed', 5600],
    ]);
  });

  it('lets two millimetres pass and names what lies just beyond', () => {
    expect(named([70, 70.1, 72])).toEqual([]);
    expect(named([70, 70.1, 72.01])).toEqual([[2, 'outlier', undefined]]);
  });

  it('tells the middle of the others, on whichever side the suspect lies', () => {
    const text = (values: readonly number[]) => suspects(hundredths(values), FACE)[0]?.text;
    expect(text([70.5, 74.5, 70])).toContain('their middle is 70.25');
    expect(text([70.5, 66, 70])).toContain('their middle is 70.25');
    expect(text([70.5, 66, 70, 71])).toContain('their middle is 70.5');
  });

  it('names by Dixon’s Q what hides from the z-score behind two clusters', () => {
    expect(named([70, 70, 73, 73, 80.7])).toEqual([[4, 'outlier', undefined]]);
    expect(named([70, 70, 73, 73, 80])).toEqual([]);
  });

  it('proposes nothing implausible', () => {
    expect(named([70.5, 7.05, 70], [0, 5000])).toEqual([[1, 'outlier', undefined]]);
  });

  it('finds two slips in one set of three', () => {
    expect(named([70.5, 7.05, 705])).toEqual([
      [1, 'decimalShift', 7050],
      [2, 'decimalShift', 7050],
    ]);
  });

  it('passes over what is no number and keeps the places of the others', () => {
    expect(suspects([NaN, 7050, 7450, -3, 7000], FACE).map((s) => s.index)).toEqual([2]);
  });

  it('never throws, and what it proposes is plausible and agrees better than what was written', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 99999 }), { maxLength: 8 }), (values) => {
        for (const s of suspects(values, FACE)) {
          expect(s.index).toBeLessThan(values.length);
          if (s.perhaps === undefined) continue;
          expect(s.perhaps).toBeGreaterThanOrEqual(FACE[0]);
          expect(s.perhaps).toBeLessThanOrEqual(FACE[1]);
          const others = values.filter((_, i) => i !== s.index);
          const near = (value: number) => others.filter((o) => Math.abs(o - value) <= 200).length;
          expect(near(s.perhaps)).toBeGreaterThan(near(values[s.index]!));
        }
      }),
    );
  });

  it('names nothing in a set that spans no more than 2 mm', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4000, max: 10000 }),
        fc.array(fc.integer({ min: 0, max: 200 })),
        (base, offsets) => {
          expect(
            suspects(
              offsets.map((o) => base + o),
              FACE,
            ),
          ).toEqual([]);
        },
      ),
    );
  });
});

describe('restSpace', () => {
  it.each([
    [[70.5, 71, 70], [67.5, 67.5, 67.5], 3, 'usual'],
    [[70.5, 71, 70], [69.5, 69.5, 69.5], 1, 'small'],
    [[70, 70, 70], [71, 71, 71], -1, 'impossible'],
    [[70], [68], 2, 'usual'],
    [[70], [66], 4, 'usual'],
    [[70], [65.99], 4.01, 'large'],
    [[70], [68.01], 1.99, 'small'],
    [[70], [70], 0, 'small'],
  ] as const)('%j less %j', (rest, closed, spaceMm, verdict) => {
    const space = restSpace(hundredths(rest), hundredths(closed));
    expect(space).toMatchObject({ ok: true, value: { verdict } });
    if (space.ok) expect(space.value.spaceMm).toBeCloseTo(spaceMm, 10);
  });

  it('says when the scatter was assumed, and uses the table’s half width for it', () => {
    const one = restSpace([7000], [6700]);
    expect(one.ok && one.uncertainty).toBeCloseTo(2.77, 2);
    expect(one.ok && one.inputs.join(' ')).toContain('assumed');
  });

  it('pools the scatter of three and three', () => {
    const three = restSpace([7050, 7100, 7000], [6700, 6750, 6800]);
    expect(three.ok && three.inputs.join(' ')).toContain('4 degrees of freedom');
    expect(three.ok && three.uncertainty).toBeCloseTo(2.776 * 0.5 * Math.sqrt(2 / 3), 3);
  });

  it.each([
    [[], [7000], 'empty'],
    [[7000], [], 'empty'],
    [[NaN], [7000], 'notANumber'],
    [[7000], [-7000], 'negative'],
  ] as const)('refuses %j and %j as %s', (rest, closed, reason) => {
    expect(restSpace(rest, closed)).toMatchObject({ ok: false, reason });
  });
});

describe('setAdvice', () => {
  it.each([
    [0.5, 2, 'tooFew'],
    [1, 3, 'accept'],
    [1.01, 3, 'twoMore'],
    [2, 3, 'twoMore'],
    [2.01, 5, 'repeatAll'],
    [NaN, 3, 'repeatAll'],
    [-1, 3, 'repeatAll'],
    [0.5, NaN, 'tooFew'],
  ] as const)('range %s of %s readings: %s', (range, n, advice) => {
    expect(setAdvice(range, n)).toBe(advice);
  });
});

describe('pinChange', () => {
  it('closes a record made at rest height by the space, at chin, rim, molar and pin', () => {
    const change = pinChange({ restMm: 70, recordedMm: 70, targetSpaceMm: 3 });
    if (!change.ok) throw new Error(change.text);
    const { chinMm, incisalMm, incisalRangeMm, molarMm, molarRangeMm, pinMm, warnOver6 } = change.value;
    expect(chinMm).toBe(-3);
    expect(incisalMm).toBeCloseTo(-2.51, 3);
    expect(incisalRangeMm[0]).toBeCloseTo(-3, 10);
    expect(incisalRangeMm[1]).toBeCloseTo(-2.4, 10);
    expect(molarMm).toBeCloseTo(-1.589, 3);
    expect(molarRangeMm[0]).toBeCloseTo(-1.86, 10);
    expect(pinMm).toBeCloseTo(1.5 * incisalMm, 10);
    expect(change.value.incisalForwardMm).toBeGreaterThan(0);
    expect(warnOver6).toBe(false);
  });

  it('changes nothing when the record was made at the wanted height', () => {
    expect(pinChange({ restMm: 70, recordedMm: 67, targetSpaceMm: 3 })).toMatchObject({
      value: { chinMm: 0, warnOver6: false },
    });
  });

  it('warns once the pin would move more than 6 mm', () => {
    const warned = (recordedMm: number) => {
      const change = pinChange({ restMm: 70, recordedMm, targetSpaceMm: 3 });
      return change.ok && change.value.warnOver6;
    };
    expect(warned(71.5)).toBe(false);
    expect(warned(72)).toBe(true);
  });

  it('narrows to what the patient’s own values leave open', () => {
    const wide = pinChange({ restMm: 70, recordedMm: 64, targetSpaceMm: 3, hinge: { radiusMm: 95 } });
    const narrow = pinChange({
      restMm: 70,
      recordedMm: 64,
      targetSpaceMm: 3,
      hinge: { radiusMm: 95, noseForwardMm: 18, noseDownMm: -27 },
    });
    expect(wide.ok && narrow.ok && narrow.uncertainty! < wide.uncertainty!).toBe(true);
  });

  it.each([
    [{ restMm: NaN, recordedMm: 70, targetSpaceMm: 3 }, 'notANumber'],
    [{ restMm: 70, recordedMm: Infinity, targetSpaceMm: 3 }, 'notANumber'],
    [{ restMm: 70, recordedMm: 70, targetSpaceMm: -1 }, 'negative'],
    [{ restMm: 0, recordedMm: 70, targetSpaceMm: 3 }, 'outOfRange'],
    [{ restMm: 70, recordedMm: 70, targetSpaceMm: 70 }, 'inconsistent'],
    [{ restMm: 70, recordedMm: 700, targetSpaceMm: 3 }, 'noSolution'],
    [{ restMm: 70, recordedMm: 70, targetSpaceMm: 3, hinge: { radiusMm: 9 } }, 'outOfRange'],
  ] as const)('refuses %j as %s', (input, reason) => {
    expect(pinChange(input)).toMatchObject({ ok: false, reason });
  });
});
