/** Dixon's Q against the published table, and the table against a simulation of normal samples. */
import { dixonCritical, dixonQ, type DixonLevel } from '../../src/domain/measure/spread.ts';
import { rows, type Sweep, type Table } from './check.ts';
import { chance } from './random.ts';

/** Two-sided critical values as printed (Rorabacher 1991, seen in an open reference appendix); columns 90, 95, 99 %. */
const PRINTED: readonly (readonly [number, string, string, string])[] = [
  [3, '0.941', '0.970', '0.994'],
  [4, '0.765', '0.829', '0.926'],
  [5, '0.642', '0.710', '0.821'],
  [6, '0.560', '0.625', '0.740'],
  [7, '0.507', '0.568', '0.680'],
  [8, '0.468', '0.526', '0.634'],
  [9, '0.437', '0.493', '0.598'],
  [10, '0.412', '0.466', '0.568'],
];

const LEVELS: readonly DixonLevel[] = [0.9, 0.95, 0.99];

/** A textbook set of ten with one low value; Q by hand = (0.177 − 0.167) / (0.189 − 0.167). */
const TEXTBOOK = [0.189, 0.167, 0.187, 0.183, 0.186, 0.182, 0.181, 0.184, 0.181, 0.177];

export const dixonTable: Table = {
  title: 'Dixon’s Q',
  rows: [
    ...PRINTED.flatMap(([n, ...values]) =>
      values.flatMap((printed, i) =>
        rows('dixon-q', 'second-hand', [
          [`critical Q, n = ${n}, ${LEVELS[i]! * 100} %`, printed, () => dixonCritical(n, LEVELS[i]!)],
        ]),
      ),
    ),
    ...rows('dixon-q', 'second-hand', [
      ['no value below n = 3', 'undefined', () => dixonCritical(2, 0.95)],
      ['no value above n = 10', 'undefined', () => dixonCritical(11, 0.95)],
      ['textbook set of ten with 0.167: Q', '0.455', () => dixonQ(TEXTBOOK)?.q],
      ['it names 0.167', 0.167, () => TEXTBOOK[dixonQ(TEXTBOOK)!.index]],
      ['an outlier at 90 %', 'true', () => dixonQ(TEXTBOOK)!.q > dixonCritical(10, 0.9)!],
      ['not at 95 %', 'false', () => dixonQ(TEXTBOOK)!.q > dixonCritical(10, 0.95)!],
    ]),
  ],
};

/** Share of normal samples of size n whose Q exceeds the table's value at `level`. */
function share(n: number, level: DixonLevel, samples: number): number {
  const { normal } = chance(1000 * n + Math.round(level * 100));
  const critical = dixonCritical(n, level)!;
  let above = 0;
  for (let i = 0; i < samples; i += 1) {
    const q = dixonQ(Array.from({ length: n }, normal));
    if (q !== undefined && q.q > critical) above += 1;
  }
  return above / samples;
}

/** Four standard errors of a share of 10, 5 and 1 % in 10,000 samples. */
const FOUR_ERRORS: Readonly<Record<DixonLevel, number>> = { 0.9: 0.012, 0.95: 0.0087, 0.99: 0.004 };

export const dixonSweeps: readonly Sweep[] = LEVELS.map((level) => ({
  what: `Dixon’s table, n = 3 … 10 at ${level * 100} %: share of normal samples above it is ${((1 - level) * 100).toFixed(0)} %`,
  against: 'simulated normal samples, a fixed seed',
  source: 'dixon-q' as const,
  status: 'second-hand' as const,
  cases: 10_000,
  tolerance: FOUR_ERRORS[level],
  worst: (cases: number) =>
    Math.max(...[3, 4, 5, 6, 7, 8, 9, 10].map((n) => Math.abs(share(n, level, cases) - (1 - level)))),
}));
