/** French numbers as words, for reading back. */
import type { Speech } from '../language.ts';

const UNITS =
  'zéro un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize dix-sept dix-huit dix-neuf'.split(
    ' ',
  );
const TENS = 'vingt trente quarante cinquante soixante'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'cent' : `cent ${whole(n - 100)}`;
  if (n < 20) return UNITS[n] ?? '';
  if (n >= 80) return n === 80 ? 'quatre-vingts' : `quatre-vingt-${UNITS[n - 80]}`;
  const base = n >= 60 ? 60 : Math.floor(n / 10) * 10;
  const ten = TENS[base / 10 - 2] ?? '';
  const rest = n - base;
  if (rest === 0) return ten;
  return rest === 1 || rest === 11 ? `${ten} et ${UNITS[rest]}` : `${ten}-${UNITS[rest]}`;
}

export const speech: Speech = {
  whole,
  point: 'virgule',
  digits: UNITS.slice(0, 10),
  half: 'et demi',
  unit: 'millimètres',
};
