import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scale, stackLevels, tickStep, ticks, windowOf } from '../../src/screens/drawings/scale.ts';
import { spreadLabels } from '../../src/screens/drawings/HeightStack.tsx';

const readings = fc.array(
  fc.integer({ min: 0, max: 20_000 }).map((h) => h / 100),
  { minLength: 1, maxLength: 12 },
);

describe('the scale of a drawing', () => {
  it('is linear and meets both ends', () => {
    const x = scale([60, 80], [0, 200]);
    expect([x.at(60), x.at(70), x.at(80)]).toEqual([0, 100, 200]);
  });
  it('is no division by nothing when all values are one', () => {
    expect(scale([5, 5], [10, 20]).at(5)).toBe(10);
  });
  it('the window holds every reading and is never narrower than asked', () => {
    fc.assert(
      fc.property(readings, (values) => {
        const [from, to] = windowOf(values, 3, 10);
        expect(to - from).toBeGreaterThanOrEqual(10);
        expect(from).toBeGreaterThanOrEqual(0);
        for (const value of values) {
          expect(value).toBeGreaterThanOrEqual(from);
          expect(value).toBeLessThanOrEqual(to);
        }
      }),
    );
  });
  it('marks are whole multiples of the step, all of them inside', () => {
    expect(ticks(67, 79, 2)).toEqual([68, 70, 72, 74, 76, 78]);
    expect(ticks(3, 4, 5)).toEqual([]);
  });
  it('the step gives no more marks than asked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 2, max: 60 }), (span, most) => {
        expect(span / tickStep(span, most)).toBeLessThanOrEqual(most);
      }),
    );
  });
  it('marks that would cover each other are stacked', () => {
    fc.assert(
      fc.property(readings, (values) => {
        const levels = stackLevels(values, 1.5);
        const covered = values.flatMap((a, i) =>
          values.slice(0, i).filter((b, j) => levels[i] === levels[j] && Math.abs(a - b) < 1.5),
        );
        expect(covered).toEqual([]);
      }),
    );
  });
  it('labels keep their order and their distance', () => {
    expect(spreadLabels([100, 90, 300], 24)).toEqual([114, 90, 300]);
  });
});
