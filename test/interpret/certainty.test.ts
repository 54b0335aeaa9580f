import { describe, expect, it } from 'vitest';
import type { Alternative } from '../../src/interpret/types.ts';
import { after, asking, hear } from './heard.ts';

const heardAs = (...list: (string | [string, number])[]): readonly Alternative[] =>
  list.map((a) => (typeof a === 'string' ? { transcript: a } : { transcript: a[0], confidence: a[1] }));

describe('sure must be earned', () => {
  it('by a plain number in the expected range', () => {
    expect(hear('fifty-three point five')).toMatchObject({ certainty: 'sure', why: [] });
    expect(hear(heardAs(['fifty-three point five', 0.9]))).toMatchObject({ certainty: 'sure', confidence: 0.9 });
  });
  it('by agreeing with the set so far', () => {
    expect(hear('fifty-three point five', after(5300, 5400))).toMatchObject({ certainty: 'sure' });
  });
  it.each([
    ['outside the plausible range', 'one hundred and twenty', asking(), 'outside 30–85 mm'],
    ['outside the expected range', 'eighty-two', asking(), 'unusual'],
    ['off the set', 'forty-eight', after(5300, 5400), '5 mm from the set so far (53)'],
    ['finer than a caliper', 'fifty-three point two one', asking(), 'finer than a caliper is read'],
    ['a guessed word', 'fifty for', asking(), 'not every word understood'],
  ] as const)('%s is only a check', (_, text, expectation, why) => {
    const heard = hear(text, expectation);
    expect(heard).toMatchObject({ kind: 'reading', certainty: 'check' });
    expect(heard.kind === 'reading' && heard.why).toContain(why);
  });
  it('faintly heard is only a check', () => {
    expect(hear(heardAs(['fifty-three', 0.4]))).toMatchObject({ certainty: 'check', why: ['heard faintly'] });
    expect(hear(heardAs(['fifty-three', 0]))).toMatchObject({ certainty: 'sure' });
  });
});

