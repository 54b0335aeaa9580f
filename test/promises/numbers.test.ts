/** Promises about numbers: shown, read back and agreed to before anything is kept; doubtful ones never by moving on. */
import { describe, expect, it } from 'vitest';
import { atRestHeight, bench } from '../helpers/visit.ts';

const kept = (b: ReturnType<typeof bench>) =>
  b
    .summary()
    .readings.filter((row) => row.struck === undefined)
    .map((row) => row.value);

describe('a number', () => {
  it('is shown and read back before it is kept', () => {
    const b = atRestHeight();
    const before = kept(b).length;
    const heard = b.say('sixty-two point five');
    expect(b.session.context().pending?.value).toBe(6250);
    expect(heard.speak).toContain('sixty-two point five');
    expect(kept(b)).toHaveLength(before);
    expect(b.say('yes').said).toBe('Rest height 62.5 mm');
    expect(kept(b).at(-1)).toBe(6250);
  });

  it.each([
    ['outside what is plausible', 'twelve'],
    ['far from its set', 'seventy-four'],
  ])('%s is never kept by moving on, only by an explicit yes', (_why, words) => {
    const b = atRestHeight();
    for (const one of ['sixty-five', 'sixty-five point five']) {
      b.say(one);
      b.say('yes');
    }
    const before = kept(b);
    b.say(words);
    expect(b.session.context().pending?.certainty).toBe('check');
    expect(b.press('next').trouble).not.toBe('');
    expect(kept(b)).toEqual(before);
    expect(b.session.send({ type: 'PAUSE_OVER' }).trouble).not.toBe('');
    expect(kept(b)).toEqual(before);
    b.press('yes');
    expect(kept(b)).toHaveLength(before.length + 1);
  });

  it('that was misheard and refused is not kept, and that it was heard stays on record', () => {
    const b = atRestHeight();
    const before = kept(b);
    b.say('sixty-two');
    b.say('no');
    expect(kept(b)).toEqual(before);
    expect(b.facts.at(-1)?.body).toMatchObject({ kind: 'proposalDropped', value: 6200, text: 'sixty-two' });
  });

  it('corrected in the same breath replaces the one that waits', () => {
    const b = atRestHeight();
    b.say('sixty-two');
    b.say('no, sixty-four');
    expect(b.session.context().pending?.value).toBe(6400);
    b.say('yes');
    expect(kept(b).at(-1)).toBe(6400);
  });

  it('that could be two is asked about, and nothing is kept until one is chosen and agreed to', () => {
    const b = bench();
    b.press('next');
    b.press('answer:yes');
    b.say('fifty', [
      { transcript: 'fifty', confidence: 0.7 },
      { transcript: 'sixty', confidence: 0.69 },
    ]);
    const { candidates, pending } = b.session.context();
    expect(candidates?.values ?? [pending?.value]).toContain(5000);
    expect(pending?.certainty).not.toBe('sure');
    expect(kept(b)).toEqual([]);
    b.press('choose:6000');
    expect(kept(b)).toEqual([]);
    b.press('yes');
    expect(kept(b)).toEqual([6000]);
  });

  it('keeps a record of what was heard and what kept it', () => {
    const b = atRestHeight();
    b.say('sixty-two point five', [{ transcript: 'sixty-two point five', confidence: 0.9 }]);
    b.say('yes');
    expect(b.facts.findLast((f) => f.body.kind === 'reading')?.body).toMatchObject({
      heard: { source: 'voice', text: 'sixty-two point five', confidence: 0.9, keptBy: 'yes' },
    });
  });

  it('typed on the keypad takes the same path as a spoken one', () => {
    const b = atRestHeight();
    b.type('62.5');
    expect(b.session.context().pending).toMatchObject({ value: 6250, source: 'keypad' });
    expect(b.key('Enter').said).toBe('Rest height 62.5 mm');
    expect(kept(b).at(-1)).toBe(6250);
  });

  it.each(['six two', '62.5.1', 'blah', '', '−5', 'null', '\u{1F9B7}', '62,5,3', '1e3', 'NaN'])(
    'typed as %j is never kept in silence',
    (text) => {
      const b = atRestHeight();
      const before = kept(b);
      const outcome = b.type(text);
      expect(kept(b)).toEqual(before);
      expect(outcome.trouble !== '' || b.session.context().pending !== undefined).toBe(true);
      expect(b.session.context().pending).toBeUndefined();
    },
  );

  it('said where none is asked for gets a sentence, not silence', () => {
    const b = bench();
    const outcome = b.say('sixty-two');
    expect(outcome.trouble).toContain('A number needs the name of its reading first');
  });
});

describe('the four ways in', () => {
  it('write the same facts for the same intent, but for the source', () => {
    const ways = [
      (b: ReturnType<typeof bench>) => b.say('next'),
      (b: ReturnType<typeof bench>) => b.key('PageDown'),
      (b: ReturnType<typeof bench>) => b.key(' '),
      (b: ReturnType<typeof bench>) => b.press('next'),
    ];
    const facts = ways.map((way) => {
      const b = bench();
      way(b);
      return b.facts.slice(2).map((f) => f.body);
    });
    expect(facts[0]).toEqual([{ kind: 'moved', from: 'tell', to: 'ask', why: 'next' }]);
    for (const one of facts) expect(one).toEqual(facts[0]);
  });

  it('a held visit takes nothing but carry on', () => {
    const b = atRestHeight();
    b.say('hold');
    expect(b.say('sixty-two').trouble).not.toBe('');
    expect(b.press('next').trouble).not.toBe('');
    b.say('carry on');
    b.say('sixty-two');
    expect(b.session.context().pending?.value).toBe(6200);
  });

  it('a pedal with two keys can answer, keep and go on', () => {
    const b = bench();
    b.key('PageDown');
    expect(b.key('PageDown').trouble).toBe('Answer first, or skip with a reason.');
    b.key('Enter');
    expect(b.session.context().answers['ask']).toBe('yes');
    b.type('58');
    b.key('Enter');
    for (const key of ['Enter', 'Enter', 'Enter']) b.key(key);
    expect(b.step()).toBe('dip');
    expect(b.session.chosen()).toBeUndefined();
  });
});
