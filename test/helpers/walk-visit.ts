/** A real visit walked breadth first by the graph tools: every state its steps can put it in, and the shortest way there. */
import type { AnyStateMachine } from 'xstate';
import { getAdjacencyMap } from 'xstate/graph';
import { onOffer } from '../../src/domain/protocol/on-offer.ts';
import { visitInput } from '../../src/app/resume.ts';
import { emptyLog, readCase } from '../../src/domain/case/fold.ts';
import { stepOf } from '../../src/domain/protocol/path.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { Step, VisitProtocol } from '../../src/domain/protocol/types.ts';
import { visitMachine } from '../../machines/visit.ts';
import type { VisitContext, VisitEvent } from '../../machines/visit.types.ts';

/** Far more than the largest visit needs; one that outgrows it fails loudly. */
const LIMIT = 400_000;

export interface State {
  readonly status: string;
  readonly value: unknown;
  readonly context: VisitContext;
}
export interface Edge {
  readonly from: string;
  readonly to: string;
  readonly event: VisitEvent;
  /** What came of it, before it was taken for the same as an earlier state. */
  readonly after: State;
}
export interface Walk {
  readonly states: ReadonlyMap<string, State>;
  readonly edges: readonly Edge[];
  /** Events from the first step to a state, fewest first. */
  pathTo(key: string): readonly VisitEvent[];
}

/** The last place at which an answer still decides which steps are shown. */
function lastUses(protocol: VisitProtocol): ReadonlyMap<string, number> {
  const uses = new Map<string, number>();
  protocol.steps.forEach((step, at) => {
    for (const condition of [...(step.onlyIf === undefined ? [] : [step.onlyIf]), ...(step.notIf ?? [])])
      uses.set(condition.step, at);
  });
  return uses;
}

/** Two states are the same when the same may happen next: step, what stands open, and the answers still to be asked for. */
function keyOf(protocol: VisitProtocol): (state: State) => string {
  const uses = lastUses(protocol);
  const places = new Map(protocol.steps.map((step, at) => [step.id, at]));
  return ({ value, context }) => {
    const at = places.get(context.step) ?? 0;
    const step = stepOf(protocol, context.step);
    const ahead = [...uses].filter(([, last]) => last >= at).map(([id]) => context.answers[id] ?? '');
    const clock = step?.kind === 'clock' ? (context.clocks[step.clock] ?? 'idle') : '';
    const kept = (context.kept[context.step] ?? 0) > 0;
    const answered = context.answers[context.step] !== undefined;
    return JSON.stringify([value, context.step, clock, kept, answered, context.asking ?? '', ahead]);
  };
}

function ofStep(step: Step | undefined): readonly VisitEvent[] {
  switch (step?.kind) {
    case 'check':
    case 'decision':
      return step.answers.map((answer) => ({ type: 'ANSWER', answer: answer.id, source: 'touch' }));
    case 'reading': {
      const def = readingDefs.find((one) => one.id === step.reading);
      if (def === undefined) return [];
      const { id: reading, unit, expected } = def;
      const common = { text: 'a number', source: 'keypad', why: [], correction: false } as const;
      return [{ type: 'HEARD', reading, unit, value: expected[0], certainty: 'sure', ...common }];
    }
    case 'clock': {
      const offer = onOffer(step, defaultPractice)[0];
      if (offer === undefined) return [];
      const start: VisitEvent = 'mixS' in offer ? { type: 'START', material: offer } : { type: 'START', agent: offer };
      return [start, { type: 'SEATED' }, { type: 'OUT' }];
    }
    case 'signoff':
      return [
        { type: 'SIGN', initials: 'KV', open: 0 },
        { type: 'SIGN', initials: 'KV', open: 1 },
      ];
    default:
      return [];
  }
}

/**
 * What may happen at a state. What its step cannot take is left out, for the machine would only stay where it is; so is
 * going back, which would multiply every answer with every other: it is walked on a small visit and at random.
 */
function eventsAt({ context }: State): readonly VisitEvent[] {
  if (context.held) return [{ type: 'CARRY_ON' }];
  if (context.pending !== undefined) return [{ type: 'YES' }, { type: 'NO' }];
  if (context.asking !== undefined) return [{ type: 'REASON', reason: 'not-possible' }, { type: 'CANCEL' }];
  return [{ type: 'NEXT' }, { type: 'SKIP' }, { type: 'HOLD' }, ...ofStep(stepOf(context.protocol, context.step))];
}

/** The machine as it stands when a visit has just been opened. */
export function freshInput(protocol: VisitProtocol) {
  return visitInput(readCase(emptyLog('walk')), protocol, readingDefs);
}

export function walkVisit(protocol: VisitProtocol): Walk {
  const key = keyOf(protocol);
  // The graph tools are typed for machines that emit nothing.
  const map = getAdjacencyMap(
    visitMachine as unknown as AnyStateMachine,
    {
      input: freshInput(protocol),
      events: eventsAt,
      limit: LIMIT,
      serializeState: key,
      stopWhen: (state: State) => state.value === 'closed',
    } as never,
  ) as unknown as Record<string, { state: State; transitions: Record<string, { state: State; event: VisitEvent }> }>;
  const states = new Map(Object.entries(map).map(([name, { state }]) => [name, state]));
  const edges = Object.entries(map).flatMap(([from, { transitions }]) =>
    Object.values(transitions).map(({ state, event }): Edge => ({ from, to: key(state), event, after: state })),
  );
  const cameBy = shortestWays(states, edges);
  return { states, edges, pathTo: (target) => wayTo(target, cameBy) };
}

function grouped(edges: readonly Edge[], by: (edge: Edge) => string): ReadonlyMap<string, readonly Edge[]> {
  const groups = new Map<string, Edge[]>();
  for (const edge of edges) {
    const group = groups.get(by(edge));
    if (group === undefined) groups.set(by(edge), [edge]);
    else group.push(edge);
  }
  return groups;
}

function shortestWays(states: ReadonlyMap<string, State>, edges: readonly Edge[]): ReadonlyMap<string, Edge> {
  const leaving = grouped(edges, (edge) => edge.from);
  const first = states.keys().next().value ?? '';
  const cameBy = new Map<string, Edge>();
  const queue = [first];
  for (const name of queue) {
    for (const edge of leaving.get(name) ?? []) {
      if (edge.to === first || cameBy.has(edge.to)) continue;
      cameBy.set(edge.to, edge);
      queue.push(edge.to);
    }
  }
  return cameBy;
}

function wayTo(target: string, cameBy: ReadonlyMap<string, Edge>): readonly VisitEvent[] {
  const events: VisitEvent[] = [];
  for (let edge = cameBy.get(target); edge !== undefined; edge = cameBy.get(edge.from)) events.push(edge.event);
  return events.toReversed();
}

/** States from which no way leads to one of `goals`, going along the edges. */
export function stuck(walk: Walk, isGoal: (state: State) => boolean): readonly string[] {
  const arriving = grouped(walk.edges, (edge) => edge.to);
  const good = [...walk.states].filter(([, state]) => isGoal(state)).map(([name]) => name);
  const seen = new Set(good);
  const queue = [...good];
  for (const name of queue) {
    for (const { from } of arriving.get(name) ?? []) {
      if (seen.has(from)) continue;
      seen.add(from);
      queue.push(from);
    }
  }
  return [...walk.states.keys()].filter((name) => !seen.has(name));
}
