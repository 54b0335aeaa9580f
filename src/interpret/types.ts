/** Contract between the ways in (voice, keypad, key, pedal, touch) and the visit. */
import type { Certainty, Source } from '../domain/case/facts.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import type { Language, Unit } from '../domain/protocol/types.ts';

export interface Alternative {
  readonly transcript: string;
  /** 0…1 as the recogniser gave it; 0 or absent says nothing. */
  readonly confidence?: number;
}

/**
 * One thing said, typed or pressed. Voice: `text` is the top transcript, `alternatives` all of them (top included).
 * Keypad: `text` is what was typed. Key / pedal: `text` is the KeyboardEvent.key ("PageDown"). Touch: `text` is an intent
 * id ("next", "answer:yes", "choose:5000", "material:alginate-regular", "reason:not-possible" …, see `Interpretation`).
 */
export interface Utterance {
  readonly source: Source;
  readonly text: string;
  readonly alternatives: readonly Alternative[];
  /** Wall clock, ms. */
  readonly at: number;
}

export type CommandId =
  | 'next'
  | 'back'
  | 'yes'
  | 'no'
  | 'undo'
  | 'hold'
  | 'carryOn'
  | 'skip'
  | 'start'
  | 'seated'
  | 'out'
  | 'howLong'
  | 'sayAgain'
  | 'help';

export interface ExpectedReading {
  readonly id: string;
  readonly names: readonly string[];
  readonly unit: Unit;
  readonly plausible: readonly [Hundredths, Hundredths];
  readonly expected: readonly [Hundredths, Hundredths];
  /** Kept readings of the same set so far, in order. */
  readonly previous: readonly Hundredths[];
}

/** What may be said or pressed now, as plain data. */
export interface Expectation {
  readonly language: Language;
  readonly step: string;
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
    | 'none';
  /** The reading asked for now, if any. */
  readonly current?: ExpectedReading;
  /** All readings that may be called out of turn, the current one included. */
  readonly readings: readonly ExpectedReading[];
  /** Answers, reasons or materials on offer now: id and words. */
  readonly answers: readonly { readonly id: string; readonly words: readonly string[] }[];
  /** The answer that Enter, Space and the second pedal give: the good one, while the question is open. */
  readonly mainAnswer?: string;
  /** "Next" would be taken now. */
  readonly passable?: boolean;
  readonly commands: readonly CommandId[];
  /** The value shown and waiting to be kept. */
  readonly pending?: Hundredths;
  /** The two (or more) values asked about in mode `choose`. */
  readonly candidates?: readonly Hundredths[];
}

export type UnclearReason =
  | 'noise'
  | 'twoNumbers'
  | 'lostPoint'
  | 'malformed'
  | 'outOfRange'
  | 'negative'
  | 'unit'
  | 'notNow'
  | 'notANumber'
  | 'tooFine';

export type Interpretation =
  /** A number. `reading` is set when a name was said or typed before it. */
  | {
      readonly kind: 'reading';
      readonly value: Hundredths;
      readonly reading?: string;
      readonly certainty: 'sure' | 'check';
      /** It was said as a correction ("no, fifty-four"). */
      readonly correction: boolean;
      readonly text: string;
      readonly confidence?: number;
      /** Short reason words for the screen when certainty is `check`, e.g. "outside 40–110 mm". */
      readonly why: readonly string[];
    }
  /** Two or more numbers remain possible: ask which. May be empty when it must simply be said again. */
  | {
      readonly kind: 'ask';
      readonly candidates: readonly Hundredths[];
      readonly reading?: string;
      readonly reason: UnclearReason;
      readonly text: string;
    }
  | { readonly kind: 'command'; readonly command: CommandId; readonly text: string }
  | { readonly kind: 'answer'; readonly answer: string; readonly text: string }
  | { readonly kind: 'note'; readonly note: string; readonly text: string }
  /** Heard, but neither a number nor a word that means something now. */
  | { readonly kind: 'unclear'; readonly reason: UnclearReason; readonly text: string }
  /** Talk that was not meant for the machine: nothing happens, the ear stays open. */
  | { readonly kind: 'none'; readonly text: string };

export type { Certainty };
