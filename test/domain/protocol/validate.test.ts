import { describe, expect, it } from 'vitest';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { protocolProblems } from '../../../src/domain/protocol/validate.ts';
import type { Answer, Step, VisitProtocol } from '../../../src/domain/protocol/types.ts';

const answer = (id: string, more: Partial<Answer> = {}): Answer => ({
  id,
  label: id,
  words: { en: [`say ${id}`] },
  tone: 'neutral',
  ...more,
});
const common = { chapter: 1, title: 'Check this', lines: ['One line'] } as const;
const ask: Step = { ...common, kind: 'check', id: 'ask', answers: [answer('one'), answer('two')] };
const width: Step = { ...common, kind: 'reading', id: 'width', reading: 'upper-width' };
const mix: Step = { ...common, kind: 'clock', id: 'mix', clock: 'mix', flow: 'impression', materials: ['alginate'] };
const bath: Step = { ...common, kind: 'clock', id: 'bath', clock: 'bath', flow: 'timed', materials: [], of: 'mix' };
const sign: Step = { ...common, kind: 'signoff', id: 'sign', role: 'clinician', closesVisit: true };

const visit = (steps: readonly Step[], chapters = [{ number: 1, title: 'Only' }]): VisitProtocol => ({
  id: 'small',
  version: 1,
  visit: 1,
  title: 'Small',
  chapters,
  steps,
});
const problems = (steps: readonly Step[]) =>
  protocolProblems(visit(steps), readingDefs, defaultPractice).map((problem) => `${problem.path}: ${problem.text}`);

it('finds nothing wrong with a small whole visit', () => {
  expect(problems([ask, width, mix, bath, sign])).toEqual([]);
});

const withAnswers = (...answers: readonly Answer[]): Step => ({ ...common, kind: 'decision', id: 'ask', answers });
const long = 'x'.repeat(200);

describe('names the place and the reason when', () => {
  const table: readonly (readonly [what: string, steps: readonly Step[], problem: RegExp])[] = [
    ['two steps share an id', [ask, ask, sign], /steps\.ask: Two steps share/],
    ['an id has odd letters', [{ ...ask, id: 'Ask it' }, sign], /An id is made of/],
    ['two steps ask for one reading', [width, { ...width, id: 'again' }, sign], /readings\.upper-width/],
    ['two steps start one clock', [mix, { ...mix, id: 'again' }, sign], /clocks\.mix/],
    ['a text is empty', [{ ...ask, title: ' ' }, sign], /steps\.ask\.title: This text is empty/],
    ['a title is too long', [{ ...ask, title: long }, sign], /steps\.ask\.title: 200 characters/],
    ['a line is too long', [{ ...ask, lines: [long] }, sign], /steps\.ask\.lines\.0: 200 characters/],
    ['there are too many lines', [{ ...ask, lines: ['a', 'b', 'c', 'd', 'e'] }, sign], /lines: 5 lines/],
    ['a caution is too long', [{ ...ask, caution: long }, sign], /steps\.ask\.caution/],
    ['a label is too long', [withAnswers(answer('one', { label: long })), sign], /answers\.one\.label/],
    ['an answer’s caution is too long', [withAnswers(answer('one', { caution: long })), sign], /answers\.one\.caution/],
    ['a question has no answer', [withAnswers(), sign], /needs at least one answer/],
    ['two answers share an id', [withAnswers(answer('one'), answer('one', { words: {} })), sign], /share this id/],
    [
      'two answers listen to one word',
      [withAnswers(answer('one', { words: { de: ['ja'] } }), answer('two', { words: { de: ['ja'] } })), sign],
      /listen to "ja" \(de\)/,
    ],
    ['a word is in capitals', [withAnswers(answer('one', { words: { en: ['Yes'] } })), sign], /lower case/],
    ['an answer leads nowhere', [withAnswers(answer('one', { goto: 'gone' })), sign], /no step "gone"/],
    ['an answer leads to its own step', [withAnswers(answer('one', { goto: 'ask' })), sign], /own step/],
    ['a retake has no step', [withAnswers(answer('one', { retake: true })), sign], /needs a step to go to/],
    ['a retake goes forward', [withAnswers(answer('one', { retake: true, goto: 'sign' })), sign], /must go back/],
    [
      'a condition names a later step',
      [{ ...width, onlyIf: { step: 'ask', answer: 'one' } }, ask, sign],
      /steps\.width\.onlyIf: "ask" is not an earlier step/,
    ],
    [
      'a condition names an unknown answer',
      [ask, { ...width, notIf: [{ step: 'ask', answer: 'three' }] }, sign],
      /steps\.width\.notIf: "ask" has no answer "three"/,
    ],
    ['a reading is unknown', [{ ...width, reading: 'gone' }, sign], /no reading "gone"/],
    ['a material class is unknown', [{ ...mix, materials: ['sand'] }, sign], /no material of class "sand"/],
    ['no material is offered', [{ ...mix, materials: [] }, sign], /No material class is offered/],
    ['a disinfectant is unknown', [mix, { ...bath, materials: ['tea'] }, sign], /no disinfectant "tea"/],
    ['a bath belongs to no earlier clock', [{ ...bath, of: 'gone' }, sign], /No earlier clock "gone"/],
    ['a chapter is unknown', [{ ...ask, chapter: 2 }, sign], /There is no chapter 2/],
    [
      'a step cannot be reached',
      [withAnswers(answer('one', { goto: 'sign' }), answer('two', { goto: 'sign' })), width, sign],
      /steps\.width: No path leads here/,
    ],
    ['nothing closes the visit', [ask, { ...sign, closesVisit: false }], /must be the sign-off/],
    ['there is no step', [], /needs at least one step/],
  ];

  it.each(table)('%s', (_what, steps, problem) => {
    expect(problems(steps).some((text) => problem.test(text))).toBe(true);
  });

  it('chapters are out of order, empty, or stepped back to', () => {
    const chapters = [
      { number: 2, title: 'Two' },
      { number: 1, title: 'One' },
      { number: 3, title: 'Empty' },
    ];
    const steps = [
      { ...ask, chapter: 2 },
      { ...sign, chapter: 1 },
    ];
    const texts = protocolProblems(visit(steps, chapters), readingDefs).map((problem) => problem.text);
    expect(texts).toContain('Chapters must be numbered 1, 2, 3 … in order.');
    expect(texts).toContain('This chapter has no step.');
    expect(texts).toContain('This step stands after a later chapter.');
  });
});
