/** The whole-number part of a reading: one cardinal, digits one by one, or a recogniser's pieces of one number. */
import {
  AND,
  ARTICLE,
  DIGIT,
  HUNDRED,
  HUNDREDS,
  MIDDLE,
  OH,
  PARTS,
  POINT,
  QUARTER,
  SOUNDS,
  TEEN,
  THOUSAND,
} from './roles.ts';
import { digitAt, has, isGuess, touches } from './digits.ts';
import type { LanguageTables } from './language.ts';
import type { UnclearReason } from './types.ts';
import { PAUSE } from './tokens.ts';
import type { Token } from './tokens.ts';

/** One piece: "sixty two", "one hundred and four", "oh", or a numeral. */
export interface Piece {
  readonly value: number;
  readonly end: number;
  readonly single: boolean;
  /** Room left for a smaller piece: 10 after "sixty", 100 after "one hundred", else 1. */
  readonly open: number;
  readonly figures: boolean;
  readonly decimals?: string;
  readonly guess: boolean;
}

export interface Whole {
  /** Whole units, or -1 when `problem` says why not. */
  readonly value: number;
  readonly problem?: UnclearReason;
  /** In whole tenths of a unit, for asking back. */
  readonly candidates: readonly number[];
}

const roundPlaces = (figures: string): number => {
  const value = Number(figures);
  if (figures.startsWith('0') || value < 20) return 1;
  return value % 100 === 0 ? 100 : value % 10 === 0 ? 10 : 1;
};

function figuresAt(tokens: readonly Token[], i: number): Piece | undefined {
  const n = tokens[i]?.numeral;
  if (n?.kind !== 'number' || n.whole === '') return undefined;
  const piece = {
    value: Number(n.whole),
    end: i + 1,
    single: n.whole.length === 1,
    open: roundPlaces(n.whole),
    figures: true,
    guess: false,
  };
  return n.decimals === undefined ? piece : { ...piece, decimals: n.decimals };
}

function below100At(tokens: readonly Token[], i: number, lang: LanguageTables): Piece | undefined {
  const found = lang.tens(tokens, i);
  if (!found) return undefined;
  const guess = isGuess(tokens, i) || isGuess(tokens, found.end - 1);
  return { ...found, single: found.value < 10 && found.end === i + 1, figures: false, guess };
}

/** What may follow a hundred: a number below one hundred in words or figures, after "and" where the language says so. */
function afterHundred(tokens: readonly Token[], i: number, lang: LanguageTables): Piece | undefined {
  const at = lang.andAfterHundred && has(tokens, i, AND) && touches(tokens, i) ? i + 1 : i;
  if (!touches(tokens, at) || has(tokens, at, OH)) return undefined;
  if (has(tokens, at, MIDDLE)) return at > i && has(tokens, at + 1, POINT) ? innerDigit(tokens, at) : undefined;
  const rest = figuresAt(tokens, at) ?? below100At(tokens, at, lang);
  return rest && rest.value > 0 && rest.value < 100 ? rest : undefined;
}

/** How many hundreds start at `i`, and where the words for them end; end 0 when none. */
function hundredsAt(tokens: readonly Token[], i: number): { readonly count: number; readonly end: number } {
  if (has(tokens, i, HUNDREDS)) return { count: (tokens[i] as Token).lex.value / 100, end: i + 1 };
  if (has(tokens, i, HUNDRED)) return { count: 1, end: i + 1 };
  if (!has(tokens, i + 1, HUNDRED) || !touches(tokens, i + 1)) return { count: 0, end: 0 };
  const numeral = tokens[i]?.numeral;
  if (numeral?.kind === 'number' && numeral.decimals === undefined && numeral.whole.length < 3)
    return { count: Number(numeral.whole), end: i + 2 };
  if (has(tokens, i, ARTICLE)) return { count: 1, end: i + 2 };
  if (has(tokens, i, DIGIT | SOUNDS | TEEN)) return { count: (tokens[i] as Token).lex.value, end: i + 2 };
  return { count: 0, end: 0 };
}

function below1000At(tokens: readonly Token[], i: number, lang: LanguageTables): Piece | undefined {
  const hundreds = hundredsAt(tokens, i);
  if (hundreds.end === 0) return figuresAt(tokens, i) ?? below100At(tokens, i, lang);
  const base = hundreds.count * 100;
  const guess = isGuess(tokens, i);
  const rest = afterHundred(tokens, hundreds.end, lang);
  if (!rest) return { value: base, end: hundreds.end, single: false, open: 100, figures: false, guess };
  const piece = {
    value: base + rest.value,
    end: rest.end,
    single: false,
    open: rest.open,
    figures: false,
    guess: guess || rest.guess,
  };
  return rest.decimals === undefined ? piece : { ...piece, decimals: rest.decimals };
}

/** A cardinal or numeral at `i`. Thousands are read so that they can be refused as a whole. */
function pieceAt(tokens: readonly Token[], i: number, lang: LanguageTables): Piece | undefined {
  const first = has(tokens, i, THOUSAND) ? { value: 1, end: i } : below1000At(tokens, i, lang);
  if (!first || !has(tokens, first.end, THOUSAND) || (first.end > i && !touches(tokens, first.end)))
    return first as Piece | undefined;
  const after = first.end + 1;
  const at = has(tokens, after, AND) ? after + 1 : after;
  const rest = touches(tokens, at) ? below1000At(tokens, at, lang) : undefined;
  const value = Math.max(first.value, 1) * 1000 + (rest?.value ?? 0);
  return { value, end: rest?.end ?? after, single: false, open: 1, figures: false, guess: false };
}

