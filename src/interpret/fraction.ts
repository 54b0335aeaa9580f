/** What follows the whole number: decimals after a point, halves, quarters, tenths, ½. */
import { AND, ARTICLE, DIGIT, HALF, MIDDLE, PARTS, POINT, QUARTER, TEEN, TENS, UNIT } from './roles.ts';
import type { Line } from './line.ts';
import type { UnclearReason } from './types.ts';
import { COMMA, SPACE, STOP } from './tokens.ts';

export interface Fraction {
  readonly end: number;
  readonly hundredths: number;
  /** Why there is no value. */
  readonly problem?: UnclearReason;
  readonly guess?: boolean;
}

const bad = (end: number, problem: UnclearReason): Fraction => ({ end, hundredths: 0, problem });

/** Value of a point word that is one only between numbers: "con". */
const WEAK_POINT = 1;

/** Figures after the point as hundredths; finer ones are refused unless they are noughts. */
export function hundredthsOf(figures: string, end: number, guess = false): Fraction {
  const cut = figures.replace(/0+$/, '');
  return cut.length > 2 ? bad(end, 'tooFine') : { end, hundredths: Number(cut.padEnd(2, '0')), guess };
}

/** "fünfundzwanzig": a two-digit number that starts with a digit word, written as one word. */
const isUnitFirst = (line: Line, i: number): boolean =>
  line.has(i, DIGIT | ARTICLE) && line.gap(i + 1) < SPACE && !line.has(i + 1, DIGIT);

/** One piece of decimals, as figures: a digit word, a two-digit number word, or figures. */
function decimalPiece(line: Line, i: number): { figures: string; end: number } | undefined {
  const numeral = line.numeral(i);
  if (numeral)
    return line.figures(i) && numeral.decimals === undefined ? { figures: numeral.whole, end: i + 1 } : undefined;
  const two = line.has(i, TEEN | TENS) || isUnitFirst(line, i) ? line.lexicon.tables.tens(line, i) : undefined;
  if (two && two.value >= 10) return { figures: `${two.value}`, end: two.end };
  // "coma un milímetros"
  const digit = line.has(i, ARTICLE) && line.near(i + 1, UNIT) ? line.value(i) : line.digit(i, true);
  return digit < 0 ? undefined : { figures: `${digit}`, end: i + 1 };
}

function afterPoint(line: Line, start: number): Fraction {
  let figures = '';
  let at = start;
  let guess = false;
  while (line.gap(at) < (at === start ? STOP : COMMA)) {
    const piece = decimalPiece(line, at);
    if (!piece || figures.length + piece.figures.length > 2) break;
    // "fifty-two point five to": a second decimal, or the beginning of what was cut off?
    if (figures !== '' && line.has(at, MIDDLE)) return bad(piece.end, 'lostPoint');
    figures += piece.figures;
    guess ||= line.guessed(at);
    at = piece.end;
  }
  return figures === '' ? bad(start, 'malformed') : hundredthsOf(figures, at, guess);
}

/** "half", "a half". "Sixty-one half" could be 60½ or 61½ and is refused. */
function halfAt(line: Line, from: number, loose: boolean): Fraction | undefined {
  const counted = line.value(from) === 1 && line.has(from, ARTICLE | DIGIT) && line.touches(from + 1);
  const at = counted ? from + 1 : from;
  if (!line.has(at, HALF)) return undefined;
  if (loose && !counted && line.value(from - 1) === 1 && line.has(from - 1, DIGIT | ARTICLE))
    return bad(at + 1, 'malformed');
  return { end: at + 1, hundredths: line.value(at), guess: loose && !counted };
}

/**
 * "three quarters", "a quarter", "nine tenths". `loose`: a whole number stands before without "and"; then "thirty-three
 * quarters" could be 30¾ or 33¼ and is refused.
 */
function countedAt(line: Line, from: number, loose: boolean): Fraction | undefined {
  if (loose && line.has(from, QUARTER)) return bad(from + 1, 'malformed');
  const counted = line.has(from, ARTICLE | DIGIT) && line.touches(from + 1);
  const at = counted ? from + 1 : from;
  const count = counted ? line.value(from) : 1;
  const worth = line.has(at, QUARTER) ? 25 : line.value(at);
  if (!line.has(at, QUARTER) && !(counted && line.has(at, PARTS))) return undefined;
  // Thirds and eighths have no worth in whole hundredths.
  if (worth === 0) return bad(at + 1, 'tooFine');
  return count * worth < 100 ? { end: at + 1, hundredths: count * worth } : bad(at + 1, 'malformed');
}

/** ½, 1/2, and ".5" set apart. */
function numeralPart(line: Line, i: number, loose: boolean): Fraction | undefined {
  const numeral = line.numeral(i);
  if (numeral?.kind === 'part')
    return numeral.hundredths < 0 ? bad(i + 1, 'tooFine') : { end: i + 1, hundredths: numeral.hundredths };
  return loose && line.figures(i)?.whole === '' ? hundredthsOf(numeral?.decimals ?? '', i + 1) : undefined;
}

/** The fraction that starts at `i`, if one does. `inside`: a whole number stands directly before. */
export function fractionAt(line: Line, i: number, inside: boolean): Fraction | undefined {
  if (inside && line.gap(i) > COMMA) return undefined;
  if (line.has(i, POINT)) {
    const fraction = afterPoint(line, i + 1);
    const needed = inside && line.value(i) !== WEAK_POINT;
    return needed || (!fraction.problem && (inside || line.value(i) !== WEAK_POINT)) ? fraction : undefined;
  }
  if (inside && line.gap(i) === COMMA) return undefined;
  const from = line.has(i, AND) && line.touches(i + 1) ? i + 1 : i;
  const loose = inside && from === i;
  const part = numeralPart(line, from, from === i) ?? halfAt(line, from, loose) ?? countedAt(line, from, loose);
  // "fünf anderthalb": one and a half goes into no number.
  return inside && part && part.hundredths > 99 ? bad(part.end, 'malformed') : part;
}
