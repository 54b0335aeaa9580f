/** Where a finger comes down on the millimetre sheet, worked by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { around, closeUp, nudged, SHEET_MM, tapped, WHOLE } from '../../src/screens/drawings/sheet.ts';

describe('a tap on the sheet', () => {
  it.each([
    // The whole sheet is 60 mm: a sixth across is 10 mm, a third up (two thirds down) is 20 mm.
    [1 / 6, 2 / 3, 10, 20],
    // 0.38 of 60 is 22.8 → 23.0; 0.37 down leaves 0.63 of 60 = 37.8 → 38.0.
    [0.38, 0.37, 23, 38],
    [0, 1, 0, 0],
    [1, 0, 60, 60],
    [-0.2, 1.3, 0, 0],
  ])('at %f across and %f down is %f, %f', (right, down, xMm, yMm) => {
    expect(tapped(WHOLE, right, down)).toEqual({ xMm, yMm });
  });

  it('falls on half millimetres in the close-up, which holds the mark', () => {
    // About (10, 20) the close-up runs from 4 to 16 and from 14 to 26: half way is 10, 20; 0.55 of 12 is 6.6 → 10.5.
    const close = closeUp({ xMm: 10, yMm: 20 });
    expect(close).toEqual({ left: 4, bottom: 14, size: 12 });
    expect(tapped(close, 0.55, 0.5)).toEqual({ xMm: 10.5, yMm: 20 });
  });

  it('arrows move by a tenth and stop at the edge', () => {
    expect(nudged({ xMm: 10, yMm: 20 }, 3, -1)).toEqual({ xMm: 10.3, yMm: 19.9 });
    expect(nudged({ xMm: 0, yMm: SHEET_MM }, -1, 1)).toEqual({ xMm: 0, yMm: SHEET_MM });
  });

  it('whatever is tapped or nudged stays on the sheet and on hundredths', () => {
    const share = fc.double({ min: -1, max: 2, noNaN: true });
    const steps = fc.integer({ min: -900, max: 900 });
    fc.assert(
      fc.property(share, share, steps, steps, (right, down, dx, dy) => {
        const first = tapped(WHOLE, right, down);
        const mark = nudged(tapped(closeUp(first), right, down), dx, dy);
        for (const mm of [mark.xMm, mark.yMm]) {
          expect(mm).toBeGreaterThanOrEqual(0);
          expect(mm).toBeLessThanOrEqual(SHEET_MM);
          expect(Math.round(mm * 100) / 100).toBe(mm);
        }
      }),
    );
  });

  it('what is shown holds every point', () => {
    const piece = around([
      { xMm: 10, yMm: 20 },
      { xMm: 31, yMm: 24 },
    ]);
    expect(piece.left).toBeLessThanOrEqual(10);
    expect(piece.left + piece.size).toBeGreaterThanOrEqual(31);
    expect(piece.bottom).toBeLessThanOrEqual(20);
    expect(piece.bottom + piece.size).toBeGreaterThanOrEqual(24);
    expect(around([])).toEqual(WHOLE);
  });
});
