/** One spoken number: a whole part, a fraction, or both; with what is doubtful about it. */
import {
  AND,
  ARTICLE,
  DIGIT,
  HALF,
  HUNDRED,
  HUNDREDS,
  OH,
  PARTS,
  POINT,
  QUARTER,
  SOUNDS,
  TEEN,
  TENS,
  THOUSAND,
  UNIT,
} from './roles.ts';
import { digitAt, has, touches } from './digits.ts';
import { fractionAt, hundredthsOf } from './fraction.ts';
import type { Fraction } from './fraction.ts';
import type { LanguageTables } from './language.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import type { UnclearReason } from './types.ts';
import { piecesAt, wholeOf } from './whole.ts';
import type { Piece } from './whole.ts';
import { SPACE } from './tokens.ts';
import type { Token } from './tokens.ts';

export interface Span {
  readonly start: number;
  readonly end: number;
  /** Hundredths; -1 when `problem` says why there is no value. */
  readonly value: Hundredths;
  readonly problem?: UnclearReason;
  readonly candidates: readonly Hundredths[];
  /** A point, a half or decimals were said: this is hardly a count. */
  readonly decimal: boolean;
  /** A whole part was said. */
  readonly hasWhole: boolean;
  readonly guess: boolean;
  /** Room for one more digit at its end: "sixty". */
  readonly open: boolean;
  readonly negative: boolean;
  /** Place of a unit said inside the number: "three millimetres and a half". */
  readonly unitAt?: number;
}

/** From here on a length is out of every range. */
export const TOO_LARGE = 100_000;

const STARTS =
  DIGIT | TEEN | TENS | HUNDRED | HUNDREDS | THOUSAND | POINT | SOUNDS | OH | ARTICLE | HALF | QUARTER | UNIT;

const problemSpan = (
  start: number,
  end: number,
  problem: UnclearReason,
  candidates: readonly Hundredths[] = [],
): Span => ({
  start,
  end,
  value: -1,
  problem,
  candidates,
  decimal: false,
  hasWhole: true,
  guess: false,
  open: false,
  negative: false,
});

/** Decimals that came inside the last numeral ("62.5"). */
function ownDecimals(pieces: readonly Piece[]): Fraction | undefined {
  const last = pieces[pieces.length - 1] as Piece;
  return last.decimals === undefined ? undefined : hundredthsOf(last.decimals, last.end);
}

/** A second fraction after the first: "sixty two point five point three". */
function doubled(tokens: readonly Token[], end: number): boolean {
  if (!touches(tokens, end)) return false;
  const again = tokens[end]?.numeral;
  return (
    has(tokens, end, POINT | PARTS | HALF) || again?.kind === 'part' || (again?.kind === 'number' && again.whole === '')
  );
}

function withWhole(tokens: readonly Token[], start: number, pieces: readonly Piece[], lang: LanguageTables): Span {
  const last = pieces[pieces.length - 1] as Piece;
  const own = ownDecimals(pieces);
  const unitAt = own || !touches(tokens, last.end) ? -1 : unitInside(tokens, last.end);
  const fraction = own ?? fractionAt(tokens, unitAt < 0 ? last.end : unitAt + 1, true, lang);
  const end = fraction?.end ?? last.end;
  const whole = wholeOf(pieces, fraction !== undefined);
  if (fraction?.problem) return problemSpan(start, end, fraction.problem);
  if (fraction && doubled(tokens, end)) return problemSpan(start, end + 1, 'malformed');
  const guess = pieces.some((p) => p.guess) || (fraction?.guess ?? false);
  if (whole.problem)
    return problemSpan(
      start,
      end,
      whole.problem,
      whole.candidates.map((tenths) => tenths * 10),
    );
  return {
    start,
    end,
    value: whole.value * 100 + (fraction?.hundredths ?? 0),
    candidates: [],
    decimal: fraction !== undefined,
    hasWhole: true,
    guess,
    open: fraction === undefined && last.open > 1,
    negative: tokens[start]?.numeral?.negative ?? false,
    ...(unitAt < 0 ? {} : { unitAt }),
  };
}

