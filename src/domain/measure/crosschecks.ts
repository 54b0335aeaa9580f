/** Other looks at the closed height. Each is a cross-check with its own scatter; none decides. Hundredths in, mm out. */
import { badReading, badReadings, firstBad } from './check.ts';
import { formatHundredths, toMm, type Hundredths } from './length.ts';
import { known, refuse, type Measured } from './result.ts';
import { restSpace } from './vertical.ts';

/** Which way a check leans: the closed height looks too large, too small, or neither. */
export type Leaning = 'closedLarge' | 'closedSmall' | 'neither';

export interface FacialMeasure {
  /** Nose base to chin less pupil line to lip line. */
  readonly differenceMm: number;
  readonly leaning: Leaning;
}

/** Agreement of the facial measure (our choice), millimetres. */
const FACIAL_LIMIT_MM = 3;

/**
 * Facial measure at closed height: pupil line to the closed lips against BASE of the nose to under the chin (not the nose
 * tip). Within 3 mm they agree. Refuses what is no reading. Sources: facial-measure, facial-measure-limit.
 */
export function facialMeasure(pupilToLip: Hundredths, noseBaseToChin: Hundredths): Measured<FacialMeasure> {
  const bad = firstBad(badReading(pupilToLip, 'Pupil line to lips'), badReading(noseBaseToChin, 'Nose base to chin'));
  if (bad !== undefined) return bad;
  const differenceMm = toMm(noseBaseToChin - pupilToLip);
  const leaning =
    differenceMm > FACIAL_LIMIT_MM ? 'closedLarge' : differenceMm < -FACIAL_LIMIT_MM ? 'closedSmall' : 'neither';
  const inputs = [
    `pupil line to lips ${formatHundredths(pupilToLip)} mm`,
    `nose base to chin ${formatHundredths(noseBaseToChin)} mm`,
  ];
  return known({ value: { differenceMm, leaning }, inputs, source: 'facial-measure', uncertainty: FACIAL_LIMIT_MM });
}

export interface SpeakingSpace {
  readonly spaceMm: number;
  /** 1 to 2 mm is usual at "s". */
  readonly verdict: 'contact' | 'narrow' | 'usual' | 'wide';
  readonly leaning: Leaning;
  /** Within mean ± 2 SD of denture wearers: then the leaning is weak. */
  readonly withinWearers: boolean;
}

/** Closest speaking space of denture wearers, mean and SD, millimetres. Source: speaking-space-wearers. */
export const SPEAKING_WEARERS = { meanMm: 2.61, sdMm: 1.53 } as const;

/**
 * Closest speaking space: distance between the marks on a lower incisor in closure and at "s". No space means the teeth
 * touch in speech. Refuses what is no reading. Uncertainty: 2 SD of denture wearers. Sources: speaking-space(-wearers).
 */
export function speakingSpace(closed: Hundredths, atS: Hundredths): Measured<SpeakingSpace> {
  const bad = firstBad(badReading(closed, 'Mark in closure'), badReading(atS, 'Mark at “s”'));
  if (bad !== undefined) return bad;
  if (atS < closed) return refuse('inconsistent', 'The mark at “s” cannot lie above the mark in closure.');
  const spaceMm = toMm(atS - closed);
  const verdict = spaceMm === 0 ? 'contact' : spaceMm < 1 ? 'narrow' : spaceMm <= 2 ? 'usual' : 'wide';
  const leaning = verdict === 'usual' ? 'neither' : verdict === 'wide' ? 'closedSmall' : 'closedLarge';
  const twice = 2 * SPEAKING_WEARERS.sdMm;
  const withinWearers = Math.abs(spaceMm - SPEAKING_WEARERS.meanMm) <= twice;
  const inputs = [`closure ${formatHundredths(closed)} mm`, `“s” ${formatHundredths(atS)} mm`];
  return known({
    value: { spaceMm, verdict, leaning, withinWearers },
    inputs,
    source: 'speaking-space',
    uncertainty: twice,
  });
}

export interface OldDentureChange {
  /** New closed height less the height with the present dentures, wear given back. */
  readonly changeMm: number;
  readonly verdict: 'within' | 'atLimit' | 'beyond';
}

