/** Whether a closed visit has to come again before the next one may begin. */
import type { VisitSpan } from '../case/fold.ts';

/** Answers by which a visit ends before its work is done, or by which another one of its kind is agreed on. */
const COMES_AGAIN: readonly (readonly [step: string, answer: string])[] = [
  ['sign-in-patient', 'no'],
  ['sign-in-consent', 'no'],
  ['work-returned', 'no'],
  ['bite-agrees', 'no'],
  ['finish-consent', 'no'],
];

/**
 * True where the visit, by its own last answers, did not come to its work or asks for another of its kind: not the right
 * patient, no consent, stopped and referred, the laboratory's work not there, the bite or the finishing refused at the
 * try-in. No unit, no error value: an answer that was not given asks for nothing. Source: our choice, after the branches of
 * the shipped visits.
 */
export function comesAgain({ answers }: VisitSpan): boolean {
  const given = (step: string) => answers.get(step)?.body.answer;
  const referred = given('finding') === 'yes' && given('finding-next') === 'stop';
  return referred || COMES_AGAIN.some(([step, answer]) => given(step) === answer);
}
