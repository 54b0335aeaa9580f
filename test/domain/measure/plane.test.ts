import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  lateralGuidance,
  meanInclination,
  protrusiveInclination,
  sagittalFromLateral,
} from '../../../src/domain/measure/condyle.ts';
import {
  incisalGuidance,
  padHeight,
  planeSlope,
  planeTilt,
  RIM_HEIGHTS,
  rimHeight,
} from '../../../src/domain/measure/plane.ts';
import { apexScatter, tracing } from '../../../src/domain/measure/tracing.ts';

const p = (x: number, y: number) => ({ x, y });
const RECORD = { forwardMm: 5, molarGapMm: 1.5, incisalGapMm: 0 };

describe('plane', () => {
  it.each([
    [399, 'lower', 'low'],
    [400, 'middle', 'none'],
    [800, 'middle', 'none'],
    [801, 'upper', 'high'],
  ] as const)('a plane %s up a pad of 1200 lies in the %s third', (plane, third, flag) => {
    expect(padHeight(1200, plane)).toMatchObject({ value: { third, flag } });
  });

  it.each([
    [100, 0, 90, true],
    [0, 100, 0, false],
    [0, 0, 0, false],
  ] as const)('overlap %s over %s: %s°', (vertical, horizontal, angleDeg, flag) => {
    expect(incisalGuidance(vertical, horizontal)).toMatchObject({ value: { angleDeg, flag } });
  });

  it.each(Object.entries(RIM_HEIGHTS))('%s has its usual range with both ends included', (place, [low, high]) => {
    const verdict = (mm: number) => {
      const found = rimHeight(place as 'upperFront', mm);
      return found.ok ? found.value.verdict : found.reason;
    };
    expect(verdict(low)).toBe('usual');
    expect(verdict(high)).toBe('usual');
    expect(verdict(high + 0.1)).toBe('high');
    if (low > 0) expect(verdict(low - 0.1)).toBe('low');
  });

  it.each([
    [padHeight(0, 1), 'outOfRange'],
    [padHeight(1200, NaN), 'notANumber'],
    [incisalGuidance(-1, 100), 'negative'],
    [planeTilt(100, 0), 'outOfRange'],
    [planeSlope(30, 30, 0), 'outOfRange'],
    [rimHeight('roof' as 'upperFront', 1), 'unknown'],
    [rimHeight('upperFront', 100), 'outOfRange'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });
});

describe('tracing', () => {
  it('is the same whichever way up the plate lies and wherever it stands', () => {
    const left = [p(-1, -0.5), p(-2, -1.2), p(-4, -2.4), p(-5, -2.9)];
    const right = [p(1, -0.7), p(2, -1.2), p(4, -2.6), p(5, -3.1)];
    const first = tracing(left, right);
    if (!first.ok) throw new Error(first.text);
    fc.assert(
      fc.property(
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: -50, max: 50 }),
        fc.boolean(),
        (dx, dy, flip) => {
          const moved = (list: typeof left) => list.map(({ x, y }) => p(x + dx, (flip ? -y : y) + dy));
          const other = tracing(moved(left), moved(right));
          if (!other.ok) throw new Error(other.text);
          expect(other.value.angleDeg).toBeCloseTo(first.value.angleDeg, 9);
          expect(other.value.asymmetryDeg).toBeCloseTo(first.value.asymmetryDeg, 9);
          expect(other.value.apex.x - dx).toBeCloseTo(first.value.apex.x, 9);
        },
      ),
    );
  });

  it.each([
    [[p(0, 0), p(-5, -1.2)], [p(0, 0), p(5, -1.2)], 'blunt'],
    [[p(0, 0), p(-5, -1.5)], [p(0, 0), p(5, -1.5)], 'wide'],
    [[p(0, 0), p(-5, -3)], [p(0, 0), p(5, -3)], 'usual'],
    [[p(0, 0), p(-3, -4)], [p(0, 0), p(3, -4)], 'sharp'],
  ] as const)('%j and %j: %s', (left, right, verdict) => {
    expect(tracing(left, right)).toMatchObject({ value: { verdict } });
  });

  it.each([
    [[p(0, 0)], [p(0, 0), p(1, 1)], 'tooFew'],
    [[p(0, 0), p(NaN, 1)], [p(0, 0), p(1, 1)], 'notANumber'],
    [[p(1, 1), p(1, 1)], [p(0, 0), p(1, 1)], 'noSolution'],
    [[p(0, 0), p(1, 1)], [p(0, 1), p(1, 2)], 'noSolution'],
  ] as const)('refuses %j and %j as %s', (left, right, reason) => {
    expect(tracing(left, right)).toMatchObject({ ok: false, reason });
  });

  it.each([
    [[p(0, 0), p(0, 0.5)], 'accept'],
    [[p(0, 0), p(0, 0.51)], 'repeat'],
    [[p(0, 0), p(0, 1)], 'repeat'],
    [[p(0, 0), p(0, 1.01)], 'reject'],
  ] as const)('apices %j: %s', (apices, verdict) => {
    expect(apexScatter(apices)).toMatchObject({ value: { verdict } });
  });

  it('measures each leg from the midline, whichever way the legs point', () => {
    for (const down of [-1, 1]) {
      const found = tracing([p(0, 0), p(-6, 3 * down)], [p(0, 0), p(5, 3 * down)]);
      if (!found.ok) throw new Error(found.text);
      expect(found.value.leftDeg).toBeCloseTo(63.435, 3);
      expect(found.value.rightDeg).toBeCloseTo(59.036, 3);
    }
  });

  it('needs two apices', () => {
    expect(apexScatter([p(0, 0)])).toMatchObject({ ok: false, reason: 'tooFew' });
  });
});

describe('condyle', () => {
  it('carries the large uncertainty of a small gap, and halves the variance with two records', () => {
    const one = protrusiveInclination(RECORD);
    if (!one.ok) throw new Error(one.text);
    expect(one.uncertainty).toBeGreaterThan(9);
    const two = meanInclination([RECORD, RECORD]);
    if (!two.ok) throw new Error(two.text);
    expect(two.value).toMatchObject({ n: 2, tooFew: false });
    expect(two.value.toPlaneDeg).toBeCloseTo(one.value.toPlaneDeg, 9);
    expect(two.uncertainty).toBeCloseTo(one.uncertainty! / Math.SQRT2, 9);
  });

  it.each([
    [protrusiveInclination({ ...RECORD, forwardMm: 0.5 }), 'outOfRange'],
    [protrusiveInclination({ ...RECORD, molarGapMm: -1 }), 'negative'],
    [protrusiveInclination({ ...RECORD, incisalAheadMm: 40 }), 'inconsistent'],
    [protrusiveInclination({ ...RECORD, molarGapMm: 0, incisalGapMm: 3 }), 'inconsistent'],
    [meanInclination([]), 'empty'],
    [meanInclination([RECORD, { ...RECORD, forwardMm: NaN }]), 'notANumber'],
    [lateralGuidance(-1), 'outOfRange'],
    [sagittalFromLateral(11), 'outOfRange'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });

  it('the lateral rule goes both ways', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 90 }), (sagittal) => {
        const lateral = lateralGuidance(sagittal);
        const back = lateral.ok ? sagittalFromLateral(lateral.value) : lateral;
        expect(back.ok && back.value).toBeCloseTo(sagittal, 9);
      }),
    );
  });
});