/**
 * New closed height against the height with the present dentures, between the same marks; `wear` is height the present
 * teeth have lost. Up to 4 mm within, up to 5 mm at the limit of what handbooks advise at once. Source: old-denture-change.
 */
export function oldDentureChange(
  present: Hundredths,
  planned: Hundredths,
  wear: Hundredths = 0,
): Measured<OldDentureChange> {
  const bad = firstBad(
    badReading(present, 'Height with present dentures'),
    badReading(planned, 'Planned height'),
    badReading(wear, 'Wear'),
  );
  if (bad !== undefined) return bad;
  const change = planned - present - wear;
  const size = Math.abs(change);
  const verdict = size <= 400 ? 'within' : size <= 500 ? 'atLimit' : 'beyond';
  const inputs = [
    `present ${formatHundredths(present)} mm`,
    `planned ${formatHundredths(planned)} mm`,
    `wear ${formatHundredths(wear)} mm`,
  ];
  return known({ value: { changeMm: toMm(change), verdict }, inputs, source: 'old-denture-change' });
}

export interface SittingHeights {
  readonly rest: readonly Hundredths[];
  readonly closed: readonly Hundredths[];
}

export interface SpaceChange {
  readonly fromMm: number;
  readonly toMm: number;
  readonly changeMm: number;
  /** The change is larger than its own uncertainty. */
  readonly beyondScatter: boolean;
}

/**
 * Change of the rest space between two visits. Marks are inked anew each time, so the heights themselves are never
 * compared, only the difference rest less closed within each visit. Hundredths in, millimetres out; uncertainty: both
 * 95 % half widths combined. Refuses what either visit's rest space refuses. Source: difference-only.
 */
export function spaceChange(first: SittingHeights, second: SittingHeights): Measured<SpaceChange> {
  const bad = firstBad(
    badReadings(first.rest, 'First visit, rest'),
    badReadings(first.closed, 'First visit, closed'),
    badReadings(second.rest, 'Second visit, rest'),
    badReadings(second.closed, 'Second visit, closed'),
  );
  if (bad !== undefined) return bad;
  const [a, b] = [restSpace(first.rest, first.closed), restSpace(second.rest, second.closed)];
  if (!a.ok) return a;
  if (!b.ok) return b;
  const changeMm = b.value.spaceMm - a.value.spaceMm;
  const uncertainty = Math.hypot(a.uncertainty ?? 0, b.uncertainty ?? 0);
  const value = {
    fromMm: a.value.spaceMm,
    toMm: b.value.spaceMm,
    changeMm,
    beyondScatter: Math.abs(changeMm) > uncertainty,
  };
  const inputs = [...a.inputs.map((i) => `first: ${i}`), ...b.inputs.map((i) => `second: ${i}`)];
  return known({ value, inputs, source: 'difference-only', uncertainty });
}

export interface BasesNote {
  readonly mixed: boolean;
  /** How much larger the true rest space may be, millimetres, low to high; null where no study tells. */
  readonly largerByMm: readonly [number, number] | null;
  readonly text: string;
}

/**
 * Rest and closed height read with different bases in the mouth. Rest without dentures was 2.43 mm shorter than with both
 * in one study, so a rest height read without them makes the rest space look small. Source: rest-without-bases.
 */
export function basesNote(rest: string, closed: string): Measured<BasesNote> {
  const KNOWN = ['none', 'upper', 'lower', 'both'];
  const odd = [rest, closed].find((bases) => !KNOWN.includes(bases));
  if (odd !== undefined) return refuse('unknown', `“${odd}” is not one of ${KNOWN.join(', ')}.`);
  const inputs = [`rest: ${rest}`, `closed: ${closed}`];
  const mixed = rest !== closed;
  const shorter = closed === 'both' && mixed;
  const largerByMm = shorter ? ([2, 2.5] as const) : null;
  const text = !mixed
    ? 'Both heights were read with the same bases in the mouth.'
    : shorter
      ? `Rest was read with ${rest}, closed with both: the true rest space may be about 2 to 2.5 mm larger.`
      : `Rest was read with ${rest}, closed with ${closed}: the two belong to different conditions.`;
  return known({ value: { mixed, largerByMm, text }, inputs, source: 'rest-without-bases' });
}
