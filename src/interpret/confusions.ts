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

/** Word pairs of the language, digits of the whole part swapped, an extra "hundred", a lost "point". */
export function strongRivals(value: Hundredths, tables: LanguageTables): readonly Hundredths[] {
  const whole = Math.floor(value / 100);
  const last = whole % 100;
  const rest = value - last * 100;
  const rivals = (pairsOf(tables).get(last) ?? []).map((other) => rest + other * 100);
  if (last >= 12 && last % 10 !== 0) rivals.push(rest + (last % 10) * 1000 + Math.floor(last / 10) * 100);
  if (value >= 10_000) rivals.push(value - 10_000);
  if (value >= 10_000 && value % 100 === 0) rivals.push(value / 10);
  return rivals.filter((v) => v !== value);
}

function swapped(digit: number): readonly number[] {
  return DIGITS.flatMap(([a, b]) => (digit === a ? [b] : digit === b ? [a] : []));
}

/** One digit of units or tenths misheard. Too many to ask about, unless the set so far speaks for one of them. */
export function weakRivals(value: Hundredths): readonly Hundredths[] {
  const units = Math.floor(value / 100) % 10;
  const tenths = Math.floor(value / 10) % 10;
  return [
    ...swapped(units).map((d) => value + (d - units) * 100),
    ...swapped(tenths).map((d) => value + (d - tenths) * 10),
  ];
}
