import { boneClass, edentulousClass, type ClassInput } from '../../../src/domain/measure/edentulous.ts';
import { boneLoss, palatalForm, ridgeForm, steadyLoss } from '../../../src/domain/measure/ridge.ts';
import { of, refusalOf, rows, type Row, type Table } from '../check.ts';

/** Eight made-up patients; the expected class follows from the published table and "the most complex criterion decides". */
const VIGNETTES: readonly (readonly [ClassInput, string, string])[] = [
  [
    { boneMm: 23, relation: 'I', maxilla: 'A', muscle: 'A' },
    'I',
    'bone height, jaw relation, upper ridge, muscle attachment',
  ],
  [
    { boneMm: 17, relation: 'I', maxilla: 'B', muscle: 'B', psychosocial: 'minor' },
    'II',
    'bone height, upper ridge, psychosocial',
  ],
  [{ boneMm: 22, relation: 'I', maxilla: 'A', muscle: 'A', interarchMm: 19 }, 'III', 'room between the ridges'],
  [{ boneMm: 9, relation: 'I', maxilla: 'A', muscle: 'B' }, 'IV', 'bone height'],
  [{ boneMm: 18, relation: 'II', maxilla: 'A', muscle: 'A' }, 'III', 'jaw relation'],
  [{ boneMm: 21, relation: 'I', maxilla: 'A', muscle: 'D' }, 'IV', 'muscle attachment'],
  [{ boneMm: 16, relation: 'I', maxilla: 'B', muscle: 'B', tmd: true }, 'III', 'joint or muscle symptoms'],
  [{ boneMm: 13, relation: 'III', maxilla: 'C', muscle: 'C', paraesthesia: true }, 'IV', 'altered feeling'],
];

const vignetteRows = VIGNETTES.flatMap(([input, expected, by], i) =>
  rows('pdi', 'derived', [
    [`patient ${i + 1}: ${JSON.stringify(input)}`, expected, () => of(edentulousClass(input)).class],
    [`patient ${i + 1}: decided by`, by, () => of(edentulousClass(input)).decidedBy.join(', ')],
  ]),
);

const EDGES: readonly (readonly [number, string])[] = [
  [21, 'I'],
  [20.9, 'II'],
  [20, 'II'],
  [16, 'II'],
  [15.9, 'III'],
  [15, 'III'],
  [11, 'III'],
  [10.9, 'IV'],
  [10, 'IV'],
];

const edgeRows: readonly Row[] = [
  ...EDGES.flatMap(([mm, expected]) =>
    rows('pdi-rounding', Number.isInteger(mm) ? 'text seen' : 'our choice', [
      [`bone height ${mm}`, expected, () => of(boneClass(mm))],
    ]),
  ),
  ...rows('pdi-rounding', 'our choice', [
    [
      'a main criterion missing',
      'Incomplete, at least class II, decided by bone height; missing: jaw relation, upper ridge, muscle attachment.',
      () => of(edentulousClass({ boneMm: 17 })).text,
    ],
    ['nothing known', 'missing', () => refusalOf(edentulousClass({}))],
  ]),
];

const ridgeRows: readonly Row[] = [
  ...rows('ridge-forms', 'text seen', [
    ['rounded, tall, wide', 'III', () => of(ridgeForm({ shape: 'rounded', high: true, wide: true }))],
    ['sharp, tall, thin', 'IV', () => of(ridgeForm({ shape: 'sharp', high: true, wide: false }))],
    ['flat', 'V', () => of(ridgeForm({ shape: 'flat' }))],
    ['concave', 'VI', () => of(ridgeForm({ shape: 'concave' }))],
  ]),
  ...rows('steady-loss', 'derived', [['0.4 mm a year for 10 years', '4.0', () => of(steadyLoss(0.4, 10))]]),
];

const LOSSES: readonly (readonly [number, number, number, string, string, string])[] = [
  [11, 18, 3, '33.0', '45.5', 'II'],
  [11, 18, 2.9, '31.9', '43.6', 'II'],
  [12, 24, 3, '36.0', '33.3', 'I'],
  [12, 24, 2.9, '34.8', '31.0', 'I'],
];
const lossRows = LOSSES.flatMap(([foramenMm, presentMm, factor, original, percent, cls]) => {
  const loss = () => of(boneLoss({ foramenMm, presentMm, factor }));
  const name = `foramen ${foramenMm}, present ${presentMm}, ×${factor}`;
  return rows('bone-loss', 'derived', [
    [`${name}: original`, original, () => loss().originalMm],
    [`${name}: per cent lost`, percent, () => 100 * loss().lostShare],
    [`${name}: class`, cls, () => loss().class],
  ]);
});

const palateRows = rows('palatal-form', 'second-hand', [
  ['5°', 'I', () => of(palatalForm(5)).form],
  ['10°', 'II', () => of(palatalForm(10)).form],
  ['45°', 'II', () => of(palatalForm(45)).form],
  ['46°', 'III', () => of(palatalForm(46)).form],
]);

export const classTables: readonly Table[] = [
  { title: 'Edentulous class: eight patients', rows: vignetteRows },
  { title: 'Edentulous class: edges', rows: edgeRows },
  { title: 'Ridge forms', rows: ridgeRows },
  { title: 'Bone lost from the lower jaw', rows: lossRows },
  { title: 'Soft palate', rows: palateRows },
];
