/** How sure is a number: decided from the range, the set so far, known confusions, alternatives and confidence. */
import { formatHundredths } from '../domain/measure/length.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import { strongRivals, swappedRivals, weakRivals } from './confusions.ts';
import type { LanguageTables } from './language.ts';
import type { ExpectedReading } from './types.ts';

/** Readings of one set agree when they lie this close to its middle (our choice: three times the 1 mm a careful hand repeats to). */
const SET_AGREES: Hundredths = 300;
/**
 * Below this a number is not believed of a recogniser that gives confidences: alone, and when it agrees with the set so far,
 * which wrong numbers seldom do. Chosen where confidence is the chance of being right (docs/acoustic.md); for other
 * recognisers our choice.
 */
const SURE_CONFIDENCE = 0.85;
const SURE_WITH_SET = 0.6;
/** No caliper is read finer than a twentieth (vernier 0.05 mm). */
const FINEST_SURE: Hundredths = 5;
const MOST_CANDIDATES = 3;

export interface Evidence {
  readonly value: Hundredths;
  readonly reading: ExpectedReading;
  readonly tables: LanguageTables;
  /** Other values credible alternatives gave. */
  readonly rivals: readonly Hundredths[];
  /** Reasons already known for not being sure. */
  readonly doubts: readonly string[];
  /** 0 says nothing. */
  readonly confidence: number;
}

export type Verdict =
  | { readonly kind: 'sure' }
  | { readonly kind: 'check'; readonly why: readonly string[] }
  | { readonly kind: 'ask'; readonly candidates: readonly Hundredths[] };

const inside = (value: Hundredths, [low, high]: readonly [Hundredths, Hundredths]): boolean =>
  value >= low && value <= high;

/** Middle of the set so far; undefined when there is none. */
function middle(previous: readonly Hundredths[]): Hundredths | undefined {
  const sorted = [...previous].sort((a, b) => a - b);
  return sorted.length === 0 ? undefined : sorted[Math.floor((sorted.length - 1) / 2)];
}

const agrees = (value: Hundredths, reading: ExpectedReading): boolean => {
  const mid = middle(reading.previous);
  return mid === undefined ? inside(value, reading.expected) : Math.abs(value - mid) <= SET_AGREES;
};

const fits = (value: Hundredths, reading: ExpectedReading): boolean =>
  inside(value, reading.plausible) && agrees(value, reading);

/** Plain words for what is odd about a value. */
export function oddities(value: Hundredths, reading: ExpectedReading): readonly string[] {
  const why: string[] = [];
  const [low, high] = reading.plausible;
  if (!inside(value, reading.plausible))
    why.push(`outside ${formatHundredths(low)}–${formatHundredths(high)} ${reading.unit}`);
  const mid = middle(reading.previous);
  if (mid !== undefined && Math.abs(value - mid) > SET_AGREES) {
    why.push(
      `${formatHundredths(Math.abs(value - mid))} ${reading.unit} from the set so far (${formatHundredths(mid)})`,
    );
  }
  return why;
}

/** Confusable numbers that would fit where the heard one does not; the likeliest kind of slip first. */
function betterRivals({ value, reading, tables }: Evidence): readonly Hundredths[] {
  if (fits(value, reading)) return [];
  const weak = reading.previous.length === 0 ? [] : weakRivals(value);
  for (const rivals of [strongRivals(value, tables), swappedRivals(value), weak]) {
    const fitting = rivals.filter((v) => fits(v, reading));
    if (fitting.length > 0) return fitting;
  }
  return [];
}

/** Alternatives that remain possible: plausible, and not spoken against by the set while the heard value agrees with it. */
function openRivals({ value, reading, rivals }: Evidence): readonly Hundredths[] {
  const plausible = rivals.filter((v) => inside(v, reading.plausible));
  const setSpeaks = reading.previous.length > 0 && fits(value, reading);
  return setSpeaks ? plausible.filter((v) => agrees(v, reading)) : plausible;
}

const bySet = ({ value, reading }: Evidence): boolean => reading.previous.length > 0 && fits(value, reading);

/**
 * The set so far agrees with the heard value and a recogniser that gives confidences believes it: together they outweigh
 * rivals the set speaks against. (Rivals that agree with the set have been asked about before.)
 */
const spokenDown = (e: Evidence): boolean => bySet(e) && e.confidence >= SURE_WITH_SET;

const unique = (values: readonly Hundredths[]): readonly Hundredths[] => [...new Set(values)].slice(0, MOST_CANDIDATES);

function doubtsOf(e: Evidence): readonly string[] {
  const why = [...e.doubts, ...oddities(e.value, e.reading)];
  if (why.length > 0) return why;
  if (!inside(e.value, e.reading.expected)) why.push('unusual');
  if (e.value % FINEST_SURE !== 0) why.push('finer than a caliper is read');
  if (!spokenDown(e) && e.rivals.some((v) => inside(v, e.reading.plausible))) why.push('heard in two ways');
  if (e.confidence > 0 && e.confidence < (bySet(e) ? SURE_WITH_SET : SURE_CONFIDENCE)) why.push('heard faintly');
  return why;
}

/** sure: kept by moving on. check: shown, kept only by a yes. ask: which of these? */
export function verdict(e: Evidence): Verdict {
  const open = openRivals(e);
  if (open.length > 0) {
    const likely = inside(e.value, e.reading.plausible);
    return { kind: 'ask', candidates: unique(likely ? [e.value, ...open] : [...open, e.value]) };
  }
  const better = betterRivals(e);
  if (better.length > 0) return { kind: 'ask', candidates: unique([...better.slice(0, MOST_CANDIDATES - 1), e.value]) };
  const why = doubtsOf(e);
  return why.length > 0 ? { kind: 'check', why } : { kind: 'sure' };
}
