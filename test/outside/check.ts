/** What an outside check is: one row with the expected figure, where that figure comes from, and how to compute ours. */
import type { Measured } from '../../src/domain/measure/result.ts';
import type { SourceId, SourceStatus } from '../../src/domain/measure/sources.ts';

export interface Row {
  readonly what: string;
  /** A number is met to 1e-9; a text that is a number to its last printed digit; any other text word for word. */
  readonly expected: number | string;
  readonly source: SourceId;
  readonly status: SourceStatus;
  readonly run: () => unknown;
}

export interface Table {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** A check over many random cases: the largest error must stay within the stated tolerance. */
export interface Sweep {
  readonly what: string;
  readonly against: string;
  readonly source: SourceId;
  readonly status: SourceStatus;
  readonly cases: number;
  readonly tolerance: number;
  /** Largest error over `cases` cases. */
  readonly worst: (cases: number) => number;
}

type Short = readonly [what: string, expected: number | string, run: () => unknown];

/** Rows that share a source and the status of their expected figures. */
export function rows(source: SourceId, status: SourceStatus, list: readonly Short[]): readonly Row[] {
  return list.map(([what, expected, run]) => ({ what, expected, source, status, run }));
}

/** The value of a result; a refusal fails the check with its own sentence. */
export function of<T>(result: Measured<T>): T {
  if (!result.ok) throw new Error(`${result.reason}: ${result.text}`);
  return result.value;
}

/** The name of a refusal, or "ok". */
export function refusalOf(result: Measured<unknown>): string {
  return result.ok ? 'ok' : result.reason;
}

/** Millimetres to the whole hundredths that the domain counts in. */
export const h = (mm: number): number => Math.round(mm * 100);

/** How far a number may lie from the printed one: half a unit of its last digit. Undefined when the text is no number. */
export function printedTolerance(printed: string): { readonly value: number; readonly within: number } | undefined {
  const match = /^[-−]?\d+(?:\.(\d+))?$/.exec(printed);
  if (match === null) return undefined;
  return { value: Number(printed.replace('−', '-')), within: 0.5 * 10 ** -(match[1]?.length ?? 0) + 1e-9 };
}

/** Empty when the row holds, otherwise what is wrong. */
export function verdictOf({ expected, run }: Row): string {
  const actual = run();
  if (typeof expected === 'number') {
    return typeof actual === 'number' && Math.abs(actual - expected) <= 1e-9
      ? ''
      : `expected ${expected}, got ${String(actual)}`;
  }
  const printed = typeof actual === 'number' ? printedTolerance(expected) : undefined;
  if (printed !== undefined) {
    const off = Math.abs((actual as number) - printed.value);
    return off <= printed.within ? '' : `expected ${expected}, got ${String(actual)}`;
  }
  return String(actual) === expected ? '' : `expected ${expected}, got ${String(actual)}`;
}
