/** Spanish below one hundred: "sesenta y dos", "veintidós", "diez y seis"; and loose spellings written together. */
import { AND, ARTICLE, DIGIT, POINT, TEEN, TENS, UNIT } from '../roles.ts';
import type { TensRule } from '../language.ts';

export const tens: TensRule = (line, i) => {
  const value = line.value(i);
  const unit = line.near(i + 1, AND) && line.near(i + 2, DIGIT | ARTICLE) ? line.value(i + 2) : 0;
  if (unit > 0 && (line.has(i, TENS) || (line.has(i, TEEN) && value === 10 && unit > 5))) {
    return { value: value + unit, end: i + 3, open: 1 };
  }
  if (line.has(i, TENS)) return { value, end: i + 1, open: 10 };
  const isOne = line.has(i, ARTICLE) && (line.length === 1 || line.near(i + 1, POINT | UNIT));
  return isOne || line.has(i, TEEN | DIGIT) ? { value, end: i + 1, open: 1 } : undefined;
};

const TENS_WORDS = ['treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa'];

/** "treintaidós", "treintaydós" → treinta y dos. */
export function split(word: string): readonly string[] | undefined {
  const ten = TENS_WORDS.find((t) => word.startsWith(t));
  if (ten === undefined) return undefined;
  const rest = word.slice(ten.length);
  return /^[iy](?:uno?|una|dos|tres|cuatro|cinco|seis|siete|ocho|nueve)$/.test(rest)
    ? [ten, 'y', rest.slice(1)]
    : undefined;
}
