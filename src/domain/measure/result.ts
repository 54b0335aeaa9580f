/** What every computation answers: the value with its uncertainty, inputs and source, or the reason why there is none. */
import type { SourceId } from './sources.ts';

/** Why a computation refuses. One name for one kind of trouble; the sentence beside it names the input. */
export type RefusalReason =
  /** Nothing was given. */
  | 'empty'
  /** NaN, infinite, or no number at all. */
  | 'notANumber'
  /** Below zero where only zero or more has a meaning. */
  | 'negative'
  /** Not a whole number of hundredths. */
  | 'offGrid'
  /** A number, but outside what the rule or the anatomy allows. */
  | 'outOfRange'
  /** More readings or points are needed. */
  | 'tooFew'
  /** A name, code or letter that the table does not hold. */
  | 'unknown'
  /** Two inputs contradict each other. */
  | 'inconsistent'
  /** The geometry has no answer for these values. */
  | 'noSolution'
  /** An input that this rule cannot do without is missing. */
  | 'missing';

export interface Refused {
  readonly ok: false;
  readonly reason: RefusalReason;
  /** One plain sentence for a person. */
  readonly text: string;
}

export interface Known<T> {
  readonly ok: true;
  readonly value: T;
  /** Half width in the unit of the main value; absent where none can be given honestly. */
  readonly uncertainty?: number;
  /** What it was computed from, in words, assumptions included. */
  readonly inputs: readonly string[];
  readonly source: SourceId;
}

export type Measured<T> = Known<T> | Refused;

/** A value with what it rests on. `uncertainty` is left out when undefined. */
export function known<T>(parts: {
  value: T;
  inputs: readonly string[];
  source: SourceId;
  uncertainty?: number | undefined;
}): Known<T> {
  const { value, inputs, source, uncertainty } = parts;
  return { ok: true, value, inputs, source, ...(uncertainty === undefined ? {} : { uncertainty }) };
}

/** A named refusal with its sentence. */
export function refuse(reason: RefusalReason, text: string): Refused {
  return { ok: false, reason, text };
}
