/** The one model that screens, lab sheet and exports are drawn from. Data only, no markup. */
import type { Bases, KeptBy, PhaseId } from '../case/facts.ts';
import type { Hundredths } from '../measure/length.ts';
import type { Material, Unit } from '../protocol/types.ts';
import type { BenchSummary } from './bench.types.ts';
import type { Decided } from './decided.types.ts';

/** One kept reading, struck ones included. */
export interface ReadingRow {
  readonly seq: number;
  readonly at: number;
  /** "visit 2", "visit 5, time 2". */
  readonly visit: string;
  readonly step: string;
  readonly reading: string;
  readonly label: string;
  readonly value: Hundredths;
  readonly unit: Unit;
  readonly source: 'voice' | 'keypad' | 'key' | 'touch' | 'app';
  /** What was heard or typed, word for word. */
  readonly text: string;
  readonly keptBy: KeptBy;
  readonly outOfTurn: boolean;
  /** Struck through: by a correction, an undo or a new attempt. */
  readonly struck?: { readonly at: number; readonly why: 'corrected' | 'undone' | 'newAttempt'; readonly by: number };
  /** Which set of skin marks it was read between, e.g. "visit 1, marks 1". Only for readings between marks. */
  readonly markSet?: string;
  readonly bases?: Bases;
}

/** Repeated live readings of one quantity between one set of marks. */
export interface SetRow {
  readonly reading: string;
  readonly label: string;
  readonly markSet: string;
  readonly bases?: Bases;
  readonly values: readonly Hundredths[];
  readonly seqs: readonly number[];
  readonly n: number;
  /** Half-hundredths can arise with an even count; so millimetres, not hundredths. */
  readonly medianMm?: number;
  readonly meanMm?: number;
  readonly rangeMm?: number;
  /** Absent below two readings. */
  readonly sdMm?: number;
  readonly suspects: readonly {
    readonly seq: number;
    readonly value: Hundredths;
    readonly why: string;
    readonly perhaps?: Hundredths;
  }[];
}

export interface Flag {
  /** Stable while the disagreement lasts: an answer given to it stays with it. */
  readonly id: string;
  readonly level: 'caution' | 'disagrees' | 'look';
  /** What disagrees, with the numbers. */
  readonly what: string;
  readonly why: string;
  readonly todo: string;
  /** Only looked back on (a given-up attempt): no answer is wanted before hand-over. */
  readonly settled?: boolean;
  /** Step to go to when "measure again" is chosen. */
  readonly step?: string;
  readonly answer?: { readonly answer: 'keep' | 'measureAgain'; readonly reason: string; readonly at: number };
}

export type ClockPhaseState = 'running' | 'over' | 'done' | 'waiting';

export interface ClockPhase {
  readonly id: PhaseId;
  /** "working time", "in the mouth" … */
  readonly label: string;
  readonly from: number;
  readonly dueAt: number;
  readonly endedAt?: number;
  readonly state: ClockPhaseState;
}

export interface ClockRow {
  /** Unique per attempt: "upper-primary/1". */
  readonly id: string;
  readonly clock: string;
  readonly label: string;
  readonly attempt: number;
  readonly flow: 'impression' | 'timed';
  /** Of an earlier visit, still waiting to be poured. */
  readonly visit?: number;
  /** Name of the material or disinfectant. */
  readonly name: string;
  readonly material?: Material;
  /** For `timed`: the impression it belongs to. */
  readonly of?: string;
  readonly startedAt: number;
  /** Calendar day of the start where the practice is, "2026-03-02"; absent on old records and for baths. */
  readonly day?: string;
  readonly seatedAt?: number;
  readonly outAt?: number;
  /** Poured, or taken over by the laboratory. */
  readonly takenAt?: number;
  readonly struck: boolean;
  /** No longer ticking: removed and nothing left to wait for, or given up with its attempt. */
  readonly stopped: boolean;
  readonly phases: readonly ClockPhase[];
  /** The phase that counts now. */
  readonly now?: PhaseId;
  readonly findings: readonly {
    readonly id: 'notSeated' | 'seatedLate' | 'removedEarly' | 'pourLate' | 'disinfectShort';
    readonly byMs: number;
  }[];
}

