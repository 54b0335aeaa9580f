/** Statistics of small sets of readings. Numbers in, numbers out; callers have checked that they are finite. */
import { mean, median, medianAbsoluteDeviation, sampleVariance } from 'simple-statistics';

export type DixonLevel = 0.9 | 0.95 | 0.99;

/**
 * Critical values of Dixon's Q (r10, two-sided), n = 3 … 10: Q above it is an outlier at that confidence.
 * Dean & Dixon 1951 and Rorabacher 1991; seen second-hand in an open reference appendix.
 */
export const DIXON_CRITICAL: Readonly<Record<DixonLevel, readonly number[]>> = {
  0.9: [0.941, 0.765, 0.642, 0.56, 0.507, 0.468, 0.437, 0.412],
  0.95: [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466],
  0.99: [0.994, 0.926, 0.821, 0.74, 0.68, 0.634, 0.598, 0.568],
};

/** Critical Q for n readings, undefined outside 3 … 10, where the table has no value. Source: see DIXON_CRITICAL. */
export function dixonCritical(n: number, level: DixonLevel): number | undefined {
  return DIXON_CRITICAL[level][n - 3];
}

/**
 * Dixon's Q of the reading that stands furthest from its neighbour: gap / range, with its index in `values`.
 * Undefined below three readings or when all are equal. Dimensionless.
 */
export function dixonQ(values: readonly number[]): { readonly index: number; readonly q: number } | undefined {
  if (values.length < 3) return undefined;
  const order = values.map((value, index) => ({ value, index })).toSorted((a, b) => a.value - b.value);
  const [first, second] = [order[0]!, order[1]!];
  const [last, previous] = [order.at(-1)!, order.at(-2)!];
  const range = last.value - first.value;
  if (range === 0) return undefined;
  const low = (second.value - first.value) / range;
  const high = (last.value - previous.value) / range;
  return high >= low ? { index: last.index, q: high } : { index: first.index, q: low };
}

/**
 * Modified z-score of each reading, 0.6745·(x − median)/MAD. `floor`: smallest MAD believed, in the readings' unit;
 * without it two equal readings of three would make every third one infinitely far. Source: Iglewicz & Hoaglin 1993.
 */
export function modifiedZ(values: readonly number[], floor: number): readonly number[] {
  if (values.length === 0) return [];
  const centre = median([...values]);
  const spread = Math.max(medianAbsoluteDeviation([...values]), floor);
  return values.map((value) => (0.6745 * (value - centre)) / spread);
}

/** Two-sided 95 % points of Student's t for 1 … 30 degrees of freedom. Standard table, from memory. */
const T95: readonly number[] = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11,
  2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
];

/** Two-sided 95 % point of the normal distribution; written out, the library's approximation gives 1.957. */
export const Z95 = 1.959964;

/** Two-sided 95 % point of Student's t; beyond 30 degrees of freedom by expansion about the normal value. */
export function t95(degrees: number): number {
  const table = T95[degrees - 1];
  if (table !== undefined) return table;
  return Z95 + (Z95 ** 3 + Z95) / (4 * degrees) + (5 * Z95 ** 5 + 16 * Z95 ** 3 + 3 * Z95) / (96 * degrees ** 2);
}

/** SD pooled over sets (same unit), with its degrees of freedom; undefined when no set holds two readings. */
export function pooledSd(
  sets: readonly (readonly number[])[],
): { readonly sd: number; readonly degrees: number } | undefined {
  const usable = sets.filter((set) => set.length > 1);
  const degrees = usable.reduce((sum, set) => sum + set.length - 1, 0);
  if (degrees === 0) return undefined;
  const squares = usable.reduce((sum, set) => sum + sampleVariance([...set]) * (set.length - 1), 0);
  return { sd: Math.sqrt(squares / degrees), degrees };
}

/** SD of the difference of two means: s·√(1/n₁ + 1/n₂). For n₁ = n₂ = n it is s·√(2/n). Same unit as `sd`. */
export function sdOfDifference(sd: number, n1: number, n2: number): number {
  return sd * Math.sqrt(1 / n1 + 1 / n2);
}

/** Arithmetic mean, re-exported so that one library serves the whole domain. */
export { mean, median };
