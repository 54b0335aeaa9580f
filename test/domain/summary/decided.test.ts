/** What is computed where it decides, each figure worked by hand beside its check. */
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../../src/domain/case/facts.ts';
import { answered } from '../../helpers/facts.ts';
import { at, at2, flag, row, summaryOf } from '../../helpers/sittings.ts';

const apexes = (...points: [number, number][]) =>
  points.flatMap(([x, y], i) => [
    answered(`tracing-${i + 1}-sharp`, 'sharp'),
    ...at(`tracing-${i + 1}-x`, x),
    ...at(`tracing-${i + 1}-y`, y),
  ]);

describe('needle-point tracings', () => {
  it('three close together: their mean, and the circle that holds them', () => {
    // Published worked example (0,0) (0.2,0.1) (0.1,−0.1), moved to (10,20): mean (10.1, 20), furthest pair √(0.2² + 0.1²)
    // = 0.2236, circle √(0.1² + 0.1²) = 0.1414, root mean square √((0.01 + 0.02 + 0.01) / 3) = 0.1155.
    const { tracing, ...rest } = at2(apexes([10, 20], [10.2, 20.1], [10.1, 19.9]));
    expect(tracing?.scatter?.xMm).toBeCloseTo(10.1, 9);
    expect(tracing?.scatter?.yMm).toBeCloseTo(20, 9);
    expect(tracing?.scatter?.largestPairMm).toBeCloseTo(0.2236, 4);
    expect(tracing?.scatter?.radiusMm).toBeCloseTo(0.1414, 4);
    expect(tracing?.scatter?.rmsMm).toBeCloseTo(0.1155, 4);
    expect(tracing?.scatter?.verdict).toBe('accept');
    expect(rest.flags.filter((one) => one.id.startsWith('tracing'))).toEqual([]);
    expect(rest.computed.find((one) => one.id === 'tracing-centre')?.text).toBe(
      '10.1 across, 20.0 up; 3 points within a circle of 0.1 mm, furthest two 0.2 mm apart',
    );
  });

  it.each([
    // 0.7 mm apart: between 0.5 and 1.0, another tracing; published example with 1.253 mm: rejected.
    [
      'another',
      [
        [10, 20],
        [10.7, 20],
      ],
      'repeat',
      '0.7 mm',
      /one more/i,
    ],
    [
      'rejected',
      [
        [10, 20],
        [10.2, 20.1],
        [11.1, 19.4],
      ],
      'reject',
      '1.3 mm',
      /again/i,
    ],
  ] as const)('too far apart is flagged: %s', (_name, points, verdict, apart, todo) => {
    const summary = at2(apexes(...points.map(([x, y]): [number, number] => [x, y])));
    expect(summary.tracing?.scatter?.verdict).toBe(verdict);
    const found = flag(summary, 'tracing-scatter');
    expect(found).toMatchObject({ level: 'disagrees', step: 'tracing-ready' });
    expect(found?.what).toContain(apart);
    expect(found?.todo).toMatch(todo);
    expect(row(summary, 'tracing-centre')?.text).toMatch(/not accepted/);
  });

  it('a half-read tracing is no point, and one point has no scatter', () => {
    const summary = at2(apexes([10, 20]), at('tracing-2-x', 10));
    expect(summary.tracing?.apexes).toEqual([{ n: 1, xMm: 10, yMm: 20, sharp: true }]);
    expect(summary.tracing?.scatter).toBeUndefined();
  });

  it('the angle between the legs, from the mean point to their ends', () => {
    // Legs to (−5, −3) and (5, −3) from the point: 2 × atan(5 / 3) = 118.072°, equal on both sides.
    const legs = [...at('leg-right-x', 35), ...at('leg-right-y', 27), ...at('leg-left-x', 25), ...at('leg-left-y', 27)];
    const summary = at2(apexes([30, 30]), legs);
    expect(summary.tracing?.arch?.angleDeg).toBeCloseTo(118.072, 3);
    expect(summary.tracing?.arch?.asymmetryDeg).toBeCloseTo(0, 9);
    expect(row(summary, 'tracing-angle')?.text).toContain('118°');
    // (−3, −4) and (3, −4): 2 × atan(3 / 4) = 73.740°, too sharp: look again.
    const sharp = [
      ...at('leg-right-x', 33),
      ...at('leg-right-y', 26),
      ...at('leg-left-x', 27),
      ...at('leg-left-y', 26),
    ];
    expect(flag(at2(apexes([30, 30]), sharp), 'tracing-angle')?.what).toContain('74°');
  });

  it('a point called blunt is named, for it cannot be read', () => {
    const summary = at2(answered('tracing-1-sharp', 'blunt'), at('tracing-1-x', 10), at('tracing-1-y', 20));
    expect(flag(summary, 'tracing-blunt')?.what).toContain('first');
  });
});

