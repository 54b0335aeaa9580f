/** What each event writes and changes, as pure functions of the machine's memory. The machine says when; these say what. */
import type { FactBody, KeptBy, MoveReason } from '../src/domain/case/facts.ts';
import { answerOf, nextStep, previousStep, retakeSteps, stepOf, stepOfReading } from '../src/domain/protocol/path.ts';
import type { Step } from '../src/domain/protocol/types.ts';
import type { AnswerEvent, HeardEvent, Pending, Plan, VisitContext, VisitEvent } from './visit.types.ts';

type Of<T extends VisitEvent['type']> = Extract<VisitEvent, { type: T }>;
type Context = VisitContext;

export const nothing: Plan = { facts: [], patch: {} };

export function currentStep(context: Context): Step | undefined {
  return stepOf(context.protocol, context.step);
}

function moveTo(context: Context, step: string | undefined, why: MoveReason): Plan {
  if (step === undefined || step === context.step) return nothing;
  return { facts: [{ kind: 'moved', from: context.step, to: step, why }], patch: { step } };
}

function join(...plans: readonly Plan[]): Plan {
  return {
    facts: plans.flatMap((plan) => plan.facts),
    patch: plans.reduce<Plan['patch']>((all, plan) => ({ ...all, ...plan.patch }), {}),
  };
}

/** Forward along the answer on record: an earlier branch is followed again. */
export function goNext(context: Context): Plan {
  const given = answerOf(currentStep(context), context.answers[context.step]);
  const branch = given?.retake === true ? undefined : given?.goto;
  if (branch !== undefined) return moveTo(context, branch, 'branch');
  return moveTo(context, nextStep(context.protocol, context.step, context.answers)?.id, 'next');
}

export function goBack(context: Context): Plan {
  return moveTo(context, previousStep(context.protocol, context.step, context.answers)?.id, 'back');
}

export function goTo(context: Context, event: Of<'GOTO'>): Plan {
  return stepOf(context.protocol, event.step) === undefined ? nothing : moveTo(context, event.step, 'goto');
}

export function hold(): Plan {
  return { facts: [{ kind: 'held' }], patch: { held: true } };
}

export function carryOn(): Plan {
  return { facts: [{ kind: 'carriedOn' }], patch: { held: false } };
}

/** A number is shown and waits. One already waiting is dropped on record unless it is the same number again. */
export function propose(context: Context, event: HeardEvent): Plan {
  const { type: _type, correction: _correction, ...heard } = event;
  const before = context.pending;
  const target =
    context.correcting ??
    (before?.corrects === undefined ? undefined : { seq: before.corrects, reading: before.reading });
  const corrects = target !== undefined && target.reading === heard.reading ? { corrects: target.seq } : {};
  const same = before?.value === event.value && before.reading === event.reading;
  const dropped = before !== undefined && !same ? drop(context).facts : [];
  const pending: Pending = { ...heard, ...corrects };
  return { facts: dropped, patch: { pending, candidates: undefined, correcting: undefined } };
}

/** The number that waits is given up; that it was heard stays on record. */
export function drop(context: Context): Plan {
  const pending = context.pending;
  if (pending === undefined)
    return { facts: [], patch: { candidates: undefined, correcting: undefined, asking: undefined } };
  const { reading, value, text } = pending;
  return {
    facts: [{ kind: 'proposalDropped', step: context.step, reading, value, text }],
    patch: { pending: undefined },
  };
}

