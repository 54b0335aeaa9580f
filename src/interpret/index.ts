/**
 * Words, keys and touches to meaning, given what is expected now. Pure and synchronous; a language other than English is
 * fetched once by `loadLanguage` beforehand.
 */
import { interpretKey, interpretKeypad, interpretTouch } from './hands.ts';
import type { Language } from '../domain/protocol/types.ts';
import { loadTables } from './languages.ts';
import { loadSpeech } from './speak.ts';
import type { Expectation, Interpretation, Utterance } from './types.ts';
import { interpretVoice } from './voice.ts';

export { isLoaded } from './languages.ts';
export { commandWords } from './commands.ts';
export { speakNumber } from './speak.ts';

/** Fetches what a language needs to be understood and read back. Resolves at once when it is there. */
export async function loadLanguage(language: Language): Promise<void> {
  await Promise.all([loadTables(language), loadSpeech(language)]);
}

export function interpret(utterance: Utterance, expectation: Expectation): Interpretation {
  switch (utterance.source) {
    case 'voice':
      return interpretVoice(utterance, expectation);
    case 'keypad':
      return interpretKeypad(utterance.text, expectation);
    case 'key':
      return interpretKey(utterance.text, expectation);
    case 'touch':
      return interpretTouch(utterance.text, expectation);
    default:
      return { kind: 'unclear', reason: 'notNow', text: utterance.text };
  }
}
