import { beforeAll, describe, expect, it } from 'vitest';
import { freeExpectation } from '../../src/interpret/free.ts';
import { commandWords, loadLanguage } from '../../src/interpret/index.ts';
import type { CommandId } from '../../src/interpret/types.ts';
import { asking, hear, REST, WIDTH } from './heard.ts';

const LANGUAGES = ['en', 'de', 'es', 'fr'] as const;
beforeAll(async () => {
  await Promise.all(LANGUAGES.map((l) => loadLanguage(l)));
});

describe.each(LANGUAGES)('commands, %s', (language) => {
  const free = freeExpectation(language);
  it('every word on the strip acts, alone, in capitals, and with a full stop', () => {
    for (const [id, words] of Object.entries(commandWords(language)) as [CommandId, readonly string[]][]) {
      expect(words.length).toBeGreaterThan(0);
      for (const word of words) {
        for (const text of [word, word.toUpperCase(), `${word}.`]) {
          expect(hear(text, free), text).toMatchObject({ kind: 'command', command: id });
        }
      }
    }
  });
  it('has one meaning a word', () => {
    const all = Object.values(commandWords(language)).flat();
    expect(new Set(all).size).toBe(all.length);
  });
  it('says so when a word is not legal now', () => {
    const nothing = { ...free, commands: [] };
    for (const word of Object.values(commandWords(language)).flat()) {
      expect(hear(word, nothing), word).toMatchObject({ kind: 'unclear', reason: 'notNow' });
    }
  });
});

describe('talk that holds a command word', () => {
  it.each([
    'the next patient is here',
    'come back tomorrow',
    'yes she said',
    'no pain there',
    'start the music',
    'hold this for me',
    'is it out yet',
    'help me with this',
    'how long have you had them',
    'we go back a long way',
    'next week',
    'skip lunch',
    'I have to go on holiday',
    'are you seated comfortably',
  ])('%s', (text) => {
    expect(hear(text).kind).toBe('none');
  });
  it.each([
    ['de', 'kommen Sie morgen weiter'],
    ['de', 'ja hat sie gesagt'],
    ['de', 'zurück zum Thema'],
    ['es', 'el siguiente paciente está aquí'],
    ['es', 'no le duele'],
    ['fr', 'le suivant est arrivé'],
    ['fr', 'non elle a dit'],
    ['fr', 'passez me voir demain'],
  ] as const)('%s: %s', (language, text) => {
    expect(hear(text, freeExpectation(language)).kind).toBe('none');
  });
});

describe('politeness and hesitation around a command', () => {
  it.each([
    ['next please', 'next'],
    ['okay next', 'next'],
    ['um, next', 'next'],
    ['yes, thank you', 'yes'],
    ['yes yes', 'yes'],
    ['no no no', 'no'],
    ['okay go back please', 'back'],
  ])('%s', (text, command) => {
    expect(hear(text)).toMatchObject({ kind: 'command', command });
  });
});

describe('answers', () => {
  const check = asking({
    mode: 'check',
    answers: [
      { id: 'high', words: ['high', 'too high'] },
      { id: 'flat', words: ['flat'] },
      { id: 'two', words: ['two', '2'] },
      { id: 'yes', words: [] },
      { id: 'no', words: [] },
    ],
  });
  it.each([
    ['high', 'high'],
    ['Too high.', 'high'],
    ['flat please', 'flat'],
    ['two', 'two'],
    ['2', 'two'],
    ['yes', 'yes'],
    ['yeah', 'yes'],
    ['no', 'no'],
  ])('%s', (text, answer) => {
    expect(hear(text, check)).toMatchObject({ kind: 'answer', answer });
  });
  it.each(['not high', 'high or flat', 'is it high', 'she is high up there'])('%s answers nothing', (text) => {
    expect(hear(text, check).kind).not.toBe('answer');
  });
  it('a word that two answers share answers nothing', () => {
    const shared = asking({
      mode: 'check',
      answers: [
        { id: 'a', words: ['fine'] },
        { id: 'b', words: ['fine'] },
      ],
    });
    expect(hear('fine', shared).kind).not.toBe('answer');
  });
});

