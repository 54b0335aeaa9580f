import { describe, expect, it } from 'vitest';
import {
  balkwillAngle,
  bonwillAltitude,
  defaultHinge,
  hingePoints,
  hingeSensitivity,
  hingeWith,
  solveHinge,
  turnJaw,
} from '../../../src/domain/measure/hinge.ts';
import { linearChange, pinRule } from '../../../src/domain/measure/pin.ts';

describe('hinge geometry', () => {
  it('takes the patient’s own values and leaves the rest average', () => {
    const made = hingeWith({ radiusMm: 100 });
    expect(made).toEqual({ ok: true, hinge: { ...defaultHinge, radiusMm: 100 } });
  });

  it.each([
    [{ radiusMm: 30 }, 'outOfRange'],
    [{ planeAngleDeg: 60 }, 'outOfRange'],
    [{ planeAngleDeg: NaN }, 'notANumber'],
    [{ noseDownMm: 10 }, 'outOfRange'],
    [{ chinDownMm: 0 }, 'outOfRange'],
    [{ molarBehindMm: Infinity }, 'notANumber'],
  ] as const)('refuses %j as %s, in every function that takes it', (own, reason) => {
    for (const result of [hingeWith(own), turnJaw(1, own), solveHinge('chin', 1, own), hingeSensitivity(1, own)]) {
      expect(result).toMatchObject({ ok: false, reason });
    }
  });

  it('puts the nose above and the chin below the incisors, the molar behind', () => {
    const { incisal, molar, chin, nose } = hingePoints(defaultHinge);
    expect(nose.y).toBeLessThan(incisal.y);
    expect(chin.y).toBeGreaterThan(incisal.y);
    expect(molar.x).toBeLessThan(incisal.x);
  });

  it('solves from incisors and molar as well as from the chin', () => {
    const chin = solveHinge('chin', 3);
    if (!chin.ok) throw new Error(chin.text);
    const { incisalMm, molarMm, turnDeg } = chin.value;
    for (const other of [solveHinge('incisal', incisalMm), solveHinge('molar', molarMm)]) {
      if (!other.ok) throw new Error(other.text);
      expect(other.value.turnDeg).toBeCloseTo(turnDeg, 9);
      expect(other.value.chinMm).toBeCloseTo(3, 9);
    }
  });

  it.each([
    ['chin', 500],
    ['chin', -70],
    ['incisal', 90],
    ['molar', -500],
    ['chin', 100],
  ] as const)('has no answer for %s %s', (place, change) => {
    expect(solveHinge(place, change)).toMatchObject({ ok: false, reason: 'noSolution' });
  });

  it('names what was measured and what is average', () => {
    const own = solveHinge('chin', 1, { radiusMm: 95 });
    expect(own.ok && own.inputs.join('; ')).toContain('own values for radiusMm');
    const average = solveHinge('chin', 1);
    expect(average.ok && average.inputs).toContain('average hinge geometry');
  });

  it('spans the sensitivity that varying nose, chin, angle and molar gives, and no more', () => {
    const range = hingeSensitivity(3);
    if (!range.ok) throw new Error(range.text);
    expect(range.value.incisalMm[0]).toBeCloseTo(2.38, 3);
    expect(range.value.incisalMm[1]).toBeCloseTo(2.984, 3);
    expect(range.value.molarMm[0]).toBeCloseTo(1.257, 3);
  });

  it('varies the angle alone when everything else was measured', () => {
    const { planeAngleDeg: _, ...rest } = defaultHinge;
    const range = hingeSensitivity(3, rest);
    if (!range.ok) throw new Error(range.text);
    expect(range.value.incisalMm[0]).toBeCloseTo(2.432, 3);
    expect(range.value.incisalMm[1]).toBeCloseTo(2.565, 3);
  });

  it('has no span left when everything was measured', () => {
    const range = hingeSensitivity(3, defaultHinge);
    if (!range.ok) throw new Error(range.text);
    expect(range.value.incisalMm[0]).toBe(range.value.incisalMm[1]);
    expect(range.inputs.join('; ')).toContain('varied: nothing');
  });
});

describe('triangle, angle and linear rules', () => {
  it.each([
    [bonwillAltitude(0), 'outOfRange'],
    [bonwillAltitude(-1), 'negative'],
    [balkwillAngle(90, 87.988), 'noSolution'],
    [balkwillAngle(NaN, 87.988), 'notANumber'],
    [pinRule(NaN), 'notANumber'],
    [linearChange(Infinity), 'notANumber'],
    [turnJaw(45), 'outOfRange'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });

  it('keeps the sign: closing closes everywhere', () => {
    expect(pinRule(-3)).toMatchObject({ value: { incisalMm: -2, molar2Mm: -1 } });
    expect(linearChange(-1)).toMatchObject({ value: { incisalMm: -0.83, molarMm: -0.52 } });
  });
});
