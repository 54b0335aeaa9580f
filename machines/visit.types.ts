/** What the visit machine is told, what it says, and what it remembers. Order and permission only. */
import type { FactBody, Source } from '../src/domain/case/facts.ts';
import type { Hundredths } from '../src/domain/measure/length.ts';
import type { Disinfectant, Material, Unit, VisitProtocol } from '../src/domain/protocol/types.ts';

export type ClockStage = 'idle' | 'mixing' | 'seated' | 'out';

/** A number that is shown and waits to be kept. */
export interface Pending {
  readonly reading: string;
  readonly value: Hundredths;
  readonly unit: Unit;
  readonly text: string;
  readonly source: Source;
  readonly confidence?: number;
  readonly certainty: 'sure' | 'check';
  readonly why: readonly string[];
  readonly corrects?: number;
}

export interface Correcting {
  readonly seq: number;
  readonly reading: string;
  readonly value: Hundredths;
  readonly unit: Unit;
}

/** Something that cannot go on record without a reason. */
export type Asking =
  /** Signed although something is still open. */
  | { readonly for: 'sign'; readonly initials: string }
  | { readonly for: 'skip' }
  | { readonly for: 'answer'; readonly answer: string; readonly source: Source };

export interface VisitInput {
  readonly protocol: VisitProtocol;
  /** Readings that are taken several times before the visit moves on by itself. */
  readonly repeated: readonly string[];
  readonly step: string;
  readonly answers: Readonly<Record<string, string>>;
  /** Step id → number of readings kept there. */
  readonly kept: Readonly<Record<string, number>>;
  readonly clocks: Readonly<Record<string, ClockStage>>;
  readonly held: boolean;
  readonly closed: boolean;
}

export interface VisitContext extends VisitInput {
  readonly pending: Pending | undefined;
  readonly candidates:
    { readonly reading: string; readonly values: readonly Hundredths[]; readonly text: string } | undefined;
  readonly asking: Asking | undefined;
  readonly correcting: Correcting | undefined;
}

export type HeardEvent = { readonly type: 'HEARD' } & Pending & { readonly correction: boolean };
export type AnswerEvent = { readonly type: 'ANSWER'; readonly answer: string; readonly source: Source };

export type VisitEvent =
  | { readonly type: 'NEXT' }
  | { readonly type: 'BACK' }
  | { readonly type: 'YES' }
  | { readonly type: 'PAUSE_OVER' }
  | { readonly type: 'NO' }
  | { readonly type: 'HOLD' }
  | { readonly type: 'CARRY_ON' }
  | { readonly type: 'SKIP' }
  | { readonly type: 'CANCEL' }
  | HeardEvent
  | {
      readonly type: 'ASKED';
      readonly reading: string;
      readonly candidates: readonly Hundredths[];
      readonly text: string;
    }
  | AnswerEvent
  | { readonly type: 'REASON'; readonly reason: string }
  | { readonly type: 'NOTE'; readonly text: string; readonly source: Source }
  | ({ readonly type: 'CORRECT' } & Correcting)
  | { readonly type: 'GOTO'; readonly step: string }
  | {
      readonly type: 'START';
      readonly material?: Material;
      readonly agent?: Disinfectant;
      /** Calendar day where the practice is. */
      readonly day?: string;
    }
  | { readonly type: 'SEATED' }
  | { readonly type: 'OUT' }
  /** A timed clock elsewhere in the visit is ended from the clock strip. */
  | { readonly type: 'CLOCK_DONE'; readonly clock: string }
  /** An impression is poured or taken over by the laboratory. */
  | { readonly type: 'TAKEN'; readonly clock: string }
  | {
      readonly type: 'ALARM_SEEN';
      readonly clock: string;
      readonly phase: 'mix' | 'working' | 'inMouth' | 'pourFrom' | 'pourWithin' | 'disinfect';
    }
  | {
      readonly type: 'FLAG';
      readonly flag: string;
      readonly answer: 'keep' | 'measureAgain';
      readonly reason: string;
      readonly step?: string;
    }
  /** `open`: how many items are neither answered nor overruled. */
  | { readonly type: 'SIGN'; readonly initials: string; readonly open: number };

/** Facts of one human act, in order; the app stamps and stores them together. */
export type VisitEmitted = { readonly type: 'facts'; readonly facts: readonly FactBody[] };

/** What an event does: facts to write, and what changes in the machine's memory. */
export interface Plan {
  readonly facts: readonly FactBody[];
  readonly patch: Partial<VisitContext>;
}
