/**
 * The record: facts that were true when written. Append-only; a correction or an undo is a new fact that points at an
 * old one. `FactBody` is what a machine may say; `Fact` is what the app stamps and storage keeps.
 */
import type { Hundredths } from '../measure/length.ts';
import type { Disinfectant, Language, Material, Practice, Unit } from '../protocol/types.ts';

export type Source = 'voice' | 'keypad' | 'key' | 'touch' | 'app';
export type Certainty = 'sure' | 'check' | 'ask' | 'unclear';
export type Bases = 'none' | 'upper' | 'lower' | 'both';
export type KeptBy = 'yes' | 'movedOn' | 'pause';

/** How a value came to be: what was heard or typed, and what kept it. */
export interface Heard {
  readonly source: Source;
  readonly text: string;
  readonly confidence?: number;
  readonly certainty: Certainty;
  readonly keptBy: KeptBy;
}

export type FactBody =
  | { readonly kind: 'caseOpened'; readonly code: string; readonly demo: boolean; readonly practice: Practice }
  | {
      readonly kind: 'visitOpened';
      readonly visit: number;
      readonly protocol: string;
      readonly version: number;
      readonly clinician: string;
      readonly assistant: string;
      readonly language: Language;
      /** The practice's materials of that day, lots included, where they are not those the case was opened with. */
      readonly materials?: readonly Material[];
      readonly disinfectants?: readonly Disinfectant[];
    }
  | { readonly kind: 'moved'; readonly from: string; readonly to: string; readonly why: MoveReason }
  | {
      readonly kind: 'reading';
      readonly step: string;
      readonly reading: string;
      readonly value: Hundredths;
      readonly unit: Unit;
      readonly heard: Heard;
      readonly outOfTurn: boolean;
      /** seq of the earlier reading this one replaces; that one stays on record, struck through. */
      readonly corrects?: number;
    }
  | {
      readonly kind: 'proposalDropped';
      readonly step: string;
      readonly reading: string;
      readonly value: Hundredths;
      readonly text: string;
    }
  | {
      readonly kind: 'answered';
      readonly step: string;
      readonly answer: string;
      readonly reason?: string;
      readonly source: Source;
    }
  /** Taken again: what was written at `steps` before this stays on record, struck through. */
  | {
      readonly kind: 'attemptStarted';
      readonly step: string;
      readonly goto: string;
      readonly steps: readonly string[];
      readonly reason: string;
    }
  | { readonly kind: 'skipped'; readonly step: string; readonly reason: string }
  | { readonly kind: 'note'; readonly step: string; readonly text: string; readonly source: Source }
  | {
      readonly kind: 'clockStarted';
      readonly step: string;
      readonly clock: string;
      readonly flow: 'impression';
      readonly material: Material;
      /** Calendar day where the practice is, "2026-03-02": by it the lot's last day is judged. */
      readonly day?: string;
    }
  | {
      readonly kind: 'clockStarted';
      readonly step: string;
      readonly clock: string;
      readonly flow: 'timed';
      readonly agent: Disinfectant;
      readonly of?: string;
    }
  | { readonly kind: 'clockSeated'; readonly clock: string }
  | { readonly kind: 'clockOut'; readonly clock: string }
  /** The impression has been poured, or the laboratory has taken it over: nothing waits any more. */
  | {
      readonly kind: 'takenOver';
      readonly clock: string;
      /** Initials, where the laboratory took it over. */
      readonly by?: string;
      /** seq of the opening of the visit the impression belongs to; absent = the visit it is written in. */
      readonly order?: number;
    }
  /** An alarm sounded: when it was due and when it really rang. */
  | {
      readonly kind: 'rang';
      readonly clock: string;
      readonly phase: PhaseId;
      readonly dueAt: number;
      readonly late: boolean;
    }
  | { readonly kind: 'alarmSeen'; readonly clock: string; readonly phase: PhaseId }
  | {
      readonly kind: 'flagAnswered';
      readonly flag: string;
      readonly answer: 'keep' | 'measureAgain';
      readonly reason: string;
    }
  | { readonly kind: 'held' }
  | { readonly kind: 'carriedOn' }
  | { readonly kind: 'undone'; readonly act: number; readonly what: string }
  | {
      readonly kind: 'signed';
      readonly step: string;
      readonly role: 'clinician' | 'assistant';
      readonly initials: string;
      /** Reason why it was signed although something was still open. */
      readonly overruled?: string;
    }
  | { readonly kind: 'visitClosed'; readonly visit: number }
  /** The day agreed with the laboratory for the work of an `order`, "2026-12-03"; the last one given counts. */
  | { readonly kind: 'labDue'; readonly order: number; readonly day: string }
  /** The laboratory has done one line of an order; `order` is the seq of the opening of the visit that gave it. */
  | {
      readonly kind: 'benchDone';
      readonly order: number;
      readonly line: string;
      /** The line in words, as it stood when it was ticked. */
      readonly what: string;
      readonly by: string;
    }
  /** The laboratory asks back: about one line, or with `line` empty about the work as a whole. */
  | {
      readonly kind: 'benchQuestion';
      readonly order: number;
      readonly line: string;
      /** The line in words, as it stood when it was asked about. */
      readonly what: string;
      readonly text: string;
      readonly by: string;
    }
  /** `question` is the seq of what was asked. */
  | { readonly kind: 'benchAnswer'; readonly question: number; readonly text: string; readonly by: string }
  /** The work goes back to the clinic. */
  | { readonly kind: 'workReturned'; readonly order: number; readonly text: string; readonly by: string };

export type MoveReason = 'next' | 'back' | 'skip' | 'branch' | 'retake' | 'goto';
export type PhaseId = 'mix' | 'working' | 'inMouth' | 'pourFrom' | 'pourWithin' | 'disinfect';
export type FactKind = FactBody['kind'];

export interface FactStamp {
  /** Format version of this fact. */
  readonly v: 1;
  readonly caseId: string;
  /** 1, 2, 3 … within the case, no gaps. */
  readonly seq: number;
  /** Wall clock, milliseconds since 1970 UTC. */
  readonly at: number;
  /** seq of the first fact written by the same human act; undo takes back a whole act. */
  readonly act: number;
  /** Protocol id and version in force, '' before a visit is opened. */
  readonly protocol: string;
  readonly app: string;
}

export type Fact = FactStamp & { readonly body: FactBody };
