/** What went to and fro between clinic and laboratory, as a section of the sheet. */
import type { Summary } from '../domain/summary/types.ts';
import type { Section } from './sheet-model.types.ts';
import type { Moment } from './sheet-parts.ts';

/** Every entry as it was written; taken-back ones say so in words. No section while the laboratory wrote nothing. */
export function benchSections({ bench }: Summary, moment: Moment): readonly Section[] {
  if (bench === undefined || bench.log.length === 0) return [];
  const open = bench.questions.filter((question) => question.answer === undefined).length;
  const entries = bench.log.map(
    ({ at, by, visit, text, struck }) => `${moment(at)}, ${by}, ${visit}: ${text}${struck ? ' (taken back)' : ''}`,
  );
  const waiting = open === 0 ? [] : [`${open === 1 ? '1 question is' : `${open} questions are`} not answered.`];
  return [
    {
      id: 'bench',
      title: 'Between clinic and laboratory',
      blocks: [{ kind: 'lines', lines: [...waiting, ...entries] }],
    },
  ];
}