describe("a reading's name", () => {
  it('files a number out of turn', () => {
    expect(hear('rest height sixty-eight point five')).toMatchObject({
      kind: 'reading',
      reading: REST.id,
      value: 6850,
    });
    expect(hear('the rest height is 68')).toMatchObject({ kind: 'reading', reading: REST.id, value: 6800 });
  });
  it('of the reading asked for is no news', () => {
    const heard = hear('upper width fifty-three');
    expect(heard).toMatchObject({ kind: 'reading', value: 5300 });
    expect(heard).not.toHaveProperty('reading');
  });
  it('uses the range of the reading named', () => {
    expect(hear('rest height one hundred')).toMatchObject({ reading: REST.id, certainty: 'check', why: ['unusual'] });
  });
  it('two names in one breath are asked about', () => {
    expect(hear('rest height or upper width fifty', asking({ current: { ...WIDTH, id: 'x', names: [] } })).kind).toBe(
      'ask',
    );
  });
  it('without a reading asked for or named a number is not filed', () => {
    const check = { ...freeExpectation('en'), mode: 'check' as const };
    const { current: _, ...without } = check;
    expect(hear('fifty-three', without)).toMatchObject({ kind: 'unclear', reason: 'notNow' });
  });
});

describe('corrections and repetitions', () => {
  const confirm = asking({ mode: 'confirm', pending: 5300 });
  it('"no, fifty-four" corrects what is shown', () => {
    expect(hear('no, fifty-four', confirm)).toMatchObject({ kind: 'reading', value: 5400, correction: true });
    expect(hear('fifty-four', confirm)).toMatchObject({ kind: 'reading', value: 5400, correction: false });
  });
  it.each([
    ['en', 'the last one was fifty-four'],
    ['en', 'scratch that, fifty-four'],
    ['de', 'die letzte war vierundfünfzig'],
    ['es', 'la última era cincuenta y cuatro'],
    ['fr', 'la dernière était cinquante-quatre'],
  ] as const)('%s: %s', (language, text) => {
    expect(hear(text, asking({ language }))).toMatchObject({ kind: 'reading', value: 5400, correction: true });
  });
  it('"yes, fifty-three" keeps it', () => {
    expect(hear('yes, fifty-three', confirm)).toMatchObject({ kind: 'command', command: 'yes' });
    expect(hear('yes, fifty-four', confirm)).toMatchObject({ kind: 'reading', value: 5400 });
  });
});

describe('remarks', () => {
  it.each([
    ['note Ulcer on the LEFT pad', 'Ulcer on the LEFT pad'],
    ['Note: frenum high, 3 mm short', 'frenum high, 3 mm short'],
    ['  note   that she gags at sixty  ', 'that she gags at sixty'],
  ])('%s is kept word for word', (text, note) => {
    expect(hear(text)).toMatchObject({ kind: 'note', note });
  });
  it('a remark that is only a number is asked about', () => {
    expect(hear('note sixty two point five')).toMatchObject({ kind: 'ask', candidates: [6250] });
  });
  it('an empty remark is no remark', () => {
    expect(hear('note').kind).toBe('unclear');
  });
});

describe('units', () => {
  it.each([
    ['five point three centimetres', 5300, 'said in centimetres'],
    ['two inches', 5080, 'said in inches'],
  ])('%s is converted, and shown as such', (text, value, why) => {
    expect(hear(text)).toMatchObject({ kind: 'reading', value, certainty: 'check', why: [why] });
  });
  const weeks = asking({ current: { ...WIDTH, id: 'w', unit: 'weeks', plausible: [0, 5200], expected: [0, 1000] } });
  it('weeks are weeks where weeks are asked for, and nothing else', () => {
    expect(hear('three weeks', weeks)).toMatchObject({ kind: 'reading', value: 300 });
    expect(hear('three', weeks)).toMatchObject({ kind: 'reading', value: 300 });
    expect(hear('three millimetres', weeks)).toMatchObject({ kind: 'unclear', reason: 'unit' });
    expect(hear('fifty-three weeks')).toMatchObject({ kind: 'unclear', reason: 'unit' });
  });
});
