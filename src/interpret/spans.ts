/** Finds every number in an utterance and says what each one is: a reading, the count of a label, or a time and the like. */
import {
  ALIEN,
  AND,
  ARTICLE,
  CLOCK,
  COPULA,
  DIGIT,
  DOUBTFUL,
  FIX,
  HALF,
  HUNDRED,
  LABEL,
  MONTH,
  NEGATIVE,
  NOT,
  OH,
  ORDINAL,
  PARTS,
  PLAIN,
  POINT,
  POINTING,
  QUARTER,
  RANGE,
  TEEN,
  TENS,
  UNIT,
  UNIT_NAMES,
} from './roles.ts';
import type { SpokenUnit } from './roles.ts';
import { has, touches } from './digits.ts';
import type { LanguageTables } from './language.ts';
import { numberAt } from './number.ts';
import type { Span } from './number.ts';
import { COMMA, STOP } from './tokens.ts';
import type { Token } from './tokens.ts';

export interface Found {
  readonly span: Span;
  /** End of number and unit. */
  readonly end: number;
  readonly role: 'reading' | 'alien' | 'label';
  readonly unit?: SpokenUnit;
  readonly negative: boolean;
  /** "not fifty": denied. */
  readonly denied: boolean;
}

const NUMBER_GOES_ON = DIGIT | TEEN | TENS | HUNDRED | POINT | OH;

const goesOnAsNumber = (tokens: readonly Token[], i: number): boolean =>
  has(tokens, i, NUMBER_GOES_ON | UNIT | HALF | QUARTER | PARTS | AND | FIX | RANGE) ||
  tokens[i]?.numeral !== undefined;

/** "one" that is no number: "this one reads", "one of them", "that one's". */
function isPronoun(tokens: readonly Token[], i: number): boolean {
  const token = tokens[i] as Token;
  if (token.numeral || token.lex.value !== 1 || !has(tokens, i, DIGIT)) return false;
  if (has(tokens, i, ARTICLE) && touches(tokens, i + 1) && !goesOnAsNumber(tokens, i + 1)) return true;
  if (touches(tokens, i + 1) && has(tokens, i + 1, COPULA | POINTING) && !has(tokens, i + 1, NUMBER_GOES_ON))
    return true;
  if (i === 0 || !has(tokens, i - 1, POINTING) || !touches(tokens, i)) return false;
  return !touches(tokens, i + 1) || !(has(tokens, i + 1, NUMBER_GOES_ON | AND) || tokens[i + 1]?.numeral !== undefined);
}

/** "that one fifty two point five": 52.5, or 152.5? */
function afterPointing(tokens: readonly Token[], span: Span): Span {
  const first = tokens[span.start] as Token;
  const pointed = span.start > 0 && touches(tokens, span.start) && has(tokens, span.start - 1, POINTING);
  if (!pointed || first.lex.value !== 1 || !has(tokens, span.start, DIGIT) || span.value < 1000) return span;
  if (!has(tokens, span.start + 1, DIGIT | TEEN | TENS)) return span;
  const without = span.value - (span.value < 10_000 ? 1000 : 10_000);
  return { ...span, value: -1, problem: 'twoNumbers', candidates: [without, span.value] };
}

const isTimeOrCode = (token: Token): boolean => {
  const kind = token.numeral?.kind;
  return kind === 'clock' || kind === 'date' || kind === 'code';
};

const timeSpan = (i: number): Span => ({
  start: i,
  end: i + 1,
  value: -1,
  problem: 'noise',
  candidates: [],
  decimal: false,
  hasWhole: true,
  guess: false,
  open: false,
  negative: false,
});

export function scan(tokens: readonly Token[], lang: LanguageTables): readonly Span[] {
  const spans: Span[] = [];
  for (let i = 0; i < tokens.length;) {
    const token = tokens[i] as Token;
    const span = isTimeOrCode(token) ? timeSpan(i) : isPronoun(tokens, i) ? undefined : numberAt(tokens, i, lang);
    if (span) {
      spans.push(afterPointing(tokens, span));
      i = span.end;
    } else i++;
  }
  return spans;
}

/** "of", "of a", "de". */
const isOf = (tokens: readonly Token[], i: number): boolean =>
  touches(tokens, i) &&
  (has(tokens, i, ARTICLE) ||
    (has(tokens, i, PLAIN) && (tokens[i] as Token).text.length <= 4 && !has(tokens, i, UNIT | RANGE)));

function pastOf(tokens: readonly Token[], from: number): number {
  let at = from;
  while (isOf(tokens, at)) at++;
  return at;
}

