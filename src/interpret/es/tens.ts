/** Spanish below one hundred: "sesenta y dos", "veintidós", "diez y seis"; and loose spellings written together. */
import { AND, ARTICLE, DIGIT, POINT, TEEN, TENS, UNIT } from '../roles.ts';
import { has, touches } from '../digits.ts';
import type { TensRule } from '../language.ts';

export const tens: TensRule = (tokens, i) => {
  const token = tokens[i];
  if (!token) return undefined;
  const { roles, value } = token.lex;
  const unit = tokens[i + 2]?.lex.value ?? 0;
  const joined =
    has(tokens, i + 1, AND) &&
    has(tokens, i + 2, DIGIT | ARTICLE) &&
    touches(tokens, i + 1) &&
    touches(tokens, i + 2) &&
    unit > 0;
  if (roles & TENS || (roles & TEEN && value === 10 && unit > 5)) {
    if (joined) return { value: value + unit, end: i + 3, open: 1 };
  }
  if (roles & TENS) return { value, end: i + 1, open: 10 };
  if (roles & (TEEN | DIGIT)) return { value, end: i + 1, open: 1 };
  const isOne =
    roles & ARTICLE && (tokens.length === 1 || (has(tokens, i + 1, POINT | UNIT) && touches(tokens, i + 1)));
  return isOne ? { value: 1, end: i + 1, open: 1 } : undefined;
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