describe('alternatives are evidence', () => {
  it('the same number in other words is agreement', () => {
    expect(hear(heardAs('62.5', 'sixty two point five', 'sixty to point five'))).toMatchObject({ certainty: 'sure' });
  });
  it('another plausible number is a question with both', () => {
    expect(hear(heardAs('fifty', 'sixty'))).toMatchObject({ kind: 'ask', candidates: [5000, 6000] });
    expect(hear(heardAs(['fifty', 0.8], ['sixty', 0.7]))).toMatchObject({ kind: 'ask', candidates: [5000, 6000] });
  });
  it('a plausible alternative to an implausible number comes first', () => {
    expect(hear(heardAs('one sixty one point five', 'sixty one point five'))).toMatchObject({
      kind: 'ask',
      candidates: [6150, 16150],
    });
  });
  it('an implausible or incredible one is none', () => {
    expect(hear(heardAs('fifty', 'fifteen'))).toMatchObject({ kind: 'reading', value: 5000 });
    expect(hear(heardAs(['fifty', 0.9], ['sixty', 0.05]))).toMatchObject({ kind: 'reading', value: 5000 });
  });
  it('the set so far decides, but only as a check', () => {
    expect(hear(heardAs('fifty', 'sixty'), after(5000, 5050))).toMatchObject({ value: 5000, certainty: 'check' });
  });
  it('the set so far and a confident recogniser together speak a rival down', () => {
    const far = (confidence: number) => heardAs(['fifty-three', confidence], ['forty-three', 0.25]);
    expect(hear(far(0.75), after(5300, 5350))).toMatchObject({ value: 5300, certainty: 'sure' });
    expect(hear(far(0.5), after(5300, 5350))).toMatchObject({ value: 5300, certainty: 'check' });
    expect(hear(far(0.75))).toMatchObject({ kind: 'ask', candidates: [5300, 4300] });
    expect(hear(heardAs(['fifty-three', 0.7], ['fifty-five', 0.25]), after(5300, 5350))).toMatchObject({ kind: 'ask' });
  });
  it('only an alternative is a number: asked, never taken', () => {
    expect(hear(heardAs('fitty free', 'fifty three'))).toMatchObject({ kind: 'ask', candidates: [5300] });
  });
  it('a lost point with its number beside it is asked with that number first', () => {
    expect(hear(heardAs('62 5', '62.5'))).toMatchObject({ kind: 'ask', reason: 'lostPoint', candidates: [6250] });
  });
  it('a command with a number beside it does not act', () => {
    expect(hear(heardAs('next', 'sixty')).kind).toBe('unclear');
    expect(hear(heardAs('next', 'necks'))).toMatchObject({ kind: 'command', command: 'next' });
  });
  it('a command or an answer that was probably not said does not act', () => {
    expect(hear(heardAs(['next', 0.45]))).toMatchObject({ kind: 'unclear', reason: 'noise' });
    expect(hear(heardAs(['next', 0.55]))).toMatchObject({ kind: 'command', command: 'next' });
    expect(hear(heardAs(['next', 0]))).toMatchObject({ kind: 'command', command: 'next' });
    const question = asking({ mode: 'check', answers: [{ id: 'flat', words: ['flat'] }] });
    expect(hear(heardAs(['flat', 0.3]), question)).toMatchObject({ kind: 'unclear', reason: 'noise' });
    expect(hear(heardAs(['flat', 0.7]), question)).toMatchObject({ kind: 'answer', answer: 'flat' });
  });
  it('what keeps a number must be heard as surely as a number', () => {
    const shown = asking({ mode: 'confirm', pending: 5400 });
    for (const word of ['yes', 'next'] as const) {
      expect(hear(heardAs([word, 0.6]), shown)).toMatchObject({ kind: 'unclear', reason: 'noise' });
      expect(hear(heardAs([word, 0.75]), shown)).toMatchObject({ kind: 'command', command: word });
    }
    expect(hear(heardAs(['no', 0.6]), shown)).toMatchObject({ kind: 'command', command: 'no' });
    expect(hear(heardAs(['yes fifty-four', 0.6]), shown)).toMatchObject({ kind: 'reading', certainty: 'check' });
  });
  it('a reading that was not asked for must be heard well', () => {
    const why = ['another reading than the one asked for'];
    const faintly = hear(heardAs(['rest height sixty-two', 0.8]));
    expect(faintly).toMatchObject({ reading: 'rest-height', certainty: 'check', why });
    expect(hear(heardAs(['rest height sixty-two', 0.9]))).toMatchObject({ reading: 'rest-height', certainty: 'sure' });
    expect(hear('rest height sixty-two')).toMatchObject({ reading: 'rest-height', certainty: 'sure' });
    expect(hear(heardAs(['ridge width fifty-two', 0.8]), after(5200))).toMatchObject({ certainty: 'sure' });
  });
  it('a correction must be heard well, for its no may be a breath', () => {
    const faintly = hear(heardAs(['no fifty-two', 0.8]), after(5200));
    expect(faintly).toMatchObject({ value: 5200, certainty: 'check', why: ['a correction heard faintly'] });
    expect(hear(heardAs(['no fifty-two', 0.9]), after(5200))).toMatchObject({ correction: true, certainty: 'sure' });
  });
  it('a number that agrees with the set needs less belief than one alone', () => {
    expect(hear(heardAs(['fifty-three', 0.84]))).toMatchObject({ certainty: 'check', why: ['heard faintly'] });
    expect(hear(heardAs(['fifty-three', 0.85]))).toMatchObject({ certainty: 'sure' });
    expect(hear(heardAs(['fifty-three', 0.6]), after(5300))).toMatchObject({ certainty: 'sure' });
    expect(hear(heardAs(['fifty-three', 0.59]), after(5300))).toMatchObject({
      certainty: 'check',
      why: ['heard faintly'],
    });
  });
  it('a number easily taken for the heard one objects before others do', () => {
    expect(hear(heardAs(['fifty-three point nine', 0.8], ['fifty-three point five', 0.1]))).toMatchObject({
      kind: 'ask',
      candidates: [5390, 5350],
    });
    expect(hear(heardAs(['fifty-three point nine', 0.9], ['fifty-three point two', 0.1]))).toMatchObject({
      certainty: 'sure',
    });
    expect(hear(heardAs(['fifty', 0.9], ['sixty', 0.05]))).toMatchObject({ certainty: 'sure' });
  });
  it('a yes with the number shown keeps it only when nothing speaks against it', () => {
    const shown = asking({ mode: 'confirm', pending: 5400 });
    expect(hear(heardAs(['yes fifty-four', 0.7]), shown)).toMatchObject({ kind: 'command', command: 'yes' });
    expect(hear('yes fifty-four', shown)).toMatchObject({ kind: 'command', command: 'yes' });
    expect(hear(heardAs(['yes fifty-four', 0.4]), shown)).toMatchObject({ kind: 'reading', certainty: 'check' });
    expect(hear(heardAs('yes fifty-four', 'yes fifty-five'), shown)).toMatchObject({ kind: 'ask' });
  });
  it('a number with a command beside it is only a check', () => {
    expect(hear(heardAs('fifty two', 'help'))).toMatchObject({ certainty: 'check', why: ['heard in two ways'] });
  });
});

describe('known confusions', () => {
  it.each([
    ['teen for ty', 'fifteen', [5000, 1500]],
    ['an extra hundred', 'one hundred and sixty-two', [6200, 16200]],
    ['a lost point', '625', [6250, 62500]],
    ['digits swapped', 'twenty-six', [6200, 2600]],
  ])('%s is asked about when only the other fits', (_, text, candidates) => {
    expect(hear(text)).toMatchObject({ kind: 'ask', candidates });
  });
  it('ten off the set is asked about', () => {
    expect(hear('fifty-two point five', after(6250, 6200))).toMatchObject({ kind: 'ask', candidates: [6250, 5250] });
  });
  it('a misheard digit is asked about only against a set', () => {
    expect(hear('sixty-one', after(6700, 6650))).toMatchObject({ kind: 'ask', candidates: [6700, 6100] });
    expect(hear('sixty-one')).toMatchObject({ kind: 'reading' });
  });
  it('a number that fits is not doubted', () => {
    expect(hear('fifty')).toMatchObject({ kind: 'reading', certainty: 'sure' });
  });
});

describe('asked which of two', () => {
  const choose = asking({ mode: 'choose', candidates: [5000, 1500] });
  it('naming one is taken, shown once more', () => {
    expect(hear('fifteen', choose)).toMatchObject({ kind: 'reading', value: 1500, certainty: 'check' });
    expect(hear('fifty', choose)).toMatchObject({ kind: 'reading', value: 5000, certainty: 'check' });
  });
  it('a third number is a number like any other', () => {
    expect(hear('fifty-two', choose)).toMatchObject({ kind: 'reading', value: 5200 });
  });
});

describe('held', () => {
  it('takes no number', () => {
    expect(hear('fifty', asking({ mode: 'held' }))).toMatchObject({ kind: 'unclear', reason: 'notNow' });
  });
});
