/**
 * The ear: what it may do now and in which order. It is open only while somebody wants it, on the screen that shows it,
 * in the manner chosen, and never while the app itself speaks. Devices and time are the app's: this machine is told what
 * happens and answers, by its state, whether the recogniser is to be open (`earWish`). Actions only assign.
 */
import { and, assign, not, setup, type SnapshotFrom } from 'xstate';
import type { ListeningContext, ListeningEvent, ListeningInput } from './listening.types.ts';

type Patch = Partial<ListeningContext>;
const to = (params: Patch) => ({ type: 'remember', params }) as const;

const FORGOTTEN: Patch = { cause: undefined, trying: false, refused: false };
const DROPPED: Patch = { ...FORGOTTEN, wanted: false, pushed: false, live: false };

/** Reasons to be shut although wanted, the strongest first. */
const closes = [
  { guard: 'isAway', target: '#listening.shut.elsewhere' },
  { guard: 'lacksReading', target: '#listening.shut.noReading' },
  { guard: 'lacksPush', target: '#listening.shut.notHeld' },
] as const;

const fails = [
  { guard: 'asksConsent', target: '#listening.asking.consent', actions: 'note' },
  { target: '#listening.blocked', actions: 'note' },
] as const;

/** Released: no more sound is taken, but what was said before is still worked out. */
const released = {
  guard: 'isPush',
  target: '#listening.thinking.finishing',
  actions: to({ pushed: false, live: false }),
} as const;

const isAway = ({ context }: { context: ListeningContext }) => context.away;
const lacksReading = ({ context }: { context: ListeningContext }) => context.mode === 'readings' && !context.reading;
const lacksPush = ({ context }: { context: ListeningContext }) => context.mode === 'push' && !context.pushed;

