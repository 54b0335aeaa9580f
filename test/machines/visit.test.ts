import { createActor, type AnyStateMachine } from 'xstate';
import { adjacencyMapToArray, getAdjacencyMap, getShortestPaths } from 'xstate/graph';
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../src/domain/case/facts.ts';
import { visitMachine } from '../../machines/visit.ts';
import type { VisitEvent, VisitInput } from '../../machines/visit.types.ts';
import { smallPractice, smallVisit, softMaterial } from '../helpers/small-visit.ts';

const input: VisitInput = {
  protocol: smallVisit,
  repeated: ['rest-height'],
  step: 'tell',
  answers: {},
  kept: {},
  clocks: {},
  held: false,
  closed: false,
};

const heard = (reading: string, value: number, certainty: 'sure' | 'check'): VisitEvent => ({
  type: 'HEARD',
  reading,
  value,
  unit: 'mm',
  text: 'x',
  source: 'voice',
  certainty,
  why: [],
  correction: false,
});

const events: VisitEvent[] = [
  { type: 'NEXT' },
  { type: 'BACK' },
  { type: 'YES' },
  { type: 'NO' },
  { type: 'PAUSE_OVER' },
  { type: 'HOLD' },
  { type: 'CARRY_ON' },
  { type: 'SKIP' },
  { type: 'CANCEL' },
  heard('width', 5800, 'sure'),
  heard('rest-height', 6250, 'check'),
  { type: 'ASKED', reading: 'width', candidates: [5000, 1500], text: 'fifty' },
  { type: 'ANSWER', answer: 'yes', source: 'touch' },
  { type: 'ANSWER', answer: 'no', source: 'touch' },
  { type: 'ANSWER', answer: 'keep', source: 'touch' },
  { type: 'ANSWER', answer: 'again', source: 'touch' },
  { type: 'ANSWER', answer: 'made', source: 'touch' },
  { type: 'ANSWER', answer: 'unheard-of', source: 'touch' },
  { type: 'REASON', reason: 'notNeeded' },
  { type: 'NOTE', text: 'n', source: 'voice' },
  { type: 'CORRECT', seq: 3, reading: 'width', value: 5800, unit: 'mm' },
  { type: 'GOTO', step: 'width' },
  { type: 'GOTO', step: 'nowhere' },
  { type: 'START', material: softMaterial, agent: smallPractice.disinfectants[0]! },
  { type: 'SEATED' },
  { type: 'OUT' },
  { type: 'CLOCK_DONE', clock: 'bath' },
  { type: 'TAKEN', clock: 'dip' },
  { type: 'ALARM_SEEN', clock: 'dip/1', phase: 'working' },
  { type: 'FLAG', flag: 'f', answer: 'measureAgain', reason: '', step: 'width' },
  { type: 'SIGN', initials: 'AB', open: 0 },
  { type: 'SIGN', initials: 'AB', open: 2 },
  { type: 'SIGN', initials: ' ', open: 0 },
];

const options = {
  input,
  events,
  limit: 400_000,
  // The graph ends where the visit does; what a closed visit still takes is looked at in test/promises/clocks-after.test.ts.
  stopWhen: (snapshot: { value: unknown }) => snapshot.value === 'closed',
  serializeState: (snapshot: { value: unknown; context: VisitInput & Record<string, unknown> }) => {
    const { value, context: c } = snapshot;
    const step = smallVisit.steps.find((one) => one.id === c.step);
    const here = [
      c.step,
      c.answers[c.step],
      (c.kept[c.step] ?? 0) > 0,
      step?.kind === 'clock' ? c.clocks[step.clock] : '',
    ];
    const pending = c['pending'] as { reading: string; certainty: string } | undefined;
    return JSON.stringify([
      value,
      ...here,
      c.answers['ask'],
      pending?.reading,
      pending?.certainty,
      c['asking'],
      c['correcting'] !== undefined,
    ]);
  },
};

// The graph tools are typed for machines that emit nothing.
const graphMachine = visitMachine as unknown as AnyStateMachine;

const states = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : Object.entries(value as object).flatMap(([k, v]) => states(v).map((s) => `${k}.${s}`));

describe('the visit machine', () => {
  const map = getAdjacencyMap(graphMachine, options as never);
  const edges = adjacencyMapToArray(map);

  it('reaches every state a step can put it in', () => {
    const reached = new Set(Object.values(map).flatMap(({ state }) => states(state.value)));
    const declared = [
      'walking.informing',
      'walking.checking',
      'walking.deciding',
      'walking.reading',
      'walking.clocking.idle',
      'walking.clocking.mixing',
      'walking.clocking.seated',
      'walking.clocking.out',
      'walking.signing',
      'confirming',
      'choosing',
      'correcting',
      'reasoning',
      'held',
      'closed',
    ];
    expect([...reached].sort()).toEqual(declared.sort());
  });

  it('has no dead end: from every state the visit can still be closed', () => {
    const closing = new Set(
      Object.entries(map)
        .filter(([, v]) => v.state.value === 'closed')
        .map(([k]) => k),
    );
    let grew = closing.size > 0;
    expect(grew).toBe(true);
    const key = (s: unknown) => options.serializeState(s as never);
    while (grew) {
      grew = false;
      for (const edge of edges) {
        const from = key(edge.state);
        if (!closing.has(from) && closing.has(key(edge.nextState))) {
          closing.add(from);
          grew = true;
        }
      }
    }
    const stuck = Object.keys(map).filter((k) => !closing.has(k));
    expect(stuck).toEqual([]);
  });

  it('takes every edge without an error, and every fact names the step that produced it', () => {
    let taken = 0;
    for (const edge of edges) {
      const snapshot = edge.state as never;
      const actor = createActor(visitMachine, { input, snapshot });
      const before = (edge.state as unknown as { context: VisitInput }).context.step;
      const facts: FactBody[] = [];
      actor.on('facts', (e) => {
        facts.push(...e.facts);
      });
      actor.start();
      actor.send(edge.event as VisitEvent);
      expect(actor.getSnapshot().status).not.toBe('error');
      for (const fact of facts) {
        if (fact.kind === 'moved' && fact.why !== 'retake') expect(fact.from).toBe(before);
        if (fact.kind === 'answered' || fact.kind === 'skipped' || fact.kind === 'note') expect(fact.step).toBe(before);
      }
      actor.stop();
      taken += 1;
    }
    expect(taken).toBe(edges.length);
    expect(taken).toBeGreaterThan(500);
  }, 20_000);

  it('uses every event it knows on some path', () => {
    const used = new Set(
      edges
        .filter((e) => options.serializeState(e.state as never) !== options.serializeState(e.nextState as never))
        .map((e) => e.event.type),
    );
    const silent = ['NOTE', 'ALARM_SEEN', 'TAKEN'];
    expect([...new Set(events.map((e) => e.type))].filter((t) => !used.has(t as never) && !silent.includes(t))).toEqual(
      [],
    );
  });

  it('finds a way to close from the first step', () => {
    const paths = getShortestPaths(graphMachine, {
      ...options,
      toState: (s: { value: unknown }) => s.value === 'closed',
    } as never);
    expect(paths.length).toBeGreaterThan(0);
  });
});
