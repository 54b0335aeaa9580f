import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tray } from '../../../src/domain/protocol/types.ts';
import { SPACERS, rankTrays, trayBorder, traySpacer, widthFromPadCentres } from '../../../src/domain/measure/trays.ts';

const set = (...widths: number[]): Tray[] =>
  widths.map((mm) => ({ id: `u${mm}`, label: `Upper ${mm}`, arch: 'upper', innerWidth: Math.round(mm * 100) }));

describe('rankTrays', () => {
  it('puts the narrowest tray that is wide enough first, then wider ones, then the too narrow ones', () => {
    const ranked = rankTrays(set(60, 66, 72, 78), 5800, 500);
    if (!ranked.ok) throw new Error(ranked.text);
    expect(ranked.value.map((r) => [r.tray.id, r.fit, r.leftMm, r.spareMm])).toEqual([
      ['u72', 'fits', 7, 4],
      ['u78', 'buildUp', 10, 10],
      ['u66', 'tight', 4, -2],
      ['u60', 'tight', 1, -8],
    ]);
    expect(ranked.value.map((r) => r.rank)).toEqual([1, 2, 3, 4]);
  });

  it('says in words what to do', () => {
    const advice = (trays: Tray[]) => {
      const ranked = rankTrays(trays, 5800, 500);
      return ranked.ok ? ranked.value.map((r) => r.advice) : [];
    };
    expect(advice(set(68))).toEqual(['Fits.']);
    expect(advice(set(68.5))).toEqual(['Fits, 0.5 mm to spare.']);
    expect(advice(set(66, 78))[0]).toContain('build up');
    expect(advice(set(66, 78))[1]).toContain('take the next size');
    expect(advice(set(66))[0]).toContain('no wider tray');
  });

  it.each([
    [[], 5800, 500, 'empty'],
    [set(60), NaN, 500, 'notANumber'],
    [set(60), -1, 500, 'negative'],
    [set(60), 0, 500, 'outOfRange'],
    [set(60), 5800, Infinity, 'notANumber'],
    [set(60), 5800, 500.5, 'offGrid'],
    [[...set(60), { id: 'l', label: 'Lower', arch: 'lower' as const, innerWidth: 6000 }], 5800, 500, 'inconsistent'],
    [[{ id: 'x', label: 'X', arch: 'upper' as const, innerWidth: NaN }], 5800, 500, 'notANumber'],
  ] as const)('refuses bad input (%#)', (trays, ridge, clearance, reason) => {
    expect(rankTrays(trays, ridge, clearance)).toMatchObject({ ok: false, reason });
  });

  it('loses no tray, and never ranks a too narrow one before one that is wide enough', () => {
    const width = fc.integer({ min: 3000, max: 12000 });
    fc.assert(
      fc.property(
        fc.array(width, { minLength: 1 }),
        width,
        fc.integer({ min: 0, max: 1000 }),
        (widths, ridge, room) => {
          const ranked = rankTrays(set(...widths.map((w) => w / 100)), ridge, room);
          if (!ranked.ok) throw new Error(ranked.text);
          expect(ranked.value).toHaveLength(widths.length);
          const tight = ranked.value.map((r) => r.fit === 'tight');
          expect(tight).toEqual([...tight].sort((a, b) => Number(a) - Number(b)));
          for (const r of ranked.value) {
            expect(r.leftMm + r.rightMm + ridge / 100).toBeCloseTo(r.tray.innerWidth / 100, 9);
            expect(r.fit === 'tight').toBe(r.leftMm < room / 100);
          }
        },
      ),
    );
  });
});

describe('trayBorder', () => {
  it('gives a length from the sulcus depth alone', () => {
    expect(trayBorder(1200)).toMatchObject({ ok: true, value: { lengthMm: [9, 10] } });
    expect(trayBorder(150)).toMatchObject({ ok: true, value: { lengthMm: [0, 0] } });
  });

  it.each([
    [1000, 'right', 2],
    [900, 'right', 3],
    [1150, 'trim', 0.5],
    [800, 'add', 4],
    [1300, 'trim', -1],
  ] as const)('a flange of %s in a sulcus of 12 mm: %s', (flange, verdict, shortMm) => {
    expect(trayBorder(1200, flange)).toMatchObject({ ok: true, value: { verdict, shortMm } });
  });

  it('follows the practice’s own gap', () => {
    expect(trayBorder(1200, 1000, [300, 400])).toMatchObject({ value: { verdict: 'trim', lengthMm: [8, 9] } });
  });

  it.each([
    [NaN, undefined, [200, 300], 'notANumber'],
    [-1, undefined, [200, 300], 'negative'],
    [1200, Infinity, [200, 300], 'notANumber'],
    [1200, undefined, [300, 200], 'inconsistent'],
  ] as const)('refuses bad input (%#)', (depth, flange, gap, reason) => {
    expect(trayBorder(depth, flange, gap)).toMatchObject({ ok: false, reason });
  });
});

describe('traySpacer', () => {
  it('knows every material of its table and refuses the rest by name', () => {
    for (const [material, value] of Object.entries(SPACERS))
      expect(traySpacer(material)).toMatchObject({ ok: true, value });
    expect(traySpacer('chewing gum')).toMatchObject({ ok: false, reason: 'unknown' });
    expect(traySpacer('toString')).toMatchObject({ ok: false, reason: 'unknown' });
  });
});

describe('widthFromPadCentres', () => {
  it('adds half a pad on each side', () => {
    expect(widthFromPadCentres(5200)).toMatchObject({ ok: true, value: 5994 });
    expect(widthFromPadCentres(5200, -1)).toMatchObject({ ok: false, reason: 'negative' });
    expect(widthFromPadCentres(NaN)).toMatchObject({ ok: false, reason: 'notANumber' });
  });
});
