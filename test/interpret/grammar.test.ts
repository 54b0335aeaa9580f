/** The grammar and the interpreter cannot drift: every sentence of the one is understood by the other, with the same value. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Language } from '../../src/domain/protocol/types.ts';
import { grammarOf } from '../../src/interpret/grammar.ts';
import { commandWords, loadLanguage, speakNumber } from '../../src/interpret/index.ts';
import type { Expectation } from '../../src/interpret/types.ts';
import { asking, hear, REST, WIDTH } from './heard.ts';
import { parseJsgf, sentenceFrom } from './jsgf.ts';
import type { Sentence } from './jsgf.ts';

const LANGUAGES = ['en', 'de', 'es', 'fr'] as const;
beforeAll(async () => {
  await Promise.all(LANGUAGES.map((l) => loadLanguage(l)));
});

const plain = (text: string): string => text.toLowerCase().replaceAll('-', ' ');

/** What a sentence of the grammar is worth in hundredths, from the rules it was made of. */
function valueOf({ parts }: Sentence, language: Language): number | undefined {
  const last = (rule: string): string | undefined => parts.findLast((p) => p.rule === rule)?.text;
  const whole = last('whole');
  if (whole === undefined) return undefined;
  const digits = parts.filter((p) => p.rule === 'digit' || p.rule === 'twentieth').map((p) => p.text);
  const number = (text: string, below: number): number =>
    Array.from({ length: below }, (_, n) => n).findIndex((n) => plain(speakNumber(n * 100, language)) === text);
  const decimals = digits.map((d) => number(d, 10)).reduce((sum, d, k) => sum + d * (k === 0 ? 10 : 1), 0);
  return number(whole, 200) * 100 + (last('half') === undefined ? decimals : 50);
}

/** What the interpreter makes of a sentence, and what the grammar meant by it. */
function heardAndMeant(sentence: Sentence, expectation: Expectation): readonly [unknown, unknown] {
  const text = sentence.words.join(' ');
  const heard = hear(text, expectation);
  const value = valueOf(sentence, expectation.language);
  const made = heard.kind === 'reading' ? heard.value : heard.kind;
  return [made, value ?? sentence.parts.findLast((p) => p.rule !== 'said')?.rule];
}

/** A range so wide that no number is asked back for being odd. */
const ANYTHING = { plausible: [0, 19_999], expected: [0, 19_999] } as const;

describe.each(LANGUAGES)('grammar, %s', (language) => {
  const readings = [WIDTH, REST].map((r) => ({ ...r, ...ANYTHING }));
  const reading = asking({ language, current: { ...WIDTH, ...ANYTHING }, readings });
  const question = asking({
    language,
    mode: 'check',
    current: { ...WIDTH, ...ANYTHING },
    readings,
    answers: [
      { id: 'yes', words: [] },
      { id: 'no', words: [] },
      { id: 'flat', words: ['quite flat', 'flat (2)'] },
    ],
  });
  it.each([
    ['a reading', reading],
    ['a question', question],
  ])('sentences made from it for %s are understood', (_, expectation) => {
    const grammar = parseJsgf(grammarOf(expectation));
    const sentence = fc.array(fc.nat(1000), { minLength: 40, maxLength: 40 }).map((choices) => {
      let k = 0;
      return sentenceFrom(grammar, (n) => (choices[k++ % choices.length] ?? 0) % n);
    });
    // "No one" is nobody: the one English sentence that means something else to everyone.
    const differs = fc.sample(sentence, 2000).filter((s) => {
      const [made, meant] = heardAndMeant(s, expectation);
      return made !== meant && s.words.join(' ') !== 'no one';
    });
    expect(differs.map((s) => s.words.join(' '))).toEqual([]);
  });
  it('holds every legal command and no other', () => {
    const words = commandWords(language);
    const text = grammarOf(asking({ language, commands: ['next', 'undo'] }));
    const command = /<command> = (.+);/.exec(text)?.[1]?.split(' | ') ?? [];
    const said = (phrase: string): string => plain(phrase);
    expect(command).toEqual([...words.next, ...words.undo].map(said));
  });
  it('says no numbers where none can be filed', () => {
    const text = grammarOf(asking({ language, mode: 'held', readings: [] }));
    expect(text).not.toContain('<number>');
  });
  it('is in the form of the note', () => {
    const { header, start, rules } = parseJsgf(grammarOf(reading));
    expect(header).toBe('#JSGF V1.0 UTF-8;');
    expect(start).toBe('said');
    expect([...rules.keys()]).toContain('whole');
  });
});
