/** One spoken number: a whole part, a fraction, or both; with what is doubtful about it. */
import {
  AND,
  ARTICLE,
  DIGIT,
  FIX,
  HALF,
  HUNDRED,
  HUNDREDS,
  NOT,
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
import type { SpokenUnit } from './roles.ts';
import { fractionAt, hundredthsOf } from './fraction.ts';
import type { Line } from './line.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import type { UnclearReason } from './types.ts';
import { piecesAt, wholeOf } from './whole.ts';
import type { Piece } from './whole.ts';
import { SPACE } from './tokens.ts';

export interface Span {
  readonly start: number;
  readonly end: number;
  /** Hundredths; -1 when `problem` says why there is no value. */
  readonly value: Hundredths;
  readonly problem: UnclearReason | undefined;
  readonly candidates: readonly Hundredths[];
  /** A point, a half or decimals were said: this is hardly a count. */
  readonly decimal: boolean;
  /** A whole part was said. */
  readonly hasWhole: boolean;
  readonly guess: boolean;
  /** Room for one more digit at its end: "sixty". */
  readonly open: boolean;
  /** Place of a unit said inside the number: "three millimetres and a half". */
  readonly unitAt: number;
  // What the words around it make of it, set when all numbers of the utterance are known:
  /** End of number and unit. */
  last: number;
  role: 'reading' | 'alien' | 'label';
  unit: SpokenUnit | undefined;
  negative: boolean;
  /** "not fifty": denied. */
  denied: boolean;
}

const NONE: readonly Hundredths[] = [];

/** From here on a length is out of every range. */
export const TOO_LARGE = 100_000;

const STARTS =
  DIGIT | TEEN | TENS | HUNDRED | HUNDREDS | THOUSAND | POINT | SOUNDS | OH | ARTICLE | HALF | QUARTER | UNIT;

/** A span with nothing known but its place and what `found` says. One shape for all, written out: this runs for every word. */
export const spanOf = (start: number, end: number, found: Partial<Span>): Span => ({
  start,
  end,
  value: found.value ?? -1,
  problem: found.problem,
  candidates: found.candidates ?? NONE,
  decimal: found.decimal ?? false,
  hasWhole: found.hasWhole ?? true,
  guess: found.guess ?? false,
  open: found.open ?? false,
  unitAt: found.unitAt ?? -1,
  last: end,
  role: 'reading',
  unit: undefined,
  negative: false,
  denied: false,
});

/** A second fraction after the first: "sixty two point five point three". */
const isDoubled = (line: Line, end: number): boolean =>
  line.touches(end) &&
  (line.has(end, POINT | PARTS | HALF) || line.numeral(end)?.kind === 'part' || line.figures(end)?.whole === '');

/** "three millimetres and a half", "un milímetro y medio": the unit stands before the fraction. */
const isUnitInside = (line: Line, i: number): boolean => line.has(i, UNIT) && line.near(i + 1, AND) && line.part(i + 2);

function withWhole(line: Line, start: number, pieces: readonly Piece[]): Span {
  const last = pieces[pieces.length - 1] as Piece;
  const own = last.decimals === undefined ? undefined : hundredthsOf(last.decimals, last.end);
  const unitAt = !own && line.touches(last.end) && isUnitInside(line, last.end) ? last.end : -1;
  const fraction = own ?? fractionAt(line, unitAt < 0 ? last.end : unitAt + 1, true);
  const end = fraction?.end ?? last.end;
  const whole = wholeOf(pieces, fraction !== undefined);
  if (fraction?.problem) return spanOf(start, end, { problem: fraction.problem });
  if (fraction && isDoubled(line, end)) return spanOf(start, end + 1, { problem: 'malformed' });
  if (whole.problem)
    return spanOf(start, end, { problem: whole.problem, candidates: whole.candidates.map((tenths) => tenths * 10) });
  const guess = fraction?.guess === true || pieces.some((p) => p.guess);
  const value = whole.value * 100 + (fraction?.hundredths ?? 0);
  return spanOf(start, end, {
    value,
    decimal: fraction !== undefined,
    guess,
    open: !fraction && last.open > 1,
    unitAt,
  });
}

/** "milímetro y medio": one and a half. */
function unitAndHalf(line: Line, i: number): Span | undefined {
  const fraction = isUnitInside(line, i) ? fractionAt(line, i + 1, true) : undefined;
  if (!fraction || fraction.problem) return undefined;
  return spanOf(i, fraction.end, { value: 100 + fraction.hundredths, decimal: true, guess: true, unitAt: i });
}

/** "point five", "half", "three quarters", "oh point five". */
function onlyFraction(line: Line, start: number): Span | undefined {
  const hasWhole = line.has(start, OH) && line.digit(start, false) === 0;
  const fraction = fractionAt(line, hasWhole ? start + 1 : start, hasWhole);
  if (!fraction) return undefined;
  if (fraction.problem) return spanOf(start, fraction.end, { problem: fraction.problem });
  if (isDoubled(line, fraction.end)) return spanOf(start, fraction.end + 1, { problem: 'malformed' });
  return spanOf(start, fraction.end, {
    value: fraction.hundredths,
    decimal: true,
    hasWhole,
    guess: fraction.guess === true,
  });
}

/** "oh five": nought five, or five after an "oh"? Ask. "Oh, fifty" and "oh five point two" are plain. */
function afterOh(line: Line, span: Span): Span {
  const { start, end, value, decimal } = span;
  if (!line.has(start - 1, OH) || line.gap(start) > SPACE || decimal || value < 0 || value >= 1000) return span;
  return spanOf(start - 1, end, { problem: 'lostPoint', candidates: [value / 10, value] });
}

/** "not seventy-six seventy-five": the first is denied, by itself. After a "no" a point may have been lost instead. */
function deniedApart(line: Line, i: number, pieces: readonly Piece[]): readonly Piece[] {
  const [first, second] = pieces;
  const isPair = pieces.length === 2 && first && second && second.value > Math.max(20, first.open);
  return isPair && line.after(i, NOT) && !line.has(i - 1, FIX) ? [first] : pieces;
}

/** The number that starts at `i`, if one does. */
export function numberAt(line: Line, i: number): Span | undefined {
  const numeral = line.numeral(i);
  if (!numeral && !line.has(i, STARTS)) return undefined;
  if (numeral?.kind === 'malformed') return spanOf(i, i + 1, { problem: 'malformed' });
  if (line.has(i, UNIT)) return unitAndHalf(line, i);
  const isPart =
    numeral !== undefined ||
    line.has(i, POINT | OH | HALF | QUARTER | ARTICLE) ||
    line.has(i + 1, QUARTER | PARTS | HALF);
  const fraction = isPart ? onlyFraction(line, i) : undefined;
  if (fraction) return fraction;
  const pieces = deniedApart(line, i, piecesAt(line, i));
  return pieces.length === 0 ? undefined : afterOh(line, withWhole(line, i, pieces));
}
