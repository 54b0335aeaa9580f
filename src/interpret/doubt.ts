/** What the words around a number say about it: nothing against it, some doubt, a question, or that it was only talk. */
import {
  AND,
  ARTICLE,
  COPULA,
  DOUBTFUL,
  FIX,
  LABEL,
  MIDDLE,
  MONTH,
  NEGATIVE,
  NOT,
  NUMBER_WORD,
  OH,
  PARTS,
  PERSON,
  POINT,
  RANGE,
  SIDED,
  TALK,
  UNIT,
} from './roles.ts';
import type { Line } from './line.ts';
import { soundsLikeNumber } from './near.ts';
import { SMALL } from './spans.ts';
import type { Span } from './number.ts';

export type Doubt = 'plain' | 'doubtful' | 'ask' | 'talk';

/** A reading is hardly ever told in more words than this, nor with more words that are in no table. */
const MOST_WORDS = 14;
const MOST_UNKNOWN = 2;
/** With words in no table around it, a bare number is a reading only from here on. */
const LEAST_AMONG_UNKNOWN = 2500;
/** A count of things that is not followed by a known word: "twelve trombones". */
const MOST_COUNTED = 2000;

/** A number below it may be what is left of a greater one: "three point five" of "sixty-three point five". */
const TEN = 1000;

const misheard = (line: Line, i: number): boolean => soundsLikeNumber(line.text(i), line.lexicon);

/** A decimal or a millimetre was said: hardly a count. */
export const isStrong = (f: Span): boolean => f.decimal || f.unit === 'mm';

/** What stands before a small bare number lets it be a reading: nothing, a pause, "is", "please", a correction. */
const isIntroduced = (line: Line, { start }: Span): boolean =>
  start === 0 ||
  !line.touches(start) ||
  line.has(start - 1, COPULA | FIX | AND | OH) ||
  line.lexicon.polite.has(line.text(start - 1));

/** Something other than politeness or a correction follows directly. */
function talksOn(line: Line, from: number): boolean {
  for (let i = from; i < line.length; i++) {
    if (line.touches(i) && !line.has(i, FIX) && !line.lexicon.polite.has(line.text(i))) return true;
  }
  return false;
}

/** "tray five", "batch number 62", "shade b 3.5": the number names a thing. */
function isNumbered(line: Line, start: number): boolean {
  if (!line.touches(start)) return false;
  let at = line.text(start - 1).length === 1 && line.touches(start - 1) ? start - 2 : start - 1;
  while (line.has(at, LABEL) && !line.has(at, DOUBTFUL)) at--;
  return line.has(at, LABEL);
}

/** "these two", "high five", "half": a small bare number, or a part of nothing, is a reading only when nothing else speaks. */
function alone(line: Line, f: Span): Doubt {
  const barePart = !f.hasWhole && line.numeral(f.start) === undefined;
  // "chin point seventy": a noun, or a decimal?
  if (!f.hasWhole && line.has(f.start, POINT)) return isIntroduced(line, f) ? 'plain' : 'ask';
  const numbered = isNumbered(line, f.start);
  if (f.unit !== undefined) return 'plain';
  if ((f.decimal && !barePart) || f.value > SMALL) return numbered ? 'ask' : 'plain';
  const goesOn = talksOn(line, f.last);
  if (numbered || (goesOn && line.after(f.start, DOUBTFUL))) return 'talk';
  return isIntroduced(line, f) && !goesOn ? 'plain' : 'ask';
}

/** "sixty fine", "sixty for the upper": the word after an open number may have been its digit. */
const isHalfHeard = (line: Line, f: Span): boolean =>
  f.open && f.last === f.end && line.touches(f.end) && (line.has(f.end, MIDDLE) || misheard(line, f.end));

/** Value of a word that says so only in front of a number: "over sixty", but "sixty over the ridge". */
const BEFORE_ONLY = 1;

/** May stand between "at least" and its number. */
const LINKS = COPULA | RANGE | DOUBTFUL | ARTICLE;

/** "just under sixty", "at least about fifty", "sixty and a bit", "sixty at least": not the number said. */
const isSided = (line: Line, { start, last }: Span): boolean =>
  line.after(start, SIDED) ||
  (line.after(start, LINKS) && line.after(start - 1, SIDED)) ||
  (line.near(last, SIDED) && (line.value(last) !== BEFORE_ONLY || last === line.length - 1));

