/** Moments of a visit at which something is heard: what is expected then, by the app's own rules. */
import { expectationOf } from '../../src/app/expectation.ts';
import { foldCase } from '../../src/domain/case/fold.ts';
import type { Hundredths } from '../../src/domain/measure/length.ts';
import { defaultPractice, protocols, readingDef, readingDefs } from '../../src/domain/protocol/index.ts';
import type { VisitProtocol } from '../../src/domain/protocol/types.ts';
import type { Expectation } from '../../src/interpret/types.ts';
import type { ClockStage, Pending, VisitContext } from '../../machines/visit.types.ts';

const NOTHING_YET = foldCase('trial', []);

function protocolOf(step: string): VisitProtocol {
  const protocol = protocols.find((p) => p.steps.some((s) => s.id === step));
  if (!protocol) throw new RangeError(`no visit has the step ${step}`);
  return protocol;
}

function expect(step: string, patch: Partial<VisitContext>): Expectation {
  const protocol = protocolOf(step);
  const context: VisitContext = {
    protocol,
    repeated: [],
    step,
    answers: {},
    kept: {},
    clocks: {},
    held: false,
    closed: false,
    pending: undefined,
    candidates: undefined,
    asking: undefined,
    correcting: undefined,
    ...patch,
  };
  return expectationOf({
    view: NOTHING_YET,
    context,
    protocol,
    readings: readingDefs,
    practice: defaultPractice,
    language: 'en',
  });
}

/** At any step, with nothing pending. */
export const atStep = (step: string): Expectation => expect(step, {});

/** At a reading's step, with these readings of its set kept already. */
export function atReading(step: string, previous: readonly Hundredths[]): Expectation {
  const now = expect(step, {});
  const { current } = now;
  if (!current) throw new RangeError(`${step} asks for no reading`);
  const filled = { ...current, previous };
  return { ...now, current: filled, readings: now.readings.map((r) => (r.id === current.id ? filled : r)) };
}

/** A number is shown and waits for a yes. */
export function atPending(step: string, value: Hundredths): Expectation {
  const def = readingDef(step);
  if (!def) throw new RangeError(`no reading is called ${step}`);
  const pending: Pending = {
    reading: def.id,
    value,
    unit: def.unit,
    text: '',
    source: 'voice',
    certainty: 'check',
    why: [],
  };
  return expect(step, { pending });
}

/** A clock step with its clock at this stage. */
export function atClock(step: string, stage: ClockStage): Expectation {
  const found = protocolOf(step).steps.find((s) => s.id === step);
  if (found?.kind !== 'clock') throw new RangeError(`${step} is no clock`);
  return expect(step, { clocks: { [found.clock]: stage } });
}
