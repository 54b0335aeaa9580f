/** What is computed from a visit's readings and decided on in it, as data: drawn on screen, written on the sheet. */
import type { Answer } from '../protocol/types.ts';

export interface PointMm {
  readonly xMm: number;
  readonly yMm: number;
}

export interface Apex extends PointMm {
  readonly n: 1 | 2 | 3;
  /** What was said of it; absent when nobody said. */
  readonly sharp?: boolean;
}

/** Needle-point tracings on the millimetre sheet; nought is its lower left corner. */
export interface TracingView {
  readonly apexes: readonly Apex[];
  /** From two apexes on. */
  readonly scatter?: PointMm & {
    readonly rmsMm: number;
    readonly largestPairMm: number;
    /** Smallest circle about the mean that holds all apexes. */
    readonly radiusMm: number;
    readonly verdict: 'accept' | 'repeat' | 'reject';
  };
  readonly rightLeg?: PointMm;
  readonly leftLeg?: PointMm;
  readonly arch?: {
    readonly angleDeg: number;
    readonly rightDeg: number;
    readonly leftDeg: number;
    readonly asymmetryDeg: number;
    readonly verdict: 'usual' | 'sharp' | 'wide' | 'blunt';
    readonly asymmetric: boolean;
  };
}

export interface ToothEstimateRow {
  readonly rule: string;
  readonly mm: number;
  readonly note?: string;
  /** "Width of the nose 34 mm, visit 2" */
  readonly from: string;
  readonly source: string;
  readonly status: string;
}

/** All rules for one quantity side by side; never averaged. */
export interface ToothRow {
  readonly id: 'central' | 'length' | 'six' | 'sixStraight' | 'tips' | 'lowerSix';
  readonly label: string;
  readonly lowMm: number;
  readonly highMm: number;
  readonly spreadMm: number;
  /** The rules lie too far apart to choose between them by arithmetic. */
  readonly judge: boolean;
  readonly estimates: readonly ToothEstimateRow[];
}

/** One turn of the jaw about its hinge, at all the places where it is read. Negative closes. */
export interface HeightChange {
  /** From which height to which: the record or the closed height to the wanted space, or what was ground off. */
  readonly from: 'record' | 'closed' | 'ground';
  readonly chinMm: number;
  readonly incisalMm: readonly [number, number];
  readonly pinMm: readonly [number, number];
  readonly molarMm: readonly [number, number];
}

export interface HoldScores {
  readonly retention: number;
  readonly stability: number;
}

/** Scores of one visit; `sum` and `band` only where both dentures were scored, or the sum of the one there is. */
export interface HoldRow {
  readonly visit: string;
  readonly upper?: HoldScores;
  readonly lower?: HoldScores;
  readonly version: string;
  readonly sum: number;
  readonly most: 5 | 10;
  readonly band?: 'poor' | 'fair' | 'good';
}

export type Jaw = 'upper' | 'lower';

/** One place on a fitting surface that was sore, or was relieved at insertion. */
export interface SoreArea {
  readonly id: string;
  readonly visit: string;
  /** Of the visit that is open now; the others are drawn fainter. */
  readonly current: boolean;
  readonly jaw: Jaw;
  readonly region: Answer['id'];
  readonly label: string;
  readonly what: 'sore' | 'relieved';
  readonly kind?: string;
  readonly sizeMm?: number;
  readonly weeks?: number;
  readonly cause?: string;
  readonly done?: string;
}

export interface ReviewRow {
  readonly id: 'first' | 'week' | 'fourWeeks' | 'year' | 'ulcer';
  readonly label: string;
  /** "YYYY-MM-DD"; one day has both ends the same. */
  readonly from: string;
  readonly to: string;
  readonly state: 'seen' | 'due' | 'past' | 'later';
}

export interface Reviews {
  /** Day on which the dentures were handed over, "YYYY-MM-DD". */
  readonly delivered: string;
  readonly rows: readonly ReviewRow[];
  readonly source: string;
  readonly sourceStatus: string;
}

/** Absent parts have nothing to say yet. */
export interface Decided {
  readonly tracing?: TracingView;
  readonly teeth?: readonly ToothRow[];
  readonly change?: HeightChange;
  readonly hold?: readonly HoldRow[];
  readonly sore?: readonly SoreArea[];
  readonly reviews?: Reviews;
}
