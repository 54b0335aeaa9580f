/** Whole visits of a case, made of facts, and the summary of the last one. */
import type { FactBody } from '../../src/domain/case/facts.ts';
import { foldCase } from '../../src/domain/case/fold.ts';
import { protocols } from '../../src/domain/protocol/index.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { summarise } from '../../src/domain/summary/summarise.ts';
import { reading, stamp } from './facts.ts';

export const DAY = 86_400_000;
export const FIRST = Date.parse('2026-03-02T08:00:00Z');

/** One reading, or several of one quantity, in its own unit. */
export const at = (id: string, ...values: number[]): FactBody[] =>
  values.map((value) => {
    const unit = readingDefs.find((def) => def.id === id)?.unit ?? 'mm';
    return reading(Math.round(value * 100), { step: id, reading: id, unit });
  });

const opened = (visit: number): FactBody => ({
  kind: 'visitOpened',
  visit,
  protocol: `visit-${visit}`,
  version: 1,
  clinician: 'KV',
  assistant: 'BR',
  language: 'en',
});
export const closed = (visit: number): FactBody => ({ kind: 'visitClosed', visit });

export interface Sitting {
  readonly visit: number;
  /** Days after 2 March 2026. */
  readonly day?: number;
  readonly bodies: readonly (FactBody | readonly FactBody[])[];
}

/** A case of whole visits; the last one stays open unless it closes itself. */
export function caseOf(sittings: readonly Sitting[]) {
  const head: FactBody = { kind: 'caseOpened', code: 'T-1', demo: true, practice: defaultPractice };
  let facts = stamp([head], 1, FIRST);
  sittings.forEach(({ visit, day = 0, bodies }, i) => {
    const end = i < sittings.length - 1 ? [closed(visit)] : [];
    facts = [...facts, ...stamp([opened(visit), ...bodies.flat(), ...end], facts.length + 1, FIRST + day * DAY)];
  });
  return foldCase('c1', facts);
}

export function summaryOf(...sittings: readonly Sitting[]) {
  const view = caseOf(sittings);
  const visit = sittings.at(-1)!.visit;
  const now = view.log.facts.at(-1)!.at;
  const protocol = protocols.find((one) => one.visit === visit)!;
  return summarise(view, {
    protocol,
    earlierProtocols: protocols,
    readings: readingDefs,
    practice: defaultPractice,
    now,
  });
}

/** Visit 2 alone. */
export const at2 = (...bodies: (FactBody | readonly FactBody[])[]) => summaryOf({ visit: 2, bodies });
export const row = (summary: ReturnType<typeof at2>, id: string) => summary.computed.find((one) => one.id === id);
export const flag = (summary: ReturnType<typeof at2>, id: string) => summary.flags.find((one) => one.id.startsWith(id));
