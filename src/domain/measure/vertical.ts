/** Vertical dimension: sets of repeated readings between two skin marks, and the rest space that follows from them. */
import { max, min, sampleStandardDeviation } from 'simple-statistics';
import { badReadings } from './check.ts';
import type { Hundredths } from './length.ts';
import { known, type Measured } from './result.ts';
import { mean, median, pooledSd, sdOfDifference, t95, Z95 } from './spread.ts';

export type { Measured } from './result.ts';
export { sources, type SourceId } from './sources.ts';
export { suspects, type Suspect } from './suspects.ts';
export { pinChange, type PinChange, type PinInput } from './pin.ts';

export interface SetFigures {
  readonly n: number;
  readonly medianMm: number;
  readonly meanMm: number;
  readonly rangeMm: number;
  /** Sample SD; absent below two readings. */
  readonly sdMm?: number;
  /** SD / √n; absent below two readings. */
  readonly standardErrorMm?: number;
}

const mm = (hundredths: number) => hundredths / 100;

/** Half width of the 95 % interval of a mean, from its own scatter; the assumed SD for a single reading. */
function meanHalfWidth(n: number, sdMm: number | undefined): number {
  return sdMm === undefined ? Z95 * ASSUMED_SD_MM : (t95(n - 1) * sdMm) / Math.sqrt(n);
}

/** SD of one reading between skin marks where the set itself is too small to tell, millimetres (our choice). */
export const ASSUMED_SD_MM = 1;
/** Smallest SD believed: readings to the half millimetre scatter by 0.5/√12 from rounding alone. */
export const SMALLEST_SD_MM = 0.5 / Math.sqrt(12);
/** Degrees of freedom from which the pooled scatter is used instead of the assumed one (our choice). */
const ENOUGH_DEGREES = 3;

/**
 * Figures of one set of repeated readings (hundredths of a millimetre), in millimetres. Uncertainty: 95 % half width
 * of the mean. Refuses an empty set and what is no reading. Source: summary-statistics.
 */
export function describeSet(values: readonly Hundredths[]): Measured<SetFigures> {
  const bad = badReadings(values, 'Set');
  if (bad !== undefined) return bad;
  const list = [...values];
  const n = list.length;
  const sdMm = n < 2 ? undefined : mm(sampleStandardDeviation(list));
  const spread = sdMm === undefined ? {} : { sdMm, standardErrorMm: sdMm / Math.sqrt(n) };
  const value = {
    n,
    medianMm: mm(median(list)),
    meanMm: mm(mean(list)),
    rangeMm: mm(max(list) - min(list)),
    ...spread,
  };
  const floored = sdMm === undefined ? undefined : Math.max(sdMm, SMALLEST_SD_MM);
  return known({
    value,
    inputs: [`${n} reading${n === 1 ? '' : 's'}`],
    source: 'summary-statistics',
    uncertainty: meanHalfWidth(n, floored),
  });
}

export type SpaceVerdict = 'usual' | 'small' | 'large' | 'impossible';

export interface RestSpace {
  /** Mean rest height less mean closed height. */
  readonly spaceMm: number;
  readonly verdict: SpaceVerdict;
  /** SD of that difference. */
  readonly sdMm: number;
}

/** Bands of the rest space: 2 to 4 mm usual, both ends included; below zero impossible by definition. Source: rest-space-bands. */
function spaceVerdict(spaceMm: number): SpaceVerdict {
  const hundredths = Math.round(spaceMm * 1e6) / 1e4;
  if (hundredths < 0) return 'impossible';
  if (hundredths < 200) return 'small';
  return hundredths <= 400 ? 'usual' : 'large';
}

function singleSd(rest: readonly Hundredths[], closed: readonly Hundredths[]) {
  const pooled = pooledSd([rest, closed]);
  if (pooled === undefined || pooled.degrees < ENOUGH_DEGREES)
    return {
      sd: ASSUMED_SD_MM,
      factor: Z95,
      words: `SD of one reading assumed, ${ASSUMED_SD_MM.toFixed(1)} mm: too few repeats`,
    };
  const sd = Math.max(mm(pooled.sd), SMALLEST_SD_MM);
  const words = `SD of one reading pooled from the repeats, ${sd.toFixed(2)} mm, ${pooled.degrees} degrees of freedom`;
  return { sd, factor: t95(pooled.degrees), words };
}

/**
 * Rest space: mean of the rest readings less mean of the closed readings (hundredths in, millimetres out), same marks,
 * posture and bases. Uncertainty: 95 % half width from the scatter of this sitting; errors common to all readings
 * (moved marks, posture) are not in it. A negative space is a value with the verdict "impossible", not a refusal.
 * Refuses empty sets and what is no reading. Sources: glossary-rest-space, rest-space-bands, rest-space-spread.
 */
export function restSpace(rest: readonly Hundredths[], closed: readonly Hundredths[]): Measured<RestSpace> {
  const bad = badReadings(rest, 'Rest height') ?? badReadings(closed, 'Closed height');
  if (bad !== undefined) return bad;
  const spaceMm = mm(mean([...rest]) - mean([...closed]));
  const { sd, factor, words } = singleSd(rest, closed);
  const sdMm = sdOfDifference(sd, rest.length, closed.length);
  const inputs = [`mean of ${rest.length} rest`, `mean of ${closed.length} closed`, words];
  return known({
    value: { spaceMm, verdict: spaceVerdict(spaceMm), sdMm },
    inputs,
    source: 'glossary-rest-space',
    uncertainty: factor * sdMm,
  });
}

export type SetAdvice = 'tooFew' | 'accept' | 'twoMore' | 'repeatAll';

/**
 * What to do with a set whose largest and smallest reading lie `rangeMm` apart: at least three readings; up to 1.0 mm
 * accept, up to 2.0 mm two more and the median, beyond repeat all. A range that is no number repeats all.
 * Source: repeat-rule.
 */
export function setAdvice(rangeMm: number, n: number): SetAdvice {
  if (!(n >= 3)) return 'tooFew';
  const hundredths = Math.round(rangeMm * 1e6) / 1e4;
  if (hundredths >= 0 && hundredths <= 100) return 'accept';
  return hundredths >= 0 && hundredths <= 200 ? 'twoMore' : 'repeatAll';
}
