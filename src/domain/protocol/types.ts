/**
 * Visits and steps as plain, versioned data. No functions in here: a practice can export, edit and import a protocol.
 */
import type { Hundredths } from '../measure/length.ts';

export type Unit = 'mm' | 'weeks' | '°C' | 'points' | '°' | 'g' | 'ml';
export type Language = 'en' | 'de' | 'es' | 'fr';

/** A quantity that is measured and called out. Ranges are hundredths of `unit`. */
export interface ReadingDef {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  /** Names it answers to when called out of turn, per language, lower case. */
  readonly names: Partial<Record<Language, readonly string[]>>;
  /** Outside: ask again before keeping. */
  readonly plausible: readonly [Hundredths, Hundredths];
  /** Outside: keep, but flag. */
  readonly expected: readonly [Hundredths, Hundredths];
  /** Belongs to no step: may be called by its name at any time. */
  readonly anytime?: boolean;
  /** Where the ranges come from. */
  readonly source: string;
  /** Repeated readings of one quantity, compared only within one set of skin marks. */
  readonly repeat?: { readonly least: number; readonly withinSet: boolean };
}

export type DrawingId =
  | 'caliper-upper'
  | 'caliper-lower'
  | 'caliper-face'
  | 'tray-upper'
  | 'tray-lower'
  | 'readings-rest'
  | 'height-stack'
  | 'hinge'
  | 'sulcus'
  | 'tracing'
  | 'tooth-sizes'
  | 'sore-map'
  | 'sore-upper'
  | 'sore-lower';

/** An earlier question answered so. */
export interface Condition {
  readonly step: string;
  readonly answer: string;
}

interface StepCommon {
  readonly id: string;
  /** Number of the visit's chapter this step belongs to (1…21 in visit 1). */
  readonly chapter: number;
  /** Verb first, readable from two metres. */
  readonly title: string;
  /** Short lines, one action each. */
  readonly lines: readonly string[];
  readonly caution?: string;
  readonly drawing?: DrawingId;
  /** May be passed without an answer and without a reason. */
  readonly optional?: boolean;
  /** Shown only when an earlier answer matches, e.g. { step: 'old-dentures', answer: 'yes' }. */
  readonly onlyIf?: Condition;
  /** Passed by when any of these earlier answers matches, e.g. upper steps when only a lower denture is made. */
  readonly notIf?: readonly Condition[];
}

export type Tone = 'good' | 'neutral' | 'warn';

export interface Answer {
  readonly id: string;
  readonly label: string;
  /** Words it answers to, per language, lower case. 'yes' and 'no' words are added by the interpreter for ids yes/no. */
  readonly words: Partial<Record<Language, readonly string[]>>;
  readonly tone: Tone;
  /** Kept on screen for the rest of the case once chosen. */
  readonly caution?: string;
  /** Where the visit goes on; absent = next step. */
  readonly goto?: string;
  /** Starts a new attempt at the chapter part beginning at `goto`; the earlier attempt stays on record. */
  readonly retake?: boolean;
  /** A reason must be given (from the list or spoken) before the answer is kept. */
  readonly needsReason?: boolean;
}

export interface InformStep extends StepCommon {
  readonly kind: 'inform';
}
export interface CheckStep extends StepCommon {
  readonly kind: 'check';
  readonly answers: readonly Answer[];
}
export interface DecisionStep extends StepCommon {
  readonly kind: 'decision';
  readonly answers: readonly Answer[];
}
export interface ReadingStep extends StepCommon {
  readonly kind: 'reading';
  readonly reading: string;
}
/**
 * A material on the clock. `impression`: mix → working → seated → set → out. `timed`: one stretch, start → done
 * (disinfection). `clock` names it across attempts.
 */
