/** Words likely to be said now, for a recogniser on the device that can be told. */
import { commandWords } from '../interpret/index.ts';
import type { Expectation } from '../interpret/types.ts';

/** Most likely first: answers and commands of the moment, then names of readings. Commands bear the address word. */
export function phrasesFor(expectation: Expectation, address: string): readonly string[] {
  const { mode, answers, commands, current, readings, language } = expectation;
  const words = commandWords(language);
  const free = mode === 'confirm' || mode === 'choose' || address === '';
  const bare = [
    ...answers.flatMap((answer) => answer.words),
    ...commands.flatMap((command) => words[command].slice(0, 2)),
  ];
  const names = [...(current?.names ?? []), ...readings.flatMap((reading) => reading.names.slice(0, 1))];
  return [...(free ? bare : bare.map((word) => `${address} ${word}`)), ...names];
}
