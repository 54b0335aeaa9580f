/** All five visits walked as a whole: every step and every branch is reached, and none of them is a dead end. */
import { createActor } from 'xstate';
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../src/domain/case/facts.ts';
import { protocols } from '../../src/domain/protocol/index.ts';
import { isShown, retakeSteps } from '../../src/domain/protocol/path.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { answersOf } from '../../src/domain/protocol/validate.ts';
import type { VisitProtocol } from '../../src/domain/protocol/types.ts';
import { visitMachine } from '../../machines/visit.ts';
import type { VisitEvent } from '../../machines/visit.types.ts';
import { bench } from '../helpers/visit.ts';
import { freshInput, stuck, walkVisit, type Edge, type Walk } from '../helpers/walk-visit.ts';

const walks = protocols.map((protocol) => ({ name: protocol.id, protocol, walk: walkVisit(protocol) }));

const contextOf = (walk: Walk, key: string) => walk.states.get(key)!.context;

/** Edges along which an answer was written: given at once, or after its reason. */
function answeredAlong(walk: Walk, step: string, answer: string): readonly Edge[] {
  return walk.edges.filter((edge) => {
    const before = contextOf(walk, edge.from);
    if (before.step !== step || before.held || before.pending !== undefined) return false;
    if (edge.event.type === 'ANSWER')
      return edge.event.answer === answer && contextOf(walk, edge.to).asking === undefined;
    return edge.event.type === 'REASON' && before.asking?.for === 'answer' && before.asking.answer === answer;
  });
}

/** Facts the machine writes when it is sent these events from the start of the visit. */
function factsOf(protocol: VisitProtocol, events: readonly VisitEvent[]): readonly FactBody[] {
  const facts: FactBody[] = [];
  const actor = createActor(visitMachine, { input: freshInput(protocol) });
  actor.on('facts', (emitted) => void facts.push(...emitted.facts));
  actor.start();
  for (const event of events) actor.send(event);
  expect(actor.getSnapshot().status).not.toBe('error');
  return facts;
}

describe.each(walks)('$name', ({ protocol, walk }) => {
  it('comes to every step, in the mode of its kind', () => {
    const reached = new Set([...walk.states.values()].map(({ context }) => context.step));
    expect(protocol.steps.map((step) => step.id).filter((id) => !reached.has(id))).toEqual([]);
    const kinds = { inform: 'informing', check: 'checking', decision: 'deciding', reading: 'reading' } as const;
    for (const step of protocol.steps) {
      const values = [...walk.states.values()].filter(({ context }) => context.step === step.id).map((s) => s.value);
      if (step.kind === 'clock') {
        const stages = step.flow === 'impression' ? ['idle', 'mixing', 'seated', 'out'] : ['idle', 'mixing', 'out'];
        for (const stage of stages) expect(values).toContainEqual({ walking: { clocking: stage } });
      } else if (step.kind === 'signoff') expect(values).toContainEqual({ walking: 'signing' });
      else expect(values).toContainEqual({ walking: kinds[step.kind] });
    }
  });

  it('takes every branch: each answer of each question leads where the data says', () => {
    for (const step of protocol.steps) {
      for (const answer of answersOf(step)) {
        const along = answeredAlong(walk, step.id, answer.id);
        expect(along.length, `${step.id}: ${answer.id}`).toBeGreaterThan(0);
        for (const edge of along) {
          const after = edge.after.context;
          const onward = protocol.steps
            .slice(protocol.steps.indexOf(step) + 1)
            .find((one) => isShown(one, { ...contextOf(walk, edge.from).answers, [step.id]: answer.id }));
          expect(after.step).toBe(answer.goto ?? onward?.id);
          if (answer.retake === true) {
            const given = retakeSteps(protocol, answer.goto!, step.id);
            expect(Object.keys(after.answers).filter((id) => given.includes(id))).toEqual([]);
          } else expect(after.answers[step.id]).toBe(answer.id);
        }
      }
    }
  });

  it('can pass by every step with a reason, and be held and carried on at it', () => {
    for (const step of protocol.steps) {
      const at = walk.edges.filter((edge) => contextOf(walk, edge.from).step === step.id);
      const skipped = at.filter((e) => e.event.type === 'REASON' && contextOf(walk, e.from).asking?.for === 'skip');
      expect(skipped.length, step.id).toBeGreaterThan(0);
      const last = step === protocol.steps.at(-1);
      for (const e of skipped) expect(contextOf(walk, e.to).step === step.id).toBe(last);
      expect(at.some((e) => e.event.type === 'HOLD' && contextOf(walk, e.to).held)).toBe(true);
      expect(at.some((e) => e.event.type === 'CARRY_ON' && !contextOf(walk, e.to).held)).toBe(true);
    }
  });

  it('has no dead end: from everywhere the visit can still be closed', () => {
    expect([...walk.states.values()].some((state) => state.value === 'closed')).toBe(true);
    expect(stuck(walk, (state) => state.value === 'closed')).toEqual([]);
  });

  it('writes a fact for every answer, reading, clock and signature on the shortest ways to its close', () => {
    const closed = [...walk.states].filter(([, state]) => state.value === 'closed').map(([key]) => key);
    for (const key of closed) {
      const events = walk.pathTo(key);
      const facts = factsOf(protocol, events);
      const answered = events.filter((e, i) => e.type === 'ANSWER' && events[i + 1]?.type !== 'CANCEL').length;
      expect(facts.filter((f) => f.kind === 'answered')).toHaveLength(answered);
      expect(facts.filter((f) => f.kind === 'reading')).toHaveLength(events.filter((e) => e.type === 'YES').length);
      expect(facts.filter((f) => f.kind === 'clockStarted')).toHaveLength(
        events.filter((e) => e.type === 'START').length,
      );
      expect(facts.at(-1)).toEqual({ kind: 'visitClosed', visit: protocol.visit });
    }
  });

  it('a session comes to every step on the shortest way, and closes from there with a reason', () => {
    const nearest = new Map<string, readonly VisitEvent[]>();
    for (const [key, { context }] of walk.states) {
      if (context.pending !== undefined || context.asking !== undefined || context.held) continue;
      const way = walk.pathTo(key);
      const known = nearest.get(context.step);
      if (known === undefined || way.length < known.length) nearest.set(context.step, way);
    }
    expect(nearest.size).toBe(protocol.steps.length);
    for (const [step, way] of nearest) {
      const b = bench({ protocol, readings: readingDefs, practice: defaultPractice });
      for (const event of way) expect(b.session.send(event).trouble, `${step}: ${event.type}`).toBe('');
      expect(b.step()).toBe(step);
      for (const intent of [`goto:${protocol.steps.at(-1)!.id}`, 'sign:KV', 'reason:not-possible']) b.press(intent);
      expect(b.session.view().closed?.body.visit, step).toBe(protocol.visit);
      expect(b.summary().signed.at(-1)?.overruled).toBe('Not possible today');
    }
  });
});
