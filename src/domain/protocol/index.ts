/** The visits the app knows, and questions asked of them. Pure look-ups; nothing here keeps state. */
import { isShown, type Answers } from './path.ts';
import { readingDefs } from './readings.ts';
import type { Chapter, ReadingDef, Step, VisitProtocol } from './types.ts';
import { visit1 } from './visit1.ts';
import { visit2 } from './visit2.ts';
import { visit3 } from './visit3.ts';
import { visit4 } from './visit4.ts';
import { visit5 } from './visit5.ts';

export { defaultPractice, GENERIC_NOTE } from './practice.ts';
export { readingDefs } from './readings.ts';
export { visit1 } from './visit1.ts';

/** Every protocol the app ships, oldest version first within an id. */
export const protocols: readonly VisitProtocol[] = [visit1, visit2, visit3, visit4, visit5];

/** The protocol a visit was opened under; undefined when this build does not know it. */
export function protocolFor(id: string, version: number): VisitProtocol | undefined {
  return protocols.find((protocol) => protocol.id === id && protocol.version === version);
}

/** What is known about a reading: unit, ranges, spoken names, source. Undefined for an unknown id. */
export function readingDef(id: string): ReadingDef | undefined {
  return readingDefs.find((def) => def.id === id);
}

/** Position of a step in its visit, 0 for the first; -1 for an unknown id. */
export function stepIndex(protocol: VisitProtocol, id: string): number {
  return protocol.steps.findIndex((step) => step.id === id);
}

/** The steps this visit really walks through, given the answers so far. */
export function visibleSteps(protocol: VisitProtocol, answers: Answers): readonly Step[] {
  return protocol.steps.filter((step) => isShown(step, answers));
}

/** The chapter a step belongs to; undefined for an unknown step. */
export function chapterOf(protocol: VisitProtocol, stepId: string): Chapter | undefined {
  const number = protocol.steps.find((step) => step.id === stepId)?.chapter;
  return protocol.chapters.find((chapter) => chapter.number === number);
}

/** All steps of one chapter, hidden ones included, in order. */
export function stepsOfChapter(protocol: VisitProtocol, chapter: number): readonly Step[] {
  return protocol.steps.filter((step) => step.chapter === chapter);
}
