/** Sizes of the front teeth by every rule whose inputs are at hand. Rules disagree; the spread is shown, never averaged. */
import { badReading } from './check.ts';
import { formatHundredths, toMm, type Hundredths } from './length.ts';
import { known, refuse, type Measured, type Refused } from './result.ts';
import type { SourceId } from './sources.ts';

export interface FaceReadings {
  readonly bizygomatic?: Hundredths;
  /** Hairline to under the chin. */
  readonly faceLength?: Hundredths;
  readonly interalar?: Hundredths;
  readonly innerCanthal?: Hundredths;
  readonly interpupillary?: Hundredths;
  /** Six lower front teeth along the curve. */
  readonly lowerSix?: Hundredths;
  /** Between the marks at the corners of the mouth, along the rim's curve. */
  readonly commissureCurve?: Hundredths;
}

/** What a rule speaks of; only rules for the same quantity are compared. */
export type ToothQuantity = 'central' | 'length' | 'six' | 'sixStraight' | 'tips';

export interface ToothEstimate {
  readonly rule: string;
  readonly quantity: ToothQuantity;
  readonly mm: number;
  readonly source: SourceId;
  readonly note?: string;
}

export interface ToothSpread {
  readonly quantity: ToothQuantity;
  readonly lowMm: number;
  readonly highMm: number;
  readonly spreadMm: number;
  /** Rules further apart than 4 mm: the clinician judges. */
  readonly judge: boolean;
}

export interface ToothSizes {
  readonly estimates: readonly ToothEstimate[];
  readonly spreads: readonly ToothSpread[];
  readonly text: string;
}

interface Rule {
  readonly from: keyof FaceReadings;
  readonly rule: string;
  readonly quantity: ToothQuantity;
  readonly of: (mm: number) => number;
  readonly source: SourceId;
  readonly note?: string;
}

const STARTING = 'A starting point only: studies contradict it.';

const RULES: readonly Rule[] = [
  {
    from: 'bizygomatic',
    rule: 'face width / 16',
    quantity: 'central',
    of: (mm) => mm / 16,
    source: 'sixteenth-width',
    note: STARTING,
  },
  {
    from: 'innerCanthal',
    rule: 'inner canthal × 0.618 / 2',
    quantity: 'central',
    of: (mm) => (mm * 0.618) / 2,
    source: 'inner-canthal',
  },
  {
    from: 'interpupillary',
    rule: 'interpupillary / 6.6',
    quantity: 'central',
    of: (mm) => mm / 6.6,
    source: 'interpupillary',
    note: 'Runs larger than natural teeth: never alone.',
  },
  { from: 'faceLength', rule: 'face length / 16', quantity: 'length', of: (mm) => mm / 16, source: 'face-length' },
  { from: 'faceLength', rule: 'face length / 20', quantity: 'length', of: (mm) => mm / 20, source: 'face-length' },
  {
    from: 'bizygomatic',
    rule: 'face width / 3.3',
    quantity: 'six',
    of: (mm) => mm / 3.3,
    source: 'six-from-face',
    note: 'Runs 3 to 5 mm smaller than measured natural teeth.',
  },
  { from: 'bizygomatic', rule: 'face width / 3.36', quantity: 'six', of: (mm) => mm / 3.36, source: 'six-from-face' },
  { from: 'interalar', rule: 'nose width × 1.31', quantity: 'six', of: (mm) => mm * 1.31, source: 'six-from-nose' },
  { from: 'lowerSix', rule: 'lower six × 1.30', quantity: 'six', of: (mm) => mm * 1.3, source: 'lower-to-upper-six' },
  {
    from: 'commissureCurve',
    rule: 'corner marks along the rim',
    quantity: 'six',
    of: (mm) => mm,
    source: 'commissures',
  },
  {
    from: 'interalar',
    rule: 'nose width + 7',
    quantity: 'sixStraight',
    of: (mm) => mm + 7,
    source: 'six-nose-plus-seven',
  },
  { from: 'interalar', rule: 'nose width × 1.03', quantity: 'tips', of: (mm) => mm * 1.03, source: 'six-from-nose' },
];

/** Rules further apart than this are left to the clinician (our choice), millimetres. */
const JUDGE_MM = 4;

