/** Any text at all: no exception, no number outside the range without a question, the same answer twice. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { freeExpectation } from '../../src/interpret/free.ts';
import { interpret, loadLanguage } from '../../src/interpret/index.ts';
import type { Expectation, Interpretation, Utterance } from '../../src/interpret/types.ts';
import { asking, WIDTH } from './heard.ts';

beforeAll(async () => {
  await Promise.all((['de', 'es', 'fr'] as const).map((l) => loadLanguage(l)));
});

const PIECES = (
  'sixty two point five and a half quarter three oh to for hundred one thousand no wait not or between minus mm cm inches ' +
  'minutes past clock fifteen fifty 62 5 62.5 ,5 .5 1/2 ½ 62.5.3 999 0 00 99999999999999999999 - − . , ; : ? ! ’ " next yes note the is ' +
  'zweiundsechzig komma einhalb ein und sesenta y dos con soixante quatre vingt dix et demi \u200b \ud800 e\u0301 İ ß ﬁ ６２'
).split(' ');
const mixed = fc.array(fc.constantFrom(...PIECES), { maxLength: 12 }).map((words) => words.join(' '));
const unicode = fc.string({ unit: 'binary', maxLength: 60 });
const text = fc.oneof(mixed, unicode, fc.string({ unit: 'grapheme', maxLength: 40 }));
const language = fc.constantFrom('en', 'de', 'es', 'fr' as const);
const source = fc.constantFrom('voice', 'voice', 'voice', 'keypad', 'key', 'touch' as const);

function check(heard: Interpretation, expectation: Expectation): void {
  const values = heard.kind === 'reading' ? [heard.value] : heard.kind === 'ask' ? heard.candidates : [];
  for (const value of values) {
    if (!Number.isInteger(value) || value < 0 || value >= 100_000) throw new Error(`no value: ${value}`);
  }
  if (heard.kind !== 'reading' || heard.text.startsWith('choose:')) return;
  const [low, high] = (expectation.current ?? WIDTH).plausible;
  if ((heard.value < low || heard.value > high) && heard.certainty !== 'check')
    throw new Error('out of range, not asked');
}

describe('ten thousand utterances of anything', () => {
  it('give an interpretation that keeps the rules', () => {
    fc.assert(
      fc.property(text, text, language, source, fc.boolean(), (top, other, lang, from, free) => {
        const expectation = free ? freeExpectation(lang) : asking({ language: lang });
        const alternatives = [{ transcript: top }, { transcript: other, confidence: 0.5 }];
        const utterance: Utterance = { source: from, text: top, alternatives, at: 0 };
        const heard = interpret(utterance, expectation);
        check(heard, expectation);
        expect(interpret(utterance, expectation)).toEqual(heard);
      }),
      { numRuns: 10_000 },
    );
  });
  it('and nothing said is nothing heard', () => {
    for (const nothing of ['', ' ', '\n', '\u0000', '…', '🦷', '\ud83d', 'ـــ', '???']) {
      const heard = interpret(
        { source: 'voice', text: nothing, alternatives: [{ transcript: nothing }], at: 0 },
        asking(),
      );
      expect(heard.kind, JSON.stringify(nothing)).toBe('none');
    }
  });
});
