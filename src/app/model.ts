/**
 * What a screen is given and what it may say back. Screens draw this and nothing else; they hold no rule and no device.
 */
import type { Interpretation } from '../interpret/types.ts';
import type { PhaseId } from '../domain/case/facts.ts';
import type {
  Answer,
  Chapter,
  DrawingId,
  Language,
  Material,
  Disinfectant,
  Person,
  Step,
  Unit,
} from '../domain/protocol/types.ts';
import type { OrderInHand } from '../domain/summary/lab-standing.ts';
import type { ClockRow, Flag, Summary } from '../domain/summary/types.ts';
import type { OnDeviceState, Place, Settings } from '../stores/stores.ts';
import type { BackupAsked } from './backup.types.ts';
import type { FilesRequest, FilesView } from './files.types.ts';
import type { LockRequest, LockView } from './locking.types.ts';
import type { OwnRequest, OwnView } from './own.types.ts';

export type EarState =
  | { readonly state: 'off' }
  | { readonly state: 'asking' }
  | { readonly state: 'starting' }
  /** `waits`: a number waits for its yes. */
  | { readonly state: 'listening'; readonly waits?: true }
  /** On, but closed on purpose just now: no number is asked for, or the key is not held. */
  | { readonly state: 'shut'; readonly why: string }
  | { readonly state: 'heard'; readonly text: string }
  | { readonly state: 'notUnderstood'; readonly text: string; readonly hint: string }
  /** Shut while the app itself speaks. */
  | { readonly state: 'speaking'; readonly text: string }
  /** `consent`: it waits for the person to agree that speech may be sent off this device. */
  | { readonly state: 'blocked'; readonly why: string; readonly consent?: boolean };

export type SaveState =
  | { readonly state: 'kept'; readonly what: string }
  | { readonly state: 'keeping' }
  /** Storage refused or full: working in memory; `why` is a plain sentence. */
  | { readonly state: 'memory'; readonly why: string; readonly unsaved: number };

/** How safely the record lies on this device. */
export interface Safety {
  /** Whether the browser promised not to clear the record by itself when room gets short. */
  readonly persisted: 'yes' | 'no' | 'unknown';
  /** Why entries are kept in one place only, in a sentence; absent when there are two. */
  readonly oneCopy?: string;
}

export type SoundState = 'armed' | 'needsTouch' | 'unavailable';

/** A number shown large, waiting for its yes. */
export interface PendingView {
  readonly readingLabel: string;
  readonly unit: Unit;
  /** "62.5" */
  readonly digits: string;
  readonly text: string;
  readonly mustSayYes: boolean;
  readonly why: readonly string[];
  readonly correctsDigits?: string;
}

export interface TrayChoice {
  readonly arch: 'upper' | 'lower';
  readonly ridgeMm: number;
  /** Clearance wanted on each side. */
  readonly wantedMm: number;
  readonly trays: readonly {
    readonly label: string;
    readonly innerMm: number;
    /** Clearance left on each side; negative = narrower than the ridge. */
    readonly sideMm: number;
  }[];
}

/** A computed value that matters at this step, with where it comes from. */
export interface FigureLine {
  readonly label: string;
  readonly text: string;
  readonly source: string;
  readonly status: string;
}

