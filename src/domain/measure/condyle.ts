/** Condylar inclination from a protrusive record, and the lateral guidance rule. Millimetres and degrees. */
import { mean } from 'simple-statistics';
import { badAmount, badSize, badWithin, firstBad } from './check.ts';
import { known, refuse, type Measured } from './result.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;

/** Occlusal plane to Frankfort plane, about 10°. Source: glossary, 9th ed., text seen. */
const PLANE_TO_FRANKFORT_DEG = 10;
/** Half a millimetre at the molar gap: how well a gap is read (our choice). */
const GAP_ERROR_MM = 0.5;

/** Lateral inclination by the lateral guidance rule: sagittal / 8 + 12. Degrees; accuracy questioned. Source: lateral-guidance. */
export function lateralGuidance(sagittalDeg: number): Measured<number> {
  const bad = badWithin(sagittalDeg, 'Sagittal inclination', [0, 90]);
  if (bad !== undefined) return bad;
  return known({ value: sagittalDeg / 8 + 12, inputs: [`sagittal ${sagittalDeg}°`], source: 'lateral-guidance' });
}

/** The sagittal inclination a lateral one stands for: 8·(lateral − 12). Degrees; refuses under 12°. Source: lateral-guidance. */
export function sagittalFromLateral(lateralDeg: number): Measured<number> {
  const bad = badWithin(lateralDeg, 'Lateral inclination', [12, 23.25]);
  if (bad !== undefined) return bad;
  return known({ value: 8 * (lateralDeg - 12), inputs: [`lateral ${lateralDeg}°`], source: 'lateral-guidance' });
}

export interface ProtrusiveRecord {
  /** Forward movement at the incisors along the occlusal plane. */
  readonly forwardMm: number;
  /** Gap that opens at the first molar. */
  readonly molarGapMm: number;
  readonly incisalGapMm: number;
  /** Distances ahead of the hinge axis; average hinge geometry unless measured. */
  readonly incisalAheadMm?: number;
  readonly molarAheadMm?: number;
}

export interface CondylarInclination {
  /** Turn of the lower jaw. */
  readonly turnDeg: number;
  /** Descent of the axis. */
  readonly dropMm: number;
  readonly toPlaneDeg: number;
  readonly toFrankfortDeg: number;
  /** By the lateral guidance rule, from the inclination to the occlusal plane. */
  readonly lateralDeg: number;
  /** To the plane, with the molar gap 0.5 mm smaller and larger. */
  readonly rangeDeg: readonly [number, number];
}

type Filled = Required<ProtrusiveRecord>;

function descent({ molarGapMm, incisalGapMm, incisalAheadMm, molarAheadMm }: Filled) {
  const slope = (molarGapMm - incisalGapMm) / (incisalAheadMm - molarAheadMm);
  return { turnDeg: degrees(Math.atan(slope)), dropMm: incisalGapMm + slope * incisalAheadMm };
}

function toPlane(record: Filled): number {
  return degrees(Math.atan(descent(record).dropMm / record.forwardMm));
}

function badRecord(record: Filled) {
  return firstBad(
    badWithin(record.forwardMm, 'Forward movement', [1, 15]),
    badAmount(record.molarGapMm, 'Gap at the molar'),
    badAmount(record.incisalGapMm, 'Gap at the incisors'),
    badSize(record.incisalAheadMm, 'Incisors ahead of the axis'),
    badSize(record.molarAheadMm, 'Molar ahead of the axis'),
  );
}

/**
 * Condylar inclination from one protrusive record; the uncertainty is half the span that 0.5 mm at the molar gap makes,
 * and it is large: average at least two records. Millimetres in, degrees out. Refuses a forward movement outside 1 to
 * 15 mm, incisors not ahead of the molar, and a record in which the axis would rise. Source: protrusive-record.
 */
export function protrusiveInclination(record: ProtrusiveRecord): Measured<CondylarInclination> {
  const filled: Filled = { incisalAheadMm: 81.3, molarAheadMm: 51.3, ...record };
  const bad = badRecord(filled);
  if (bad !== undefined) return bad;
  if (filled.incisalAheadMm <= filled.molarAheadMm)
    return refuse('inconsistent', 'The incisors must lie ahead of the molar.');
  const { turnDeg, dropMm } = descent(filled);
  if (dropMm < 0) return refuse('inconsistent', 'The gaps would raise the axis: check molar and incisal gap.');
  const toPlaneDeg = toPlane(filled);
  const ends = [-GAP_ERROR_MM, GAP_ERROR_MM].map((error) =>
    toPlane({ ...filled, molarGapMm: filled.molarGapMm + error }),
  );
  const rangeDeg = [ends[0]!, ends[1]!] as const;
  const value = {
    turnDeg,
    dropMm,
    toPlaneDeg,
    toFrankfortDeg: toPlaneDeg + PLANE_TO_FRANKFORT_DEG,
    lateralDeg: toPlaneDeg / 8 + 12,
    rangeDeg,
  };
  const inputs = [
    `forward ${filled.forwardMm} mm`,
    `molar gap ${filled.molarGapMm} mm`,
    `incisal gap ${filled.incisalGapMm} mm`,
    `ahead of the axis ${filled.incisalAheadMm} and ${filled.molarAheadMm} mm`,
  ];
  return known({ value, inputs, source: 'protrusive-record', uncertainty: (rangeDeg[1] - rangeDeg[0]) / 2 });
}

export interface MeanInclination {
  readonly toPlaneDeg: number;
  readonly n: number;
  /** Fewer than two records: not to be relied on. */
  readonly tooFew: boolean;
}

/** Mean inclination of several protrusive records, degrees; uncertainty by their number. Refuses what any record refuses. Source: protrusive-record. */
export function meanInclination(records: readonly ProtrusiveRecord[]): Measured<MeanInclination> {
  if (records.length === 0) return refuse('empty', 'No protrusive record.');
  const found = records.map((record) => protrusiveInclination(record));
  const bad = found.find((result) => !result.ok);
  if (bad !== undefined && !bad.ok) return bad;
  const good = found.flatMap((result) => (result.ok ? [result] : []));
  const toPlaneDeg = mean(good.map((result) => result.value.toPlaneDeg));
  const uncertainty = mean(good.map((result) => result.uncertainty ?? 0)) / Math.sqrt(good.length);
  const value = { toPlaneDeg, n: good.length, tooFew: good.length < 2 };
  return known({ value, inputs: [`${good.length} records`], source: 'protrusive-record', uncertainty });
}