/** Place of the unit in "three millimetres and a half", "un milímetro y medio"; -1 when there is none. */
function unitInside(tokens: readonly Token[], i: number): number {
  if (!has(tokens, i, UNIT) || !has(tokens, i + 1, AND) || !touches(tokens, i + 1)) return -1;
  return has(tokens, i + 2, HALF | QUARTER) ||
    (has(tokens, i + 2, ARTICLE | DIGIT) && has(tokens, i + 3, HALF | QUARTER))
    ? i
    : -1;
}

/** "milímetro y medio": one and a half. */
function unitAndHalf(tokens: readonly Token[], i: number, lang: LanguageTables): Span | undefined {
  if (unitInside(tokens, i) < 0) return undefined;
  const fraction = fractionAt(tokens, i + 1, true, lang);
  if (!fraction || fraction.problem) return undefined;
  const value = 100 + fraction.hundredths;
  return {
    start: i,
    end: fraction.end,
    value,
    candidates: [],
    decimal: true,
    hasWhole: true,
    guess: true,
    open: false,
    negative: false,
    unitAt: i,
  };
}

function onlyFraction(tokens: readonly Token[], start: number, lang: LanguageTables): Span | undefined {
  const zero = has(tokens, start, OH) && digitAt(tokens, start, false) === 0;
  const fraction = fractionAt(tokens, zero ? start + 1 : start, zero, lang);
  if (!fraction) return undefined;
  if (fraction.problem) return problemSpan(start, fraction.end, fraction.problem);
  if (doubled(tokens, fraction.end)) return problemSpan(start, fraction.end + 1, 'malformed');
  const negative = tokens[start]?.numeral?.negative ?? false;
  return {
    start,
    end: fraction.end,
    value: fraction.hundredths,
    candidates: [],
    decimal: true,
    hasWhole: zero,
    guess: fraction.guess,
    open: false,
    negative,
  };
}

/** Numerals that are no number at all. */
function oddNumeral(tokens: readonly Token[], i: number): Span | undefined {
  const kind = tokens[i]?.numeral?.kind;
  return kind === 'malformed' ? problemSpan(i, i + 1, 'malformed') : undefined;
}

/** "oh five": nought five, or five after an "oh"? Ask. "Oh, fifty" and "oh five point two" are plain. */
function leadingOh(tokens: readonly Token[], i: number, span: Span): Span {
  if (i === 0 || !has(tokens, i - 1, OH) || (tokens[i] as Token).gap > SPACE) return span;
  if (span.decimal || span.value < 0 || span.value >= 1000) return span;
  return problemSpan(i - 1, span.end, 'lostPoint', [span.value / 10, span.value]);
}

/** The number that starts at `i`, if one does. */
export function numberAt(tokens: readonly Token[], i: number, lang: LanguageTables): Span | undefined {
  const token = tokens[i];
  if (!token || !(token.numeral || (token.lex.roles & STARTS) !== 0)) return undefined;
  const odd = oddNumeral(tokens, i) ?? unitAndHalf(tokens, i, lang);
  if (odd) return odd;
  const fraction =
    has(tokens, i, POINT | OH | HALF | QUARTER | ARTICLE) || token.numeral ? onlyFraction(tokens, i, lang) : undefined;
  const parts = fraction ?? onlyCounted(tokens, i, lang);
  if (parts) return parts;
  const pieces = piecesAt(tokens, i, lang);
  return pieces.length === 0 ? undefined : leadingOh(tokens, i, withWhole(tokens, i, pieces, lang));
}

/** "three quarters", "six tenths", "one half" standing alone. */
function onlyCounted(tokens: readonly Token[], i: number, lang: LanguageTables): Span | undefined {
  return has(tokens, i, DIGIT) && has(tokens, i + 1, QUARTER | PARTS | HALF)
    ? onlyFraction(tokens, i, lang)
    : undefined;
}