/** "oh", and sound-alikes, as digits in the middle of digits. */
function innerDigit(tokens: readonly Token[], i: number): Piece | undefined {
  if (!has(tokens, i, OH | MIDDLE | SOUNDS)) return undefined;
  const value = digitAt(tokens, i, true);
  return value < 0
    ? undefined
    : { value, end: i + 1, single: true, open: 1, figures: false, guess: isGuess(tokens, i) };
}

/** A recogniser's "100 and 62.5". */
const figuresGoOn = (tokens: readonly Token[], piece: Piece): boolean =>
  piece.figures &&
  piece.value === 100 &&
  has(tokens, piece.end, AND) &&
  touches(tokens, piece.end) &&
  tokens[piece.end + 1]?.numeral?.kind === 'number';

/** "drei Viertel" after a number is a fraction of it. */
const countsParts = (tokens: readonly Token[], i: number): boolean =>
  has(tokens, i, DIGIT) && has(tokens, i + 1, QUARTER | PARTS) && touches(tokens, i + 1);

/** All pieces standing side by side from `i`. */
export function piecesAt(tokens: readonly Token[], i: number, lang: LanguageTables): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = i;
  for (;;) {
    const token = tokens[at];
    if (!token || (pieces.length > 0 && (token.gap > PAUSE || countsParts(tokens, at)))) return pieces;
    const piece: Piece | undefined =
      pieceAt(tokens, at, lang) ?? (pieces.length > 0 ? innerDigit(tokens, at) : undefined);
    if (!piece) return pieces;
    pieces.push(piece);
    if (piece.decimals !== undefined) return pieces;
    at = piece.end;
    if (lang.andAfterHundred && figuresGoOn(tokens, piece)) at++;
  }
}

const concatenated = (pieces: readonly Piece[]): number => pieces.reduce((sum, p) => sum * 10 + p.value, 0);
const allSingle = (pieces: readonly Piece[]): boolean => pieces.every((p) => p.single);

/** Every piece fits the empty places of the one before: 100 + 62, 60 + 2. */
const nested = (pieces: readonly Piece[]): boolean =>
  pieces.every((p, k) => k === 0 || (p.value > 0 && p.value < (pieces[k - 1] as Piece).open));

/** With the point heard, every digit's place is known. */
function fixedValue(pieces: readonly Piece[]): number {
  const [first, second] = pieces as [Piece, Piece];
  if (nested(pieces)) return pieces.reduce((sum, p) => sum + p.value, 0);
  if (allSingle(pieces) && pieces.length <= 3 && first.value > 0) return concatenated(pieces);
  const shortHundred =
    pieces.length === 2 &&
    first.single &&
    !first.figures &&
    !second.figures &&
    second.value >= 10 &&
    second.value < 100;
  return shortHundred && first.value === 1 ? 100 + second.value : -1;
}

/** "one oh four": the nought in the middle fixes the places even without a point. */
const isOneOhFour = (pieces: readonly Piece[]): boolean =>
  pieces.length === 3 && allSingle(pieces) && pieces[0]?.value === 1 && pieces[1]?.value === 0;

/** "sixty two sixty two": said twice. "five five" is not (fifty-five?), nor is "fifty fifty". */
const isRepeated = (pieces: readonly Piece[]): boolean =>
  pieces.length === 2 &&
  pieces[0]?.value === pieces[1]?.value &&
  (pieces[0]?.value ?? 0) > 20 &&
  (pieces[0]?.value ?? 0) % 10 !== 0;

/** What may have been meant when the word "point" was lost: the last digit as a tenth, or all digits as one number. */
function lostPoint(pieces: readonly Piece[]): Whole {
  const last = pieces[pieces.length - 1] as Piece;
  const before = pieces.slice(0, -1);
  const base = before.length === 1 ? (before[0] as Piece).value : fixedValue(before);
  if (!last.single || base < 0) return { value: -1, problem: 'malformed', candidates: shortHundredOf(pieces) };
  const candidates = [base * 10 + last.value];
  const joined = fixedValue(pieces);
  if (joined >= 0 && joined < 200) candidates.push(joined * 10);
  return { value: -1, problem: 'lostPoint', candidates };
}

const shortHundredOf = (pieces: readonly Piece[]): readonly number[] => {
  const value = fixedValue(pieces);
  return value < 0 ? [] : [value * 10];
};

/** Puts the pieces together; `fixed`: a point, a half or decimals follow and fix the places. */
export function wholeOf(pieces: readonly Piece[], fixed: boolean): Whole {
  const only = pieces[0] as Piece;
  if (pieces.length === 1) return { value: only.value, candidates: [] };
  if (isOneOhFour(pieces)) return { value: concatenated(pieces), candidates: [] };
  if (isRepeated(pieces)) return { value: only.value, candidates: [] };
  if (!fixed) return lostPoint(pieces);
  const value = fixedValue(pieces);
  return value < 0 ? { value: -1, problem: 'malformed', candidates: [] } : { value, candidates: [] };
}
