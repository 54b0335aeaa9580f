/** A material planned back from the end of its working time. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plannedBack } from '../../../src/domain/measure/planned-back.ts';
import { sources } from '../../../src/domain/measure/sources.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import type { Material } from '../../../src/domain/protocol/types.ts';

const regular = defaultPractice.materials.find(({ id }) => id === 'alginate-regular')!;
const planned = (change: Partial<Material>) => plannedBack({ ...regular, ...change });

describe('a material planned back', () => {
  it('is seated fifteen seconds before its working time ends, and loaded twenty seconds before that', () => {
    // Regular alginate: mixed to 1:00, worked to 2:00, out from 4:30. 2:00 − 0:15 = 1:45; 1:45 − 0:20 would be 1:25, but no
    // part may take more than a quarter of the minute between mixing and the end of working: 1:45 − 0:15 = 1:30.
    expect(planned({})).toMatchObject({ ok: true, value: { mixByS: 60, loadByS: 90, seatByS: 105, outFromS: 270 } });
    // With 75 s between them, 18.75 s at most: 2:15 − 0:15 = 2:00; 2:00 − 0:18.75 = 1:41.25, rounded down.
    expect(planned({ workingS: 135 })).toMatchObject({ value: { loadByS: 101, seatByS: 120 } });
    // With two minutes both margins are had in full: 3:00 − 0:15 = 2:45; 2:45 − 0:20 = 2:25.
    expect(planned({ workingS: 180 })).toMatchObject({ value: { loadByS: 145, seatByS: 165 } });
  });

  it('keeps its order where little time is left: the margins shrink to a quarter each', () => {
    // Compound: 15 s to 30 s. A quarter of 15 s is 3.75 s: 26.25 and 22.5, rounded down to the earlier second.
    expect(planned({ mixS: 15, workingS: 30, removeS: 90 })).toMatchObject({
      value: { mixByS: 15, loadByS: 22, seatByS: 26, outFromS: 90 },
    });
  });

  it('says that its margins are a choice, not a figure of the leaflet', () => {
    const plan = planned({});
    expect(plan.ok && sources[plan.source].status).toBe('our choice');
    expect(plan.ok && plan.inputs.join(' ')).toContain('generic');
  });

  it('refuses a leaflet that contradicts itself, and figures that are none', () => {
    expect(planned({ workingS: 50 })).toMatchObject({ ok: false, reason: 'inconsistent' });
    expect(planned({ removeS: 120 })).toMatchObject({ ok: false, reason: 'inconsistent' });
    expect(planned({ mixS: Number.NaN })).toMatchObject({ ok: false, reason: 'notANumber' });
  });

  it('never asks for loading before the mix is done, nor for seating at or after the end of working', () => {
    const times = fc.record({ mixS: fc.integer({ min: 1, max: 600 }), span: fc.integer({ min: 1, max: 900 }) });
    fc.assert(
      fc.property(times, ({ mixS, span }) => {
        const plan = planned({ mixS, workingS: mixS + span, removeS: mixS + span + 1 });
        if (!plan.ok) throw new Error(plan.text);
        const { mixByS, loadByS, seatByS, outFromS } = plan.value;
        expect(mixByS).toBeLessThanOrEqual(loadByS);
        expect(loadByS).toBeLessThanOrEqual(seatByS);
        expect(seatByS).toBeLessThan(mixS + span);
        expect(mixS + span - seatByS).toBeLessThanOrEqual(16);
        expect(outFromS).toBe(mixS + span + 1);
        for (const seconds of [loadByS, seatByS]) expect(Number.isInteger(seconds)).toBe(true);
      }),
    );
  });
});
