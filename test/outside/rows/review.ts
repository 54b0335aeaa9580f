import { clashes } from '../../../src/domain/measure/consistency.ts';
import { RANGES, checkRange } from '../../../src/domain/measure/ranges.ts';
import { referral } from '../../../src/domain/measure/referral.ts';
import { retentionScore, reviewDates } from '../../../src/domain/measure/review.ts';
import { h, of, rows, type Row, type Table } from '../check.ts';

const score = (a: number, b: number, c: number, d: number) =>
  of(retentionScore({ retention: a, stability: b }, { retention: c, stability: d }));
const said = ({ sum, band }: { sum: number; band?: string }) => `${sum} ${band}`;
const delivered = () => of(reviewDates('2026-03-02'));

const reviewRows: readonly Row[] = [
  ...rows('retention-score', 'from memory', [
    ['upper 3 + 2, lower 2 + 2', '9 good', () => said(score(3, 2, 2, 2))],
    ['2 + 2, 1 + 1', '6 fair', () => said(score(2, 2, 1, 1))],
    ['1 + 1, 1 + 1', '4 poor', () => said(score(1, 1, 1, 1))],
    ['upper 3 + 2, lower 0 + 0', '5 poor', () => said(score(3, 2, 0, 0))],
  ]),
  ...rows('review-days', 'derived', [
    ['delivered 2026-03-02: first review', '2026-03-03 to 2026-03-04', () => delivered().first.join(' to ')],
    ['a week', '2026-03-09', () => delivered().week],
    ['four weeks', '2026-03-30', () => delivered().fourWeeks],
    ['a year', '2027-03-02', () => delivered().year],
  ]),
  ...rows('referral-duration', 'second-hand', [
    [
      'ulcer 15 days, flange eased',
      'review',
      () => of(referral({ kind: 'ulcer', days: 15, causeRemoved: true })).action,
    ],
    ['ulcer 22 days, no cause', 'refer', () => of(referral({ kind: 'ulcer', days: 22 })).action],
    ['red patch, any age', 'refer', () => of(referral({ kind: 'redPatch' })).action],
    ['persistent lump in the neck', 'refer', () => of(referral({ kind: 'neckLump' })).action],
  ]),
];

const usual = (id: string, end: 0 | 1) => RANGES[id]!.usual[end] / 100;
const rangeRows: readonly Row[] = [
  ...rows('plausible-ranges', 'our choice', [
    ['face width: usual from the women’s mean − 3 SD, 133.8 − 3·5.6', 117, () => usual('bizygomatic', 0)],
    ['to the men’s mean + 3 SD, 142.6 + 3·6.2, whole millimetres', 161, () => usual('bizygomatic', 1)],
    ['nose width: usual from 36.38 − 3·3.81, whole millimetres', 25, () => usual('interalar', 0)],
    ['rest height 87: unusual, kept', 'unusual', () => of(checkRange('rest-height', 8700)).verdict],
    ['rest height 8.7: asked again', 'implausible', () => of(checkRange('rest-height', 870)).verdict],
    [
      'every usual range lies inside its plausible one',
      'true',
      () => Object.values(RANGES).every((r) => r.plausible[0] <= r.usual[0] && r.usual[1] <= r.plausible[1]),
    ],
  ]),
  ...rows('consistency', 'our choice', [
    ['closed above rest', 'closed-above-rest', () => of(clashes({ rest: 7000, closed: 7100 }))[0]?.id],
    ['pads 4.1 mm apart', 'pads-apart', () => of(clashes({ padLeft: 500, padRight: 910 }))[0]?.id],
    [
      'published means fit together',
      '',
      () =>
        of(
          clashes({
            interalar: h(36.38),
            intercommissural: h(51.1),
            bizygomatic: h(142.6),
            innerCanthal: h(28.7),
            interpupillary: 6400,
          }),
        )
          .map((c) => c.id)
          .join(),
    ],
  ]),
];

export const reviewTables: readonly Table[] = [
  { title: 'Reviews and referral', rows: reviewRows },
  { title: 'Plausible ranges and consistency', rows: rangeRows },
];
