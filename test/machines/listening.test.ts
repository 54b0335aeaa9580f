import { createActor, getNextSnapshot, type AnyStateMachine } from 'xstate';
import { adjacencyMapToArray, getAdjacencyMap, getShortestPaths } from 'xstate/graph';
import { describe, expect, it } from 'vitest';
import { earWish, listeningMachine, type ListeningSnapshot } from '../../machines/listening.ts';
import type { EarMode, ListeningEvent } from '../../machines/listening.types.ts';

const modes: readonly EarMode[] = ['always', 'readings', 'push'];

const plain = [
  ...(['WANT', 'DROP', 'RETRY', 'CONSENT_GIVEN', 'CONSENT_REFUSED', 'PUSH_DOWN', 'PUSH_UP', 'CAME', 'LEFT'] as const),
  ...(['READING', 'NO_READING', 'PROPOSED', 'SETTLED', 'PROMPTED', 'STARTED', 'ENDED'] as const),
  ...(['HEARD', 'UNDERSTOOD', 'SPEAK', 'SPOKEN'] as const),
];
const events: ListeningEvent[] = [
  ...plain.map((type) => ({ type })),
  ...modes.map((mode): ListeningEvent => ({ type: 'MODE', mode })),
  { type: 'FAILED', cause: 'consent', trying: false },
  { type: 'FAILED', cause: 'denied', trying: false },
  { type: 'FAILED', cause: 'unreachable', trying: true },
];

const key = (snapshot: unknown): string => {
  const { value, context } = snapshot as ListeningSnapshot;
  return JSON.stringify([value, context]);
};
const options = { input: { mode: 'always' }, events, limit: 200_000, serializeState: key };
const graphMachine = listeningMachine as unknown as AnyStateMachine;
const map = getAdjacencyMap(graphMachine, options as never);
const edges = adjacencyMapToArray(map);
const asSnapshot = (state: unknown) => state as ListeningSnapshot;

const paths = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : Object.entries(value as object).flatMap(([k, v]) => paths(v).map((s) => `${k}.${s}`));

const declared = [
  'off',
  'asking.consent',
  'asking.microphone',
  'starting',
  'hearing',
  'confirming',
  'thinking.working',
  'thinking.finishing',
  'shut.speaking',
  'shut.elsewhere',
  'shut.noReading',
  'shut.notHeld',
  'blocked',
];

/** Keys of all states from which a state that satisfies `goal` can be reached. */
function reaching(goal: (snapshot: ListeningSnapshot) => boolean): ReadonlySet<string> {
  const found = new Set(
    Object.values(map)
      .filter(({ state }) => goal(asSnapshot(state)))
      .map(({ state }) => key(state)),
  );
  for (let size = -1; size !== found.size;) {
    size = found.size;
    for (const edge of edges) if (found.has(key(edge.nextState))) found.add(key(edge.state));
  }
  return found;
}

const stuck = (goal: (snapshot: ListeningSnapshot) => boolean) => {
  const able = reaching(goal);
  return Object.values(map)
    .map(({ state }) => key(state))
    .filter((k) => !able.has(k));
};

/** The state after these events, from the start. */
function after(mode: EarMode, ...given: (ListeningEvent | (typeof plain)[number])[]): ListeningSnapshot {
  const actor = createActor(listeningMachine, { input: { mode } });
  actor.start();
  for (const event of given) actor.send(typeof event === 'string' ? { type: event } : event);
  const snapshot = actor.getSnapshot();
  actor.stop();
  return snapshot;
}
const at = (...given: Parameters<typeof after>) => paths(after(...given).value)[0];
const refused: ListeningEvent = { type: 'FAILED', cause: 'consent', trying: false };
const denied: ListeningEvent = { type: 'FAILED', cause: 'denied', trying: false };
const unreachable: ListeningEvent = { type: 'FAILED', cause: 'unreachable', trying: true };

