/** Short ways to say something to the interpreter in tests. */
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

/** What an utterance comes to with nothing expected: a value in mm, 'ask', or 'none'. */
export function plainly(text: string, language: Language = 'en'): number | 'ask' | 'none' {
  const heard = hear(text, freeExpectation(language));
  if (heard.kind === 'reading') return heard.value / 100;
  return heard.kind === 'ask' ? 'ask' : 'none';
}
