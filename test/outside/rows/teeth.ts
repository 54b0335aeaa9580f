import { codeFromCount, completeSet, toothFromCode } from '../../../src/domain/measure/notation.ts';
import {
  lowerSixFromUpper,
  posteriorChoice,
  toothSizes,
  type FaceReadings,
} from '../../../src/domain/measure/teeth.ts';
import { h, of, refusalOf, rows, type Row, type Table } from '../check.ts';

const by = (face: FaceReadings, rule: string) => of(toothSizes(face)).estimates.find((e) => e.rule === rule)?.mm;

const FACES: readonly (readonly [number, string, string, string])[] = [
  [128, '8.00', '38.79', '38.10'],
  [136, '8.50', '41.21', '40.48'],
  [144, '9.00', '43.64', '42.86'],
];
const faceRows = FACES.flatMap(([mm, central, six, six2]) => {
  const face = { bizygomatic: h(mm) };
  return rows('six-from-face', 'derived', [
    [`face width ${mm}: central /16`, central, () => by(face, 'face width / 16')],
    [`face width ${mm}: six /3.3`, six, () => by(face, 'face width / 3.3')],
    [`face width ${mm}: six /3.36`, six2, () => by(face, 'face width / 3.36')],
  ]);
});

const LENGTHS: readonly (readonly [number, string, string])[] = [
  [176, '11.0', '8.8'],
  [184, '11.5', '9.2'],
  [192, '12.0', '9.6'],
];
const lengthRows = LENGTHS.flatMap(([mm, sixteenth, twentieth]) =>
  rows('face-length', 'derived', [
    [`face length ${mm}: /16`, sixteenth, () => by({ faceLength: h(mm) }, 'face length / 16')],
    [`face length ${mm}: /20`, twentieth, () => by({ faceLength: h(mm) }, 'face length / 20')],
  ]),
);

const NOSES: readonly (readonly [number, string, string, string])[] = [
  [32, '32.96', '41.92', '39.0'],
  [35.2, '36.26', '46.11', '42.2'],
  [40, '41.20', '52.40', '47.0'],
];
const noseRows = NOSES.flatMap(([mm, tips, six, straight]) => {
  const face = { interalar: h(mm) };
  return rows('six-from-nose', 'derived', [
    [`nose width ${mm}: canine tips`, tips, () => by(face, 'nose width × 1.03')],
    [`nose width ${mm}: six`, six, () => by(face, 'nose width × 1.31')],
    [`nose width ${mm}: six, straight`, straight, () => by(face, 'nose width + 7')],
  ]);
});

const canthal = (mm: number) => by({ innerCanthal: h(mm) }, 'inner canthal × 0.618 / 2')!;
const eyeRows: readonly Row[] = [
  ...rows('inner-canthal', 'derived', [
    ['inner canthal 28.7', '8.868', () => canthal(28.7)],
    ['inner canthal 27.9', '8.621', () => canthal(27.9)],
    ['inner canthal 32', '9.89', () => canthal(32)],
  ]),
  ...rows('inner-canthal', 'text seen', [
    ['28.7 against the published male mean 8.87', '8.87', () => canthal(28.7)],
    ['27.9 within 0.1 of the published female mean 8.68', 'true', () => Math.abs(canthal(27.9) - 8.68) < 0.1],
  ]),
  ...rows('interpupillary', 'derived', [
    ['interpupillary 64.0', '9.70', () => by({ interpupillary: 6400 }, 'interpupillary / 6.6')],
    ['interpupillary 61.7', '9.35', () => by({ interpupillary: 6170 }, 'interpupillary / 6.6')],
  ]),
  ...rows('lower-to-upper-six', 'derived', [
    ['lower six 35', '45.5', () => by({ lowerSix: 3500 }, 'lower six × 1.30')],
    ['upper six 46: lower six', '35.38', () => of(lowerSixFromUpper(4600))],
  ]),
];

const wide = () =>
  of(toothSizes({ bizygomatic: h(142.6), interalar: h(36.38) })).spreads.find((s) => s.quantity === 'six')!;
const spreadRows: readonly Row[] = [
  ...rows('six-from-face', 'derived', [
    ['mean male face width 142.6: six /3.3', '43.2', () => by({ bizygomatic: h(142.6) }, 'face width / 3.3')],
    [
      'that is 3 to 5 mm under the measured 46 to 48',
      'true',
      () => {
        const six = by({ bizygomatic: h(142.6) }, 'face width / 3.3')!;
        return 46.02 - six > 2.5 && 48.23 - six < 5.5;
      },
    ],
  ]),
  ...rows('six-from-nose', 'text seen', [
    [
      'nose 36.38 × 1.31 within 1 mm of the measured six 48.23',
      'true',
      () => Math.abs(by({ interalar: h(36.38) }, 'nose width × 1.31')! - 48.23) < 1,
    ],
    [
      'nose 36.38 × 1.03 is over 3 mm off the measured tips 34.15',
      'true',
      () => by({ interalar: h(36.38) }, 'nose width × 1.03')! - 34.15 > 3,
    ],
  ]),
  ...rows('tooth-spread', 'our choice', [
    ['both mean readings together: clinician to judge', 'true', () => wide().judge],
    ['one rule alone has no spread', 0, () => of(toothSizes({ lowerSix: 3500 })).spreads[0]!.spreadMm],
  ]),
];

const SETS = [28, 30, 32, 34].map(h);
const posterior = (left: number, right = left) => of(posteriorChoice(h(left), h(right), SETS));
const posteriorRows = rows('posterior-space', 'derived', [
  ['space 32, sets 28 30 32 34', 3200, () => posterior(32).set],
  ['space 31', 3000, () => posterior(31).set],
  ['space 27: three teeth', 3, () => posterior(27).teeth],
  ['left 32, right 29: the smaller side’s set on both', 2800, () => posterior(32, 29).set],
]);

const name = (code: string) => of(toothFromCode(code)).name;
const COUNTS: readonly (readonly [number, string])[] = [
  [8, '11'],
  [9, '21'],
  [1, '18'],
  [16, '28'],
  [17, '38'],
  [24, '31'],
  [25, '41'],
  [32, '48'],
];
const notationRows = rows('iso-3950', 'from memory', [
  ['13', 'upper right canine', () => name('13')],
  ['26', 'upper left first molar', () => name('26')],
  ['45', 'lower right second premolar', () => name('45')],
  ['31', 'lower left central incisor', () => name('31')],
  ['complete set without third molars: teeth', 28, () => completeSet().length],
  ['first and last of it', '11 47', () => [completeSet()[0], completeSet().at(-1)].join(' ')],
  ['19: no ninth tooth', 'unknown', () => refusalOf(toothFromCode('19'))],
  ['30: an area', 'unknown', () => refusalOf(toothFromCode('30'))],
  ['58: primary quadrants stop at 5', 'unknown', () => refusalOf(toothFromCode('58'))],
  ...COUNTS.map(([count, code]) => [`counted ${count}`, code, () => of(codeFromCount(count))] as const),
]);

export const toothTables: readonly Table[] = [
  { title: 'Front teeth from face width and length', rows: [...faceRows, ...lengthRows] },
  { title: 'Front teeth from nose width', rows: noseRows },
  { title: 'Front teeth from eyes and lower teeth', rows: eyeRows },
  { title: 'Why a spread is shown', rows: spreadRows },
  { title: 'Lower back teeth', rows: posteriorRows },
  { title: 'Designation of teeth', rows: notationRows },
];
