/** German numbers as words, for reading back. */
import type { Speech } from '../language.ts';

const DIGITS = 'null eins zwei drei vier fünf sechs sieben acht neun'.split(' ');
const TEENS = 'zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn'.split(' ');
const TENS = 'zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'einhundert' : `einhundert${whole(n - 100)}`;
  if (n < 10) return DIGITS[n] ?? '';
  if (n < 20) return TEENS[n - 10] ?? '';
  const ten = TENS[Math.floor(n / 10) - 2] ?? '';
  const unit = n % 10;
  return unit === 0 ? ten : `${unit === 1 ? 'ein' : DIGITS[unit]}und${ten}`;
}

export const speech: Speech = { whole, point: 'Komma', digits: DIGITS, half: 'einhalb', unit: 'Millimeter' };
