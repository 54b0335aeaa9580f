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
import type { Line } from './line.ts';
import type { UnclearReason } from './types.ts';
import { PAUSE } from './tokens.ts';

/** One piece: "sixty two", "one hundred and four", "oh", or a numeral. */
export interface Piece {
  readonly value: number;
  readonly end: number;
  /** One digit alone. */
  readonly single: boolean;
  /** Room left for a smaller piece: 10 after "sixty", 100 after "one hundred", else 1. */
  readonly open: number;
  readonly figures: boolean;
  readonly decimals: string | undefined;
  readonly guess: boolean;
}

export interface Whole {
  /** Whole units, or -1 when `problem` says why not. */
  readonly value: number;
  readonly problem?: UnclearReason;
  /** In whole tenths of a unit, for asking back. */
  readonly candidates: readonly number[];
}

const PLAIN = { single: false, open: 1, figures: false, decimals: undefined, guess: false };

function openPlaces(figures: string): number {
  const value = Number(figures);
  if (figures.startsWith('0') || value < 20) return 1;
  return value % 100 === 0 ? 100 : value % 10 === 0 ? 10 : 1;
}

function figuresAt(line: Line, i: number): Piece | undefined {
  const { whole = '', decimals } = line.figures(i) ?? {};
  if (whole === '') return undefined;
  const single = whole.length === 1;
  return { value: Number(whole), end: i + 1, single, open: openPlaces(whole), figures: true, decimals, guess: false };
}

function below100At(line: Line, i: number): Piece | undefined {
  const found = figuresAt(line, i) ?? line.lexicon.tables.tens(line, i);
  if (!found || 'single' in found) return found;
  const { value, end, open } = found;
  const guess = line.guessed(i) || line.guessed(end - 1);
  return { value, end, single: value < 10 && end === i + 1, open, figures: false, decimals: undefined, guess };
}

/** What may follow a hundred: a number below one hundred, after "and" where the language says so. */
function afterHundred(line: Line, i: number): Piece | undefined {
  const at = line.lexicon.tables.andAfterHundred && line.near(i, AND) ? i + 1 : i;
  if (!line.touches(at) || line.has(at, OH)) return undefined;
  if (line.has(at, MIDDLE)) return at > i && line.has(at + 1, POINT) ? innerDigit(line, at) : undefined;
  const rest = below100At(line, at) ?? (at > i ? innerDigit(line, at) : undefined);
  return rest && rest.value > 0 && rest.value < 100 ? rest : undefined;
}

/** The hundreds that start at `i`, as a piece of their own. */
function hundredsAt(line: Line, i: number): Piece | undefined {
  const alone = line.has(i, HUNDRED | HUNDREDS);
  if (!alone && !line.near(i + 1, HUNDRED)) return undefined;
  const figures = line.figures(i);
  const said = line.has(i, DIGIT | SOUNDS | TEEN | ARTICLE)
    ? line.value(i)
    : figures?.decimals
      ? 0
      : Number(figures?.whole ?? 0);
  const value = alone ? line.value(i) : said * 100;
  return value > 0 ? { ...PLAIN, value, end: alone ? i + 1 : i + 2, open: 100, guess: line.guessed(i) } : undefined;
}

/** A cardinal or numeral at `i`. From a thousand on only its end matters: it is refused as a whole. */
function pieceAt(line: Line, i: number): Piece | undefined {
  const hundreds = hundredsAt(line, i);
  const rest = hundreds ? afterHundred(line, hundreds.end) : below100At(line, i);
  const piece =
    hundreds && rest
      ? { ...rest, value: hundreds.value + rest.value, single: false, figures: false }
      : (rest ?? hundreds);
  const thousandAt = piece ? piece.end : i;
  if (!(piece ? line.near(thousandAt, THOUSAND) : line.has(i, THOUSAND))) return piece;
  const at = line.has(thousandAt + 1, AND) ? thousandAt + 2 : thousandAt + 1;
  const end = (line.touches(at) ? pieceAt(line, at)?.end : undefined) ?? thousandAt + 1;
  return { ...PLAIN, value: 1000, end };
}