export interface StepView {
  readonly step: Step;
  readonly title: string;
  readonly lines: readonly string[];
  readonly caution?: string;
  readonly drawing?: DrawingId;
  readonly chapter: Chapter;
  readonly chapterCount: number;
  /** Place within the chapter, 1-based. */
  readonly place: number;
  readonly placeCount: number;
  readonly mode:
    | 'inform'
    | 'check'
    | 'decision'
    | 'reading'
    | 'confirm'
    | 'choose'
    | 'clock'
    | 'signoff'
    | 'reason'
    | 'held'
    | 'closed';
  readonly answers: readonly Answer[];
  /** Answer already on record for this step (when gone back to). */
  readonly answered?: string;
  readonly reading?: {
    readonly id: string;
    readonly label: string;
    readonly unit: Unit;
    readonly kept: readonly { readonly seq: number; readonly digits: string; readonly suspect: boolean }[];
    readonly least: number;
    readonly plausible: readonly [number, number];
  };
  readonly pending?: PendingView;
  /** Mode `choose`: which of these did you say? Digits, e.g. ["50", "15"]. */
  readonly candidates?: readonly { readonly value: number; readonly digits: string }[];
  readonly reasons?: readonly { readonly id: string; readonly label: string }[];
  readonly reasonFor?: string;
  readonly materials?: readonly (Material | Disinfectant)[];
  /** Material or disinfectant chosen and not yet started (`material:<id>` chooses, `start` starts). */
  readonly chosenMaterial?: string;
  readonly clock?: ClockRow;
  /** An earlier reading is being corrected: the next number replaces this one. */
  readonly correcting?: { readonly label: string; readonly digits: string; readonly unit: Unit };
  /** For the tray drawings: the best trays for the measured ridge, best first. */
  readonly trays?: TrayChoice;
  /** What has been computed and matters here. */
  readonly figures?: readonly FigureLine[];
  readonly canNext: boolean;
  /** Why "next" would be refused, as a sentence. */
  readonly nextBlockedBy?: string;
  readonly next?: string;
  /** Words that can be said now, for the strip at the bottom. */
  readonly words: readonly string[];
}

/** The case a clock belongs to, where that is not the open one. */
export interface CaseName {
  readonly id: string;
  readonly code: string;
}

/** A clock that runs, of the open case or of another. */
export interface RunningClock extends ClockRow {
  readonly case?: CaseName;
}

/** A phase that is over and not yet acknowledged. */
export interface RingingView {
  readonly clock: string;
  readonly label: string;
  readonly phase: PhaseId;
  readonly lateMs: number;
  readonly case?: CaseName;
}

export interface CaseListRow {
  readonly id: string;
  readonly code: string;
  readonly demo: boolean;
  readonly openedAt: number;
  readonly at: string;
  readonly visit: number;
  readonly closed: boolean;
  readonly lastAt?: number;
  readonly lastSeq?: number;
  /** A clock of the case runs; absent on rows from before this was told. */
  readonly ticks?: boolean;
  /** Between visits: what is waited for, in words, and the day it is due, "2026-12-03". */
  readonly stands?: { readonly text: string; readonly due?: string };
}

export interface PreferencesView extends Settings {
  /** How recognising the chosen language on this device stands. */
  readonly onDevice: OnDeviceState;
  /** The language of the visit that is open, which it keeps. */
  readonly visitLanguage?: Language;
}

