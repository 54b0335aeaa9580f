/**
 * The generic visit: one machine for every visit, driven by protocol data. It knows kinds of steps, what may happen now
 * and in which order; meaning and numbers live in the domain, devices and time in the app. Actions only emit and assign,
 * emit first, so that each fact names the step that produced it.
 */
import { assign, emit, setup } from 'xstate';
import { answerOf, isShown } from '../src/domain/protocol/path.ts';
import type { FactBody } from '../src/domain/case/facts.ts';
import * as plans from './visit.plans.ts';
import type { ClockStage, Plan, VisitContext, VisitEmitted, VisitEvent, VisitInput } from './visit.types.ts';

type Context = VisitContext;
type Args<E> = { context: Context; event: E };

/** Both halves of a plan, computed from the same memory: the facts go out first. */
function does<E extends VisitEvent>(plan: (context: Context, event: E) => Plan) {
  return [
    { type: 'write', params: ({ context, event }: Args<E>) => ({ facts: plan(context, event).facts }) },
    { type: 'patch', params: ({ context, event }: Args<E>) => plan(context, event).patch },
  ] as const;
}

const stageOf = (context: Context): ClockStage => {
  const step = plans.currentStep(context);
  return step?.kind === 'clock' ? (context.clocks[step.clock] ?? 'idle') : 'idle';
};
const kindOf = (context: Context) => plans.currentStep(context)?.kind;
const optional = (context: Context) => plans.currentStep(context)?.optional === true;
const flowOf = (context: Context) => {
  const step = plans.currentStep(context);
  return step?.kind === 'clock' ? step.flow : undefined;
};

