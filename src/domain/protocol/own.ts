/** The practice's own wording and ranges, laid over the protocol and the readings it works with. */
import { answersOf } from './validate.ts';
import type { Practice, ReadingDef, Step, VisitProtocol } from './types.ts';

type Own = Pick<Practice, 'cautions'>;

function worded(step: Step, cautions: Readonly<Record<string, string>>): Step {
  const caution = cautions[step.id] ?? step.caution;
  const own = caution === undefined ? step : { ...step, caution };
  if (own.kind !== 'check' && own.kind !== 'decision') return own;
  const answers = own.answers.map((answer) => {
    const said = cautions[`${step.id}:${answer.id}`];
    return said === undefined ? answer : { ...answer, caution: said };
  });
  return { ...own, answers };
}

/** The protocol with the practice's wording of cautions; the same protocol where it has none. Nothing else changes. */
export function withOwnCautions(protocol: VisitProtocol, { cautions }: Own): VisitProtocol {
  if (cautions === undefined || Object.keys(cautions).length === 0) return protocol;
  return { ...protocol, steps: protocol.steps.map((step) => worded(step, cautions)) };
}

/** Keys under which a protocol's cautions may be worded anew, with the words that stand now. */
export function cautionsIn(protocol: VisitProtocol): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const step of protocol.steps) {
    if (step.caution !== undefined) found[step.id] = step.caution;
    for (const answer of answersOf(step))
      if (answer.caution !== undefined) found[`${step.id}:${answer.id}`] = answer.caution;
  }
  return found;
}

/** Readings with the practice's own ranges (hundredths of each unit); units, names and sets stay as they are. */
export function withOwnRanges(
  readings: readonly ReadingDef[],
  { ranges }: Pick<Practice, 'ranges'>,
): readonly ReadingDef[] {
  if (ranges === undefined || Object.keys(ranges).length === 0) return readings;
  return readings.map((def) => {
    const own = ranges[def.id];
    return own === undefined ? def : { ...def, ...own, source: `The practice's own range. ${def.source}` };
  });
}