export interface AppModel {
  readonly place: Place;
  readonly now: number;
  readonly cases: readonly CaseListRow[];
  /** The list of cases is still being read, or mended, and may be empty for that reason alone. */
  readonly reading?: true;
  readonly step?: StepView;
  readonly summary?: Summary;
  /** People of the practice, offered wherever a visit is begun or signed; anybody else may be typed. */
  readonly people?: readonly Person[];
  /** An order that is right and whose work has not come yet: a day may be agreed for it. */
  readonly labDue?: OrderInHand;
  /** The five visits: what is done, what runs, what may be opened next. */
  readonly caseLine?: readonly CaseVisit[];
  /** Of the open case first, then of all other cases whose clocks run. */
  readonly clocks: readonly RunningClock[];
  /** Clock phases that are over and not yet acknowledged, of all cases. */
  readonly ringing: readonly RingingView[];
  /** The case that is open. */
  readonly caseId?: string;
  /** Flags not yet answered, most serious first. */
  readonly flags: readonly Flag[];
  readonly cautions: readonly string[];
  readonly ear: EarState;
  readonly save: SaveState;
  readonly sound: SoundState;
  /** Whether the app reads values back aloud; absent = this device cannot speak. */
  readonly speech?: boolean;
  /** Consent that speech may leave this device to be recognised; revocable at any time. */
  readonly speechMayLeave: boolean;
  /** Reasons offered when a flag is kept as it is. */
  readonly reasons?: readonly { readonly id: string; readonly label: string }[];
  /** What can be set, and what the browser says of it. */
  readonly preferences?: PreferencesView;
  /** Where the open case is being written; `elsewhere` = this window only follows. Absent while no case is open. */
  readonly writer?: 'here' | 'elsewhere';
  readonly safety?: Safety;
  /** A newer version of the app can be taken now; present only at the list of cases, with nothing running or unsaved. */
  readonly update?: 'ready';
  /** The practice's own settings and visits; only on the screens that show them. */
  readonly own?: OwnView;
  /** Files that come in and go out. */
  readonly files?: FilesView;
  /** The passphrase and the lock; absent where there can be none. */
  readonly lock?: LockView;
  readonly keypadOpen: boolean;
  /** Last thing the app did, in words: "Undone: rest height 62.5 mm". */
  readonly said: string;
  /** Last refusal or failure, in words; empty when none. */
  readonly trouble: string;
  readonly lastHeard?: Interpretation;
}

/** One visit on the case line. */
export interface CaseVisit {
  readonly visit: number;
  /** "visit 5, time 2" */
  readonly name: string;
  readonly title: string;
  readonly state: 'done' | 'now' | 'next' | 'later';
  readonly openedAt?: number;
  readonly closedAt?: number;
  /** Initials of clinician and assistant, "KV, BR"; absent while the visit is to come. */
  readonly people?: string;
  /** Another clinician than at the visit before. */
  readonly otherClinician?: true;
  /** What the laboratory has of its order or sent back; for the review, when it is due. */
  readonly lab?: { readonly text: string; readonly late: boolean };
}

/** Everything a screen may ask for. `press` takes the intent ids of `Utterance.text` for source touch. */
export interface AppActions {
  press(intent: string): void;
  key(key: string): void;
  type(text: string): void;
  openCase(id: string): void;
  newCase(input: { code: string; clinician: string; assistant: string; demo: boolean }): void;
  /** Opens the next visit of the open case, once the one before is closed. */
  openVisit(input: { visit: number; clinician: string; assistant: string }): void;
  go(place: AppModel['place']): void;
  setEar(on: boolean): void;
  setSpeech(on: boolean): void;
  /** Agree, or take the agreement back, that speech may be sent off this device to be recognised. */
  setSpeechMayLeave(allowed: boolean): void;
  /** Push-to-talk: held, or let go. */
  talk(held: boolean): void;
  setPreferences(change: Partial<Settings>): void;
  /** Fetches the chosen language for recognition on this device. Call inside a touch. */
  fetchOnDevice(): void;
  /** Reads a sample aloud. */
  trySpeech(): void;
  armSound(): void;
  silence(): void;
  openKeypad(open: boolean): void;
  correct(seq: number): void;
  note(text: string): void;
  answerFlag(flag: string, answer: 'keep' | 'measureAgain', reason: string): void;
  saveFile(): void;
  /** The lab sheet as a PDF. */
  savePaper(wish: 'pdfA4' | 'pdfLetter'): void;
  /** Go on with the open case in this window, whoever has been writing it. */
  takeOver(): void;
  /** Take the newer version: reloads the page. */
  takeUpdate(): void;
  /** The practice's own settings and visits: change, save, take in or give out. */
  askOwn(request: OwnRequest): void;
  /** A file of the open case to go out, one from elsewhere to come in, or a backup of everything. */
  askFiles(request: FilesRequest | BackupAsked): void;
  /** Passphrase, recovery code, lock. */
  askLock(request: LockRequest): void;
  print(): void;
}