/** The number that waits goes on record; where it was the only one wanted, the visit moves on. */
export function keep(context: Context, keptBy: KeptBy): Plan {
  const pending = context.pending;
  if (pending === undefined) return nothing;
  const current = currentStep(context);
  const here = current?.kind === 'reading' && current.reading === pending.reading;
  const home = here ? current : stepOfReading(context.protocol, pending.reading);
  const step = home?.id ?? context.step;
  const fact: FactBody = {
    kind: 'reading',
    step,
    reading: pending.reading,
    value: pending.value,
    unit: pending.unit,
    heard: {
      source: pending.source,
      text: pending.text,
      ...(pending.confidence === undefined ? {} : { confidence: pending.confidence }),
      certainty: pending.certainty,
      keptBy,
    },
    outOfTurn: !here && pending.corrects === undefined,
    ...(pending.corrects === undefined ? {} : { corrects: pending.corrects }),
  };
  const added = pending.corrects === undefined ? 1 : 0;
  // A reading that no step asks for counts for none: the step it was called at still waits for its own.
  const kept = home === undefined ? context.kept : { ...context.kept, [step]: (context.kept[step] ?? 0) + added };
  const plan: Plan = { facts: [fact], patch: { pending: undefined, kept } };
  const goesOn = here && added === 1 && (keptBy === 'movedOn' || !context.repeated.includes(pending.reading));
  return goesOn ? join(plan, goNext(context)) : plan;
}

/** Moving on keeps the number that waits; a correction or a reading out of turn is kept without leaving the step. */
export function keepByMovingOn(context: Context): Plan {
  return keep(context, 'movedOn');
}

const HEARD_AFTER = 'another number was heard after it';

/** Which number was it? One that waits meanwhile was spoken against, so from now on only a yes keeps it. */
export function ask({ pending }: Context, event: Of<'ASKED'>): Plan {
  const { reading, candidates, text } = event;
  const doubted: Partial<Context> =
    pending === undefined || pending.why.includes(HEARD_AFTER)
      ? {}
      : { pending: { ...pending, certainty: 'check', why: [...pending.why, HEARD_AFTER] } };
  return { facts: [], patch: { candidates: { reading, values: candidates, text }, ...doubted } };
}

export function beginCorrection(_context: Context, event: Of<'CORRECT'>): Plan {
  const { seq, reading, value, unit } = event;
  return { facts: [], patch: { correcting: { seq, reading, value, unit }, pending: undefined, candidates: undefined } };
}

/** An answer goes on record, and the visit follows it: on, along a branch, or back for a new attempt. */
export function answer(context: Context, event: AnswerEvent, reason?: string): Plan {
  const step = currentStep(context);
  const chosen = answerOf(step, event.answer);
  if (step === undefined || chosen === undefined) return nothing;
  const fact: FactBody = {
    kind: 'answered',
    step: step.id,
    answer: chosen.id,
    source: event.source,
    ...(reason === undefined ? {} : { reason }),
  };
  const answers = { ...context.answers, [step.id]: chosen.id };
  const written: Plan = { facts: [fact], patch: { answers, asking: undefined } };
  if (chosen.retake === true && chosen.goto !== undefined)
    return join(written, retake(context, chosen.goto, reason ?? ''));
  return join(written, goNext({ ...context, answers }));
}

/** A new attempt from `goto` on: what was written there is given up, not deleted. */
function retake(context: Context, goto: string, reason: string): Plan {
  const steps = retakeSteps(context.protocol, goto, context.step);
  const answers = Object.fromEntries(Object.entries(context.answers).filter(([id]) => !steps.includes(id)));
  const kept = Object.fromEntries(Object.entries(context.kept).filter(([id]) => !steps.includes(id)));
  const clocks = { ...context.clocks };
  for (const id of steps) {
    const step = stepOf(context.protocol, id);
    if (step?.kind === 'clock') clocks[step.clock] = 'idle';
  }
  return {
    facts: [
      { kind: 'attemptStarted', step: context.step, goto, steps, reason },
      { kind: 'moved', from: context.step, to: goto, why: 'retake' },
    ],
    patch: { step: goto, answers, kept, clocks },
  };
}

export function askReasonToSkip(): Plan {
  return { facts: [], patch: { asking: { for: 'skip' } } };
}

export function askReasonFor(_context: Context, event: AnswerEvent): Plan {
  return { facts: [], patch: { asking: { for: 'answer', answer: event.answer, source: event.source } } };
}