/** "an hour and a half". */
const afterAlien = (tokens: readonly Token[], i: number): boolean =>
  has(tokens, i - 1, AND) && has(tokens, i - 2, ALIEN | CLOCK);

/** The unit said after a number, past "of a" when only a part was said: "half a millimetre". */
function unitEnd(tokens: readonly Token[], span: Span): number {
  const at = span.hasWhole ? span.end : pastOf(tokens, span.end);
  return touches(tokens, at) && has(tokens, at, UNIT) ? at + 1 : -1;
}

/** "two o'clock", "five minutes", "July 8", "past eight". */
function isTime(tokens: readonly Token[], span: Span, end: number): boolean {
  if (isTimeOrCode(tokens[span.start] as Token)) return true;
  if (touches(tokens, end) && has(tokens, end, ALIEN | CLOCK | MONTH | ORDINAL) && !has(tokens, end, LABEL))
    return true;
  if (isOf(tokens, end) && has(tokens, end + 1, MONTH)) return true;
  if (!span.hasWhole && (has(tokens, pastOf(tokens, end), ALIEN | CLOCK) || afterAlien(tokens, span.start)))
    return true;
  return span.start > 0 && touches(tokens, span.start) && has(tokens, span.start - 1, CLOCK | MONTH);
}

/** "half past three", "quarter to ten", "halb drei": a part of an hour, and the hour. */
function isPartOfHour(tokens: readonly Token[], span: Span, next: Span | undefined): boolean {
  if (span.hasWhole || !next || next.start - span.end > 1 || !touches(tokens, next.start)) return false;
  return next.start === span.end || has(tokens, span.end, RANGE | CLOCK);
}

/** Numbers that go on from a time: "six minutes six seconds", "trois heures et quart". */
function goesOn(tokens: readonly Token[], before: Found | undefined, span: Span): boolean {
  if (before?.role !== 'alien' || !touches(tokens, span.start)) return false;
  for (let i = before.end; i < span.start; i++)
    if (!has(tokens, i, AND | RANGE | CLOCK | ALIEN | NEGATIVE)) return false;
  return true;
}

/** "between the two pads it is …": a count of things, not a reading, when a reading follows. */
const isCount = (tokens: readonly Token[], span: Span): boolean =>
  has(tokens, span.start - 1, DOUBTFUL) &&
  touches(tokens, span.start) &&
  touches(tokens, span.end) &&
  has(tokens, span.end, PLAIN);

/** "reading two is …", "try 3: …", "2. Messung …": a small number that counts the readings. */
function isLabel(tokens: readonly Token[], span: Span, next: Span | undefined): boolean {
  if (!next || span.decimal || span.value < 100 || span.value > 1200) return false;
  if (isCount(tokens, span)) return true;
  const numbered = span.start > 0 && has(tokens, span.start - 1, LABEL) && touches(tokens, span.start);
  const ordinal =
    has(tokens, span.end, LABEL) && tokens[span.end]?.gap === STOP && tokens[span.start]?.numeral !== undefined;
  const apart = (tokens[next.start] as Token).gap >= COMMA || has(tokens, span.end, COPULA);
  return (numbered && apart) || ordinal;
}

const isNegative = (tokens: readonly Token[], span: Span): boolean =>
  span.negative || (span.start > 0 && has(tokens, span.start - 1, NEGATIVE));

/** Every number with its role, in order. */
export function classify(tokens: readonly Token[], spans: readonly Span[]): readonly Found[] {
  const found: Found[] = [];
  spans.forEach((span, k) => {
    const next = spans[k + 1];
    const unit = span.unitAt === undefined ? unitEnd(tokens, span) : span.end;
    const end = unit > 0 ? unit : span.end;
    const before = found[found.length - 1];
    const hourBefore = k > 0 && isPartOfHour(tokens, spans[k - 1] as Span, span);
    const alien =
      isTime(tokens, span, end) || hourBefore || isPartOfHour(tokens, span, next) || goesOn(tokens, before, span);
    const role = alien ? 'alien' : isLabel(tokens, span, next) ? 'label' : 'reading';
    const common = {
      span,
      end,
      role,
      negative: isNegative(tokens, span),
      denied: span.start > 0 && has(tokens, span.start - 1, NOT),
    } as const;
    found.push(
      unit > 0
        ? { ...common, unit: UNIT_NAMES[(tokens[span.unitAt ?? unit - 1] as Token).lex.value] as SpokenUnit }
        : common,
    );
  });
  return found;
}
