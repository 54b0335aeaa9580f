/** What was answered and what was written down, put together, so that a sheet does not say one thing twice. */
import { noted } from '../protocol/answers.ts';
import type { AnswerRow, Summary } from './types.ts';

type NoteRow = Summary['notes'][number];

export interface Said {
  /** Answers that stand. Where one only says “Noted”, the notes of its step are what it says; otherwise none. */
  readonly answers: readonly { readonly row: AnswerRow; readonly notes: readonly NoteRow[] }[];
  /** Notes that stand and that no answer refers to. */
  readonly notes: readonly NoteRow[];
}

/**
 * The answers and notes of a visit that stand, every note once: with the answer “Noted” of its step where there is one,
 * else by itself. Lists are empty where nothing was said; no error values. Source: our choice.
 */
export function saidIn({ answers, notes }: Pick<Summary, 'answers' | 'notes'>): Said {
  const left = new Set(notes.filter((note) => !note.struck));
  const said = answers
    .filter((row) => row.struck === undefined)
    .map((row) => {
      const meant = row.answer === noted.label ? [...left].filter((note) => note.step === row.step) : [];
      for (const note of meant) left.delete(note);
      return { row, notes: meant };
    });
  return { answers: said, notes: [...left] };
}