export function giveReason(context: Context, event: Of<'REASON'>): Plan {
  const asking = context.asking;
  if (asking === undefined) return nothing;
  if (asking.for === 'answer')
    return answer(context, { type: 'ANSWER', answer: asking.answer, source: asking.source }, event.reason);
  if (asking.for === 'sign') {
    const signed = sign(context, { type: 'SIGN', initials: asking.initials, open: 0 }, event.reason);
    return join({ facts: [], patch: { asking: undefined } }, signed);
  }
  const skipped: FactBody = { kind: 'skipped', step: context.step, reason: event.reason };
  // Passed by after all: an answer given there before no longer counts.
  const { [context.step]: _given, ...answers } = context.answers;
  const next = nextStep(context.protocol, context.step, answers)?.id;
  return join({ facts: [skipped], patch: { asking: undefined, answers } }, moveTo(context, next, 'skip'));
}

export function note(context: Context, event: Of<'NOTE'>): Plan {
  return { facts: [{ kind: 'note', step: context.step, text: event.text, source: event.source }], patch: {} };
}

export function startClock(context: Context, event: Of<'START'>): Plan {
  const step = currentStep(context);
  if (step?.kind !== 'clock') return nothing;
  const clocks = { ...context.clocks, [step.clock]: 'mixing' as const };
  const common = { kind: 'clockStarted', step: step.id, clock: step.clock } as const;
  if (step.flow === 'impression' && event.material !== undefined) {
    const day = event.day === undefined ? {} : { day: event.day };
    return { facts: [{ ...common, flow: 'impression', material: event.material, ...day }], patch: { clocks } };
  }
  if (step.flow === 'timed' && event.agent !== undefined) {
    const of = step.of === undefined ? {} : { of: step.of };
    return { facts: [{ ...common, flow: 'timed', agent: event.agent, ...of }], patch: { clocks } };
  }
  return nothing;
}

export function seat(context: Context): Plan {
  const step = currentStep(context);
  if (step?.kind !== 'clock') return nothing;
  return {
    facts: [{ kind: 'clockSeated', clock: step.clock }],
    patch: { clocks: { ...context.clocks, [step.clock]: 'seated' } },
  };
}

/** Out of the mouth, or the bath ended. */
export function takeOut(context: Context): Plan {
  const step = currentStep(context);
  return step?.kind === 'clock' ? endClock(context, { type: 'CLOCK_DONE', clock: step.clock }) : nothing;
}

export function endClock(context: Context, event: Of<'CLOCK_DONE'>): Plan {
  return {
    facts: [{ kind: 'clockOut', clock: event.clock }],
    patch: { clocks: { ...context.clocks, [event.clock]: 'out' } },
  };
}

export function takeOver(_context: Context, event: Of<'TAKEN'>): Plan {
  return { facts: [{ kind: 'takenOver', clock: event.clock }], patch: {} };
}

export function alarmSeen(_context: Context, event: Of<'ALARM_SEEN'>): Plan {
  return { facts: [{ kind: 'alarmSeen', clock: event.clock, phase: event.phase }], patch: {} };
}

export function answerFlag(context: Context, event: Of<'FLAG'>): Plan {
  const fact: FactBody = { kind: 'flagAnswered', flag: event.flag, answer: event.answer, reason: event.reason };
  const again =
    event.answer === 'measureAgain' && event.step !== undefined ? moveTo(context, event.step, 'goto') : nothing;
  return join({ facts: [fact], patch: {} }, again);
}

/** Closing a visit with open items needs a reason; the reason goes on record with the signature. */
export function askReasonToSign(_context: Context, event: Of<'SIGN'>): Plan {
  return { facts: [], patch: { asking: { for: 'sign', initials: event.initials } } };
}

export function sign(context: Context, event: Of<'SIGN'>, overruled?: string): Plan {
  const step = currentStep(context);
  if (step?.kind !== 'signoff') return nothing;
  const signed: FactBody = {
    kind: 'signed',
    step: step.id,
    role: step.role,
    initials: event.initials,
    ...(overruled === undefined ? {} : { overruled }),
  };
  const kept = { ...context.kept, [step.id]: 1 };
  if (step.closesVisit === true) {
    return { facts: [signed, { kind: 'visitClosed', visit: context.protocol.visit }], patch: { kept, closed: true } };
  }
  return join({ facts: [signed], patch: { kept } }, goNext(context));
}