describe('the listening machine', () => {
  it('reaches every state it declares, and rests in no other', () => {
    const reached = new Set(Object.values(map).flatMap(({ state }) => paths(state.value)));
    expect([...reached].sort()).toEqual([...declared].sort());
  });

  it('has no dead end: from everywhere the ear can still hear, and can still be switched off', () => {
    expect(stuck((snapshot) => snapshot.matches('hearing'))).toEqual([]);
    expect(stuck((snapshot) => snapshot.matches('off'))).toEqual([]);
  });

  it('takes every edge without an error, and arrives where the graph says', () => {
    const wrong = edges.filter((edge) => {
      const next = getNextSnapshot(listeningMachine, asSnapshot(edge.state), edge.event as ListeningEvent);
      return next.status !== 'active' || key(next) !== key(edge.nextState);
    });
    expect(wrong).toEqual([]);
    expect(edges.length).toBeGreaterThan(10_000);
  });

  it('uses every event it knows', () => {
    const used = new Set(edges.filter((e) => key(e.state) !== key(e.nextState)).map((e) => e.event.type));
    expect([...new Set(events.map((e) => e.type))].filter((type) => !used.has(type))).toEqual([]);
  });

  it('finds a way to every state, and the longest is short', () => {
    const found = getShortestPaths(graphMachine, options as never);
    const way = new Map<string, number>();
    for (const { state, weight } of found)
      for (const path of paths(state.value)) way.set(path, Math.min(weight, way.get(path) ?? Infinity));
    expect([...way.keys()].sort()).toEqual([...declared].sort());
    expect(Math.max(...way.values())).toBeLessThanOrEqual(6);
  });

  const openStates = Object.values(map)
    .map(({ state }) => asSnapshot(state))
    .filter((snapshot) => earWish(snapshot) === 'open');

  it('never wishes the recogniser open unless a person wants it and can see it', () => {
    // What was heard may be worked out to its end; nothing else stays open on another screen.
    const wrong = openStates.filter(
      (one) => !one.context.wanted || (one.context.away && !one.matches({ thinking: 'working' })),
    );
    expect(wrong.map(key)).toEqual([]);
    expect(openStates.length).toBeGreaterThan(100);
  });

  it('keeps to the manner chosen: open only for a reading, or only while held', () => {
    const steady = openStates.filter((one) => !one.matches('thinking')).map(({ context }) => context);
    expect(steady.filter(({ mode, reading }) => mode === 'readings' && !reading)).toEqual([]);
    expect(steady.filter(({ mode, pushed }) => mode === 'push' && !pushed)).toEqual([]);
    expect(new Set(steady.map(({ mode }) => mode)).size).toBe(3);
  });
});

