/** Numbers as words, for reading back. */
import { formatHundredths } from '../domain/measure/length.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import type { Language } from '../domain/protocol/types.ts';
import { lexiconOf } from './languages.ts';

/** "sixty-two point five". Values the language has no words for here (200 and more, negative) are given in figures. */
export function speakNumber(value: Hundredths, language: Language): string {
  const { speech } = lexiconOf(language).tables;
  if (!Number.isInteger(value) || value < 0 || value >= 20_000) return formatHundredths(value);
  const whole = speech.whole(Math.floor(value / 100));
  const rest = value % 100;
  if (rest === 0) return whole;
  const decimals = String(rest).padStart(2, '0').replace(/0$/, '');
  const digits = [...decimals].map((d) => speech.digits[Number(d)] ?? d);
  return `${whole} ${speech.point} ${digits.join(' ')}`;
}
