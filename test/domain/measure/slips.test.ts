import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slipsOf } from '../../../src/domain/measure/slips.ts';
import { sources } from '../../../src/domain/measure/sources.ts';
import { dixonQ, modifiedZ, pooledSd, t95 } from '../../../src/domain/measure/spread.ts';
import { suspects } from '../../../src/domain/measure/vertical.ts';

const of = (value: number, kind: string) =>
  slipsOf(value)
    .filter((slip) => slip.kind === kind)
    .map((slip) => slip.value);

describe('slips', () => {
  it.each([
    [6250, 'transposed', [2650, 6520]],
    [6200, 'transposed', [2600]],
    [705, 'transposed', [75, 750]],
    [1500, 'teenTy', [5000]],
    [5000, 'teenTy', [1500]],
    [1750, 'teenTy', [7050, 7500]],
    [7500, 'teenTy', [1750]],
    [1200, 'teenTy', []],
    [2000, 'teenTy', []],
    [6250, 'decimalShift', [62500, 625, 625000]],
    [7500, 'decimalShift', [75000, 750, 750000, 75, 7050]],
    [7050, 'decimalShift', [70500, 705, 705000, 7500]],
  ])('%s as %s could have been %j', (value, kind, expected) => {
    expect(of(value, kind)).toEqual(expected);
  });

  it('never proposes the value itself, a fraction of a hundredth, or the same twice', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (value) => {
        const values = slipsOf(value).map((slip) => slip.value);
        expect(values).not.toContain(value);
        expect(new Set(values).size).toBe(values.length);
        expect(values.every((v) => Number.isInteger(v) && v >= 0)).toBe(true);
      }),
    );
  });

  it.each([NaN, Infinity, -1, 70.5])('has none for %s', (value) => {
    expect(slipsOf(value)).toEqual([]);
  });

  it('a suspect does not depend on the order the readings came in', () => {
    const reading = fc.oneof(fc.integer({ min: 6900, max: 7100 }), fc.integer({ min: 400, max: 12_000 }));
    fc.assert(
      fc.property(fc.array(reading, { minLength: 2, maxLength: 7 }), (values) => {
        const named = (list: readonly number[]) =>
          suspects(list, [4000, 11000])
            .map((s) => `${list[s.index]} ${s.why} ${s.perhaps}`)
            .toSorted();
        // A reading that is there twice at both ends could be named by Dixon's Q at either; sets without ties only.
        fc.pre(new Set(values).size === values.length);
        expect(named(values.toReversed())).toEqual(named(values));
      }),
    );
  });
});

describe('spread', () => {
  it('has no Q for two readings or for equal ones', () => {
    expect(dixonQ([1, 2])).toBeUndefined();
    expect(dixonQ([5, 5, 5])).toBeUndefined();
    expect(dixonQ([7050, 7450, 7000])).toEqual({ index: 1, q: 400 / 450 });
    expect(dixonQ([7050, 6650, 7100])).toEqual({ index: 1, q: 400 / 450 });
  });

  it('does not let two equal readings make the third infinitely far', () => {
    const scores = modifiedZ([7000, 7000, 7050], 25);
    expect(scores[2]).toBeCloseTo((0.6745 * 50) / 25, 12);
    expect(modifiedZ([], 25)).toEqual([]);
  });

  it('pools nothing from single readings', () => {
    expect(pooledSd([[7000], [6700]])).toBeUndefined();
    expect(pooledSd([[7000], [6700, 6800]])).toMatchObject({ degrees: 1 });
  });

  it('t falls towards the normal value without a jump at the end of the table', () => {
    for (let degrees = 1; degrees < 200; degrees += 1) expect(t95(degrees + 1)).toBeLessThan(t95(degrees));
    expect(t95(100_000)).toBeCloseTo(1.96, 3);
  });
});

describe('sources', () => {
  it('each has a citation worth the name', () => {
    for (const [id, source] of Object.entries(sources)) {
      expect(source.citation.length, id).toBeGreaterThan(20);
      expect(source.citation.endsWith('.'), id).toBe(true);
    }
  });
});
