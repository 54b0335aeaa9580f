/** Commands: which there are, which are legal now, and their words. */
import type { Language } from '../domain/protocol/types.ts';
import { lexiconOf } from './languages.ts';
import { answers } from './said.ts';
import type { CommandId, Expectation, Interpretation } from './types.ts';

/** What may be said for each command, as written; the first is the one shown. */
export function commandWords(language: Language): Readonly<Record<CommandId, readonly string[]>> {
  const list = Object.entries(lexiconOf(language).tables.commands).map(([id, words]) => [id, words.split('|')]);
  return Object.fromEntries(list) as Record<CommandId, readonly string[]>;
}

export const isCommand = (text: string): text is CommandId => Object.hasOwn(lexiconOf('en').tables.commands, text);

/** The command if it is legal now; yes and no answer a question whose answers are called so. */
export function commandNow(command: CommandId, text: string, expectation: Expectation): Interpretation {
  if (answers(command, expectation)) return { kind: 'answer', answer: command, text };
  return expectation.commands.includes(command)
    ? { kind: 'command', command, text }
    : { kind: 'unclear', reason: 'notNow', text };
}
