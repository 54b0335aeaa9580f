/** Which reading of a set to look at again. Names a suspect, never removes one. */
import { formatHundredths, type Hundredths } from './length.ts';
import { slipsOf, type SlipKind } from './slips.ts';
import { dixonCritical, dixonQ, modifiedZ } from './spread.ts';

export interface Suspect {
  /** Index in the set as given. */
  readonly index: number;
  readonly why: 'outlier' | SlipKind;
  /** One sentence for a person. */
  readonly text: string;
  /** What it may have been, where a single slip explains it. */
  readonly perhaps?: Hundredths;
}

/** Readings further apart than this do not agree: beyond it the whole set is repeated (our choice). */
const AGREE: Hundredths = 200;
/** Smallest median absolute deviation believed, 0.25 mm: half a step of a scale read to the half millimetre (our choice). */
const MAD_FLOOR: Hundredths = 25;
const Z_LIMIT = 3.5;

/** A set in order of size, so that a question about the others costs the same however many they are. */
interface Ordered {
  readonly values: readonly Hundredths[];
  readonly sorted: readonly Hundredths[];
}

/** How many of a sorted list lie below `limit`. */
function below(sorted: readonly Hundredths[], limit: Hundredths): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Median of the set without the reading at `index`; at least two readings. */
function medianOfOthers({ values, sorted }: Ordered, index: number): number {
  const place = below(sorted, values[index]!);
  const at = (i: number) => sorted[i < place ? i : i + 1]!;
  const n = sorted.length - 1;
  return n % 2 === 1 ? at((n - 1) / 2) : (at(n / 2 - 1) + at(n / 2)) / 2;
}

/** True when `value`, put in the place of the reading at `index`, lies within 2 mm of at least half of the others. */
function agrees(value: Hundredths, index: number, { values, sorted }: Ordered): boolean {
  const near = below(sorted, value + AGREE + 1) - below(sorted, value - AGREE);
  const itself = Math.abs(values[index]! - value) <= AGREE ? 1 : 0;
  return (near - itself) * 2 >= values.length - 1;
}

const SLIP_WORDS: Readonly<Record<SlipKind, string>> = {
  transposed: 'two digits may have been exchanged',
  teenTy: 'a “-teen” may have been heard for a “-ty”, or the reverse',
  decimalShift: 'the decimal point may have moved or been lost',
};

function slipSuspect(index: number, set: Ordered, [low, high]: readonly [Hundredths, Hundredths]): Suspect | undefined {
  const value = set.values[index]!;
  if (set.values.length < 2 || agrees(value, index, set)) return undefined;
  const centre = medianOfOthers(set, index);
  const fits = slipsOf(value)
    .filter((slip) => slip.value >= low && slip.value <= high && agrees(slip.value, index, set))
    .toSorted((a, b) => Math.abs(a.value - centre) - Math.abs(b.value - centre));
  const best = fits[0];
  if (best === undefined) return undefined;
  const text = `${formatHundredths(value)} does not agree with the rest, ${formatHundredths(best.value)} would: ${SLIP_WORDS[best.kind]}.`;
  return { index, why: best.kind, text, perhaps: best.value };
}

function outlierSuspect(index: number, set: Ordered, score: number): Suspect {
  const centre = formatHundredths(Math.round(medianOfOthers(set, index)));
  const text = `${formatHundredths(set.values[index]!)} stands apart from the others (their middle is ${centre}; modified z-score ${Math.abs(score).toFixed(1)}).`;
  return { index, why: 'outlier', text };
}

/** Outliers of a set that is wide enough to be repeated; by modified z-score, or by Dixon's Q at 95 %. */
function outliers(set: Ordered): readonly Suspect[] {
  const { values, sorted } = set;
  if (values.length < 3 || sorted.at(-1)! - sorted[0]! <= AGREE) return [];
  const scores = modifiedZ(values, MAD_FLOOR);
  const extreme = dixonQ(values);
  const critical = dixonCritical(values.length, 0.95);
  return values.flatMap((_, index) => {
    const byDixon = extreme?.index === index && critical !== undefined && extreme.q > critical;
    return Math.abs(scores[index]!) > Z_LIMIT || byDixon ? [outlierSuspect(index, set, scores[index]!)] : [];
  });
}

/**
 * Readings of one set (hundredths of a millimetre, same marks, same bases) that should be measured again.
 * A slip is named when the corrected value would be plausible and agree with the rest while the value as written does
 * not; an outlier only in a set that spans more than 2 mm. Numbers that are no readings are passed over, never judged.
 * Sources: repeat-rule, modified-z, dixon-q.
 */
export function suspects(
  values: readonly Hundredths[],
  plausible: readonly [Hundredths, Hundredths],
): readonly Suspect[] {
  const places = values.flatMap((value, index) => (Number.isFinite(value) && value >= 0 ? [index] : []));
  const usable = places.map((place) => values[place]!);
  const set: Ordered = { values: usable, sorted: usable.toSorted((a, b) => a - b) };
  const slips = usable.flatMap((_, index) => slipSuspect(index, set, plausible) ?? []);
  const named = new Set(slips.map((slip) => slip.index));
  const others = outliers(set).filter((suspect) => !named.has(suspect.index));
  return [...slips, ...others]
    .toSorted((a, b) => a.index - b.index)
    .map((suspect) => ({ ...suspect, index: places[suspect.index]! }));
}
