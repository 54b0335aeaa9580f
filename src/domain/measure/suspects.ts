/** Which reading of a set to look at again. Names a suspect, never removes one. */
import { formatHundredths, type Hundredths } from './length.ts';
import { slipsOf, type SlipKind } from './slips.ts';
import { dixonCritical, dixonQ, median, modifiedZ } from './spread.ts';

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

/** True when `value` lies within 2 mm of at least half of the others. */
function agrees(value: Hundredths, others: readonly Hundredths[]): boolean {
  return others.filter((other) => Math.abs(other - value) <= AGREE).length * 2 >= others.length;
}

const SLIP_WORDS: Readonly<Record<SlipKind, string>> = {
  transposed: 'two digits may have been exchanged',
  teenTy: 'a “-teen” may have been heard for a “-ty”, or the reverse',
  decimalShift: 'the decimal point may have moved or been lost',
};

function slipSuspect(
  index: number,
  values: readonly Hundredths[],
  [low, high]: readonly [Hundredths, Hundredths],
): Suspect | undefined {
  const value = values[index]!;
  const others = values.filter((_, i) => i !== index);
  if (others.length === 0 || agrees(value, others)) return undefined;
  const centre = median([...others]);
  const fits = slipsOf(value)
    .filter((slip) => slip.value >= low && slip.value <= high && agrees(slip.value, others))
    .toSorted((a, b) => Math.abs(a.value - centre) - Math.abs(b.value - centre));
  const best = fits[0];
  if (best === undefined) return undefined;
  const text = `${formatHundredths(value)} does not agree with the rest, ${formatHundredths(best.value)} would: ${SLIP_WORDS[best.kind]}.`;
  return { index, why: best.kind, text, perhaps: best.value };
}

function outlierSuspect(index: number, values: readonly Hundredths[], score: number): Suspect {
  const others = values.filter((_, i) => i !== index);
  const centre = formatHundredths(Math.round(median([...others])));
  const text = `${formatHundredths(values[index]!)} stands apart from the others (their middle is ${centre}; modified z-score ${Math.abs(score).toFixed(1)}).`;
  return { index, why: 'outlier', text };
}

/** Outliers of a set that is wide enough to be repeated; by modified z-score, or by Dixon's Q at 95 %. */
function outliers(values: readonly Hundredths[]): readonly Suspect[] {
  if (values.length < 3 || Math.max(...values) - Math.min(...values) <= AGREE) return [];
  const scores = modifiedZ(values, MAD_FLOOR);
  const extreme = dixonQ(values);
  const critical = dixonCritical(values.length, 0.95);
  return values.flatMap((_, index) => {
    const byDixon = extreme?.index === index && critical !== undefined && extreme.q > critical;
    return Math.abs(scores[index]!) > Z_LIMIT || byDixon ? [outlierSuspect(index, values, scores[index]!)] : [];
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
  const slips = usable.flatMap((_, index) => slipSuspect(index, usable, plausible) ?? []);
  const named = new Set(slips.map((slip) => slip.index));
  const others = outliers(usable).filter((suspect) => !named.has(suspect.index));
  return [...slips, ...others]
    .toSorted((a, b) => a.index - b.index)
    .map((suspect) => ({ ...suspect, index: places[suspect.index]! }));
}
