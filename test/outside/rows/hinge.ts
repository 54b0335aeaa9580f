import {
  balkwillAngle,
  bonwillAltitude,
  defaultHinge,
  hingePoints,
  rotate,
  solveHinge,
  turnJaw,
  type HingeGeometry,
} from '../../../src/domain/measure/hinge.ts';
import { linearChange, pinChange, pinRule } from '../../../src/domain/measure/pin.ts';
import { of, rows, type Row, type Table } from '../check.ts';

const at = (planeAngleDeg: number) => ({ planeAngleDeg });

const constantRows: readonly Row[] = [
  ...rows('bonwill', 'derived', [['altitude of the 101.6 mm triangle', '87.988', () => of(bonwillAltitude(101.6))]]),
  ...rows('balkwill', 'derived', [
    ['axis 27.190 over the plane', '18.0', () => of(balkwillAngle(27.19, 87.988))],
    ['axis 33.672', '22.5', () => of(balkwillAngle(33.672, 87.988))],
    ['axis 36.000', '24.15', () => of(balkwillAngle(36, 87.988))],
    ['axis 38.571', '26.0', () => of(balkwillAngle(38.571, 87.988))],
  ]),
];

const PIN: readonly (readonly [number, string, string])[] = [
  [1.5, '1.0', '0.5'],
  [3, '2.0', '1.0'],
  [1, '0.667', '0.333'],
  [0.5, '0.333', '0.167'],
];
const pinRows = PIN.flatMap(([pin, incisors, molar]) =>
  rows('pin-rule', 'text seen', [
    [`pin ${pin}: incisors`, incisors, () => of(pinRule(pin)).incisalMm],
    [`pin ${pin}: second molar`, molar, () => of(pinRule(pin)).molar2Mm],
  ]),
);

type Pair = readonly [string, string];
const POINTS: readonly (readonly [number, Pair, Pair, Pair, Pair])[] = [
  [18, ['83.682', '27.190'], ['53.682', '27.190'], ['80.682', '65.190'], ['103.682', '−0.810']],
  [22.5, ['81.290', '33.672'], ['51.290', '33.672'], ['78.290', '71.672'], ['101.290', '5.672']],
  [26, ['79.083', '38.571'], ['49.083', '38.571'], ['76.083', '76.571'], ['99.083', '10.571']],
];
const pointRows = POINTS.flatMap(([angle, ...places]) =>
  (['incisal', 'molar', 'chin', 'nose'] as const).flatMap((place, i) => {
    const point = () => hingePoints({ ...defaultHinge, ...at(angle) })[place];
    return rows('hinge-model', 'derived', [
      [`${angle}°: ${place} point, forward`, places[i]![0], () => point().x],
      [`${angle}°: ${place} point, down`, places[i]![1], () => point().y],
    ]);
  }),
);

const FORWARD: readonly (readonly [number, number, string, string, string, string, string?])[] = [
  [22.5, 1, '1.699', '1.355', '1.414', '0.890', '−0.600'],
  [22.5, 2, '3.394', '2.689', '2.816', '1.770', '−1.225'],
  [22.5, 3, '5.082', '3.999', '4.208', '2.638', '−1.874'],
  [22.5, -1, '−1.704', '−1.377', '−1.424', '−0.900', '0.575'],
  [22.5, -2, '−3.414', '−2.776', '−2.858', '−1.811', '1.126'],
  [18, 2, '3.397', '2.776', '2.904', '1.857'],
  [26, 2, '3.378', '2.609', '2.736', '1.689'],
];
const forwardRows = FORWARD.flatMap(([angle, turn, caliper, chin, incisal, molar, back]): readonly Row[] => {
  const move = () => of(turnJaw(turn, at(angle)));
  const name = `${angle}°, turn ${turn}°`;
  return rows('hinge-model', 'derived', [
    [`${name}: nose to chin`, caliper, () => move().chinMm],
    [`${name}: chin down`, chin, () => move().chinDownMm],
    [`${name}: incisors down`, incisal, () => move().incisalMm],
    [`${name}: first molar down`, molar, () => move().molarMm],
    ...(back === undefined ? [] : [[`${name}: incisors forward`, back, () => move().incisalForwardMm] as const]),
  ]);
});

const INVERSE: readonly (readonly [number, number, string, string, string])[] = [
  [22.5, 2, '1.1772', '1.663', '1.047'],
  [22.5, 3, '1.7674', '2.491', '1.566'],
  [22.5, 4, '2.3588', '3.317', '2.082'],
  [22.5, -3, '−1.7581', '−2.510', '−1.589'],
  [18, 3, '1.7653', '2.565', '1.641'],
  [26, 3, '1.7757', '2.432', '1.502'],
];
const inverseRows = INVERSE.flatMap(([angle, target, turn, incisal, molar]) => {
  const move = () => of(solveHinge('chin', target, at(angle)));
  const name = `${angle}°, nose to chin ${target}`;
  return rows('hinge-model', 'derived', [
    [`${name}: turn`, turn, () => move().turnDeg],
    [`${name}: incisors`, incisal, () => move().incisalMm],
    [`${name}: first molar`, molar, () => move().molarMm],
  ]);
});

