/** Numbers an ear, or a recogniser, takes for one another. */
import type { Hundredths } from '../domain/measure/length.ts';
import type { LanguageTables } from './language.ts';

/** Digits taken for one another by a recogniser with a grammar (measured: seven→one, nine→five, six→three are the commonest). */
const DIGITS: readonly (readonly [number, number])[] = [
  [7, 1],
  [9, 5],
  [6, 3],
];

const pairTables = new WeakMap<LanguageTables, ReadonlyMap<number, readonly number[]>>();

function pairsOf(tables: LanguageTables): ReadonlyMap<number, readonly number[]> {
  const known = pairTables.get(tables);
  if (known) return known;
  const pairs = new Map<number, number[]>();
  const add = (a: number, b: number): void => void pairs.set(a, [...(pairs.get(a) ?? []), b]);
  for (const pair of tables.confused.split(' ')) {
    const [a = 0, b = 0] = pair.split('/').map(Number);
    add(a, b);
    add(b, a);
  }
  pairTables.set(tables, pairs);
  return pairs;
}

/** Word pairs of the language, an extra "hundred", a lost "point". */
export function strongRivals(value: Hundredths, tables: LanguageTables): readonly Hundredths[] {
  const whole = Math.floor(value / 100);
  const last = whole % 100;
  const rest = value - last * 100;
  const rivals = (pairsOf(tables).get(last) ?? []).map((other) => rest + other * 100);
  if (value >= 10_000) rivals.push(value - 10_000);
  if (value >= 10_000 && value % 100 === 0) rivals.push(value / 10);
  return rivals.filter((v) => v !== value);
}

/** Digits of the whole part swapped: 26 for 62. */
export function swappedRivals(value: Hundredths): readonly Hundredths[] {
  const last = Math.floor(value / 100) % 100;
  const other = (last % 10) * 10 + Math.floor(last / 10);
  return last < 12 || other < 10 || other === last ? [] : [value + (other - last) * 100];
}

function misheard(digit: number): readonly number[] {
  return DIGITS.flatMap(([a, b]) => (digit === a ? [b] : digit === b ? [a] : []));
}

/** One digit of units or tenths misheard. Too many to ask about, unless the set so far speaks for one of them. */
export function weakRivals(value: Hundredths): readonly Hundredths[] {
  const units = Math.floor(value / 100) % 10;
  const tenths = Math.floor(value / 10) % 10;
  return [
    ...misheard(units).map((d) => value + (d - units) * 100),
    ...misheard(tenths).map((d) => value + (d - tenths) * 10),
  ];
}

/** One of the two is easily taken for the other. */
export function areConfused(a: Hundredths, b: Hundredths, tables: LanguageTables): boolean {
  const rivals = (v: Hundredths) => [...strongRivals(v, tables), ...swappedRivals(v), ...weakRivals(v)];
  return rivals(a).includes(b) || rivals(b).includes(a);
}
