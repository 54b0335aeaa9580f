/** From the record to a running visit: the machine is always started fresh, with input worked out from the facts. */
import { isKind, liveOf, visitFacts, type CaseView } from '../domain/case/fold.ts';
import { isRepeated, stepOf } from '../domain/protocol/path.ts';
import { carriedClocks } from '../domain/summary/clocks.ts';
import type { ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import type { ClockStage, VisitInput } from '../../machines/visit.types.ts';

/** A reading counts at the step that asks for it; one that no step asks for counts nowhere. */
function keptCounts(view: CaseView, protocol: VisitProtocol): Record<string, number> {
  const kept: Record<string, number> = {};
  for (const { body } of liveOf(view, 'reading')) {
    const step = stepOf(protocol, body.step);
    if (step?.kind === 'reading' && step.reading === body.reading) kept[step.id] = (kept[step.id] ?? 0) + 1;
  }
  for (const fact of liveOf(view, 'signed')) kept[fact.body.step] = 1;
  return kept;
}

function clockStages(view: CaseView): Record<string, ClockStage> {
  const now = view.log.facts.at(-1)?.at ?? 0;
  const stages: Record<string, ClockStage> = {};
  // What an earlier visit left to be poured can be said to be poured in this one.
  for (const { clock } of carriedClocks(view, [], now)) stages[clock] = 'out';
  for (const fact of visitFacts(view)) {
    const why = view.strikes.get(fact.seq)?.why;
    if (why === 'undone') continue;
    if (isKind(fact, 'clockStarted')) stages[fact.body.clock] = why === 'newAttempt' ? 'idle' : 'mixing';
    if (isKind(fact, 'clockSeated') && stages[fact.body.clock] === 'mixing') stages[fact.body.clock] = 'seated';
    if (isKind(fact, 'clockOut') && stages[fact.body.clock] !== 'idle') stages[fact.body.clock] = 'out';
  }
  return stages;
}

/** What the machine must know to stand exactly where the record says the visit stood. */
export function visitInput(view: CaseView, protocol: VisitProtocol, readings: readonly ReadingDef[]): VisitInput {
  const answers = Object.fromEntries([...view.answers].map(([step, fact]) => [step, fact.body.answer]));
  return {
    protocol,
    repeated: readings.filter(isRepeated).map((def) => def.id),
    step: view.step === '' ? (protocol.steps[0]?.id ?? '') : view.step,
    answers,
    kept: keptCounts(view, protocol),
    clocks: clockStages(view),
    held: view.held,
    closed: view.closed !== undefined,
  };
}