describe('the ear, in the order of a visit', () => {
  const open = ['CAME', 'WANT', 'STARTED'] as const;

  it('hears, thinks, waits for a yes, and hears again', () => {
    expect(at('always', ...open)).toBe('hearing');
    expect(at('always', ...open, 'HEARD')).toBe('thinking.working');
    expect(at('always', ...open, 'HEARD', 'PROPOSED', 'UNDERSTOOD')).toBe('confirming');
    expect(at('always', ...open, 'PROPOSED', 'HEARD', 'SETTLED', 'UNDERSTOOD')).toBe('hearing');
  });

  it('is shut while the app speaks and opens again after it, to the question it left', () => {
    const speaking = [...open, 'PROPOSED', 'SPEAK'] as const;
    expect(at('always', ...speaking)).toBe('shut.speaking');
    expect(at('always', ...speaking, 'SPOKEN')).toBe('starting');
    expect(at('always', ...speaking, 'SPOKEN', 'STARTED')).toBe('confirming');
  });

  it('asks for consent once; after a no it stays closed until it is wanted again', () => {
    expect(at('always', 'CAME', 'WANT', refused)).toBe('asking.consent');
    expect(at('always', 'CAME', 'WANT', refused, 'CONSENT_GIVEN')).toBe('starting');
    const no = ['CAME', 'WANT', refused, 'CONSENT_REFUSED'] as const;
    expect(at('always', ...no)).toBe('blocked');
    expect(at('always', ...no, 'READING', 'LEFT', 'CAME')).toBe('blocked');
    expect(at('always', ...no, 'WANT', refused)).toBe('asking.consent');
    expect(at('always', ...no, 'CONSENT_GIVEN')).toBe('starting');
    expect(at('always', 'CAME', 'WANT', refused, 'RETRY')).toBe('starting');
  });

  it('closes at once when consent is taken back', () => {
    expect(at('always', ...open, 'CONSENT_REFUSED')).toBe('off');
    expect(at('always', ...open, 'HEARD', 'CONSENT_REFUSED')).toBe('off');
  });

  it('with the microphone denied is blocked, and tries again when asked', () => {
    expect(at('always', 'CAME', 'WANT', 'PROMPTED', denied)).toBe('blocked');
    expect(at('always', 'CAME', 'WANT', denied, 'RETRY')).toBe('starting');
    expect(at('always', 'CAME', 'WANT', denied, 'SPEAK')).toBe('blocked');
  });

  it('recovers by itself when the recogniser does', () => {
    const lost = [...open, unreachable] as const;
    expect(at('always', ...lost)).toBe('blocked');
    expect(earWish(after('always', ...lost))).toBe('open');
    expect(at('always', ...lost, 'STARTED')).toBe('hearing');
    expect(at('always', ...lost, 'SPEAK', 'SPOKEN')).toBe('starting');
  });

  it('between two sessions of the recogniser says that it starts, not that it hears', () => {
    expect(at('always', ...open, 'ENDED')).toBe('starting');
    expect(at('always', ...open, 'HEARD', 'ENDED', 'UNDERSTOOD')).toBe('starting');
  });

  it('only at readings: opens with the reading, shuts with it', () => {
    expect(at('readings', 'CAME', 'WANT')).toBe('shut.noReading');
    expect(at('readings', 'CAME', 'WANT', 'READING')).toBe('starting');
    expect(at('readings', 'READING', ...open, 'NO_READING')).toBe('shut.noReading');
    expect(at('readings', 'READING', ...open, 'HEARD', 'NO_READING', 'UNDERSTOOD')).toBe('shut.noReading');
  });

  it('push-to-talk: opens while held, works out what was said after the release, then shuts', () => {
    const held = ['CAME', 'PUSH_DOWN', 'STARTED'] as const;
    expect(at('push', 'CAME', 'WANT')).toBe('shut.notHeld');
    expect(at('push', ...held)).toBe('hearing');
    expect(at('push', 'CAME', 'PUSH_DOWN', 'PUSH_UP')).toBe('shut.notHeld');
    expect(at('push', ...held, 'PUSH_UP')).toBe('thinking.finishing');
    expect(earWish(after('push', ...held, 'PUSH_UP'))).toBe('finish');
    expect(at('push', ...held, 'PUSH_UP', 'HEARD', 'UNDERSTOOD')).toBe('thinking.finishing');
    expect(at('push', ...held, 'PUSH_UP', 'HEARD', 'ENDED')).toBe('shut.notHeld');
    expect(at('push', ...held, 'PUSH_UP', 'PUSH_DOWN', 'ENDED')).toBe('starting');
  });

  it('released while the app speaks: does not open after it', () => {
    expect(at('push', 'CAME', 'PUSH_DOWN', 'STARTED', 'SPEAK', 'PUSH_UP')).toBe('shut.notHeld');
  });

  it('in the other manners the key opens nothing', () => {
    expect(at('always', 'CAME', 'PUSH_DOWN')).toBe('off');
    expect(at('readings', 'CAME', 'WANT', 'PUSH_DOWN')).toBe('shut.noReading');
  });

  it('is shut on every screen that does not show it', () => {
    expect(at('always', ...open, 'LEFT')).toBe('shut.elsewhere');
    expect(at('always', ...open, 'LEFT', 'CAME')).toBe('starting');
    expect(at('always', 'WANT')).toBe('shut.elsewhere');
  });
});
