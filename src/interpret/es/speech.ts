/** Spanish numbers as words, for reading back. */
import type { Speech } from '../language.ts';

const DIGITS = 'cero uno dos tres cuatro cinco seis siete ocho nueve'.split(' ');
const TEENS = (
  'diez once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve veinte ' +
  'veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve'
).split(' ');
const TENS = 'treinta cuarenta cincuenta sesenta setenta ochenta noventa'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'cien' : `ciento ${whole(n - 100)}`;
  if (n < 10) return DIGITS[n] ?? '';
  if (n < 30) return TEENS[n - 10] ?? '';
  const ten = TENS[Math.floor(n / 10) - 3] ?? '';
  return n % 10 === 0 ? ten : `${ten} y ${DIGITS[n % 10]}`;
}

export const speech: Speech = { whole, point: 'coma', digits: DIGITS, half: 'y medio', unit: 'milímetros' };
