/** Short ways to say something to the interpreter in tests. */
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { freeExpectation } from '../../src/interpret/free.ts';
import { interpret } from '../../src/interpret/index.ts';
import type { Alternative, ExpectedReading, Expectation, Interpretation } from '../../src/interpret/types.ts';
import type { Language } from '../../src/domain/protocol/types.ts';

/** Upper ridge width, a range as protocols have them. */
export const WIDTH: ExpectedReading = {
  id: 'ridge-width',
  names: ['ridge width', 'upper width'],
  unit: 'mm',
  plausible: [3000, 8500],
  expected: [4500, 7000],
  previous: [],
};
export const REST: ExpectedReading = {
  id: 'rest-height',
  names: ['rest height', 'rest'],
  unit: 'mm',
  plausible: [4000, 11000],
  expected: [5500, 8500],
  previous: [],
};

export const asking = (change: Partial<Expectation> = {}): Expectation => ({
  ...freeExpectation('en'),
  current: WIDTH,
  readings: [WIDTH, REST],
  ...change,
});

export const after = (...previous: number[]): Expectation => asking({ current: { ...WIDTH, previous } });

export function hear(
  alternatives: string | readonly Alternative[],
  expectation: Expectation = asking(),
): Interpretation {
  const list = typeof alternatives === 'string' ? [{ transcript: alternatives }] : alternatives;
  return interpret({ source: 'voice', text: list[0]?.transcript ?? '', alternatives: list, at: 0 }, expectation);
}

export const by = (
  source: 'keypad' | 'key' | 'touch',
  text: string,
  expectation: Expectation = asking(),
): Interpretation => interpret({ source, text, alternatives: [], at: 0 }, expectation);

/** What something heard comes to: a value in mm, 'ask', or 'none'. */
const comesTo = (heard: Interpretation): number | 'ask' | 'none' =>
  heard.kind === 'reading' ? heard.value / 100 : heard.kind === 'ask' ? 'ask' : 'none';

/** What an utterance comes to with nothing expected. */
export const plainly = (text: string, language: Language = 'en') => comesTo(hear(text, freeExpectation(language)));

/** The same where every reading may be called by its name, as in a visit. */
export const byName = (text: string, language: Language) =>
  comesTo(
    hear(
      text,
      freeExpectation(
        language,
        readingDefs.map(({ id, names }) => ({ id, names: names[language] ?? [] })),
      ),
    ),
  );
