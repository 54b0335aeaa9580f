/** An expectation without a step: any length up to 199.99 mm, every command. For trying utterances out from a terminal. */
import type { Language } from '../domain/protocol/types.ts';
import { commandWords } from './commands.ts';
import type { CommandId, ExpectedReading, Expectation } from './types.ts';

const ANY: ExpectedReading = {
  id: 'any',
  names: [],
  unit: 'mm',
  plausible: [0, 19_999],
  expected: [0, 19_999],
  previous: [],
};

/** `named`: readings that may be called by their names, of any length too. */
export const freeExpectation = (
  language: Language,
  named: readonly Pick<ExpectedReading, 'id' | 'names'>[] = [],
): Expectation => ({
  language,
  step: 'free',
  mode: 'reading',
  current: ANY,
  readings: named.map(({ id, names }) => ({ ...ANY, id, names })),
  answers: [],
  commands: Object.keys(commandWords('en')) as CommandId[],
});