export const visitMachine = setup({
  types: {
    context: {} as Context,
    input: {} as VisitInput,
    events: {} as VisitEvent,
    emitted: {} as VisitEmitted,
  },
  actions: {
    write: emit((_, params: { facts: readonly FactBody[] }): VisitEmitted => ({ type: 'facts', facts: params.facts })),
    patch: assign((_, params: Partial<Context>) => params),
  },
  guards: {
    isClosed: ({ context }) => context.closed,
    isOpen: ({ context }) => !context.closed,
    isHeld: ({ context }) => context.held,
    hasPending: ({ context }) => context.pending !== undefined,
    hasCandidates: ({ context }) => context.candidates !== undefined,
    isAsking: ({ context }) => context.asking !== undefined,
    isCorrecting: ({ context }) => context.correcting !== undefined,
    isKind: ({ context }, params: { kind: string }) => kindOf(context) === params.kind,
    isStage: ({ context }, params: { stage: ClockStage }) =>
      kindOf(context) === 'clock' && stageOf(context) === params.stage,
    isFlow: ({ context }, params: { flow: string }) => flowOf(context) === params.flow,
    mayPass: ({ context }) => optional(context) || context.answers[context.step] !== undefined,
    hasKept: ({ context }) => optional(context) || (context.kept[context.step] ?? 0) > 0,
    isOptional: ({ context }) => optional(context),
    isSigned: ({ context }) => (context.kept[context.step] ?? 0) > 0,
    keepsByMovingOn: ({ context }) => context.pending?.certainty === 'sure',
    known: ({ context, event }) =>
      event.type === 'ANSWER' && answerOf(plans.currentStep(context), event.answer) !== undefined,
    needsReason: ({ context, event }) =>
      event.type === 'ANSWER' && answerOf(plans.currentStep(context), event.answer)?.needsReason === true,
    knownStep: ({ context, event }) =>
      event.type === 'GOTO' && context.protocol.steps.some((s) => s.id === event.step && isShown(s, context.answers)),
    hasMaterial: ({ context, event }) =>
      event.type === 'START' && (flowOf(context) === 'timed' ? event.agent : event.material) !== undefined,
    clockRuns: ({ context, event }) =>
      event.type === 'CLOCK_DONE' && ['mixing', 'seated'].includes(context.clocks[event.clock] ?? 'idle'),
    isOut: ({ context, event }) => event.type === 'TAKEN' && context.clocks[event.clock] === 'out',
    mustOverrule: ({ context, event }) => {
      const step = plans.currentStep(context);
      return (
        event.type === 'SIGN' &&
        event.initials.trim() !== '' &&
        event.open > 0 &&
        step?.kind === 'signoff' &&
        step.closesVisit === true
      );
    },
    hasInitials: ({ event }) => event.type === 'SIGN' && event.initials.trim() !== '',
  },
}).createMachine({
  id: 'visit',
  context: ({ input }) => ({
    ...input,
    pending: undefined,
    candidates: undefined,
    asking: undefined,
    correcting: undefined,
  }),
  initial: 'route',
  on: {
    NOTE: { guard: 'isOpen', actions: does(plans.note) },
    // Impressions leave the room while their times run: these three are taken after the visit is closed as well.
    ALARM_SEEN: { actions: does(plans.alarmSeen) },
    CLOCK_DONE: { guard: 'clockRuns', target: '.route', actions: does(plans.endClock) },
    TAKEN: { guard: 'isOut', actions: does(plans.takeOver) },
    FLAG: { guard: 'isOpen', target: '.route', actions: does(plans.answerFlag) },
  },
  states: {
    route: {
      always: [
        { guard: 'isClosed', target: 'closed' },
        { guard: 'isHeld', target: 'held' },
        { guard: 'hasCandidates', target: 'choosing' },
        { guard: 'hasPending', target: 'confirming' },
        { guard: 'isAsking', target: 'reasoning' },
        { guard: 'isCorrecting', target: 'correcting' },
        { guard: { type: 'isKind', params: { kind: 'check' } }, target: 'walking.checking' },
        { guard: { type: 'isKind', params: { kind: 'decision' } }, target: 'walking.deciding' },
        { guard: { type: 'isKind', params: { kind: 'reading' } }, target: 'walking.reading' },
        { guard: { type: 'isStage', params: { stage: 'mixing' } }, target: 'walking.clocking.mixing' },
        { guard: { type: 'isStage', params: { stage: 'seated' } }, target: 'walking.clocking.seated' },
        { guard: { type: 'isStage', params: { stage: 'out' } }, target: 'walking.clocking.out' },
        { guard: { type: 'isKind', params: { kind: 'clock' } }, target: 'walking.clocking.idle' },
        { guard: { type: 'isKind', params: { kind: 'signoff' } }, target: 'walking.signing' },
        { target: 'walking.informing' },
      ],
    },
    walking: {
      initial: 'informing',
      on: {
        BACK: { target: 'route', actions: does(plans.goBack) },
        HOLD: { target: 'route', actions: does(plans.hold) },
        SKIP: { target: 'route', actions: does(plans.askReasonToSkip) },
        GOTO: { guard: 'knownStep', target: 'route', actions: does(plans.goTo) },
        HEARD: { target: 'route', actions: does(plans.propose) },
        ASKED: { target: 'route', actions: does(plans.ask) },
        CORRECT: { target: 'route', actions: does(plans.beginCorrection) },
      },
      states: {
        informing: { on: { NEXT: { target: '#visit.route', actions: does(plans.goNext) } } },
        checking: {
          on: {
            NEXT: { guard: 'mayPass', target: '#visit.route', actions: does(plans.goNext) },
            ANSWER: [
              { guard: 'needsReason', target: '#visit.route', actions: does(plans.askReasonFor) },
              { guard: 'known', target: '#visit.route', actions: does(plans.answer) },
            ],
          },
        },
        deciding: {
          on: {
            NEXT: { guard: 'mayPass', target: '#visit.route', actions: does(plans.goNext) },
            ANSWER: [
              { guard: 'needsReason', target: '#visit.route', actions: does(plans.askReasonFor) },
              { guard: 'known', target: '#visit.route', actions: does(plans.answer) },
            ],
          },
        },
        reading: { on: { NEXT: { guard: 'hasKept', target: '#visit.route', actions: does(plans.goNext) } } },
        clocking: {
          initial: 'idle',
          states: {
            idle: {
              on: {
                START: { guard: 'hasMaterial', target: '#visit.route', actions: does(plans.startClock) },
                NEXT: { guard: 'isOptional', target: '#visit.route', actions: does(plans.goNext) },
              },
            },
            mixing: {
              on: {
                SEATED: {
                  guard: { type: 'isFlow', params: { flow: 'impression' } },
                  target: '#visit.route',
                  actions: does(plans.seat),
                },
                OUT: { target: '#visit.route', actions: does(plans.takeOut) },
                NEXT: {
                  guard: { type: 'isFlow', params: { flow: 'timed' } },
                  target: '#visit.route',
                  actions: does(plans.goNext),
                },
              },
            },
            seated: { on: { OUT: { target: '#visit.route', actions: does(plans.takeOut) } } },
            out: { on: { NEXT: { target: '#visit.route', actions: does(plans.goNext) } } },
          },
        },
        signing: {
          on: {
            SIGN: [
              { guard: 'mustOverrule', target: '#visit.route', actions: does(plans.askReasonToSign) },
              {
                guard: 'hasInitials',
                target: '#visit.route',
                actions: does((context, event) => plans.sign(context, event)),
              },
            ],
            NEXT: { guard: 'isSigned', target: '#visit.route', actions: does(plans.goNext) },
          },
        },
      },
    },
    confirming: {
      on: {
        YES: { target: 'route', actions: does((context) => plans.keep(context, 'yes')) },
        PAUSE_OVER: {
          guard: 'keepsByMovingOn',
          target: 'route',
          actions: does((context) => plans.keep(context, 'pause')),
        },
        NEXT: { guard: 'keepsByMovingOn', target: 'route', actions: does(plans.keepByMovingOn) },
        NO: { target: 'route', actions: does(plans.drop) },
        HEARD: { target: 'route', actions: does(plans.propose) },
        ASKED: { target: 'route', actions: does(plans.ask) },
        HOLD: { target: 'route', actions: does(plans.hold) },
      },
    },
    choosing: {
      on: {
        HEARD: { target: 'route', actions: does(plans.propose) },
        ASKED: { target: 'route', actions: does(plans.ask) },
        NO: { target: 'route', actions: does(() => ({ facts: [], patch: { candidates: undefined } })) },
        HOLD: { target: 'route', actions: does(plans.hold) },
      },
    },
    correcting: {
      on: {
        HEARD: { target: 'route', actions: does(plans.propose) },
        ASKED: { target: 'route', actions: does(plans.ask) },
        CANCEL: { target: 'route', actions: does(plans.drop) },
        NO: { target: 'route', actions: does(plans.drop) },
        BACK: { target: 'route', actions: does(plans.drop) },
        HOLD: { target: 'route', actions: does(plans.hold) },
      },
    },
    reasoning: {
      on: {
        REASON: { target: 'route', actions: does(plans.giveReason) },
        CANCEL: { target: 'route', actions: does(plans.drop) },
        NO: { target: 'route', actions: does(plans.drop) },
        BACK: { target: 'route', actions: does(plans.drop) },
        HOLD: { target: 'route', actions: does(plans.hold) },
      },
    },
    held: { on: { CARRY_ON: { target: 'route', actions: does(plans.carryOn) } } },
    closed: {},
  },
});