function spreadOf(quantity: ToothQuantity, estimates: readonly ToothEstimate[]): ToothSpread {
  const values = estimates.filter((e) => e.quantity === quantity).map((e) => e.mm);
  const [lowMm, highMm] = [Math.min(...values), Math.max(...values)];
  return { quantity, lowMm, highMm, spreadMm: highMm - lowMm, judge: highMm - lowMm > JUDGE_MM + 1e-9 };
}

function badFace(face: FaceReadings): Refused | undefined {
  const given = Object.entries(face).filter(([, value]) => value !== undefined);
  if (given.length === 0) return refuse('missing', 'No face reading is known yet.');
  for (const [name, value] of given) {
    const bad =
      badReading(value, name) ?? (value === 0 ? refuse('outOfRange', `${name} must be above zero.`) : undefined);
    if (bad !== undefined) return bad;
  }
  return undefined;
}

/**
 * Every tooth-size rule whose input is at hand, with the spread for each quantity; over 4 mm apart "clinician to judge".
 * Hundredths in, millimetres out. Refuses no reading at all, zero and what is no reading. Sources: one per estimate.
 */
export function toothSizes(face: FaceReadings): Measured<ToothSizes> {
  const bad = badFace(face);
  if (bad !== undefined) return bad;
  const estimates = RULES.flatMap(({ from, rule, quantity, of, source, note }): ToothEstimate[] => {
    const value = face[from];
    if (value === undefined) return [];
    return [{ rule, quantity, mm: of(toMm(value)), source, ...(note === undefined ? {} : { note }) }];
  });
  const spreads = [...new Set(estimates.map((e) => e.quantity))].map((quantity) => spreadOf(quantity, estimates));
  const wide = spreads.filter((spread) => spread.judge).map((spread) => spread.quantity);
  const text =
    wide.length === 0
      ? 'Rules shown with their spread; none decides.'
      : `Rules differ by more than 4 mm (${wide.join(', ')}): clinician to judge.`;
  const inputs = Object.entries(face).map(([name, value]) => `${name} ${formatHundredths(value)} mm`);
  return known({ value: { estimates, spreads, text }, inputs, source: 'tooth-spread' });
}

/** Lower six that go with an upper six: upper / 1.30. Hundredths in, millimetres out. Source: lower-to-upper-six. */
export function lowerSixFromUpper(upperSix: Hundredths): Measured<number> {
  const bad = badReading(upperSix, 'Upper six');
  if (bad !== undefined) return bad;
  return known({
    value: toMm(upperSix) / 1.3,
    inputs: [`upper six ${formatHundredths(upperSix)} mm`],
    source: 'lower-to-upper-six',
  });
}

export interface PosteriorChoice {
  /** Largest four-tooth set that fits the smaller side; absent when none does. */
  readonly set?: Hundredths;
  readonly teeth: 4 | 3;
  readonly spaceMm: number;
  readonly text: string;
}

/**
 * Four-tooth set for the lower back teeth: the widest that fits the smaller side, the same on both for symmetry. None
 * fits: three teeth. Space from the lower canine to the rising ridge or the pad. Hundredths in. Refuses an empty list of
 * sets and what is no reading. Source: posterior-space.
 */
export function posteriorChoice(
  left: Hundredths,
  right: Hundredths,
  sets: readonly Hundredths[],
): Measured<PosteriorChoice> {
  if (sets.length === 0) return refuse('empty', 'No tooth sets are listed.');
  const bad =
    badReading(left, 'Space on the left') ??
    badReading(right, 'Space on the right') ??
    sets.map((set) => badReading(set, 'Width of a set')).find((b) => b !== undefined);
  if (bad !== undefined) return bad;
  const space = Math.min(left, right);
  const fitting = sets.filter((set) => set <= space);
  const inputs = [`left ${formatHundredths(left)} mm`, `right ${formatHundredths(right)} mm`, `${sets.length} sets`];
  const common = { spaceMm: toMm(space) };
  if (fitting.length === 0) {
    const text = 'No four-tooth set fits: three teeth, leaving out a premolar or the second molar.';
    return known({ value: { ...common, teeth: 3, text }, inputs, source: 'posterior-space' });
  }
  const set = Math.max(...fitting);
  const text = `Set of ${formatHundredths(set)} mm on both sides; no tooth on the rising ridge.`;
  return known({ value: { ...common, set, teeth: 4, text }, inputs, source: 'posterior-space' });
}
