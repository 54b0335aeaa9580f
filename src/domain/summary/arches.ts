/** Which dentures a case is about. */
import type { CaseView } from '../case/fold.ts';

export type Arch = 'upper' | 'lower';

/** Which dentures are made: the latest answer of the visit that asked; both when no visit asked. */
export function archesOf({ visits }: Pick<CaseView, 'visits'>): readonly Arch[] {
  const answer = visits.findLast((visit) => visit.answers.has('arches'))?.answers.get('arches')?.body.answer;
  if (answer === 'upper-only') return ['upper'];
  return answer === 'lower-only' ? ['lower'] : ['upper', 'lower'];
}
