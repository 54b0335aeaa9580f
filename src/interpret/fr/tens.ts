/** French below one hundred: "soixante-douze", "quatre-vingt-dix-sept", "vingt et un", and septante, huitante, nonante. */
import { AND, DIGIT, TEEN, TENS } from '../roles.ts';
import { has, touches } from '../digits.ts';
import type { Below100, TensRule } from '../language.ts';
import type { Token } from '../tokens.ts';

const valueAt = (tokens: readonly Token[], i: number): number => tokens[i]?.lex.value ?? 0;

/** 1…9, or 10…19 where the ten before takes them ("soixante-dix-sept"). */
function rest(tokens: readonly Token[], i: number, teens: boolean): { value: number; end: number } | undefined {
  if (!touches(tokens, i)) return undefined;
  const value = valueAt(tokens, i);
  if (has(tokens, i, DIGIT)) return value > 0 ? { value, end: i + 1 } : undefined;
  if (!teens || !has(tokens, i, TEEN)) return undefined;
  return teen(tokens, i);
}

/** "dix-sept" is said in two words. */
function teen(tokens: readonly Token[], i: number): { value: number; end: number } {
  const value = valueAt(tokens, i);
  const unit = value === 10 && touches(tokens, i + 1) && has(tokens, i + 1, DIGIT) ? valueAt(tokens, i + 1) : 0;
  return unit >= 7 ? { value: 10 + unit, end: i + 2 } : { value, end: i + 1 };
}

function ten(tokens: readonly Token[], base: number, i: number): Below100 {
  const teens = base === 60 || base === 80;
  const and = has(tokens, i, AND) && touches(tokens, i) && touches(tokens, i + 1);
  const joined =
    and && (valueAt(tokens, i + 1) === 1 || valueAt(tokens, i + 1) === 11) ? rest(tokens, i + 1, teens) : undefined;
  const found = joined ?? rest(tokens, i, teens);
  return found ? { value: base + found.value, end: found.end, open: 1 } : { value: base, end: i, open: 10 };
}

export const tens: TensRule = (tokens, i) => {
  const value = valueAt(tokens, i);
  if (
    has(tokens, i, DIGIT) &&
    value === 4 &&
    has(tokens, i + 1, TENS) &&
    valueAt(tokens, i + 1) === 20 &&
    touches(tokens, i + 1)
  ) {
    return ten(tokens, 80, i + 2);
  }
  if (has(tokens, i, TENS)) return ten(tokens, value, i + 1);
  if (has(tokens, i, TEEN)) return { ...teen(tokens, i), open: 1 };
  return has(tokens, i, DIGIT) ? { value, end: i + 1, open: 1 } : undefined;
};
