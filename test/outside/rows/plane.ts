import {
  lateralGuidance,
  meanInclination,
  protrusiveInclination,
  sagittalFromLateral,
} from '../../../src/domain/measure/condyle.ts';
import { incisalGuidance, padHeight, planeSlope, planeTilt } from '../../../src/domain/measure/plane.ts';
import { apexScatter, tracing, type TracePoint } from '../../../src/domain/measure/tracing.ts';
import { h, of, rows, type Row, type Table } from '../check.ts';

const guide = (vertical: number, horizontal: number) => of(incisalGuidance(h(vertical), h(horizontal)));
const pad = (plane: number) => of(padHeight(1200, h(plane)));
const planeRows: readonly Row[] = [
  ...rows('camper-slope', 'derived', [['31.3 and 29.9 over 100 mm', '0.80', () => of(planeSlope(29.9, 31.3, 100))]]),
  ...rows('incisal-guidance', 'derived', [
    ['overlap 1 over 2', '26.565', () => guide(1, 2).angleDeg],
    ['0.5 over 1.5', '18.435', () => guide(0.5, 1.5).angleDeg],
    ['2 over 2', 45, () => guide(2, 2).angleDeg],
    ['1 over 3', '18.435', () => guide(1, 3).angleDeg],
  ]),
  ...rows('guidance-limit', 'our choice', [
    ['2 over 2 is flagged', 'true', () => guide(2, 2).flag],
    ['1 over 2 is not', 'false', () => guide(1, 2).flag],
  ]),
  ...rows('pad-height', 'from memory', [
    ['pad 12, plane 6', '0.500', () => pad(6).share],
    ['plane 6: flag', 'none', () => pad(6).flag],
    ['plane 8', '0.667', () => pad(8).share],
    ['plane 8: flag, at the limit', 'none', () => pad(8).flag],
    ['plane 9', '0.750', () => pad(9).share],
    ['plane 9: flag', 'high', () => pad(9).flag],
    ['plane 3', '0.250', () => pad(3).share],
    ['plane 3: flag', 'low', () => pad(3).flag],
    ['plane 6: over the half rule', 0, () => pad(6).overHalfMm],
    ['plane 8: over the two-thirds rule', 0, () => pad(8).overTwoThirdsMm],
  ]),
  ...rows('plane-limits', 'our choice', [
    ['2 mm over 60: accepted', 'true', () => of(planeTilt(200, 6000)).accept],
    ['2.1 mm over 60: not', 'false', () => of(planeTilt(210, 6000)).accept],
    ['2 mm over 50 is over 2°: not', 'false', () => of(planeTilt(200, 5000)).accept],
  ]),
];

const p = (x: number, y: number): TracePoint => ({ x, y });
const legs = (left: TracePoint, right: TracePoint) => of(tracing([p(0, 0), left], [p(0, 0), right]));
const fitted = () =>
  of(tracing([p(-1, -0.5), p(-2, -1.2), p(-4, -2.4), p(-5, -2.9)], [p(1, -0.7), p(2, -1.2), p(4, -2.6), p(5, -3.1)]));
const close = () => of(apexScatter([p(0, 0), p(0.2, 0.1), p(0.1, -0.1)]));
const far = () => of(apexScatter([p(0, 0), p(0.2, 0.1), p(1.1, -0.6)]));
const distances = (apices: readonly TracePoint[], middle: TracePoint) =>
  apices.map((a) => Math.hypot(a.x - middle.x, a.y - middle.y).toFixed(3)).join(' ');
