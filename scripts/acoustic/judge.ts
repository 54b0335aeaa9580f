/** Hands what was heard to the interpreter, exactly as a browser's results are handed over, and says what became of it. */
import { interpret } from '../../src/interpret/index.ts';
import type { Interpretation } from '../../src/interpret/types.ts';
import { cluesOf } from './clues.ts';
import type { Heard } from './listen.ts';
import type { Row } from './logistic.ts';
import { alternativesOf } from './opinion.ts';
import type { Calibration } from './opinion.ts';
import { isRight, outcomeOf } from './outcome.ts';
import type { Outcome } from './outcome.ts';

export interface Judged extends Heard {
  readonly got: Interpretation;
  readonly outcome: Outcome;
  /** The recogniser's first sentence by itself meant what was said. */
  readonly topRight: boolean;
}

const SILENCE: Interpretation = { kind: 'none', text: '' };

function understood(heard: Heard, alternatives: ReturnType<typeof alternativesOf>): Interpretation {
  const text = alternatives[0]?.transcript;
  if (text === undefined) return SILENCE;
  return interpret({ source: 'voice', text, alternatives, at: 0 }, heard.scene.expectation);
}

/** The recogniser's first sentence, taken by itself, is what was said. */
export function topIsRight(heard: Heard): boolean {
  const text = heard.hearing.sentences[0]?.text;
  return text !== undefined && isRight(heard.scene, understood(heard, [{ transcript: text }]));
}

export function judge(heard: Heard, calibration: Calibration): Judged {
  const got = understood(heard, alternativesOf(heard, calibration));
  return { ...heard, got, outcome: outcomeOf(heard.scene, got), topRight: topIsRight(heard) };
}

/** What the chance of being right is learnt from. */
export function lessons(heard: readonly Heard[]): readonly Row[] {
  return heard.flatMap((h) => {
    const x = cluesOf(h.hearing, h.scene.expectation);
    return x === undefined ? [] : [{ x, y: topIsRight(h) ? 1 : 0 }];
  });
}
