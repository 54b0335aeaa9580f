import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { addressWord, interpretAddressed } from '../../src/interpret/address.ts';
import { freeExpectation } from '../../src/interpret/free.ts';
import { commandWords, interpret, loadLanguage } from '../../src/interpret/index.ts';
import type { Alternative, Expectation, Interpretation } from '../../src/interpret/types.ts';
import { asking, REST } from './heard.ts';

const reading = asking({ mode: 'reading' });
const check = asking({
  mode: 'check',
  answers: [
    { id: 'yes', words: ['yes'] },
    { id: 'given', words: ['given'] },
  ],
});
delete (check as { current?: unknown }).current;
const confirm = asking({ mode: 'confirm', pending: 5400 });

function say(said: string | readonly Alternative[], expectation: Expectation, word = 'rim'): Interpretation {
  const alternatives = typeof said === 'string' ? [{ transcript: said }] : said;
  return interpretAddressed(
    { source: 'voice', text: alternatives[0]?.transcript ?? '', alternatives, at: 0 },
    expectation,
    word,
  );
}

describe('with an address word', () => {
  it.each(['rim next', 'Rim, next', 'RIM. Next please', 'rim: next', ' rim next'])('%j is a command', (text) => {
    expect(say(text, check)).toMatchObject({ kind: 'command', command: 'next', text });
  });

  it.each([
    'next',
    'next rim',
    'brimming next',
    'rimnext',
    'the rim next',
    'undo',
    'yes',
    'given',
    'note sore on left',
  ])('%j was not meant for the machine', (text) => {
    expect(say(text, check)).toEqual({ kind: 'none', text });
  });

  it('answers and remarks need it too', () => {
    expect(say('rim given', check)).toMatchObject({ kind: 'answer', answer: 'given' });
    expect(say('rim note sore on the left', check)).toMatchObject({ kind: 'note', note: 'sore on the left' });
  });

  it('the word alone means nothing', () => {
    expect(say('rim', check)).toEqual({ kind: 'none', text: 'rim' });
    expect(say('rim.', reading)).toEqual({ kind: 'none', text: 'rim.' });
  });

  it('a number at a reading step needs none, and may have it', () => {
    const plain = say('fifty-four point five', reading);
    expect(plain).toMatchObject({ kind: 'reading', value: 5450 });
    expect(say('rim fifty-four point five', reading)).toEqual({ ...plain, text: 'rim fifty-four point five' });
    expect(say('rest height sixty-two', reading)).toMatchObject({ kind: 'reading', value: 6200, reading: REST.id });
  });

  it('a number away from a reading step needs it', () => {
    expect(say('rest height sixty-two', check)).toMatchObject({ kind: 'none' });
    expect(say('rim rest height sixty-two', check)).toMatchObject({ kind: 'reading', value: 6200 });
  });

  it('a command at a reading step needs it', () => {
    expect(say('next', reading)).toEqual({ kind: 'none', text: 'next' });
    expect(say('rim back', reading)).toMatchObject({ kind: 'command', command: 'back' });
  });

  it('a number that cannot be read is said to be so; talk is not', () => {
    expect(say('fifty-two, sixty-three', reading).kind).not.toBe('none');
    expect(say('are you comfortable', reading)).toMatchObject({ kind: 'none' });
    expect(say('seated', asking({ mode: 'reading', commands: ['next'] }))).toEqual({ kind: 'none', text: 'seated' });
  });

  it('while a number waits for its yes nothing needs it', () => {
    expect(say('yes', confirm)).toMatchObject({ kind: 'command', command: 'yes' });
    expect(say('no, fifty-five', confirm)).toMatchObject({ kind: 'reading', value: 5500, correction: true });
    expect(say('rim yes', confirm)).toMatchObject({ kind: 'command', command: 'yes' });
    expect(say('fifty', asking({ mode: 'choose', candidates: [5000, 1500] }))).toMatchObject({ kind: 'reading' });
  });

  it('a misheard address counts when another transcript has it and the rest is the same', () => {
    const misheard = [{ transcript: 'ring next' }, { transcript: 'rim next' }];
    expect(say(misheard, check)).toMatchObject({ kind: 'command', command: 'next' });
    expect(say([{ transcript: 'ring next' }, { transcript: 'rim text' }], check)).toMatchObject({ kind: 'none' });
    expect(say([{ transcript: 'ring' }, { transcript: 'rim' }], check)).toMatchObject({ kind: 'none' });
  });

  it('the other transcripts still object', () => {
    const doubted = [
      { transcript: 'rim next', confidence: 0.6 },
      { transcript: 'rim back', confidence: 0.5 },
    ];
    expect(say(doubted, check)).toMatchObject({ kind: 'unclear' });
    const teen = [
      { transcript: 'rim fifty', confidence: 0.6 },
      { transcript: 'rim fifteen', confidence: 0.55 },
    ];
    const plain = teen.map(({ transcript, confidence }) => ({ transcript: transcript.slice(4), confidence }));
    expect(say(teen, reading)).toEqual({ ...say(plain, reading), text: 'rim fifty' });
  });

  it('a minus after the address stays a minus', () => {
    expect(say('rim -5', reading)).toMatchObject({ kind: 'unclear', reason: 'negative' });
    expect(say('rim .5', reading)).not.toMatchObject({ value: 500 });
  });

  it('may be two words, and bear accents', () => {
    expect(say('hey rim next', check, 'hey rim')).toMatchObject({ kind: 'command' });
    expect(say('hey next', check, 'hey rim')).toMatchObject({ kind: 'none' });
    expect(say('Müller, next', check, 'muller')).toMatchObject({ kind: 'command' });
  });

  it('touch, keys and keypad need none', () => {
    const by = (source: 'touch' | 'key' | 'keypad', text: string) =>
      interpretAddressed({ source, text, alternatives: [], at: 0 }, reading, 'rim');
    expect(by('touch', 'next')).toMatchObject({ kind: 'command' });
    expect(by('key', 'PageDown')).toMatchObject({ kind: 'command' });
    expect(by('keypad', '54')).toMatchObject({ kind: 'reading', value: 5400 });
  });
});

