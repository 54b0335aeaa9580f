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
import type { Line } from './line.ts';
import { numberAt, spanOf } from './number.ts';
import type { Span } from './number.ts';
import { COMMA, STOP } from './tokens.ts';

/** Signs of money stand before the number. */
const MONEY = '€$£';

/** Bare numbers up to here are counts, hours or pronouns as often as readings. */
export const SMALL = 1200;

const GOES_ON = DIGIT | TEEN | TENS | HUNDRED | POINT | OH;
const GOES_ON_AFTER_ARTICLE = GOES_ON | UNIT | HALF | QUARTER | PARTS | AND | FIX | RANGE;

/** "one" that is no number: "this one reads", "one of them", "that one's", "un moment". */
function isPronoun(line: Line, i: number): boolean {
  if (line.value(i) !== 1 || !line.has(i, DIGIT)) return false;
  const follows = line.touches(i + 1);
  const figures = line.numeral(i + 1) !== undefined;
  if (follows && line.has(i, ARTICLE) && !figures && !line.has(i + 1, GOES_ON_AFTER_ARTICLE)) return true;
  if (line.near(i + 1, COPULA | POINTING) && !line.has(i + 1, GOES_ON)) return true;
  return line.after(i, POINTING) && !(follows && (figures || line.has(i + 1, GOES_ON | AND | UNIT)));
}

/** "that one fifty two point five": 52.5, or 152.5? */
function afterPointing(line: Line, span: Span): Span {
  const { start, value } = span;
  const pointed = line.after(start, POINTING) && line.value(start) === 1 && line.has(start, DIGIT);
  if (!pointed || value < 1000 || !line.has(start + 1, DIGIT | TEEN | TENS)) return span;
  const without = value - (value < 10_000 ? 1000 : 10_000);
  return spanOf(start, span.end, { problem: 'twoNumbers', candidates: [without, value] });
}

/** 12:40, 2026-11-01, A2. */
function isTimeOrCode(line: Line, i: number): boolean {
  const kind = line.numeral(i)?.kind;
  return kind === 'clock' || kind === 'date' || kind === 'code';
}

function scan(line: Line): readonly Span[] {
  const spans: Span[] = [];
  for (let i = 0; i < line.length; i++) {
    const found = isTimeOrCode(line, i)
      ? spanOf(i, i + 1, { problem: 'noise' })
      : isPronoun(line, i)
        ? undefined
        : numberAt(line, i);
    if (!found) continue;
    spans.push(afterPointing(line, found));
    i = found.end - 1;
  }
  return spans;
}

/** "of", "of a", "de". */
const isOf = (line: Line, i: number): boolean =>
  line.near(i, ARTICLE) || (line.near(i, PLAIN) && line.text(i).length <= 4 && !line.has(i, UNIT | RANGE));

/** Past "of a" when only a part was said: "half a millimetre", "a quarter of an hour". */
function unitPlace(line: Line, { end, hasWhole }: Span): number {
  let at = end;
  if (!hasWhole) while (isOf(line, at)) at++;
  return at;
}

/** "two o'clock", "five minutes", "July 8", "past eight", "half an hour", "an hour and a half". */
function isTime(line: Line, span: Span): boolean {
  const { start, hasWhole, last: end } = span;
  if (isTimeOrCode(line, start) || line.after(start, CLOCK | MONTH)) return true;
  if (line.touches(start) && start > 0 && MONEY.includes(line.text(start - 1))) return true;
  if (line.near(end, ALIEN | CLOCK | MONTH | ORDINAL) && !line.has(end, LABEL)) return true;
  if (isOf(line, end) && line.has(end + 1, MONTH)) return true;
  if (hasWhole) return false;
  return (
    line.has(unitPlace(line, span), ALIEN | CLOCK) || (line.has(start - 1, AND) && line.has(start - 2, ALIEN | CLOCK))
  );
}

/** "half past three", "quarter to ten", "halb drei": a part of an hour, and the hour. */
function isPartOfHour(line: Line, span: Span | undefined, next: Span | undefined): boolean {
  if (!span || !next || span.hasWhole || next.start - span.end > 1 || !line.touches(next.start)) return false;
  return next.start === span.end || line.has(span.end, RANGE | CLOCK);
}

/** Numbers that go on from a time: "six minutes six seconds", "trois heures et quart". */
function goesOn(line: Line, before: Span | undefined, start: number): boolean {
  if (before?.role !== 'alien' || !line.touches(start)) return false;
  for (let i = before.last; i < start; i++)
    if (!line.has(i, AND | RANGE | CLOCK | ALIEN | NEGATIVE | POINT)) return false;
  return true;
}

/**
 * "reading two is …", "try 3: …", "2. Messung …", "between the two pads it is …": a small number that counts things;
 * "la línea media es …": half of nothing, and the number said after it.
 */
function isLabel(line: Line, { start, end, decimal, value, hasWhole }: Span, next: Span | undefined): boolean {
  if (next && !hasWhole && line.has(end - 1, HALF | QUARTER) && line.near(end, COPULA)) return true;
  if (!next || decimal || value < 100 || value > SMALL) return false;
  if (line.after(start, DOUBTFUL) && line.near(end, PLAIN)) return true;
  const apart = line.gap(next.start) >= COMMA || line.has(end, COPULA);
  if (apart && line.after(start, LABEL)) return true;
  return line.has(end, LABEL) && line.gap(end) === STOP && line.numeral(start) !== undefined;
}

/** What the words around say about one number of several. */
function place(line: Line, spans: readonly Span[], k: number): void {
  const span = spans[k] as Span;
  const { start, unitAt } = span;
  const next = spans[k + 1];
  const at = unitAt < 0 ? unitPlace(line, span) : unitAt;
  if (unitAt >= 0 || line.near(at, UNIT)) span.unit = UNIT_NAMES[line.value(at)];
  if (span.unit !== undefined && unitAt < 0) span.last = at + 1;
  span.negative = line.numeral(start)?.negative === true || line.has(start - 1, NEGATIVE);
  // Where one word means both no and not, it denies only a first number that another one follows.
  span.denied = line.after(start, NOT) && (!line.has(start - 1, FIX) || (k === 0 && next !== undefined));
  const partOfHour = isPartOfHour(line, spans[k - 1], span) || isPartOfHour(line, span, next);
  if (partOfHour || isTime(line, span) || goesOn(line, spans[k - 1], start)) span.role = 'alien';
  else if (isLabel(line, span, next)) span.role = 'label';
}

/** "seven to eight days": the first is a time because the second is. */
function leadUp(line: Line, before: Span, span: Span): void {
  const between = span.start - before.last;
  if (span.role === 'alien' && between === 1 && line.near(before.last, RANGE) && line.touches(span.start))
    before.role = 'alien';
}

/** Every number with its role, in order. */
export function numbersIn(line: Line): readonly Span[] {
  const spans = scan(line);
  for (let k = 0; k < spans.length; k++) place(line, spans, k);
  for (let k = spans.length - 1; k > 0; k--) leadUp(line, spans[k - 1] as Span, spans[k] as Span);
  return spans;
}
