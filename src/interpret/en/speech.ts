/** English numbers as words, for reading back. */
import type { Speech } from '../language.ts';

const DIGITS = 'zero one two three four five six seven eight nine'.split(' ');
const TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'one hundred' : `one hundred and ${whole(n - 100)}`;
  if (n < 10) return DIGITS[n] ?? '';
  if (n < 20) return TEENS[n - 10] ?? '';
  const ten = TENS[Math.floor(n / 10) - 2] ?? '';
  return n % 10 === 0 ? ten : `${ten}-${DIGITS[n % 10]}`;
}

export const speech: Speech = { whole, point: 'point', digits: DIGITS, half: 'and a half', unit: 'millimetres' };