export const listeningMachine = setup({
  types: {
    context: {} as ListeningContext,
    input: {} as ListeningInput,
    events: {} as ListeningEvent,
  },
  actions: {
    remember: assign((_, patch: Patch) => patch),
    note: assign(({ event }) =>
      event.type === 'FAILED' ? { cause: event.cause, trying: event.trying, live: false } : {},
    ),
    setMode: assign(({ event }) => (event.type === 'MODE' ? { mode: event.mode, pushed: false } : {})),
  },
  guards: {
    isWanted: ({ context }) => context.wanted,
    isAway,
    lacksReading,
    lacksPush,
    mustClose: (args) => isAway(args) || lacksReading(args) || lacksPush(args),
    isPush: ({ context }) => context.mode === 'push',
    isLive: ({ context }) => context.live,
    isTrying: ({ context }) => context.trying,
    waits: ({ context }) => context.waits,
    lacksConsent: ({ context }) => context.cause === 'consent',
    asksConsent: ({ context, event }) => event.type === 'FAILED' && event.cause === 'consent' && !context.refused,
  },
}).createMachine({
  id: 'listening',
  context: ({ input }) => ({
    mode: input.mode,
    wanted: false,
    pushed: false,
    reading: false,
    waits: false,
    away: true,
    live: false,
    cause: undefined,
    trying: false,
    refused: false,
  }),
  initial: 'off',
  on: {
    DROP: { target: '.off', actions: to(DROPPED) },
    CONSENT_GIVEN: { actions: to({ refused: false }) },
    CONSENT_REFUSED: { target: '.off', actions: to(DROPPED) },
    MODE: { actions: 'setMode' },
    PUSH_DOWN: { guard: 'isPush', actions: to({ pushed: true }) },
    PUSH_UP: { actions: to({ pushed: false }) },
    CAME: { actions: to({ away: false }) },
    LEFT: { actions: to({ away: true }) },
    READING: { actions: to({ reading: true }) },
    NO_READING: { actions: to({ reading: false }) },
    PROPOSED: { actions: to({ waits: true }) },
    SETTLED: { actions: to({ waits: false }) },
  },
  states: {
    route: { always: [{ guard: not('isWanted'), target: 'off' }, ...closes, { target: 'starting' }] },
    off: {
      on: {
        WANT: { target: 'route', actions: to({ wanted: true }) },
        PUSH_DOWN: { guard: 'isPush', target: 'route', actions: to({ wanted: true, pushed: true }) },
      },
    },
    asking: {
      initial: 'consent',
      states: {
        consent: {
          on: {
            CONSENT_GIVEN: { target: '#listening.route', actions: to(FORGOTTEN) },
            // The words are on the device now: no consent is needed any more.
            RETRY: { target: '#listening.route', actions: to(FORGOTTEN) },
            CONSENT_REFUSED: { target: '#listening.blocked', actions: to({ refused: true, trying: false }) },
          },
        },
        microphone: {
          always: closes,
          on: {
            STARTED: { target: '#listening.hearing', actions: to({ live: true }) },
            ENDED: { target: '#listening.starting' },
            FAILED: fails,
            SPEAK: { target: '#listening.shut.speaking' },
          },
        },
      },
    },
    starting: {
      always: closes,
      on: {
        PROMPTED: { target: 'asking.microphone' },
        STARTED: { target: 'hearing', actions: to({ live: true }) },
        FAILED: fails,
        SPEAK: { target: 'shut.speaking' },
      },
    },
    hearing: {
      always: [...closes, { guard: 'waits', target: 'confirming' }],
      on: {
        HEARD: { target: 'thinking.working' },
        PUSH_UP: released,
        ENDED: { target: 'starting', actions: to({ live: false }) },
        FAILED: fails,
        SPEAK: { target: 'shut.speaking' },
      },
    },
    confirming: {
      always: [...closes, { guard: not('waits'), target: 'hearing' }],
      on: {
        HEARD: { target: 'thinking.working' },
        PUSH_UP: released,
        ENDED: { target: 'starting', actions: to({ live: false }) },
        FAILED: fails,
        SPEAK: { target: 'shut.speaking' },
      },
    },
    thinking: {
      initial: 'working',
      on: { FAILED: fails, SPEAK: { target: 'shut.speaking' } },
      states: {
        working: {
          on: {
            STARTED: { actions: to({ live: true }) },
            ENDED: { actions: to({ live: false }) },
            UNDERSTOOD: [{ guard: 'isLive', target: '#listening.hearing' }, { target: '#listening.starting' }],
            PUSH_UP: released,
          },
        },
        finishing: { on: { ENDED: { target: '#listening.route', actions: to({ live: false }) } } },
      },
    },
    shut: {
      entry: to({ live: false }),
      initial: 'speaking',
      states: {
        speaking: { always: closes, on: { SPOKEN: { target: '#listening.starting' } } },
        elsewhere: { always: { guard: not('isAway'), target: '#listening.route' } },
        noReading: {
          always: [
            { guard: 'isAway', target: 'elsewhere' },
            { guard: not('lacksReading'), target: '#listening.route' },
          ],
        },
        notHeld: {
          always: [
            { guard: 'isAway', target: 'elsewhere' },
            { guard: not('lacksPush'), target: '#listening.route' },
          ],
        },
      },
    },
    blocked: {
      always: { guard: and(['isTrying', 'mustClose']), target: 'route', actions: to(FORGOTTEN) },
      on: {
        WANT: { target: 'route', actions: to(FORGOTTEN) },
        RETRY: { target: 'route', actions: to(FORGOTTEN) },
        PUSH_DOWN: { guard: 'isPush', target: 'route', actions: to({ ...FORGOTTEN, pushed: true }) },
        CONSENT_GIVEN: { guard: 'lacksConsent', target: 'route', actions: to(FORGOTTEN) },
        CONSENT_REFUSED: { guard: 'lacksConsent', actions: to({ refused: true }) },
        STARTED: { guard: 'isTrying', target: 'hearing', actions: to({ ...FORGOTTEN, live: true }) },
        SPEAK: { guard: 'isTrying', target: 'shut.speaking' },
        FAILED: { actions: 'note' },
      },
    },
  },
});

export type ListeningSnapshot = SnapshotFrom<typeof listeningMachine>;

/** What the recogniser is to do: be open, take in what was said and then close, or be closed. */
export type EarWish = 'open' | 'finish' | 'closed';

export function earWish(snapshot: ListeningSnapshot): EarWish {
  if (snapshot.matches({ thinking: 'finishing' })) return 'finish';
  if (snapshot.matches('blocked')) return snapshot.context.trying ? 'open' : 'closed';
  const shut = snapshot.matches('shut') && !snapshot.matches({ shut: 'speaking' });
  return shut || snapshot.matches('off') || snapshot.matches({ asking: 'consent' }) ? 'closed' : 'open';
}
