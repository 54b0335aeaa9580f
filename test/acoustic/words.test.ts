import { describe, expect, it } from 'vitest';
import { accepts } from '../../scripts/acoustic/jsgf.ts';
import { atReading } from '../../scripts/acoustic/moments.ts';
import { grammarWords, phonesOf } from '../../scripts/acoustic/pronounce.ts';
import { grammarOfSentences, rivalsOf } from '../../scripts/acoustic/rivals.ts';
import { grammarOf } from '../../src/interpret/grammar.ts';

const SMALL = `#JSGF V1.0 UTF-8;
grammar small.en;
<digit> = one | two;
<number> = twenty [<digit>] [point <digit>];
public <said> = <number> | (go | step) back;
`;
const now = grammarOf(atReading('closed-height', []));

describe('a grammar', () => {
  it('gives whole sentences and not their beginnings', () => {
    const says = accepts(SMALL);
    for (const yes of ['twenty', 'twenty one', 'twenty two point one', 'go back', 'step back'])
      expect(says(yes)).toBe(true);
    for (const no of ['', 'one', 'twenty point', 'go', 'back', 'twenty one two', 'twentyone'])
      expect(says(no)).toBe(false);
  });
  it('with a rule that is missing or its own part is no use', () => {
    expect(() => accepts('public <said> = <number>;')).toThrow(/no use for the rule <number>/);
    expect(() => accepts('public <said> = one <said>;')).toThrow(/no use for the rule <said>/);
  });
  it('has words', () => expect([...grammarWords(SMALL)].sort().join(' ')).toBe('back go one point step twenty two'));
  it('of the app gives its numbers, names and commands', () => {
    const says = accepts(now);
    for (const yes of ['sixty two point five', 'sixty and a half millimetres', 'rest height sixty', 'next'])
      expect(says(yes)).toBe(true);
    expect(says('sixty two point')).toBe(false);
  });
});

describe('a word the dictionary lacks', () => {
  it('sounds as the synthesizer says it', () => {
    expect(phonesOf("_m'_I2_l_I2_m_,i:_t_@_z")).toEqual({ ok: true, phones: 'M IH L IH M IY T AH Z' });
  });
  it('with a sign nobody knows is refused', () => expect(phonesOf('m_Q!!_x')).toEqual({ ok: false, sign: 'Q' }));
});

describe('sentences easily taken for another', () => {
  const says = accepts(now);
  const rivals = (sentence: string) => rivalsOf(sentence, now).filter(says);
  it.each([
    ['fifty', ['fifteen', 'sixty', 'fifty one', 'one hundred and fifty', 'fifty point five', 'fifty and a half']],
    ['fifteen', ['fifty', 'sixteen', 'five']],
    ['sixty two', ['sixty', 'two', 'fifty two', 'sixty three', 'sixteen', 'one hundred and sixty two']],
    ['eighteen', ['eighty', 'eighty one', 'eight']],
    ['fifty point nine', ['fifty', 'fifty point five', 'fifty point nine five', 'sixty point nine']],
    ['one hundred and four', ['four', 'one hundred and five']],
    ['sixty and a half', ['sixty', 'fifty and a half']],
    ['rest height sixty', ['sixty', 'closed height sixty', 'rest height fifty']],
    ['next', ['help', 'undo', 'six', 'sixty']],
  ])('of "%s"', (sentence, some) => {
    expect(rivals(sentence)).toEqual(expect.arrayContaining(some));
  });
  it('make a grammar of their own', () => {
    const own = accepts(grammarOfSentences(['fifty one', 'sixty']));
    expect([own('fifty one'), own('sixty'), own('fifty')]).toEqual([true, true, false]);
  });
});