export interface AnswerRow {
  readonly seq: number;
  readonly at: number;
  readonly step: string;
  readonly chapter: number;
  readonly question: string;
  readonly answer: string;
  readonly tone: 'good' | 'neutral' | 'warn';
  readonly reason?: string;
  readonly struck?: { readonly at: number; readonly why: 'corrected' | 'undone' | 'newAttempt'; readonly by: number };
}

/** A value computed from readings; every one names what it was computed from and by whose rule. */
export interface ComputedRow {
  readonly id: string;
  readonly label: string;
  /** "3.0 mm", "class III, decided by bone height" … */
  readonly text: string;
  readonly valueMm?: number;
  /** Low and high end, same unit. */
  readonly rangeMm?: readonly [number, number];
  readonly uncertaintyMm?: number;
  readonly inputs: readonly string[];
  readonly source: string;
  readonly sourceStatus: string;
}

export interface VerticalDimension {
  readonly markSet: string;
  readonly rest?: SetRow;
  readonly closed?: SetRow;
  /** Height at which the preliminary record was made, if read. */
  readonly record?: SetRow;
  readonly restSpaceMm?: number;
  readonly uncertaintyMm?: number;
  /** Why the space should not be relied on yet; absent when its readings agree. */
  readonly doubt?: string;
  readonly verdict: 'usual' | 'small' | 'large' | 'impossible' | 'notYet';
  readonly convention: 'rest' | 'restLessSpace';
  readonly targetSpaceMm: number;
  readonly targetHeightMm?: number;
  /** What the lab must change: chin distance, and the pin range that follows from it. Negative = close. */
  readonly lab?: {
    readonly chinMm: number;
    /** Between the rims at the incisors. */
    readonly incisalMm: readonly [number, number];
    /** On an incisal pin half as far again from the axis as the incisors. */
    readonly pinMm: readonly [number, number];
    readonly molarMm: readonly [number, number];
    readonly text: string;
  };
}

export interface LabLine {
  readonly id: string;
  readonly text: string;
  readonly detail?: string;
  /** A time that belongs to the line ("pour by"), ms since 1970. */
  readonly at?: number;
}

export interface Summary extends Decided {
  readonly caseCode: string;
  readonly demo: boolean;
  readonly visit: number;
  /** "visit 5, time 2" */
  readonly visitName: string;
  readonly visitTitle: string;
  readonly openedAt: number;
  readonly closedAt?: number;
  readonly clinician: string;
  readonly assistant: string;
  readonly protocol: string;
  readonly readings: readonly ReadingRow[];
  readonly sets: readonly SetRow[];
  readonly vertical: VerticalDimension;
  /** The same of earlier visits, each within its own marks; heights of different visits are never compared. */
  readonly earlier: readonly { readonly visit: string; readonly vertical: VerticalDimension }[];
  readonly clocks: readonly ClockRow[];
  readonly answers: readonly AnswerRow[];
  readonly skips: readonly { readonly at: number; readonly title: string; readonly reason: string }[];
  readonly notes: readonly {
    readonly at: number;
    readonly step: string;
    readonly text: string;
    readonly source: string;
    readonly struck: boolean;
  }[];
  readonly cautions: readonly string[];
  readonly flags: readonly Flag[];
  readonly computed: readonly ComputedRow[];
  /** The order to the lab, one line each, in working order. */
  readonly labWork: readonly LabLine[];
  /** What must be answered or overruled before hand-over. */
  readonly open: readonly string[];
  readonly signed: readonly {
    readonly role: string;
    readonly initials: string;
    readonly overruled?: string;
    readonly at: number;
  }[];
  /** What goes to and fro between clinic and laboratory. */
  readonly bench?: BenchSummary;
}
