/** What is written into a field, read strictly. Millimetres through the same parser as the voice; nothing is guessed. */
import { parseDay } from '../../domain/measure/calendar.ts';
import { formatHundredths, parseHundredths, type LengthFailure } from '../../domain/measure/length.ts';
import type { FieldSpec } from '../parts/Form.tsx';

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

const read = <T>(value: T): Read<T> => ({ ok: true, value });
const refused = (why: string) => ({ ok: false, why }) as const;

/** Some words. */
export function readWords(text: string, label: string): Read<string> {
  const words = text.trim();
  return words === '' ? refused(`${label}: some words are wanted.`) : read(words);
}

/** Millimetres, "5" or "5.5", to hundredths. */
export function readMm(text: string, label: string): Read<number> {
  const parsed = parseHundredths(text);
  return parsed.ok ? read(parsed.value) : refused(`${label}: millimetres are wanted, as 5 or 5.5.`);
}

const NOT_A_NUMBER: Readonly<Record<LengthFailure, string>> = {
  empty: 'a number is wanted.',
  notANumber: 'a number is wanted, as 5 or 5.5.',
  negative: 'it cannot be negative.',
  tooFine: 'at most two decimals can be kept.',
  tooLarge: 'more than can be read.',
};

/** A number of any unit, "5" or "5.5", to hundredths. */
export function readHundredths(text: string, label: string): Read<number> {
  const parsed = parseHundredths(text);
  return parsed.ok ? read(parsed.value) : refused(`${label}: ${NOT_A_NUMBER[parsed.reason]}`);
}

/** The same, or nothing at all. */
export function readAmount(text: string, label: string): Read<number | undefined> {
  if (text.trim() === '') return read(undefined);
  const parsed = readHundredths(text, label);
  return parsed.ok ? read(parsed.value / 100) : parsed;
}

/** A whole number without a sign. */
export function readWhole(text: string, label: string): Read<number> {
  const digits = text.trim();
  return /^\d{1,6}$/.test(digits) ? read(Number(digits)) : refused(`${label}: a whole number is wanted.`);
}

/** A day as 2027-03-31, or nothing. */
export function readDay(text: string, label: string): Read<string> {
  const day = text.trim();
  if (day === '' || parseDay(day) !== undefined) return read(day);
  return refused(`${label}: a day is wanted, as 2027-03-31.`);
}

export const showMm = formatHundredths;

/** The first refusal among several readings; undefined when all could be read. */
export function firstWhy(reads: readonly Read<unknown>[]): string | undefined {
  const bad = reads.find((one) => !one.ok);
  return bad === undefined || bad.ok ? undefined : bad.why;
}

export const showNumber = (value: number | undefined): string => (value === undefined ? '' : String(value));

/** A field that is named by what it is called. */
export const given = (label: string, value: string | undefined): FieldSpec => ({
  key: label,
  label,
  value: value ?? '',
});

/** An id for a new entry, from its name: small letters, digits and hyphens, and one that is free. */
export function freshId(name: string, taken: readonly string[]): string {
  const base =
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '') || 'own';
  for (let more = 1; ; more += 1) {
    const id = more === 1 ? base : `${base}-${more}`;
    if (!taken.includes(id)) return id;
  }
}
