/** From the numbers in an utterance to one meaning: a value, a question, or nothing. */
import { FIX, RANGE } from './roles.ts';
import type { SpokenUnit } from './roles.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import { beside, further, isStrong, isTalk } from './doubt.ts';
import type { Line } from './line.ts';
import { TOO_LARGE } from './number.ts';
import { numbersIn, SMALL } from './spans.ts';
import type { Span } from './number.ts';
import type { UnclearReason } from './types.ts';

export type Meaning =
  | {
      readonly kind: 'value';
      readonly value: Hundredths;
      readonly unit: SpokenUnit | undefined;
      readonly correction: boolean;
      /** Heard with a word guessed or left over: never `sure`. */
      readonly doubtful: boolean;
    }
  | { readonly kind: 'ask'; readonly candidates: readonly Hundredths[]; readonly reason: UnclearReason }
  | { readonly kind: 'unclear'; readonly reason: UnclearReason }
  | { readonly kind: 'none' };

const NOTHING: Meaning = { kind: 'none' };
const ask = (reason: UnclearReason, candidates: readonly Hundredths[]): Meaning => ({
  kind: 'ask',
  reason,
  candidates,
});
const unclear = (reason: UnclearReason): Meaning => ({ kind: 'unclear', reason });

const askAll = (found: readonly Span[]): Meaning =>
  ask('twoNumbers', [...new Set(found.flatMap((f) => (f.problem ? f.candidates : [f.value])))]);

/** A correction was spoken between two tokens. "Fifteen, or actually fifty" is none: both remain. */
function isFixed(line: Line, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (line.has(i, FIX) && !line.after(i, RANGE)) return true;
  return false;
}

/** "sixty two, no": taken back and nothing put in its place. A trailing "sorry" (value 1) takes nothing back. */
function isTakenBack(line: Line, from: number): boolean {
  for (let i = from; i < line.length; i++) if (line.has(i, FIX) && line.value(i) === 0) return true;
  return false;
}

/** "62.5, no, point six", "62 no 6": only a part was corrected, and we cannot know which. */
const correctsAPart = (before: Span, after: Span): boolean =>
  !after.hasWhole || (!after.decimal && after.value < 1000 && (before.value >= 1000 || before.value < 0));

/** Said again. "One by one" and "half and half" repeat no reading. */
function repeats(line: Line, before: Span, after: Span): boolean {
  const bare = after.unit === undefined && after.value <= SMALL && (!after.decimal || !after.hasWhole);
  if (after.problem || (bare && line.touches(after.start))) return false;
  return after.value === before.value && after.unit === before.unit;
}

interface Settled {
  readonly last: Span;
  readonly correction: boolean;
  readonly conflict: boolean;
}

/** Corrections and repetitions folded: what stands at the end, and whether a second reading remains beside it. */
function settle(line: Line, readings: readonly Span[]): Settled {
  let last = readings[0] as Span;
  let correction = isFixed(line, 0, last.start);
  let conflict = false;
  for (const next of readings.slice(1)) {
    const corrected = !next.denied && (last.denied || isFixed(line, last.last, next.start));
    const same = repeats(line, last, next);
    if (!same) conflict ||= !corrected || correctsAPart(last, next);
    correction ||= corrected && !same;
    last = next;
  }
  return { last, correction, conflict };
}

function weigh(line: Line, found: readonly Span[], { last, correction }: Settled): Meaning {
  const doubts = [beside(line, last), further(line, last, found)];
  if (doubts.includes('talk')) return NOTHING;
  if (doubts.includes('ask') || isTakenBack(line, last.last)) return ask('noise', [last.value]);
  return {
    kind: 'value',
    value: last.value,
    unit: last.unit,
    correction,
    doubtful: last.guess || doubts.includes('doubtful'),
  };
}

/** The one meaning of an utterance's numbers. */
export function judge(line: Line): Meaning {
  const found = numbersIn(line);
  const readings = found.filter((f) => f.role === 'reading');
  if (readings.length === 0) return NOTHING;
  if (found.some((f) => f.role === 'alien')) return askAll(readings);
  if (readings.every((f) => f.negative)) return unclear('negative');
  if (readings.every((f) => f.value >= TOO_LARGE)) return unclear('outOfRange');
  const settled = settle(line, readings);
  const { last, conflict } = settled;
  if ((conflict || last.problem) && !readings.some(isStrong) && isTalk(line, found)) return NOTHING;
  if (conflict || readings.some((f) => f.negative)) return askAll(readings);
  if (last.denied || last.value >= TOO_LARGE) return ask('noise', []);
  return last.problem ? ask(last.problem, last.candidates) : weigh(line, found, settled);
}
