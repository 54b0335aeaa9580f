/** What is on offer at a step, in one order for the screen and for the digit keys. */
import type { StepView } from '../app/model.ts';
import type { Tone } from '../domain/protocol/types.ts';

export interface Choice {
  readonly intent: string;
  readonly label: string;
  readonly tone: Tone;
}

/** Answers, reasons or materials as targets. Empty where a number is wanted instead. */
export function choicesOf(step: StepView | undefined): readonly Choice[] {
  if (step === undefined) return [];
  if (step.mode === 'check' || step.mode === 'decision') {
    return step.answers.map(({ id, label, tone }) => ({ intent: `answer:${id}`, label, tone }));
  }
  if (step.mode === 'reason') {
    return (step.reasons ?? []).map(({ id, label }) => ({ intent: `reason:${id}`, label, tone: 'neutral' as const }));
  }
  if (step.mode === 'clock' && step.clock === undefined) {
    return (step.materials ?? []).map(({ id, name }) => ({
      intent: `material:${id}`,
      label: name,
      tone: 'neutral' as const,
    }));
  }
  return [];
}

/** Words for the strip: those that stand on a target already are not said twice. */
export function unseenWords(step: StepView): readonly string[] {
  const seen = new Set(choicesOf(step).map((choice) => choice.label.toLowerCase()));
  return step.words.filter((word) => !seen.has(word));
}