export interface ClockStep extends StepCommon {
  readonly kind: 'clock';
  readonly clock: string;
  /** What stands on the clock strip: "upper impression". */
  readonly clockLabel?: string;
  readonly flow: 'impression' | 'timed';
  /** Material classes offered; the practice's list is filtered by them. For `timed`: disinfectants. */
  readonly materials: readonly string[];
  /** For `timed`: the impression clock it belongs to. */
  readonly of?: string;
  /** False: nothing is poured from it (border moulding, bite records), so no pouring times follow. */
  readonly poured?: boolean;
}
export interface SignoffStep extends StepCommon {
  readonly kind: 'signoff';
  readonly role: 'clinician' | 'assistant';
  /** The app shows the read-back list and refuses while open items are neither answered nor overruled. */
  readonly closesVisit?: boolean;
}
export type Step = InformStep | CheckStep | DecisionStep | ReadingStep | ClockStep | SignoffStep;
export type StepKind = Step['kind'];

export interface Chapter {
  readonly number: number;
  readonly title: string;
}

export interface VisitProtocol {
  readonly id: string;
  readonly version: number;
  readonly visit: 1 | 2 | 3 | 4 | 5;
  readonly title: string;
  readonly chapters: readonly Chapter[];
  readonly steps: readonly Step[];
}

/** What a material's leaflet says. Seconds unless named otherwise; all impression times count from the start of mixing. */
export interface Material {
  readonly id: string;
  readonly name: string;
  readonly class: string;
  readonly mixS: number;
  /** End of working time, from the start of mixing. */
  readonly workingS: number;
  /** Earliest removal, from the start of mixing. */
  readonly removeS: number;
  /** Earliest pour, minutes after removal (0 = at once). */
  readonly pourFromMin: number;
  /** Latest pour, minutes after removal. */
  readonly pourWithinMin: number;
  /** Powder and water of one portion as the leaflet has it, and the share of water left out for a stiffer mix. */
  readonly mix?: { readonly powderG: number; readonly waterMl: number; readonly lessWater?: number };
  /** Water temperature the leaflet's times are given for, °C. */
  readonly waterC?: number;
  /** Lot on the package in use. */
  readonly lot?: string;
  /** Last day on which that lot may be used, "2027-03-31". */
  readonly expires?: string;
  /** True until the practice has entered its own leaflet's figures. */
  readonly generic: boolean;
  readonly source: string;
}

export interface Disinfectant {
  readonly id: string;
  readonly name: string;
  readonly minutes: number;
  readonly generic: boolean;
  readonly source: string;
}

export interface Tray {
  readonly id: string;
  readonly label: string;
  readonly arch: 'upper' | 'lower';
  /** Inner width, hundredths of a millimetre. */
  readonly innerWidth: Hundredths;
}

/** The practice's conventions; every one may be changed, all travel with the case that was opened under them. */
export interface Practice {
  readonly restSpaceTarget: Hundredths;
  readonly recordAt: 'rest' | 'restLessSpace';
  readonly trayClearance: Hundredths;
  readonly borderShort: Hundredths;
  readonly materials: readonly Material[];
  readonly disinfectants: readonly Disinfectant[];
  readonly trays: readonly Tray[];
  /** Words offered when a reason is asked for. */
  readonly reasons: readonly {
    readonly id: string;
    readonly label: string;
    readonly words: Partial<Record<Language, readonly string[]>>;
  }[];
  /** People of the practice, by initials only. */
  readonly people?: readonly Person[];
  /** The practice's own wording of cautions: "STEP" or "STEP:ANSWER" → words. */
  readonly cautions?: Readonly<Record<string, string>>;
  /** Days the laboratory wants for its work; where absent, those of common practice. */
  readonly labDays?: LabDays;
  /** The practice's own ranges by reading id, hundredths of the reading's unit. */
  readonly ranges?: Readonly<Record<string, Pick<ReadingDef, 'plausible' | 'expected'>>>;
}

/** Calendar days from the order to the work in the clinic. */
export interface LabDays {
  readonly customTrays: number;
  readonly setUp: number;
  readonly finish: number;
}

export interface Person {
  readonly initials: string;
  readonly role: 'clinician' | 'assistant';
}
