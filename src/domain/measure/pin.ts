/** From a height on the face to what the laboratory changes between the mounted casts. Millimetres; negative closes. */
import { badAmount, badNumber, badSize } from './check.ts';
import { hingeSensitivity, solveHinge, type HingeGeometry } from './hinge.ts';
import { known, refuse, type Measured } from './result.ts';

/** Rim and molar change for a chin change, low to high: the model with its assumptions varied, rounded. */
const FACTORS = { incisal: [0.8, 1], molar: [0.42, 0.62] } as const;
/** Pin, incisors and second molar in the published linear rule, in inches from the hinge. */
const PIN_RULE = { pin: 6, incisal: 4, molar2: 2 } as const;
const PIN_LIMIT_MM = 6;

export interface PinOpenings {
  readonly pinMm: number;
  readonly incisalMm: number;
  readonly molar2Mm: number;
}

/** What opens at incisors and second molar when the pin is raised: 3 : 2 : 1. Millimetres. Source: pin-rule. */
export function pinRule(pinMm: number): Measured<PinOpenings> {
  const bad = badNumber(pinMm, 'Pin change');
  if (bad !== undefined) return bad;
  const value = {
    pinMm,
    incisalMm: (pinMm * PIN_RULE.incisal) / PIN_RULE.pin,
    molar2Mm: (pinMm * PIN_RULE.molar2) / PIN_RULE.pin,
  };
  return known({ value, inputs: [`pin ${pinMm} mm`], source: 'pin-rule' });
}

export interface LinearChange {
  readonly incisalMm: number;
  readonly molarMm: number;
}

/** Middle factors of the linear rule of thumb for small moves. */
const MIDDLE = { incisal: 0.83, molar: 0.52 } as const;

/** Rim and first molar change by fixed factors of the chin change, for mental arithmetic. Millimetres. Source: hinge-factors. */
export function linearChange(chinMm: number): Measured<LinearChange> {
  const bad = badNumber(chinMm, 'Chin change');
  if (bad !== undefined) return bad;
  const value = { incisalMm: MIDDLE.incisal * chinMm, molarMm: MIDDLE.molar * chinMm };
  return known({ value, inputs: [`chin ${chinMm} mm`], source: 'hinge-factors' });
}

export interface PinChange {
  /** Change of the nose to chin distance. */
  readonly chinMm: number;
  /** Change between the rims at the incisors, by the exact hinge model. */
  readonly incisalMm: number;
  readonly incisalRangeMm: readonly [number, number];
  /** Along the occlusal plane: closing carries the incisors forward (positive), opening back. */
  readonly incisalForwardMm: number;
  readonly molarMm: number;
  readonly molarRangeMm: readonly [number, number];
  /** The same change read on an incisal pin half as far again from the axis as the incisors (rule 2 : 3). */
  readonly pinMm: number;
  readonly pinRangeMm: readonly [number, number];
  /** The pin would move more than 6 mm: further than hinge arithmetic was compared with mouths. */
  readonly warnOver6: boolean;
}

export interface PinInput {
  readonly restMm: number;
  /** Nose to chin distance with the record in place. */
  readonly recordedMm: number;
  readonly targetSpaceMm: number;
  /** Values measured on the patient, by facebow or ruler; the rest is average. */
  readonly hinge?: Partial<HingeGeometry>;
}

const scaled = (change: number, [low, high]: readonly [number, number]): readonly [number, number] =>
  change < 0 ? [change * high, change * low] : [change * low, change * high];

const onPin = (incisalMm: number) => (incisalMm * PIN_RULE.pin) / PIN_RULE.incisal;

function rangesOf(chinMm: number, own: Partial<HingeGeometry> | undefined) {
  const swept = own === undefined ? undefined : hingeSensitivity(chinMm, own);
  if (swept?.ok) return { incisal: swept.value.incisalMm, molar: swept.value.molarMm };
  return { incisal: scaled(chinMm, FACTORS.incisal), molar: scaled(chinMm, FACTORS.molar) };
}

/**
 * Change at chin, incisors, first molar and pin that brings a record made at `recordedMm` to rest height less the
 * wanted space. Negative closes. The uncertainty is half the incisal range. How the change is shared between upper and
 * lower rim is a clinical choice. Refuses what is no number, a space not below rest height, and impossible turns.
 * Sources: hinge-model, hinge-factors, pin-rule, pin-limit.
 */
export function pinChange({ restMm, recordedMm, targetSpaceMm, hinge }: PinInput): Measured<PinChange> {
  const bad =
    badSize(restMm, 'Rest height') ??
    badSize(recordedMm, 'Height with the record') ??
    badAmount(targetSpaceMm, 'Target rest space');
  if (bad !== undefined) return bad;
  if (targetSpaceMm >= restMm) return refuse('inconsistent', 'The rest space cannot be as large as the rest height.');
  const chinMm = restMm - targetSpaceMm - recordedMm;
  const move = solveHinge('chin', chinMm, hinge);
  if (!move.ok) return move;
  const { incisalMm, molarMm, incisalForwardMm } = move.value;
  const range = rangesOf(chinMm, hinge);
  const [low, high] = range.incisal;
  const value: PinChange = {
    chinMm,
    incisalMm,
    incisalRangeMm: range.incisal,
    incisalForwardMm,
    molarMm,
    molarRangeMm: range.molar,
    pinMm: onPin(incisalMm),
    pinRangeMm: [onPin(low), onPin(high)],
    warnOver6: Math.abs(onPin(incisalMm)) > PIN_LIMIT_MM,
  };
  const inputs = [
    `rest ${restMm} mm`,
    `record ${recordedMm} mm`,
    `target space ${targetSpaceMm} mm`,
    ...move.inputs.slice(1),
  ];
  return known({ value, inputs, source: 'hinge-model', uncertainty: (high - low) / 2 });
}
