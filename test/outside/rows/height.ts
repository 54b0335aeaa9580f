import { basesNote, facialMeasure, SPEAKING_WEARERS, speakingSpace } from '../../../src/domain/measure/crosschecks.ts';
import { sdOfDifference, Z95 } from '../../../src/domain/measure/spread.ts';
import { describeSet, restSpace, setAdvice, suspects } from '../../../src/domain/measure/vertical.ts';
import { h, of, rows, type Row, type Table } from '../check.ts';

const FACE = [4000, 11000] as const;
const list = (mm: readonly number[]) => mm.map(h);
const words = (mm: readonly number[]) => mm.map((v) => v.toFixed(1)).join(' ');
const space = (rest: readonly number[], closed: readonly number[]) => of(restSpace(list(rest), list(closed)));

const A = [70.5, 71, 70] as const;
const SPACES: readonly (readonly [readonly number[], readonly number[], string, string, string, string])[] = [
  [A, [67.5, 67.5, 67.5], '70.50', '67.50', '3.00', 'usual'],
  [A, [68, 68.5, 68], '70.50', '68.17', '2.33', 'usual'],
  [A, [69.5, 69.5, 69.5], '70.50', '69.50', '1.00', 'small'],
  [[70, 70, 70], [71, 71, 71], '70.00', '71.00', '−1.00', 'impossible'],
];

const spaceRows = SPACES.flatMap(([rest, closed, meanRest, meanClosed, irs, verdict]): readonly Row[] => {
  const name = `rest ${words(rest)}, closed ${words(closed)}`;
  return [
    ...rows('glossary-rest-space', 'derived', [
      [`${name}: mean rest`, meanRest, () => of(describeSet(list(rest))).meanMm],
      [`${name}: mean closed`, meanClosed, () => of(describeSet(list(closed))).meanMm],
      [`${name}: rest space`, irs, () => space(rest, closed).spaceMm],
    ]),
    ...rows('rest-space-bands', 'second-hand', [[`${name}: verdict`, verdict, () => space(rest, closed).verdict]]),
  ];
});

const SPREADS: readonly (readonly [number, number, string, string])[] = [
  [1, 1, '1.414', '2.77'],
  [1, 3, '0.816', '1.60'],
  [1, 5, '0.632', '1.24'],
  [0.5, 3, '0.408', '0.80'],
  [1.5, 3, '1.225', '2.40'],
];

const spreadRows = SPREADS.flatMap(([s, n, sd, half]) =>
  rows('rest-space-spread', 'derived', [
    [`SD of the rest space, one reading ± ${s}, ${n} of each`, sd, () => sdOfDifference(s, n, n)],
    [`its 95 % half width, ${s}, ${n} of each`, half, () => Z95 * sdOfDifference(s, n, n)],
  ]),
);

const OUT = [70.5, 74.5, 70] as const;
const figures = (mm: readonly number[]) => of(describeSet(list(mm)));
const advice = (mm: readonly number[]) => setAdvice(figures(mm).rangeMm, mm.length);

const repeatRows: readonly Row[] = [
  ...rows('summary-statistics', 'derived', [
    ['70.5 74.5 70.0: mean', '71.667', () => figures(OUT).meanMm],
    ['70.5 74.5 70.0: SD', '2.466', () => figures(OUT).sdMm],
    ['70.5 74.5 70.0: range', 4.5, () => figures(OUT).rangeMm],
    ['70.5 74.5 70.0: median', 70.5, () => figures(OUT).medianMm],
    ['70.5 71.0 70.0: mean', 70.5, () => figures(A).meanMm],
    ['70.5 71.0 70.0: SD', 0.5, () => figures(A).sdMm],
    ['70.5 71.0 70.0: range', 1, () => figures(A).rangeMm],
  ]),
  ...rows('repeat-rule', 'our choice', [
    ['70.5 74.5 70.0: repeat all', 'repeatAll', () => advice(OUT)],
    [
      '70.5 74.5 70.0: names 74.5 and nothing else',
      '74.5',
      () =>
        suspects(list(OUT), FACE)
          .map((s) => OUT[s.index])
          .join(),
    ],
    ['70.5 71.0 70.0: accept', 'accept', () => advice(A)],
    [
      '70.5 71.0 70.0: names none',
      '',
      () =>
        suspects(list(A), FACE)
          .map((s) => A[s.index])
          .join(),
    ],
    ['two readings are too few', 'tooFew', () => advice([70, 70.5])],
    ['range 1.0 to 2.0: two more', 'twoMore', () => advice([70, 71.5, 70])],
  ]),
  ...rows('rest-without-bases', 'text seen', [
    [
      'published difference 70.33 − 67.90 lies in the span we state',
      'true',
      () => {
        const [low, high] = of(basesNote('none', 'both')).largerByMm ?? [NaN, NaN];
        const published = 70.33 - 67.9;
        return published >= low && published <= high;
      },
    ],
  ]),
];

const facial = (lip: number, chin: number) => of(facialMeasure(h(lip), h(chin)));
const speech = (atS: number) => of(speakingSpace(0, h(atS)));

const crossRows: readonly Row[] = [
  ...rows('facial-measure', 'derived', [
    ['pupil to lips 68, nose base to chin 66', -2, () => facial(68, 66).differenceMm],
    ['66 and 66', 0, () => facial(66, 66).differenceMm],
    ['64 and 69', 5, () => facial(64, 69).differenceMm],
  ]),
  ...rows('facial-measure-limit', 'our choice', [
    ['−2 agrees', 'neither', () => facial(68, 66).leaning],
    ['+5 is flagged', 'closedLarge', () => facial(64, 69).leaning],
  ]),
  ...rows('speaking-space', 'text seen', [
    ['1.5 mm at “s” is usual', 'usual', () => speech(1.5).verdict],
    ['contact at “s”: closed height suspect large', 'closedLarge', () => speech(0).leaning],
    ['5 mm at “s”: closed height suspect small', 'closedSmall', () => speech(5).leaning],
  ]),
  ...rows('speaking-space-wearers', 'derived', [
    ['denture wearers, mean − 2 SD', '−0.45', () => SPEAKING_WEARERS.meanMm - 2 * SPEAKING_WEARERS.sdMm],
    ['denture wearers, mean + 2 SD', '5.67', () => SPEAKING_WEARERS.meanMm + 2 * SPEAKING_WEARERS.sdMm],
    ['5 mm lies inside 2 SD', 'true', () => speech(5).withinWearers],
    ['6 mm does not', 'false', () => speech(6).withinWearers],
  ]),
];

export const heightTables: readonly Table[] = [
  { title: 'Rest space', rows: spaceRows },
  { title: 'Spread of the rest space', rows: spreadRows },
  { title: 'Repeated readings', rows: repeatRows },
  { title: 'Cross-checks of the closed height', rows: crossRows },
];