const FACE = [
  ...at('interalar-width', 35.2),
  ...at('face-width', 136),
  ...at('face-height', 184),
  ...at('canine-lines', 46),
];

describe('tooth sizes', () => {
  it('every rule at hand, with the spread; too far apart is for the clinician', () => {
    const { teeth } = at2(FACE);
    const by = (id: string) => teeth?.find((one) => one.id === id);
    // Face width 136 / 16 = 8.5. Face height 184 / 20 = 9.2 and / 16 = 11.5.
    expect(by('central')).toMatchObject({ lowMm: 8.5, highMm: 8.5, judge: false });
    expect(by('length')).toMatchObject({ judge: false });
    expect(by('length')?.lowMm).toBeCloseTo(9.2, 9);
    expect(by('length')?.highMm).toBeCloseTo(11.5, 9);
    // Six: 136 / 3.36 = 40.476, 136 / 3.3 = 41.212, along the rim 46, nose 35.2 × 1.31 = 46.112; spread 5.636 > 4.
    expect(by('six')?.lowMm).toBeCloseTo(40.476, 3);
    expect(by('six')?.highMm).toBeCloseTo(46.112, 3);
    expect(by('six')?.spreadMm).toBeCloseTo(5.636, 3);
    expect(by('six')?.judge).toBe(true);
    expect(by('six')?.estimates).toHaveLength(4);
    // Nose + 7 = 42.2 straight; nose × 1.03 = 36.256 between the tips. Lower six: 40.476 / 1.3 = 31.135, 46.112 / 1.3 = 35.471.
    expect(by('sixStraight')?.lowMm).toBeCloseTo(42.2, 9);
    expect(by('tips')?.lowMm).toBeCloseTo(36.256, 3);
    expect(by('lowerSix')?.lowMm).toBeCloseTo(31.135, 2);
    expect(by('lowerSix')?.highMm).toBeCloseTo(35.471, 2);
  });

  it('stand among the computed values with both ends and every rule', () => {
    const six = row(at2(FACE), 'teeth-six');
    expect(six?.text).toBe('40.5 to 46.1 mm by 4 rules, 5.6 mm apart: the clinician judges');
    expect(six?.rangeMm?.[0]).toBeCloseTo(40.476, 3);
    expect(six?.inputs.join()).toMatch(/nose width × 1\.31: 46\.1 mm/);
  });

  it('measured at visit 2, they are at hand at the try-in', () => {
    const summary = summaryOf({ visit: 2, bodies: [FACE] }, { visit: 3, day: 7, bodies: [] });
    expect(row(summary, 'teeth-central')?.text).toContain('8.5 mm');
    expect(row(summary, 'teeth-central')?.inputs.join()).toContain('visit 2');
  });

  it('only of the denture that is made', () => {
    const ids = (answer: string) =>
      summaryOf({ visit: 1, bodies: [answered('arches', answer)] }, { visit: 2, day: 7, bodies: [FACE] }).teeth?.map(
        (one) => one.id,
      );
    expect(ids('upper-only')).toEqual(['six', 'sixStraight', 'tips', 'central', 'length']);
    expect(ids('lower-only')).toEqual(['lowerSix']);
    expect(ids('both')).toHaveLength(6);
  });

  it('nothing measured, nothing said', () => {
    expect(at2().teeth).toBeUndefined();
  });
});

const heights = (rest: readonly number[], closedMm: readonly number[]): FactBody[] => [
  answered('marks', 'made'),
  answered('bases-rest', 'both'),
  ...at('rest-height', ...rest),
  answered('bases-closed', 'both'),
  ...at('closed-height', ...closedMm),
];