/** Value of a person who is neither speaking nor spoken to. */
const THIRD = 1;
/** Value of "I am", which tells an age when a number follows it directly. */
const SPEAKER = 2;

/** "she is sixty two", "he'll be eighty", "I'm seventy four". */
function isAge(line: Line, f: Span): boolean {
  if (isStrong(f)) return false;
  if (line.after(f.start, PERSON) && line.value(f.start - 1) === SPEAKER) return true;
  for (let i = 0; i < f.start; i++) if (line.has(i, PERSON) && line.value(i) === THIRD) return true;
  return false;
}

/** What no utterance ends with after a number: it was to go on. */
const GOES_ON = AND | RANGE | NOT | DOUBTFUL;

/** "fifty and", "fifty or", "sixty point oh even", "fifty tenths", "fifty and a harf": it was to go on, or is another number. */
function isCutOff(line: Line, { last, open, decimal }: Span): boolean {
  if (line.near(last, NEGATIVE | PARTS) || (decimal && line.has(last - 1, OH) && line.touches(last))) return true;
  if (!line.near(last, GOES_ON) || line.has(last, LABEL)) return false;
  const counted = line.has(last + 1, ARTICLE);
  const next = counted ? last + 2 : last + 1;
  return next >= line.length || (line.has(last, AND) && (open || counted || line.unknown(next)));
}

/** Where a greater part of the number may have stood is another word, or none: "fivty and five", "blue three point five", "and a half". */
function isMaimed(line: Line, { start, value, hasWhole }: Span): boolean {
  const joined = line.has(start - 1, AND);
  const before = joined ? start - 2 : start - 1;
  if (!line.touches(start)) return false;
  if (joined && value < TEN && (before < 0 ? !hasWhole : line.touches(start - 1))) return true;
  if (!line.unknown(before)) return false;
  return joined || value < TEN || misheard(line, before) || line.has(before - 1, NUMBER_WORD);
}

/** "or fifty", "between fifty": another number was said before. ("to", "a" have a value: they may stand before any number.) */
const isSecond = (line: Line, { start }: Span): boolean => line.after(start, RANGE) && line.value(start - 1) === 0;

/** What the words directly beside the number say. */
export function beside(line: Line, f: Span): Doubt {
  const { last } = f;
  if (line.touches(last) && line.unknown(last)) {
    return isStrong(f) || misheard(line, last) || f.value > MOST_COUNTED ? 'ask' : 'talk';
  }
  const broken = isCutOff(line, f) || isSecond(line, f) || isMaimed(line, f);
  const odd = broken || isSided(line, f) || isHalfHeard(line, f) || isAge(line, f);
  return odd ? 'ask' : alone(line, f);
}

/** Indices of the tokens that belong to no number. */
function others(line: Line, found: readonly Span[]): readonly number[] {
  const list: number[] = [];
  for (let i = 0; i < line.length; i++) if (!found.some((f) => f.start <= i && i < f.last)) list.push(i);
  return list;
}

/** Words of talk, or a month, stand around the numbers. */
export const isTalk = (line: Line, found: readonly Span[]): boolean =>
  others(line, found).some((i) => line.has(i, TALK | MONTH));

/** What the rest of the utterance says. */
export function further(line: Line, f: Span, found: readonly Span[]): Doubt {
  const rest = others(line, found);
  if (rest.some((i) => line.has(i, TALK))) return isStrong(f) ? 'ask' : 'talk';
  const strayUnit =
    rest.some((i) => line.has(i, UNIT) && (line.value(i) === 1 || line.value(i) === 2)) &&
    found.every((x) => x.unit === undefined);
  const unknown = rest.filter((i) => line.unknown(i)).length;
  if (strayUnit || rest.length > MOST_WORDS || unknown > MOST_UNKNOWN) return 'ask';
  if (unknown === 0) return 'plain';
  const impersonal = f.value >= LEAST_AMONG_UNKNOWN && !rest.some((i) => line.has(i, PERSON));
  return isStrong(f) || line.has(f.start - 1, COPULA) || impersonal ? 'doubtful' : 'ask';
}
