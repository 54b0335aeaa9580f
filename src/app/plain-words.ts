/**
 * What people type, paste and say, before it is written down: nothing that could not be read back, handed over or shown
 * as it stands. Markup is left as it is: it is text, and is shown as text.
 */
import type { Utterance } from '../interpret/types.ts';

/** The most letters a stored text may have (see domain/case/parse.ts). */
export const MOST_LETTERS = 4000;
export const TOO_LONG = `That is longer than ${MOST_LETTERS} letters. Nothing of it was kept.`;

/** Control letters but for tab and line end; marks that turn the reading direction; letters of no width; half a letter. */
const UNSEEN = /(?![\t\n\r])\p{Cc}|[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]|\p{Cs}/gu;

export const plainWords = (text: string): string => text.replaceAll(UNSEEN, '');

const isLong = (value: unknown): boolean => typeof value === 'string' && value.length > MOST_LETTERS;

/** The same with plain words in every text of it; undefined when one is too long. */
export function plainFields<T extends object>(given: T): T | undefined {
  const fields = Object.entries(given) as [string, unknown][];
  if (fields.some(([, value]) => isLong(value))) return undefined;
  const plain = fields.map(([key, value]) => [key, typeof value === 'string' ? plainWords(value) : value]);
  return Object.fromEntries(plain) as T;
}

/** As plainFields, with what else the recogniser thought of it: alternatives that are too long are left out. */
export function plainUtterance(given: Utterance): Utterance | undefined {
  const alternatives = given.alternatives.filter(({ transcript }) => !isLong(transcript));
  return plainFields({
    ...given,
    alternatives: alternatives.map((one) => ({ ...one, transcript: plainWords(one.transcript) })),
  });
}
