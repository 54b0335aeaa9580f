/** Picking the reading that counts: the newest live one of its quantity. */
import { toMm } from '../measure/length.ts';
import type { ReadingRow } from './types.ts';

/** The newest reading of a quantity that is not struck; undefined where there is none. */
export function latest(rows: readonly ReadingRow[], reading: string): ReadingRow | undefined {
  return rows.findLast((row) => row.reading === reading && row.struck === undefined);
}

/** Its value in millimetres (or whole units of what is no length). */
export function latestMm(rows: readonly ReadingRow[], reading: string): number | undefined {
  const row = latest(rows, reading);
  return row === undefined ? undefined : toMm(row.value);
}

/** "10.1 mm", "−0.5 mm": what is computed is not known to the hundredth. */
export function mmText(value: number): string {
  return `${tenthsText(value)} mm`;
}

/** One decimal, always written; a true minus, and none on nought. */
export function tenthsText(value: number): string {
  return `${value < -0.049 ? '−' : ''}${Math.abs(value).toFixed(1)}`;
}

/** A change always carries its sign. */
export function signedText(value: number): string {
  return `${value > 0.049 ? '+' : ''}${tenthsText(value)}`;
}

/** "−0.5 to −0.4 mm", smaller amount last; one number where both ends read the same. */
export function spanText([a, b]: readonly [number, number]): string {
  const [from, to] = [signedText(a), signedText(b)];
  return from === to ? `${from} mm` : `${from} to ${to} mm`;
}
