import { describe, expect, it } from 'vitest';
import { saidIn } from '../../../src/domain/summary/said.ts';
import type { AnswerRow, Summary } from '../../../src/domain/summary/types.ts';

const answer = (seq: number, step: string, text: string, more: Partial<AnswerRow> = {}): AnswerRow => ({
  seq,
  at: seq,
  step,
  chapter: 1,
  question: step,
  answer: text,
  tone: 'neutral',
  ...more,
});
const note = (step: string, text: string, struck = false): Summary['notes'][number] => ({
  at: 1,
  step,
  text,
  source: 'touch',
  struck,
});
const struck = { at: 2, why: 'undone', by: 3 } as const;

describe('answers and notes together', () => {
  it('says a note with the answer “Noted” of its step, and only once', () => {
    const shade = note('shade', 'light, a little grey');
    const other = note('bases', 'rocks a little');
    const said = saidIn({
      answers: [answer(1, 'shade', 'Noted'), answer(2, 'bases', 'Both')],
      notes: [shade, other],
    });
    expect(said.answers.map(({ row, notes }) => [row.step, notes])).toEqual([
      ['shade', [shade]],
      ['bases', []],
    ]);
    expect(said.notes).toEqual([other]);
  });
  it('keeps “Noted” where the note was struck through or never written', () => {
    const said = saidIn({ answers: [answer(1, 'shade', 'Noted')], notes: [note('shade', 'light', true)] });
    expect(said.answers.map(({ notes }) => notes)).toEqual([[]]);
    expect(said.notes).toEqual([]);
  });
  it('keeps a note whose answer was taken back', () => {
    const light = note('shade', 'light');
    const said = saidIn({ answers: [answer(1, 'shade', 'Noted', { struck })], notes: [light] });
    expect(said).toEqual({ answers: [], notes: [light] });
  });
  it('says a note once where its step was answered twice', () => {
    const light = note('shade', 'light');
    const said = saidIn({ answers: [answer(1, 'shade', 'Noted'), answer(2, 'shade', 'Noted')], notes: [light] });
    expect(said.answers.flatMap(({ notes }) => notes)).toEqual([light]);
  });
});