const tracingRows: readonly Row[] = [
  ...rows('arrow-lines', 'derived', [
    ['legs to (−5, −3) and (5, −3)', '118.072', () => legs(p(-5, -3), p(5, -3)).angleDeg],
    ['(−6, −3) and (5, −3)', '122.471', () => legs(p(-6, -3), p(5, -3)).angleDeg],
    ['(−5, −2) and (5, −2)', '136.397', () => legs(p(-5, -2), p(5, -2)).angleDeg],
    ['(−3, −4) and (3, −4)', '73.740', () => legs(p(-3, -4), p(3, -4)).angleDeg],
    ['four points a leg: apex x', '−0.073', () => fitted().apex.x],
    ['apex y', '0.007', () => fitted().apex.y],
    ['angle', '117.189', () => fitted().angleDeg],
    ['three close apices: centroid x', '0.100', () => close().centroid.x],
    ['centroid y', '0.000', () => close().centroid.y],
    ['distances', '0.100 0.141 0.100', () => distances([p(0, 0), p(0.2, 0.1), p(0.1, -0.1)], close().centroid)],
    ['rms', '0.115', () => close().rmsMm],
    ['furthest pair', '0.224', () => close().largestPairMm],
    ['three apart: centroid x', '0.433', () => far().centroid.x],
    ['centroid y ', '−0.167', () => far().centroid.y],
    ['distances ', '0.464 0.354 0.795', () => distances([p(0, 0), p(0.2, 0.1), p(1.1, -0.6)], far().centroid)],
    ['rms ', '0.570', () => far().rmsMm],
    ['furthest pair ', '1.253', () => far().largestPairMm],
  ]),
  ...rows('arrow-point', 'from memory', [
    ['73.7° is sharp: check', 'sharp', () => legs(p(-3, -4), p(3, -4)).verdict],
    ['118.1° is usual', 'usual', () => legs(p(-5, -3), p(5, -3)).verdict],
    ['over 150° is blunt', 'blunt', () => legs(p(-5, -1), p(5, -1)).verdict],
  ]),
  ...rows('arrow-point', 'our choice', [
    ['close apices', 'accept', () => close().verdict],
    ['apart', 'reject', () => far().verdict],
    ['legs 4° apart: not warned', 'false', () => legs(p(-6, -3), p(5, -3)).asymmetric],
    ['legs 20° apart: warned', 'true', () => legs(p(-5, -2), p(5, -4)).asymmetric],
  ]),
];

const GUIDANCE: readonly (readonly [number, string])[] = [
  [0, '12.000'],
  [16, '14.000'],
  [25, '15.125'],
  [30, '15.750'],
  [32, '16.000'],
  [33, '16.125'],
  [40, '17.000'],
];
const PROTRUSIVE: readonly (readonly [number, number, number, string, string, string, string, string])[] = [
  [5, 1.5, 0, '2.862', '4.065', '39.11', '49.11', '16.889'],
  [5, 0.9, 0, '1.718', '2.439', '26.00', '36.00', '15.250'],
  [6, 1.2, 0, '2.291', '3.252', '28.46', '38.46', '15.557'],
  [5, 1.5, 0.5, '1.909', '3.210', '32.70', '42.70', '16.088'],
];
const condyleRows: readonly Row[] = [
  ...GUIDANCE.flatMap(([sagittal, lateral]) =>
    rows('lateral-guidance', 'derived', [[`sagittal ${sagittal}°`, lateral, () => of(lateralGuidance(sagittal))]]),
  ),
  ...rows('lateral-guidance', 'text seen', [
    ['published lateral 14° stands for sagittal', 16, () => of(sagittalFromLateral(14))],
    ['published lateral 17°', 40, () => of(sagittalFromLateral(17))],
  ]),
  ...PROTRUSIVE.flatMap(([forwardMm, molarGapMm, incisalGapMm, turn, drop, plane, frankfort, lateral]) => {
    const found = () => of(protrusiveInclination({ forwardMm, molarGapMm, incisalGapMm }));
    const name = `forward ${forwardMm}, gaps ${molarGapMm} and ${incisalGapMm}`;
    return rows('protrusive-record', 'derived', [
      [`${name}: turn`, turn, () => found().turnDeg],
      [`${name}: drop`, drop, () => found().dropMm],
      [`${name}: to the occlusal plane`, plane, () => found().toPlaneDeg],
      [`${name}: to Frankfort`, frankfort, () => found().toFrankfortDeg],
      [`${name}: lateral`, lateral, () => found().lateralDeg],
    ]);
  }),
  ...rows('protrusive-record', 'derived', [
    [
      '0.5 mm less at the molar gap of 1.5',
      '28.5',
      () => of(protrusiveInclination({ forwardMm: 5, molarGapMm: 1.5, incisalGapMm: 0 })).rangeDeg[0],
    ],
    [
      '0.5 mm more',
      '47.3',
      () => of(protrusiveInclination({ forwardMm: 5, molarGapMm: 1.5, incisalGapMm: 0 })).rangeDeg[1],
    ],
    [
      'one record is too few',
      'true',
      () => of(meanInclination([{ forwardMm: 5, molarGapMm: 1.5, incisalGapMm: 0 }])).tooFew,
    ],
  ]),
];

const plain = (list: readonly Row[]) => list.map((row) => ({ ...row, what: row.what.trim() }));

export const planeTables: readonly Table[] = [
  { title: 'Occlusal plane', rows: planeRows },
  { title: 'Arrow-point tracings', rows: plain(tracingRows) },
  { title: 'Condylar inclination', rows: condyleRows },
];
