/** Finding the way through a visit: which steps are shown, what comes next, what a retake covers. */
import type { Answer, ReadingDef, Step, VisitProtocol } from './types.ts';

/** Answers on record: step id → answer id. */
export type Answers = Readonly<Record<string, string>>;

/** A step by id; undefined for one the protocol does not have. */
export function stepOf(protocol: VisitProtocol, id: string): Step | undefined {
  return protocol.steps.find((step) => step.id === id);
}

/** A step with `onlyIf` is passed by unless that earlier question was answered so; one with `notIf` when it was. */
export function isShown(step: Step, answers: Answers): boolean {
  if (step.notIf?.some((hidden) => answers[hidden.step] === hidden.answer)) return false;
  return step.onlyIf === undefined || answers[step.onlyIf.step] === step.onlyIf.answer;
}

/** The next shown step, or undefined at the end. */
export function nextStep(protocol: VisitProtocol, id: string, answers: Answers): Step | undefined {
  const index = protocol.steps.findIndex((step) => step.id === id);
  return protocol.steps.slice(index + 1).find((step) => isShown(step, answers));
}

/** The shown step before, or undefined at the beginning. */
export function previousStep(protocol: VisitProtocol, id: string, answers: Answers): Step | undefined {
  const index = protocol.steps.findIndex((step) => step.id === id);
  return protocol.steps.slice(0, Math.max(0, index)).findLast((step) => isShown(step, answers));
}

/** An answer by id of a check or decision; undefined for other steps and unknown ids. */
export function answerOf(step: Step | undefined, id: string | undefined): Answer | undefined {
  if (step === undefined || (step.kind !== 'check' && step.kind !== 'decision')) return undefined;
  return step.answers.find((answer) => answer.id === id);
}

/** Steps whose entries a retake gives up: from `goto` up to and including the step it was decided at. */
export function retakeSteps(protocol: VisitProtocol, goto: string, decidedAt: string): readonly string[] {
  const from = protocol.steps.findIndex((step) => step.id === goto);
  const to = protocol.steps.findIndex((step) => step.id === decidedAt);
  if (from < 0 || to < from) return [decidedAt];
  return protocol.steps.slice(from, to + 1).map((step) => step.id);
}

/** The step at which a reading is taken when its turn comes. */
export function stepOfReading(protocol: VisitProtocol, reading: string): Step | undefined {
  return protocol.steps.find((step) => step.kind === 'reading' && step.reading === reading);
}

/** True when a reading is taken several times and compared within its set. */
export function isRepeated(def: ReadingDef | undefined): boolean {
  return (def?.repeat?.least ?? 1) > 1;
}
