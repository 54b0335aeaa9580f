/** The occlusal plane: its rear end on the pad, its tilt, rim heights, and overlap of the front teeth. */
import { badReading, badSize, badWithin, firstBad } from './check.ts';
import { formatHundredths, toMm, type Hundredths } from './length.ts';
import { known, refuse, type Measured } from './result.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;

export interface PadHeight {
  /** Height of the plane over the base of the pad as a share of the pad's height. */
  readonly share: number;
  readonly third: 'lower' | 'middle' | 'upper';
  readonly flag: 'none' | 'low' | 'high';
  /** Distance to the two textbook rules, millimetres; positive: the plane lies above. */
  readonly overHalfMm: number;
  readonly overTwoThirdsMm: number;
  readonly text: string;
}

/**
 * Rear end of the lower plane against the retromolar pad. Two textbook rules exist, half and two thirds of the pad's
 * height; never above two thirds. The lower third is flagged too. Hundredths in. Refuses a pad without height and what
 * is no reading. Source: pad-height.
 */
export function padHeight(pad: Hundredths, plane: Hundredths): Measured<PadHeight> {
  const bad = firstBad(badReading(pad, 'Pad height'), badReading(plane, 'Height of the plane'));
  if (bad !== undefined) return bad;
  if (pad === 0) return refuse('outOfRange', 'Pad height must be above zero.');
  const share = plane / pad;
  const third = 3 * plane < pad ? 'lower' : 3 * plane <= 2 * pad ? 'middle' : 'upper';
  const flag = third === 'upper' ? 'high' : third === 'lower' ? 'low' : 'none';
  const text = {
    none: 'Between a third and two thirds of the pad.',
    low: 'Below a third of the pad: low against both rules.',
    high: 'Above two thirds of the pad: high against both rules.',
  }[flag];
  const value = {
    share,
    third,
    flag,
    overHalfMm: toMm(plane - pad / 2),
    overTwoThirdsMm: toMm(plane - (2 * pad) / 3),
    text,
  } as const;
  const inputs = [`pad ${formatHundredths(pad)} mm`, `plane ${formatHundredths(plane)} mm`];
  return known({ value, inputs, source: 'pad-height' });
}

export interface Guidance {
  readonly angleDeg: number;
  readonly flag: boolean;
  readonly text: string;
}

/** Steeper than this is flagged; complete dentures want it low (our choice), degrees. */
const GUIDANCE_LIMIT_DEG = 30;

/**
 * Incisal guidance angle from vertical and horizontal overlap: atan(vertical / horizontal), degrees; flagged above 30°.
 * Hundredths in. No overlap at all gives 0. Refuses what is no reading. Sources: incisal-guidance, guidance-limit.
 */
export function incisalGuidance(vertical: Hundredths, horizontal: Hundredths): Measured<Guidance> {
  const bad = firstBad(badReading(vertical, 'Vertical overlap'), badReading(horizontal, 'Horizontal overlap'));
  if (bad !== undefined) return bad;
  const angleDeg = degrees(Math.atan2(vertical, horizontal));
  const flag = angleDeg > GUIDANCE_LIMIT_DEG;
  const text = flag
    ? 'Steep: tips the denture in forward movement. Less vertical or more horizontal overlap.'
    : 'Low enough to balance.';
  const inputs = [`vertical ${formatHundredths(vertical)} mm`, `horizontal ${formatHundredths(horizontal)} mm`];
  return known({ value: { angleDeg, flag, text }, inputs, source: 'incisal-guidance' });
}

export interface PlaneTilt {
  readonly angleDeg: number;
  readonly accept: boolean;
}

/** Tilt accepted against the pupils and the ala–tragus line, degrees, and across the arms of a plane guide, mm (our choice). */
const TILT_LIMIT = { degrees: 2, mm: 2 } as const;

/**
 * Tilt of a line from the difference of its two ends over its length, degrees; accepted up to 2° and up to 2 mm across.
 * Hundredths in, difference unsigned. Serves both the guide against the pupils and the side against ala–tragus.
 * Source: plane-limits.
 */
export function planeTilt(difference: Hundredths, across: Hundredths): Measured<PlaneTilt> {
  const bad = firstBad(badReading(difference, 'Difference of the ends'), badReading(across, 'Length'));
  if (bad !== undefined) return bad;
  if (across === 0) return refuse('outOfRange', 'Length must be above zero.');
  const angleDeg = degrees(Math.atan(difference / across));
  const accept = angleDeg <= TILT_LIMIT.degrees && toMm(difference) <= TILT_LIMIT.mm;
  const inputs = [`difference ${formatHundredths(difference)} mm`, `over ${formatHundredths(across)} mm`];
  return known({ value: { angleDeg, accept }, inputs, source: 'plane-limits' });
}

export type RimPlace =
  'upperFront' | 'upperRear' | 'lowerFront' | 'incisalShow' | 'horizontalOverlap' | 'verticalOverlap';

/** Handbook heights from the sulcus, show at a resting lip, overlaps; millimetres. Source: rim-heights. */
export const RIM_HEIGHTS: Readonly<Record<RimPlace, readonly [number, number]>> = {
  upperFront: [20, 22],
  upperRear: [16, 18],
  lowerFront: [18, 20],
  incisalShow: [0, 2],
  horizontalOverlap: [1, 2],
  verticalOverlap: [0, 1],
};

export interface RimCheck {
  readonly usual: readonly [number, number];
  readonly verdict: 'usual' | 'low' | 'high';
}

/** A rim height, incisal show or overlap against the handbook range, millimetres. Refuses an unknown place. Source: rim-heights. */
export function rimHeight(place: RimPlace, mm: number): Measured<RimCheck> {
  const usual = Object.hasOwn(RIM_HEIGHTS, place) ? RIM_HEIGHTS[place] : undefined;
  if (usual === undefined)
    return refuse('unknown', `“${place}” is no place; known: ${Object.keys(RIM_HEIGHTS).join(', ')}.`);
  const bad = badWithin(mm, place, [0, 60]);
  if (bad !== undefined) return bad;
  const verdict = mm < usual[0] ? 'low' : mm > usual[1] ? 'high' : 'usual';
  return known({ value: { usual, verdict }, inputs: [`${place} ${mm} mm`], source: 'rim-heights' });
}

/** Slope of the plane against the ala–tragus line from two distances a run apart, millimetres in, degrees out. Source: camper-slope. */
export function planeSlope(rearMm: number, frontMm: number, runMm: number): Measured<number> {
  const bad = firstBad(
    badWithin(rearMm, 'Distance at the rear', [0, 100]),
    badWithin(frontMm, 'Distance in front', [0, 100]),
    badSize(runMm, 'Run'),
  );
  if (bad !== undefined) return bad;
  const inputs = [`rear ${rearMm} mm`, `front ${frontMm} mm`, `run ${runMm} mm`];
  return known({ value: degrees(Math.atan((frontMm - rearMm) / runMm)), inputs, source: 'camper-slope' });
}
