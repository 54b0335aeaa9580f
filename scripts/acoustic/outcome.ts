/** What became of one utterance, as the people in the room would see it. */
import { interpret } from '../../src/interpret/index.ts';
import type { Expectation, Interpretation } from '../../src/interpret/types.ts';
import type { Scene } from './scenes.ts';

export type Outcome =
  /** The number, command or answer that was said, at once. */
  | 'right'
  /** A number shown that needs a yes, or a question which of two. */
  | 'asked'
  /** Nothing happened, or "say it again". */
  | 'nothing'
  /** Something that was not said was taken without a question. */
  | 'wrong';

export function isRight(scene: Scene, got: Interpretation): boolean {
  const { truth, expectation } = scene;
  switch (truth.kind) {
    case 'reading':
      return (
        got.kind === 'reading' &&
        got.value === truth.value &&
        (got.reading ?? expectation.current?.id) === truth.reading
      );
    case 'command':
      return got.kind === 'command' && got.command === truth.command;
    case 'answer':
      return got.kind === 'answer' && got.answer === truth.answer;
    case 'nothing':
      return false;
  }
}

/** `sure`: whether a number counts as taken without a question; by default what the interpreter says. */
export function outcomeOf(scene: Scene, got: Interpretation, sure = isSure(got)): Outcome {
  switch (got.kind) {
    case 'none':
    case 'unclear':
      return 'nothing';
    case 'ask':
      return 'asked';
    case 'reading':
      return sure ? (isRight(scene, got) ? 'right' : 'wrong') : 'asked';
    case 'command':
    case 'answer':
    case 'note':
      return isRight(scene, got) ? 'right' : 'wrong';
  }
}

export const isSure = (got: Interpretation): boolean => got.kind === 'reading' && got.certainty === 'sure';

/** What one sentence by itself comes to, as a word to compare by. */
export function meaningOf(text: string, expectation: Expectation): string {
  const got = interpret({ source: 'voice', text, alternatives: [{ transcript: text }], at: 0 }, expectation);
  switch (got.kind) {
    case 'reading':
      return `${got.reading ?? expectation.current?.id} ${got.value}`;
    case 'command':
      return got.command;
    case 'answer':
      return `answer ${got.answer}`;
    case 'ask':
      return `ask ${got.candidates.join(' ')}`;
    case 'note':
    case 'unclear':
    case 'none':
      return got.kind;
  }
}