const solved = (own: Partial<HingeGeometry>) => of(solveHinge('chin', 3, own));
const nose = (noseForwardMm: number, noseDownMm: number) => solved({ noseForwardMm, noseDownMm }).incisalMm;
const chin = (chinForwardMm: number, chinDownMm: number) => solved({ chinForwardMm, chinDownMm }).incisalMm;
const sensitivityRows = rows('hinge-model', 'derived', [
  ['nose to chin 3, molar 25 behind', '1.720', () => solved({ molarBehindMm: 25 }).molarMm],
  ['molar 30 behind', '1.566', () => solved({ molarBehindMm: 30 }).molarMm],
  ['molar 35 behind', '1.412', () => solved({ molarBehindMm: 35 }).molarMm],
  ['molar 40 behind', '1.257', () => solved({ molarBehindMm: 40 }).molarMm],
  ['nose mark (10, −28): incisors', '2.676', () => nose(10, -28)],
  ['nose mark (30, −28): incisors', '2.380', () => nose(30, -28)],
  ['nose mark (0, −35): incisors', '2.984', () => nose(0, -35)],
  ['chin mark (−8, 38): incisors', '2.545', () => chin(-8, 38)],
  ['chin mark (2, 38): incisors', '2.448', () => chin(2, 38)],
  ['chin mark (−3, 30): incisors', '2.523', () => chin(-3, 30)],
  ['chin mark (−3, 45): incisors', '2.471', () => chin(-3, 45)],
  [
    'nose to chin at closure',
    '69.893',
    () => {
      const { chin: c, nose: n } = hingePoints(defaultHinge);
      return Math.hypot(c.x - n.x, c.y - n.y);
    },
  ],
  [
    'the incisal point keeps its distance from the axis',
    '87.988',
    () => {
      const { x, y } = rotate(hingePoints(defaultHinge).incisal, 2);
      return Math.hypot(x, y);
    },
  ],
  [
    'chord of the incisal point at 2°, by hand 2·87.988·sin 1°',
    '3.071',
    () => {
      const move = of(turnJaw(2));
      return Math.hypot(move.incisalMm, move.incisalForwardMm);
    },
  ],
  [
    'linear factor for the incisors at +4 within 2 %',
    'true',
    () => Math.abs(of(solveHinge('chin', 4)).incisalMm / (0.832 * 4) - 1) < 0.02,
  ],
  ['incisors over first molar at +3', '1.59', () => solved({}).incisalMm / solved({}).molarMm],
]);

const RECIPE: readonly (readonly [number, number, string, string, string, string, string])[] = [
  [70, 69, '−2.0', '−1.671', '−1.66', '−1.057', '−1.04'],
  [70, 64, '3.0', '2.491', '2.49', '1.566', '1.56'],
  [70, 70, '−3.0', '−2.510', '−2.49', '−1.589', '−1.56'],
  [70, 67, '0.0', '0.000', '0.00', '0.000', '0.00'],
];
const recipeRows = RECIPE.flatMap(
  ([rest, record, caliper, incisal, incisalLinear, molar, molarLinear]): readonly Row[] => {
    const change = () => of(pinChange({ restMm: rest, recordedMm: record, targetSpaceMm: 3 }));
    const name = `rest ${rest}, record ${record}, space 3`;
    return [
      ...rows('hinge-model', 'derived', [
        [`${name}: nose to chin`, caliper, () => change().chinMm],
        [`${name}: incisors`, incisal, () => change().incisalMm],
        [`${name}: first molar`, molar, () => change().molarMm],
      ]),
      ...rows('hinge-factors', 'derived', [
        [`${name}: incisors, linear`, incisalLinear, () => of(linearChange(change().chinMm)).incisalMm],
        [`${name}: first molar, linear`, molarLinear, () => of(linearChange(change().chinMm)).molarMm],
      ]),
    ];
  },
);

const rangeRows = rows('hinge-factors', 'derived', [
  [
    'rest 70, record 64, space 3: incisors at least',
    '2.4',
    () => of(pinChange({ restMm: 70, recordedMm: 64, targetSpaceMm: 3 })).incisalRangeMm[0],
  ],
  ['at most', '3.0', () => of(pinChange({ restMm: 70, recordedMm: 64, targetSpaceMm: 3 })).incisalRangeMm[1]],
]);

export const hingeTables: readonly Table[] = [
  { title: 'Bonwill triangle and Balkwill angle', rows: constantRows },
  { title: 'Published pin rule', rows: pinRows },
  { title: 'Hinge model: points', rows: pointRows },
  { title: 'Hinge model: turning the jaw', rows: forwardRows },
  { title: 'Hinge model: from nose to chin back to the turn', rows: inverseRows },
  { title: 'Hinge model: sensitivity and hand checks', rows: sensitivityRows },
  { title: 'What the laboratory changes', rows: [...recipeRows, ...rangeRows] },
];
