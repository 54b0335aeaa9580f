/**
 * The lower jaw as a hinge seen from the side. Origin on the hinge axis, x forward along the occlusal plane, y down,
 * millimetres and degrees; a positive turn opens. Holds for the few millimetres between rest and closure.
 */
import { badNumber, badSize, badWithin, firstBad } from './check.ts';
import { known, refuse, type Measured, type Refused } from './result.ts';

export interface HingeGeometry {
  /** Hinge axis to the incisal point, in the midline. */
  readonly radiusMm: number;
  /** Angle between that line and the occlusal plane. */
  readonly planeAngleDeg: number;
  /** First molar behind the incisal point, along the plane. */
  readonly molarBehindMm: number;
  /** Chin mark from the incisal point. */
  readonly chinForwardMm: number;
  readonly chinDownMm: number;
  /** Nose mark from the incisal point; it does not move. Down is positive, so the nose lies at a negative value. */
  readonly noseForwardMm: number;
  readonly noseDownMm: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Side of the Bonwill triangle, 4 in. */
export const BONWILL_SIDE_MM = 101.6;

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const degrees = (angle: number) => (angle * 180) / Math.PI;
const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** Height of an equilateral triangle: hinge axis to incisal point for a triangle of `sideMm`. Millimetres. Source: bonwill. */
export function bonwillAltitude(sideMm: number): Measured<number> {
  const bad = badSize(sideMm, 'Side of the triangle');
  if (bad !== undefined) return bad;
  return known({ value: (sideMm * Math.sqrt(3)) / 2, inputs: [`side ${sideMm} mm`], source: 'bonwill' });
}

/** Angle of the triangle to the occlusal plane from the height of the hinge axis over it, degrees. Source: balkwill. */
export function balkwillAngle(axisHeightMm: number, radiusMm: number): Measured<number> {
  const bad = badNumber(axisHeightMm, 'Height of the axis') ?? badSize(radiusMm, 'Axis to incisal point');
  if (bad !== undefined) return bad;
  if (Math.abs(axisHeightMm) >= radiusMm)
    return refuse('noSolution', 'The axis cannot stand higher over the plane than it is away from the incisal point.');
  const inputs = [`axis ${axisHeightMm} mm over the plane`, `axis to incisal point ${radiusMm} mm`];
  return known({ value: degrees(Math.asin(axisHeightMm / radiusMm)), inputs, source: 'balkwill' });
}

/** Average values where the patient's own are not known. Positions of the marks are assumptions. Source: hinge-model. */
export const defaultHinge: HingeGeometry = {
  radiusMm: (BONWILL_SIDE_MM * Math.sqrt(3)) / 2,
  planeAngleDeg: 22.5,
  molarBehindMm: 30,
  chinForwardMm: -3,
  chinDownMm: 38,
  noseForwardMm: 20,
  noseDownMm: -28,
};

/** Points at the present closure. */
export function hingePoints(hinge: HingeGeometry): Record<'incisal' | 'molar' | 'chin' | 'nose', Point> {
  const x = hinge.radiusMm * Math.cos(radians(hinge.planeAngleDeg));
  const y = hinge.radiusMm * Math.sin(radians(hinge.planeAngleDeg));
  return {
    incisal: { x, y },
    molar: { x: x - hinge.molarBehindMm, y },
    chin: { x: x + hinge.chinForwardMm, y: y + hinge.chinDownMm },
    nose: { x: x + hinge.noseForwardMm, y: y + hinge.noseDownMm },
  };
}

/** Rotates a point about the hinge axis; positive opens. Degrees. */
export function rotate({ x, y }: Point, turnDeg: number): Point {
  const turn = radians(turnDeg);
  return { x: x * Math.cos(turn) - y * Math.sin(turn), y: x * Math.sin(turn) + y * Math.cos(turn) };
}

export interface HingeMove {
  readonly turnDeg: number;
  /** Change of the nose to chin distance; positive opens. */
  readonly chinMm: number;
  /** Change straight down, at right angles to the occlusal plane. */
  readonly chinDownMm: number;
  readonly incisalMm: number;
  readonly molarMm: number;
  /** Incisal point forward (positive) or back along the plane. */
  readonly incisalForwardMm: number;
}

function moveOf(hinge: HingeGeometry, turnDeg: number): HingeMove {
  const at = hingePoints(hinge);
  const incisal = rotate(at.incisal, turnDeg);
  const chin = rotate(at.chin, turnDeg);
  return {
    turnDeg,
    chinMm: distance(chin, at.nose) - distance(at.chin, at.nose),
    chinDownMm: chin.y - at.chin.y,
    incisalMm: incisal.y - at.incisal.y,
    molarMm: rotate(at.molar, turnDeg).y - at.molar.y,
    incisalForwardMm: incisal.x - at.incisal.x,
  };
}

/** Average geometry with the patient's own values put in, or the reason why it is no jaw. */
export function hingeWith(
  own: Partial<HingeGeometry> = {},
): { readonly ok: true; readonly hinge: HingeGeometry } | Refused {
  const hinge = { ...defaultHinge, ...own };
  const bad = firstBad(
    badWithin(hinge.radiusMm, 'Axis to incisal point', [50, 150]),
    badWithin(hinge.planeAngleDeg, 'Angle to the occlusal plane', [0, 45]),
    badWithin(hinge.molarBehindMm, 'First molar behind the incisal point', [10, 60]),
    badWithin(hinge.chinForwardMm, 'Chin mark forward', [-40, 40]),
    badWithin(hinge.chinDownMm, 'Chin mark down', [10, 80]),
    badWithin(hinge.noseForwardMm, 'Nose mark forward', [-20, 60]),
    badWithin(hinge.noseDownMm, 'Nose mark down', [-80, -5]),
  );
  return bad ?? { ok: true, hinge };
}

function inputsOf(own: Partial<HingeGeometry> | undefined): readonly string[] {
  const keys = Object.keys(own ?? {});
  return keys.length === 0
    ? ['average hinge geometry']
    : [`own values for ${keys.join(', ')}`, 'average hinge geometry for the rest'];
}

/** What a turn of the jaw does at chin, incisors and first molar. Degrees in, millimetres out. Source: hinge-model. */
export function turnJaw(turnDeg: number, own?: Partial<HingeGeometry>): Measured<HingeMove> {
  const made = hingeWith(own);
  if (!made.ok) return made;
  const bad = badWithin(turnDeg, 'Turn in degrees', [-30, 30]);
  if (bad !== undefined) return bad;
  return known({
    value: moveOf(made.hinge, turnDeg),
    inputs: [`turn ${turnDeg}°`, ...inputsOf(own)],
    source: 'hinge-model',
  });
}

/** The turn that changes the nose to chin distance by `chinMm`: law of cosines, undefined where no turn does it. */
function turnForChin(hinge: HingeGeometry, chinMm: number): number | undefined {
  const { chin, nose } = hingePoints(hinge);
  const wanted = distance(chin, nose) + chinMm;
  const [c, n] = [Math.hypot(chin.x, chin.y), Math.hypot(nose.x, nose.y)];
  const cosine = (c * c + n * n - wanted * wanted) / (2 * c * n);
  if (!(wanted > 0) || cosine < -1 || cosine > 1) return undefined;
  const now = Math.atan2(chin.y, chin.x) - Math.atan2(nose.y, nose.x);
  return degrees(Math.acos(cosine) - now);
}

/** The turn that moves a point down by `downMm`: radius·sin, undefined where the point cannot get there. */
function turnForDrop(point: Point, downMm: number): number | undefined {
  const sine = (point.y + downMm) / Math.hypot(point.x, point.y);
  return sine < -1 || sine > 1 ? undefined : degrees(Math.asin(sine) - Math.atan2(point.y, point.x));
}

export type HingePlace = 'chin' | 'incisal' | 'molar';

/**
 * From a change at one place (nose to chin distance, or straight down at incisors or first molar) to all the others;
 * negative closes. Millimetres. Refuses what no turn can do (`noSolution`). Source: hinge-model.
 */
export function solveHinge(place: HingePlace, changeMm: number, own?: Partial<HingeGeometry>): Measured<HingeMove> {
  const made = hingeWith(own);
  if (!made.ok) return made;
  const bad = badNumber(changeMm, 'Change in millimetres');
  if (bad !== undefined) return bad;
  const points = hingePoints(made.hinge);
  const turn = place === 'chin' ? turnForChin(made.hinge, changeMm) : turnForDrop(points[place], changeMm);
  if (turn === undefined || Math.abs(turn) > 30)
    return refuse('noSolution', `No turn of the jaw changes the ${place} by ${changeMm} mm.`);
  const inputs = [`${place} ${changeMm} mm`, ...inputsOf(own)];
  return known({ value: moveOf(made.hinge, turn), inputs, source: 'hinge-model' });
}

/** Assumptions varied one at a time; φ by the published span, offsets by what faces show (our choice). */
export const VARIED: Readonly<Record<string, readonly Partial<HingeGeometry>[]>> = {
  planeAngleDeg: [{ planeAngleDeg: 18 }, { planeAngleDeg: 26 }],
  molarBehindMm: [{ molarBehindMm: 25 }, { molarBehindMm: 40 }],
  nose: [
    { noseForwardMm: 10, noseDownMm: -28 },
    { noseForwardMm: 30, noseDownMm: -28 },
    { noseForwardMm: 0, noseDownMm: -35 },
  ],
  chin: [
    { chinForwardMm: -8, chinDownMm: 38 },
    { chinForwardMm: 2, chinDownMm: 38 },
    { chinForwardMm: -3, chinDownMm: 30 },
    { chinForwardMm: -3, chinDownMm: 45 },
  ],
};

const measuredBy: Readonly<Record<string, readonly (keyof HingeGeometry)[]>> = {
  planeAngleDeg: ['planeAngleDeg'],
  molarBehindMm: ['molarBehindMm'],
  nose: ['noseForwardMm', 'noseDownMm'],
  chin: ['chinForwardMm', 'chinDownMm'],
};

export interface HingeRange {
  readonly incisalMm: readonly [number, number];
  readonly molarMm: readonly [number, number];
}

/**
 * How far incisal and molar change could lie from the answer for a change of the chin distance, when each assumption
 * that was not measured on the patient is varied in turn. Millimetres, low to high. Source: hinge-model.
 */
export function hingeSensitivity(chinMm: number, own: Partial<HingeGeometry> = {}): Measured<HingeRange> {
  const centre = solveHinge('chin', chinMm, own);
  if (!centre.ok) return centre;
  const open = Object.keys(VARIED).filter((key) => !measuredBy[key]!.some((field) => field in own));
  const variants = open.flatMap((key) =>
    VARIED[key]!.map((change) => solveHinge('chin', chinMm, { ...own, ...change })),
  );
  const moves = [centre, ...variants].flatMap((move) => (move.ok ? [move.value] : []));
  const ends = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];
  const value = { incisalMm: ends(moves.map((m) => m.incisalMm)), molarMm: ends(moves.map((m) => m.molarMm)) };
  const inputs = [`chin ${chinMm} mm`, `varied: ${open.join(', ') || 'nothing'}`, ...inputsOf(own)];
  return known({ value, inputs, source: 'hinge-model' });
}
