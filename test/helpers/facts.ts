import type { Fact, FactBody } from '../../src/domain/case/facts.ts';
import { smallPractice } from './small-visit.ts';

/** Stamps bodies as an app would: one act each unless grouped in an inner list. */
export function stamp(acts: readonly (FactBody | readonly FactBody[])[], from = 1, startAt = 1_000_000): Fact[] {
  const facts: Fact[] = [];
  for (const act of acts) {
    const bodies: readonly FactBody[] = Array.isArray(act) ? act : [act as FactBody];
    const first = from + facts.length;
    for (const body of bodies) {
      const seq = from + facts.length;
      facts.push({
        v: 1,
        caseId: 'c1',
        seq,
        at: startAt + seq * 1000,
        act: first,
        protocol: 'small@1',
        app: 'test',
        body,
      });
    }
  }
  return facts;
}

export const opening: readonly FactBody[] = [
  { kind: 'caseOpened', code: 'T-1', demo: true, practice: smallPractice },
  { kind: 'visitOpened', visit: 1, protocol: 'small', version: 1, clinician: 'AB', assistant: 'CD', language: 'en' },
];

export const reading = (value: number, more: Partial<Extract<FactBody, { kind: 'reading' }>> = {}): FactBody => ({
  kind: 'reading',
  step: 'rest-height',
  reading: 'rest-height',
  value,
  unit: 'mm',
  heard: { source: 'voice', text: String(value / 100), certainty: 'sure', keptBy: 'yes' },
  outOfTurn: false,
  ...more,
});

export const answered = (step: string, answer: string): FactBody => ({
  kind: 'answered',
  step,
  answer,
  source: 'touch',
});
export const moved = (to: string): FactBody => ({ kind: 'moved', from: '', to, why: 'next' });