describe('whatever is said', () => {
  const words = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.array(fc.constantFrom('rim', 'next', 'yes', 'sixty', 'two', 'point', '62,5', 'note', '-', '.'), {
      maxLength: 7,
    }),
  );
  const text = words.map((said) => (typeof said === 'string' ? said : said.join(' ')));

  it('without a word it is exactly the interpreter', () => {
    fc.assert(
      fc.property(text, (said) => {
        const utterance = { source: 'voice', text: said, alternatives: [{ transcript: said }], at: 0 } as const;
        expect(interpretAddressed(utterance, reading, '')).toEqual(interpret(utterance, reading));
      }),
    );
  });

  it('an address never makes a number of anything that would be none without it', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(reading, check, confirm), (said, expectation) => {
        const heard = say(`rim ${said}`, expectation);
        const bare = say(said, expectation, '');
        if (heard.kind === 'reading') expect(bare).toMatchObject({ kind: 'reading', value: heard.value });
        else if (heard.kind === 'command') expect(bare).toMatchObject({ kind: 'command', command: heard.command });
        else expect(heard.text).toBe(`rim ${said}`);
      }),
      { numRuns: 500 },
    );
  });

  it('away from a reading nothing happens without the word', () => {
    fc.assert(
      fc.property(text, (said) => {
        fc.pre(!/^\P{L}*rim/iu.test(said));
        expect(say(said, check)).toEqual({ kind: 'none', text: said });
      }),
    );
  });
});

describe('choosing the word', () => {
  const commands = Object.values(commandWords('en')).flat();
  it.each([
    ['rim', 'rim'],
    [' Rim ', 'rim'],
    ['Hey Rim', 'hey rim'],
    ['Müller', 'muller'],
    ['', ''],
    ['  ', ''],
  ])('%j is listened for as %j', (text, word) => {
    expect(addressWord(text, commands)).toEqual({ ok: true, word });
  });

  it.each(['ab', 'r2d2', '62', 'one two three', '!!!', 'next', 'Scratch that', 'x'.repeat(25)])(
    '%j will not do',
    (text) => {
      expect(addressWord(text, commands)).toMatchObject({ ok: false, why: expect.stringMatching(/\.$/) });
    },
  );
});

describe('in another language', () => {
  beforeAll(() => loadLanguage('de'));

  it('the same rules hold', () => {
    const german = { ...freeExpectation('de'), mode: 'check' } as const;
    const word = commandWords('de').next[0] ?? '';
    expect(say(`rim ${word}`, german)).toMatchObject({ kind: 'command', command: 'next' });
    expect(say(word, german)).toEqual({ kind: 'none', text: word });
  });
});