/** "oh", and sound-alikes, as digits in the middle of digits. */
function innerDigit(line: Line, i: number): Piece | undefined {
  const value = line.has(i, OH | MIDDLE | SOUNDS) ? line.digit(i, true) : -1;
  return value < 0 ? undefined : { ...PLAIN, value, end: i + 1, single: true, guess: line.guessed(i) };
}

/** A recogniser's "100 and 62.5". */
const figuresGoOn = (line: Line, { figures, value, end }: Piece): boolean =>
  figures && value === 100 && line.near(end, AND) && line.figures(end + 1) !== undefined;

/** "drei Viertel" after a number is a fraction of it. */
const countsParts = (line: Line, i: number): boolean => line.has(i, DIGIT) && line.near(i + 1, QUARTER | PARTS);

/** All pieces standing side by side from `start`. */
export function piecesAt(line: Line, start: number): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = start;
  while (at === start || (line.gap(at) <= PAUSE && !countsParts(line, at))) {
    const piece: Piece | undefined = pieceAt(line, at) ?? (at > start ? innerDigit(line, at) : undefined);
    if (!piece) break;
    pieces.push(piece);
    if (piece.decimals !== undefined) break;
    at = piece.end;
    if (line.lexicon.tables.andAfterHundred && figuresGoOn(line, piece)) at++;
  }
  return pieces;
}

const joined = (pieces: readonly Piece[]): number => pieces.reduce((sum, p) => sum * 10 + p.value, 0);

/** Every piece fits the empty places of the one before: 100 + 62, 60 + 2. */
const nested = (pieces: readonly Piece[]): boolean =>
  pieces.every((p, k) => k === 0 || (p.value > 0 && p.value < (pieces[k - 1] as Piece).open));

/** With the point heard, every digit's place is known. -1 when the pieces make no number. */
function fixedValue(pieces: readonly Piece[]): number {
  const [first, second] = pieces as [Piece, Piece];
  if (nested(pieces)) return pieces.reduce((sum, p) => sum + p.value, 0);
  if (pieces.length <= 3 && first.value > 0 && pieces.every((p) => p.single)) return joined(pieces);
  const shortHundred = pieces.length === 2 && first.single && first.value === 1 && !first.figures && !second.figures;
  return shortHundred && second.value >= 10 && second.value < 100 ? 100 + second.value : -1;
}

/** "one oh four": the nought in the middle fixes the places even without a point. */
const isOneOhFour = (pieces: readonly Piece[]): boolean =>
  pieces.length === 3 && pieces.every((p) => p.single) && pieces[0]?.value === 1 && pieces[1]?.value === 0;

/** "sixty two sixty two": said twice. "five five" is not (fifty-five?), nor is "fifty fifty". */
function isRepeated(pieces: readonly Piece[]): boolean {
  const [first, second] = pieces as [Piece, Piece];
  return pieces.length === 2 && first.value === second.value && first.value > 20 && first.value % 10 !== 0;
}

/** What may have been meant when the word "point" was lost: the last digit as a tenth, or all digits as one number. */
function lostPoint(pieces: readonly Piece[]): Whole {
  const last = pieces[pieces.length - 1] as Piece;
  const before = fixedValue(pieces.slice(0, -1));
  const all = fixedValue(pieces);
  const candidates = all >= 0 && all < 200 ? [all * 10] : [];
  if (!last.single || before < 0) return { value: -1, problem: 'malformed', candidates };
  return { value: -1, problem: 'lostPoint', candidates: [before * 10 + last.value, ...candidates] };
}

/** Puts the pieces together; `fixed`: a point, a half or decimals follow and fix the places. */
export function wholeOf(pieces: readonly Piece[], fixed: boolean): Whole {
  if (pieces.length === 1 || isRepeated(pieces)) return { value: (pieces[0] as Piece).value, candidates: [] };
  if (isOneOhFour(pieces)) return { value: joined(pieces), candidates: [] };
  if (!fixed) return lostPoint(pieces);
  const value = fixedValue(pieces);
  return value < 0 ? { value, problem: 'malformed', candidates: [] } : { value, candidates: [] };
}
