/** What a running visit is given, and what may be asked of it. */
import type { Fact, FactBody } from '../domain/case/facts.ts';
import type { CaseView } from '../domain/case/fold.ts';
import type { Language, Practice, ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import type { Expectation, Interpretation, Utterance } from '../interpret/types.ts';
import type { Pending, VisitContext, VisitEvent } from '../../machines/visit.types.ts';

export interface SessionDeps {
  readonly caseId: string;
  readonly protocol: VisitProtocol;
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
  readonly language: Language;
  readonly appVersion: string;
  now(): number;
  /** Calendar day of a moment where the practice is, "2026-03-02"; absent = in universal time. */
  day?(at: number): string;
  /** Facts of one act, stamped and in order; the caller makes them durable. */
  append(facts: readonly Fact[]): void;
  /** A number is shown and waits for its yes. */
  waits?(pending: Pending): void;
}

/** What came of one utterance or press. Empty strings mean there is nothing to say. */
export interface Outcome {
  /** What the app did, in words. */
  readonly said: string;
  /** Why it did not do what was asked, and what can be done. */
  readonly trouble: string;
  /** What is to be read aloud. */
  readonly speak: string;
  /** The language that is in; absent = the language of the visit. */
  readonly speakIn?: Language;
  readonly facts: readonly Fact[];
  readonly heard?: Interpretation;
}

export interface Session {
  /** `address`: the word that commands must begin with, if any. */
  hear(utterance: Utterance, address?: string): Outcome;
  send(event: VisitEvent): Outcome;
  undo(): Outcome;
  /** Written beside the visit, so that where it stands does not change: an alarm that sounded, what the laboratory says. */
  record(body: FactBody): Outcome;
  view(): CaseView;
  context(): VisitContext;
  expectation(): Expectation;
  /** Material or disinfectant chosen at the current clock step. */
  chosen(): string | undefined;
}
