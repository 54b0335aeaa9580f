/** What is written into a field, read strictly. Millimetres through the same parser as the voice; nothing is guessed. */
import { parseDay } from '../../domain/measure/calendar.ts';
import { formatHundredths, parseHundredths } from '../../domain/measure/length.ts';

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
