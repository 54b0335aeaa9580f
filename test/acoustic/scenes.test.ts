import { describe, expect, it } from 'vitest';
import { atClock, atPending, atReading, atStep } from '../../scripts/acoustic/moments.ts';
import { isRight, meaningOf, outcomeOf } from '../../scripts/acoustic/outcome.ts';
import { chanceFrom } from '../../scripts/acoustic/random.ts';
import { scenesOf, wordsFor } from '../../scripts/acoustic/scenes.ts';
import type { Scene, Truth } from '../../scripts/acoustic/scenes.ts';
import { TALK } from '../../scripts/acoustic/talk.ts';
import { interpret } from '../../src/interpret/index.ts';
import type { Interpretation } from '../../src/interpret/types.ts';

const COUNTS = { readings: 150, commands: 52, talk: 40, noise: 10 };
const understood = ({ text, expectation }: Scene): Interpretation =>
  interpret({ source: 'voice', text, alternatives: [{ transcript: text }], at: 0 }, expectation);

describe('what is said', () => {
  const scenes = scenesOf('tuning', COUNTS);
  it('is the same every time, and other numbers for the other group', () => {
    expect(scenesOf('tuning', COUNTS)).toEqual(scenes);
    expect(scenesOf('held-out', COUNTS).map((s) => s.text)).not.toEqual(scenes.map((s) => s.text));
  });
  it('counts as ordered', () => {
    const of = (kind: Scene['kind']) => scenes.filter((s) => s.kind === kind).length;
    expect([of('reading'), of('command'), of('talk'), of('noise')]).toEqual([150, 52, 40, 10]);
  });
  it('means what it should when every word is heard, so that only the ear can be wrong', () => {
    const misread = scenes.filter((s) => s.truth.kind !== 'nothing' && !isRight(s, understood(s)));
    expect(misread.map((s) => `${s.text}: ${JSON.stringify(understood(s))}`)).toEqual([]);
  });
  it('of few commands has answers too', () => {
    const few = scenesOf('tuning', { readings: 0, commands: 13, talk: 0, noise: 0 });
    expect(new Set(few.map((s) => s.truth.kind))).toEqual(new Set(['command', 'answer']));
    expect(new Set(few.map((s) => s.text)).size).toBeGreaterThan(10);
  });
  it('keeps the talk of the two groups apart', () => {
    expect(TALK.tuning.filter((sentence) => TALK['held-out'].includes(sentence))).toEqual([]);
  });
  it('says a half in both ways', () => {
    const ways = new Set(Array.from({ length: 60 }, (_, i) => wordsFor(5450, chanceFrom(`half ${i}`))));
    expect(ways).toEqual(new Set(['fifty four point five', 'fifty four and a half']));
  });
});

describe('a moment', () => {
  it('expects what the app expects then', () => {
    expect(atStep('marks').answers.map((a) => a.id)).toContain('made');
    expect(atReading('rest-height', [6000]).current).toMatchObject({ id: 'rest-height', previous: [6000] });
    expect(atPending('closed-height', 6000)).toMatchObject({ mode: 'confirm', pending: 6000 });
    expect(atClock('upper-impression', 'seated').commands).toContain('out');
  });
  it('that is none is refused', () => {
    expect(() => atStep('no such step')).toThrow(RangeError);
    expect(() => atReading('marks', [])).toThrow(RangeError);
    expect(() => atPending('marks', 1)).toThrow(RangeError);
    expect(() => atClock('marks', 'idle')).toThrow(RangeError);
  });
});

describe('what became of it', () => {
  const scene = (truth: Truth): Scene => ({
    id: 'x',
    group: 'tuning',
    kind: 'reading',
    text: '',
    expectation: atReading('closed-height', []),
    truth,
  });
  const sixty = scene({ kind: 'reading', value: 6000, reading: 'closed-height' });
  const reading = (value: number, certainty: 'sure' | 'check', name?: string): Interpretation => ({
    kind: 'reading',
    value,
    certainty,
    correction: false,
    why: [],
    text: '',
    ...(name === undefined ? {} : { reading: name }),
  });
  it('a number is right or wrong only when it is sure', () => {
    expect(outcomeOf(sixty, reading(6000, 'sure'))).toBe('right');
    expect(outcomeOf(sixty, reading(6100, 'sure'))).toBe('wrong');
    expect(outcomeOf(sixty, reading(6100, 'check'))).toBe('asked');
    expect(outcomeOf(sixty, reading(6000, 'sure', 'rest-height'))).toBe('wrong');
  });
  it('a question keeps nothing; what was not understood is nothing', () => {
    expect(outcomeOf(sixty, { kind: 'ask', candidates: [5000, 6000], reason: 'twoNumbers', text: '' })).toBe('asked');
    expect(outcomeOf(sixty, { kind: 'unclear', reason: 'noise', text: '' })).toBe('nothing');
    expect(outcomeOf(sixty, { kind: 'none', text: '' })).toBe('nothing');
  });
  it('a command nobody gave is wrong, and so is anything sure when nobody spoke to it', () => {
    const next: Interpretation = { kind: 'command', command: 'next', text: '' };
    expect(outcomeOf(sixty, next)).toBe('wrong');
    expect(outcomeOf(scene({ kind: 'command', command: 'next' }), next)).toBe('right');
    expect(outcomeOf(scene({ kind: 'nothing' }), next)).toBe('wrong');
    expect(outcomeOf(scene({ kind: 'nothing' }), reading(6000, 'sure'))).toBe('wrong');
  });
  it('sentences that mean the same have one meaning', () => {
    const { expectation } = sixty;
    expect(meaningOf('sixty', expectation)).toBe(meaningOf('sixty millimetres', expectation));
    expect(meaningOf('sixty', expectation)).toBe(meaningOf('closed height sixty', expectation));
    expect(meaningOf('sixty', expectation)).not.toBe(meaningOf('rest height sixty', expectation));
    expect(meaningOf('next', expectation)).toBe('next');
  });
});
