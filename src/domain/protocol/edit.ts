/** A practice's own version of a visit: steps moved, dropped, added and reworded. Pure; every change gives a new draft. */
import { protocolDifference } from './difference.ts';
import { lostBy } from './needs.ts';
import type { Practice, ReadingDef, Step, VisitProtocol } from './types.ts';
import { protocolProblems, type Problem } from './validate.ts';

const place = (protocol: VisitProtocol, id: string) => protocol.steps.findIndex((step) => step.id === id);

/** Chapters without a step go, and the others are numbered anew. */
function tidy(protocol: VisitProtocol, steps: readonly Step[]): VisitProtocol {
  const used = protocol.chapters.filter((chapter) => steps.some((step) => step.chapter === chapter.number));
  const number = new Map(used.map((chapter, at) => [chapter.number, at + 1]));
  return {
    ...protocol,
    chapters: used.map((chapter, at) => ({ ...chapter, number: at + 1 })),
    steps: steps.map((step) => ({ ...step, chapter: number.get(step.chapter) ?? step.chapter })),
  };
}

/** One place up (−1) or down (+1), into the chapter of the step it passes. At either end nothing changes. */
export function moveStep(protocol: VisitProtocol, id: string, by: -1 | 1): VisitProtocol {
  const from = place(protocol, id);
  const step = protocol.steps[from];
  const passed = protocol.steps[from + by];
  if (step === undefined || passed === undefined) return protocol;
  const steps = protocol.steps.slice();
  steps[from] = passed;
  steps[from + by] = { ...step, chapter: passed.chapter };
  return tidy(protocol, steps);
}

/** Without the step. Branches that led to it lead to the step after it; what depends on its answer is left to be seen. */
export function dropStep(protocol: VisitProtocol, id: string): VisitProtocol {
  const at = place(protocol, id);
  if (at < 0) return protocol;
  const onward = protocol.steps[at + 1]?.id;
  const led = (step: Step): Step => {
    if (onward === undefined || (step.kind !== 'check' && step.kind !== 'decision')) return step;
    const answers = step.answers.map((answer) => (answer.goto === id ? { ...answer, goto: onward } : answer));
    return { ...step, answers };
  };
  return tidy(protocol, protocol.steps.filter((step) => step.id !== id).map(led));
}

export interface Wording {
  readonly title: string;
  readonly lines: readonly string[];
  /** Empty: the step has none. */
  readonly caution: string;
}

/** The same step in other words. Empty lines are left out. */
export function rewordStep(protocol: VisitProtocol, id: string, { title, lines, caution }: Wording): VisitProtocol {
  const steps = protocol.steps.map((step): Step => {
    if (step.id !== id) return step;
    const { caution: _old, ...rest } = step;
    const said = { title: title.trim(), lines: lines.map((line) => line.trim()).filter((line) => line !== '') };
    return { ...rest, ...said, ...(caution.trim() === '' ? {} : { caution: caution.trim() }) };
  });
  return { ...protocol, steps };
}

/** An id no step has had: "own-1", "own-2" … */
function freshId(protocol: VisitProtocol): string {
  const taken = new Set(protocol.steps.map((step) => step.id));
  for (let number = 1; ; number += 1) if (!taken.has(`own-${number}`)) return `own-${number}`;
}

/** A step of the practice's own after another one: something to do or to mind, answered by "done". */
export function addStep(protocol: VisitProtocol, after: string, { title, lines, caution }: Wording): VisitProtocol {
  const at = place(protocol, after);
  const before = protocol.steps[at];
  if (before === undefined) return protocol;
  const step: Step = {
    kind: 'check',
    id: freshId(protocol),
    chapter: before.chapter,
    title: title.trim(),
    lines: lines.map((line) => line.trim()).filter((line) => line !== ''),
    ...(caution.trim() === '' ? {} : { caution: caution.trim() }),
    answers: [
      {
        id: 'done',
        label: 'Done',
        words: { en: ['done'], de: ['erledigt'], es: ['hecho'], fr: ['fait'] },
        tone: 'good',
      },
    ],
  };
  return { ...protocol, steps: protocol.steps.toSpliced(at + 1, 0, step) };
}

/** Id under which the practice's own versions of a visit are kept: never that of a shipped one. */
export function ownId(protocol: Pick<VisitProtocol, 'id'>): string {
  return protocol.id.endsWith('-own') ? protocol.id : `${protocol.id}-own`;
}

export interface NewVersion {
  readonly protocol: VisitProtocol;
  /** What keeps it from being used; empty when it may be. */
  readonly problems: readonly Problem[];
  /** What the summary can no longer work out. */
  readonly warnings: readonly string[];
  readonly difference: readonly string[];
}

export interface Edited {
  readonly before: VisitProtocol;
  readonly draft: VisitProtocol;
  /** Versions of this visit the practice has already. */
  readonly kept: readonly VisitProtocol[];
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
}

/** The draft as the next version: one higher than any before, with what is wrong with it, what it costs and what changed. */
export function newVersion({ before, draft, kept, readings, practice }: Edited): NewVersion {
  const versions = [before, ...kept].filter((one) => one.visit === before.visit).map((one) => one.version);
  const protocol = { ...draft, id: ownId(before), version: Math.max(...versions) + 1 };
  return {
    protocol,
    problems: protocolProblems(protocol, readings, practice),
    warnings: lostBy(before, draft),
    difference: protocolDifference(before, draft),
  };
}
