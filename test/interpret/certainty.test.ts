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
