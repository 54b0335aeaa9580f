/** German below one hundred, the unit first: "zweiundsechzig", also with blanks; and words written together taken apart. */
import { AND, ARTICLE, DIGIT, HALF, POINT, TEEN, TENS, UNIT } from '../roles.ts';
import { has, touches } from '../digits.ts';
import type { TensRule } from '../language.ts';
import type { Token } from '../tokens.ts';

/** "ein" is a digit only where a number goes on: "ein Komma fünf", "ein Millimeter", "ein einhalb". */
const einIsDigit = (tokens: readonly Token[], i: number): boolean =>
  touches(tokens, i + 1) &&
  (has(tokens, i + 1, POINT | UNIT) || (has(tokens, i + 1, ARTICLE) && has(tokens, i + 2, HALF)));

export const tens: TensRule = (tokens, i) => {
  const token = tokens[i];
  if (!token) return undefined;
  const { roles, value } = token.lex;
  if (roles & (TEEN | TENS)) return { value, end: i + 1, open: roles & TENS ? 10 : 1 };
  if (!(roles & (DIGIT | ARTICLE))) return undefined;
  const unitFirst =
    value > 0 &&
    has(tokens, i + 1, AND) &&
    has(tokens, i + 2, TENS) &&
    touches(tokens, i + 1) &&
    touches(tokens, i + 2);
  if (unitFirst) return { value: value + (tokens[i + 2] as Token).lex.value, end: i + 3, open: 1 };
  return roles & DIGIT || einIsDigit(tokens, i) ? { value, end: i + 1, open: 1 } : undefined;
};

/** Longest first, so that "achtzig" is not taken for "acht". */
const PARTS = (
  'hundert tausend zwanzig dreissig dreizig vierzig funfzig fuenfzig sechzig siebenzig siebzig achtzig neunzig ' +
  'dreizehn vierzehn funfzehn fuenfzehn sechzehn siebzehn achtzehn neunzehn zehn elf zwolf zwoelf ' +
  'null eins zwei zwo drei vier funf fuenf sechs sieben acht neun ein und halb viertel komma'
)
  .split(' ')
  .sort((a, b) => b.length - a.length);

/** "zweiundsechzigeinhalb" → zwei und sechzig ein halb; undefined when anything is left over. */
export function split(word: string): readonly string[] | undefined {
  const parts: string[] = [];
  let rest = word;
  while (rest !== '') {
    const part = PARTS.find((p) => rest.startsWith(p));
    if (part === undefined) return undefined;
    parts.push(part);
    rest = rest.slice(part.length);
  }
  return parts.length > 1 ? parts : undefined;
}