describe('heights, by the marks of each visit', () => {
  it.each([2, 3, 4, 5])('visit %i: rest space, speaking space and what the wanted space would take', (visit) => {
    // Other marks at the visit before: heights 5 mm larger, space 2.0. Here rest 71.5, closed 69.0: space 2.5; the wanted
    // 3.0 needs the chin 0.5 mm higher. Rim 0.8 to 1.0 of that, pin half as far again, first molar 0.42 to 0.62 of it.
    const summary = summaryOf(
      { visit: visit - 1, bodies: [heights([76, 76.5, 77], [74, 74.5, 75])] },
      { visit, day: 7, bodies: [heights([71, 71.5, 72], [68.5, 69, 69.5]), at('speaking-space', 1.5)] },
    );
    expect(summary.vertical.markSet).toBe(`visit ${visit}, marks 1`);
    expect(summary.vertical.restSpaceMm).toBeCloseTo(2.5, 9);
    expect(row(summary, 'speaking-space')?.text).toMatch(/^1\.5 mm, usual/);
    expect(summary.change).toMatchObject({ from: 'closed' });
    expect(summary.change?.chinMm).toBeCloseTo(-0.5, 9);
    expect(summary.change?.incisalMm.map((one) => one.toFixed(2))).toEqual(['-0.50', '-0.40']);
    expect(summary.change?.pinMm.map((one) => one.toFixed(2))).toEqual(['-0.75', '-0.60']);
    expect(summary.change?.molarMm.map((one) => one.toFixed(2))).toEqual(['-0.31', '-0.21']);
    expect(row(summary, 'height-change')?.text).toContain('chin −0.5 mm');
    // Space from visit to visit: 2.5 − 2.0 = +0.5; the heights themselves are never compared. Every set has SD 0.5 and n 3:
    // half width of one space t(4 degrees) 2.776 × 0.5 × √(2/3) = 1.133; of both √2 × 1.133 = 1.603.
    expect(row(summary, 'space-change')?.text).toMatch(/^\+0\.5 ± 1\.6 mm, from 2\.0 to 2\.5 mm: within/);
  });

  it('a record counts before the closed height', () => {
    // Rest 70, record at 69, wanted 3: 70 − 3 − 69 = −2 between the marks.
    const summary = summaryOf({ visit: 3, bodies: [heights([70, 70, 70], [67, 67]), at('record-height', 69)] });
    expect(summary.change).toMatchObject({ from: 'record', chinMm: -2 });
  });

  it('the distance to the hinge axis measured with a facebow is used', () => {
    // Side 120 mm: 120 × √3 / 2 = 103.92 mm to the incisal point instead of 87.99 mm.
    const own = summaryOf({ visit: 2, bodies: [heights([70, 70, 70], [69, 69]), at('axis-incisal', 120)] });
    expect(row(own, 'height-change')?.inputs.join()).toContain('axis to edge 120 mm');
    const average = summaryOf({ visit: 2, bodies: [heights([70, 70, 70], [69, 69])] });
    expect(own.change?.incisalMm).not.toEqual(average.change?.incisalMm);
  });

  it.each([
    ['lower', -1],
    ['higher', 1],
  ] as const)('the pin %s after grinding, at incisors, chin and molar', (direction, sign) => {
    // Pin 1.5 mm: incisors 2/3 of it, 1.0 mm (published rule 3 : 2). Chin 1.0 / 0.832 = 1.20, molar 1.20 × 0.524 = 0.63.
    const summary = summaryOf({ visit: 4, bodies: [answered('pin-direction', direction), at('pin-change', 1.5)] });
    expect(summary.change?.from).toBe('ground');
    expect(summary.change?.pinMm).toEqual([1.5 * sign, 1.5 * sign]);
    expect(summary.change?.incisalMm[0]).toBeCloseTo(sign, 9);
    expect(summary.change?.chinMm).toBeCloseTo(1.2 * sign, 1);
    const molar = summary.change!.molarMm.map(Math.abs).toSorted((a, b) => a - b);
    expect(molar[0]).toBeLessThan(0.63);
    expect(molar[1]).toBeGreaterThan(0.63);
    expect(row(summary, 'pin-ground')?.text).toContain(direction === 'lower' ? 'pin −1.5 mm' : 'pin +1.5 mm');
  });
});
