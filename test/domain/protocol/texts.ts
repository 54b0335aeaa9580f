/** Every text of a protocol that a person reads, with where it stands. */
import { answersOf } from '../../../src/domain/protocol/validate.ts';
import type { Step, VisitProtocol } from '../../../src/domain/protocol/types.ts';

export interface Text {
  readonly where: string;
  readonly text: string;
}

function textsOfStep(step: Step): readonly Text[] {
  const at = (name: string, text: string | undefined) =>
    text === undefined ? [] : [{ where: `${step.id}.${name}`, text }];
  return [
    ...at('title', step.title),
    ...step.lines.flatMap((line) => at('line', line)),
    ...at('caution', step.caution),
    ...(step.kind === 'clock' ? at('clockLabel', step.clockLabel) : []),
    ...answersOf(step).flatMap((answer) => [...at(answer.id, answer.label), ...at(answer.id, answer.caution)]),
  ];
}

export function textsOf(protocol: VisitProtocol): readonly Text[] {
  return [
    { where: `${protocol.id}.title`, text: protocol.title },
    ...protocol.chapters.map((chapter) => ({ where: `${protocol.id}.chapter ${chapter.number}`, text: chapter.title })),
    ...protocol.steps.flatMap(textsOfStep),
  ];
}

/** Letters and numerals of classifications; every other capital in mid-sentence would be a name. */
const CAPITALS = new Set(['A', 'B', 'C', 'D', 'E', 'I', 'II', 'III', 'IV', 'V', 'VI']);

/** Capitalised words that do not begin a sentence: in this trade's plain language there are none, so each is a name. */
export function namesIn(text: string): readonly string[] {
  return text
    .split(/(?<=[.:?;])\s+/)
    .flatMap((sentence) => sentence.split(/[\s–/“”(),]+/).slice(1))
    .map((word) => word.replace(/[.:?;]+$/, ''))
    .filter((word) => /^\p{Lu}/u.test(word) && !CAPITALS.has(word));
}
