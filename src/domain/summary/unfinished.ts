/** Whether a closed visit has to come again before the next one may begin. */
import type { VisitSpan } from '../case/fold.ts';

/** Answers by which a visit ends before its work is begun. */
const ENDS: readonly (readonly [step: string, answer: string])[] = [
  ['sign-in-patient', 'no'],
  ['sign-in-consent', 'no'],
  ['work-returned', 'no'],
];

/** Answers at a try-in by which another one is agreed on. */
const REFUSED: readonly (readonly [step: string, answer: string])[] = [
  ['bite-agrees', 'no'],
  ['finish-consent', 'no'],
];

type Answers = Pick<VisitSpan, 'answers'>;

const any = ({ answers }: Answers, among: typeof ENDS) =>
  among.some(([step, answer]) => answers.get(step)?.body.answer === answer);

/**
 * True where the visit, by its own last answers, ended before its work: not the right patient, no consent, stopped and
 * referred, the laboratory's work not there. Then nothing of its work is ordered. No unit, no error value: an answer that
 * was not given ends nothing. Source: our choice, after the branches of the shipped visits.
 */
export function endedEarly(span: Answers): boolean {
  const given = (step: string) => span.answers.get(step)?.body.answer;
  const referred = given('finding') === 'yes' && given('finding-next') === 'stop';
  return referred || any(span, ENDS);
}

/**
 * True where the same visit has to come again before the next one: it ended early, or the bite or the finishing was refused
 * at the try-in. No unit, no error value. Source: our choice, after the branches of the shipped visits.
 */
export function comesAgain(span: Answers): boolean {
  return endedEarly(span) || any(span, REFUSED);
}
