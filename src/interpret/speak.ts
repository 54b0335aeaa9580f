/** Numbers as words, for reading back. */
import { formatHundredths } from '../domain/measure/length.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import type { Language } from '../domain/protocol/types.ts';
import { speech as english } from './en/speech.ts';
import type { Speech } from './language.ts';

const speeches = new Map<Language, Speech>([['en', english]]);

/** A language not loaded yet is read back in English. */
export const speechOf = (language: Language): Speech => speeches.get(language) ?? english;

const LOADERS: Readonly<Record<Exclude<Language, 'en'>, () => Promise<{ readonly speech: Speech }>>> = {
  de: () => import('./de/index.ts'),
  es: () => import('./es/index.ts'),
  fr: () => import('./fr/index.ts'),
};

/** Fetches a language's words for reading back, which come with its tables. */
export async function loadSpeech(language: Language): Promise<void> {
  if (language !== 'en' && !speeches.has(language)) speeches.set(language, (await LOADERS[language]()).speech);
}

/** "sixty-two point five". Values the language has no words for here (200 and more, negative) are given in figures. */
export function speakNumber(value: Hundredths, language: Language): string {
  const speech = speechOf(language);
  if (!Number.isInteger(value) || value < 0 || value >= 20_000) return formatHundredths(value);
  const whole = speech.whole(Math.floor(value / 100));
  const rest = value % 100;
  if (rest === 0) return whole;
  const decimals = String(rest).padStart(2, '0').replace(/0$/, '');
  const digits = [...decimals].map((d) => speech.digits[Number(d)] ?? d);
  return `${whole} ${speech.point} ${digits.join(' ')}`;
}
