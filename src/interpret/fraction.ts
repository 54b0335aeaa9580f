/** What follows the whole number: decimals after a point, halves, quarters, tenths, ½. */
import { AND, ARTICLE, DIGIT, HALF, PARTS, POINT, QUARTER, TEEN, TENS } from './roles.ts';
import { digitAt, has, isGuess, touches } from './digits.ts';
import type { LanguageTables } from './language.ts';
import type { UnclearReason } from './types.ts';
import { COMMA, STOP } from './tokens.ts';
import type { Token } from './tokens.ts';

export interface Fraction {
  readonly end: number;
  /** 0…99, or -1 when `problem` says why not. */
  readonly hundredths: number;
  readonly problem?: UnclearReason;
  readonly guess: boolean;
}

const good = (end: number, hundredths: number, guess = false): Fraction => ({ end, hundredths, guess });
const bad = (end: number, problem: UnclearReason): Fraction => ({ end, hundredths: -1, problem, guess: false });

/** Value of a point word that is one only between numbers: "con". */
const WEAK_POINT = 1;

/** Figures after the point as hundredths; finer ones are refused unless they are noughts. */
export function hundredthsOf(figures: string, end: number, guess = false): Fraction {
  const cut = figures.replace(/0+$/, '');
  if (cut.length > 2) return bad(end, 'tooFine');
  return good(end, Number(cut.padEnd(2, '0')), guess);
}

/** One piece of decimals: a digit word, a two-digit number word, or figures. */
function decimalPiece(
  tokens: readonly Token[],
  i: number,
  lang: LanguageTables,
): { figures: string; end: number; guess: boolean } | undefined {
  const numeral = tokens[i]?.numeral;
  if (numeral)
    return numeral.kind === 'number' && numeral.decimals === undefined
      ? { figures: numeral.whole, end: i + 1, guess: false }
      : undefined;
  if (has(tokens, i, TEEN | TENS) || isUnitFirst(tokens, i)) {
    const two = lang.tens(tokens, i);
    if (two && two.value >= 10) return { figures: String(two.value), end: two.end, guess: false };
  }
  const digit = digitAt(tokens, i, true);
  return digit < 0 ? undefined : { figures: String(digit), end: i + 1, guess: isGuess(tokens, i) };
}

/** "fünfundzwanzig", "quatre-vingt": a two-digit number that starts with a digit word, written as one word. */
const isUnitFirst = (tokens: readonly Token[], i: number): boolean =>
  has(tokens, i, DIGIT | ARTICLE) &&
  i + 1 < tokens.length &&
  (tokens[i + 1] as Token).gap < 2 &&
  !has(tokens, i + 1, DIGIT);

function afterPoint(tokens: readonly Token[], i: number, lang: LanguageTables): Fraction {
  let figures = '';
  let at = i;
  let guess = false;
  while (at < tokens.length && (tokens[at] as Token).gap < (at === i ? STOP : COMMA)) {
    const piece = decimalPiece(tokens, at, lang);
    if (!piece || figures.length + piece.figures.length > 2) break;
    figures += piece.figures;
    guess ||= piece.guess;
    at = piece.end;
  }
  return figures === '' ? bad(i, 'malformed') : hundredthsOf(figures, at, guess);
}

/** Position after an optional "and". */
const afterAnd = (tokens: readonly Token[], i: number): number =>
  has(tokens, i, AND) && touches(tokens, i + 1) ? i + 1 : i;

/** "and a half", "half". "Sixty-one half" could be 60½ or 61½ and is refused. */
function halfAt(tokens: readonly Token[], i: number, inside: boolean): Fraction | undefined {
  const from = afterAnd(tokens, i);
  const counted = has(tokens, from, ARTICLE) || (tokens[from]?.lex.value === 1 && has(tokens, from, DIGIT));
  const at = counted && touches(tokens, from + 1) ? from + 1 : from;
  if (!has(tokens, at, HALF)) return undefined;
  if (inside && at === i && has(tokens, i - 1, DIGIT | ARTICLE) && tokens[i - 1]?.lex.value === 1)
    return bad(at + 1, 'malformed');
  return good(at + 1, (tokens[at] as Token).lex.value || 50, inside && from === i && at === i);
}

/**
 * "and three quarters", "and a quarter", "and nine tenths". `inside`: a whole number stands before; then "thirty-three
 * quarters" without "and" could be 30¾ or 33¼ and is refused.
 */
function countedAt(tokens: readonly Token[], i: number, inside: boolean): Fraction | undefined {
  const from = afterAnd(tokens, i);
  if (inside && has(tokens, i, QUARTER)) return bad(i + 1, 'malformed');
  const counted = has(tokens, from, ARTICLE | DIGIT) && touches(tokens, from + 1);
  const count = counted ? (tokens[from] as Token).lex.value || 1 : 1;
  const at = counted ? from + 1 : from;
  if (has(tokens, at, QUARTER)) return count <= 3 ? good(at + 1, count * 25) : bad(at + 1, 'malformed');
  if (counted && has(tokens, at, PARTS)) return partsOf(at + 1, count, (tokens[at] as Token).lex.value);
  return undefined;
}

/** `worth` is what one part is in hundredths; 0 marks thirds and eighths, which no hundredth can hold. */
const partsOf = (end: number, count: number, worth: number): Fraction => {
  if (worth === 0) return bad(end, 'tooFine');
  return count * worth < 100 ? good(end, count * worth) : bad(end, 'malformed');
};

function numeralPart(tokens: readonly Token[], i: number): Fraction | undefined {
  const at = afterAnd(tokens, i);
  const numeral = tokens[at]?.numeral;
  if (numeral?.kind === 'part')
    return numeral.hundredths < 0 ? bad(at + 1, 'tooFine') : good(at + 1, numeral.hundredths);
  if (at === i && numeral?.kind === 'number' && numeral.whole === '')
    return hundredthsOf(numeral.decimals ?? '', i + 1);
  return undefined;
}

/** The fraction that starts at `i`, if one does. `inside`: a whole number stands directly before. */
export function fractionAt(
  tokens: readonly Token[],
  i: number,
  inside: boolean,
  lang: LanguageTables,
): Fraction | undefined {
  const token = tokens[i];
  if (!token || (inside && token.gap > COMMA)) return undefined;
  if (has(tokens, i, POINT)) {
    const fraction = afterPoint(tokens, i + 1, lang);
    if (token.lex.value === WEAK_POINT) return inside && fraction.hundredths >= 0 ? fraction : undefined;
    return inside || fraction.hundredths >= 0 ? fraction : undefined;
  }
  if (inside && token.gap === COMMA) return undefined;
  return numeralPart(tokens, i) ?? halfAt(tokens, i, inside) ?? countedAt(tokens, i, inside);
}
