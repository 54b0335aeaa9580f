/** A visit under a random hand: the real session, a clock that is moved, and reloads from what was kept. */
import assert from 'node:assert/strict';
import { nextVisit } from '../../../src/app/case-line.ts';
import { nextOpeningFact, openingFacts } from '../../../src/app/opening.ts';
import { ringUntil } from '../../../src/app/replay.ts';
import { visitInput } from '../../../src/app/resume.ts';
import { createSession, type Outcome, type Session } from '../../../src/app/session.ts';
import type { Fact } from '../../../src/domain/case/facts.ts';
import {
  addFact,
  addFacts,
  emptyLog,
  foldCase,
  isKind,
  liveOf,
  readCase,
  type CaseView,
} from '../../../src/domain/case/fold.ts';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import type { VisitProtocol } from '../../../src/domain/protocol/types.ts';
import { summarise } from '../../../src/domain/summary/summarise.ts';
import type { Summary } from '../../../src/domain/summary/types.ts';
import type { Alternative, Utterance } from '../../../src/interpret/types.ts';
import type { VisitContext, VisitEvent } from '../../../machines/visit.types.ts';
import { RecordModel } from './model.ts';

const START = Date.parse('2026-03-02T08:00:00Z');
const WHO = { clinician: 'KV', assistant: 'BR', language: 'en', app: 'test' } as const;

/** What was seen on the way, for the report. */
export interface Seen {
  walks: number;
  moves: number;
  facts: number;
  readings: number;
  refusals: number;
  undone: number;
  reloads: number;
  retakes: number;
  closed: number;
  readonly steps: Set<string>;
}

export const nothingSeen = (): Seen => ({
  walks: 0,
  moves: 0,
  facts: 0,
  readings: 0,
  refusals: 0,
  undone: 0,
  reloads: 0,
  retakes: 0,
  closed: 0,
  steps: new Set(),
});

const without = <T>(values: Readonly<Record<string, T>>, nothing: T) =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== nothing));

/** What the machine remembers; a clock that does not run and a count of none are nothing to remember. */
const memoryOf = ({ protocol: _protocol, ...memory }: VisitContext) => ({
  ...memory,
  kept: without(memory.kept, 0),
  clocks: without<string>(memory.clocks, 'idle'),
});

const waits = ({ pending, candidates, asking, correcting }: VisitContext) =>
  pending !== undefined || candidates !== undefined || asking !== undefined || correcting !== undefined;

export class Walker {
  readonly record = new RecordModel();
  readonly seen: Seen;
  protocol: VisitProtocol;
  session: Session;
  at = START;
  private rung = new Set<string>();

  constructor(visit: number, seen: Seen) {
    this.seen = seen;
    seen.walks += 1;
    this.protocol = protocols[0]!;
    this.record.add(
      openingFacts({
        head: { case: 'T-1', visit: 1, ...WHO },
        protocol: this.protocol,
        practice: defaultPractice,
        at: START,
        app: 'test',
        demo: false,
        caseId: 'c1',
      }),
    );
    this.session = this.open();
    for (let next = 2; next <= visit; next += 1) {
      this.close();
      this.openNext();
    }
  }

  private open(): Session {
    return createSession(
      {
        caseId: 'c1',
        protocol: this.protocol,
        readings: readingDefs,
        practice: defaultPractice,
        language: 'en',
        appVersion: 'test',
        now: () => this.at,
        append: (facts) => this.record.add(facts),
      },
      [...this.record.facts],
    );
  }

  view(): CaseView {
    return this.session.view();
  }

  summary(): Summary {
    return summarise(this.view(), {
      protocol: this.protocol,
      readings: readingDefs,
      practice: defaultPractice,
      now: this.at,
    });
  }

  private took(outcome: Outcome): void {
    this.seen.facts += outcome.facts.length;
    if (outcome.trouble !== '') this.seen.refusals += 1;
    for (const { body } of outcome.facts) {
      if (body.kind === 'reading') this.seen.readings += 1;
      if (body.kind === 'undone') this.seen.undone += 1;
      if (body.kind === 'attemptStarted') this.seen.retakes += 1;
    }
    this.seen.steps.add(`${this.protocol.id}/${this.session.context().step}`);
  }

  hear(source: Utterance['source'], text: string, alternatives: readonly Alternative[] = []): void {
    this.took(this.session.hear({ source, text, alternatives, at: this.at }));
  }

  press(intent: string): void {
    this.hear('touch', intent);
  }

  send(event: VisitEvent): void {
    this.took(this.session.send(event));
  }

  wait(ms: number): void {
    const until = this.at + ms;
    const { session, protocol, rung } = this;
    ringUntil({ session, protocol, rung, setClock: (at) => (this.at = Math.max(this.at, at)) }, until);
    this.at = until;
  }

  /** The page is closed and opened again: what was not kept is gone, everything else stands as it did. */
  reload(): void {
    const before = this.session.context();
    this.session = this.open();
    this.seen.reloads += 1;
    if (!waits(before)) assert.deepEqual(memoryOf(this.session.context()), memoryOf(before));
  }

  /** Whatever the visit stands at, a person can close it from here: give up what waits, go to the end, sign. */
  close(): void {
    const closed = () => this.view().closed !== undefined;
    if (this.session.context().held) this.press('carryOn');
    if (waits(this.session.context())) this.press('no');
    if (waits(this.session.context())) this.press('no');
    for (const intent of [`goto:${this.protocol.steps.at(-1)!.id}`, 'sign:KV']) if (!closed()) this.press(intent);
    if (!closed()) this.press('reason:not-possible');
    assert.ok(closed(), 'the visit can be closed from here');
    this.seen.closed += 1;
  }

  /** The next visit of the case, where one may be opened now. */
  openNext(): void {
    const visit = nextVisit(this.view());
    if (visit === undefined) return;
    this.protocol = protocols.findLast((protocol) => protocol.visit === visit)!;
    const view = this.view();
    this.record.add([nextOpeningFact({ view, protocol: this.protocol, ...WHO, at: this.at })]);
    this.rung = new Set();
    this.session = this.open();
  }

  /** After every move: nothing kept was lost or changed, and what counts is what the model says. */
  check(): void {
    const { facts } = this.view().log;
    assert.equal(facts.length, this.record.facts.length);
    for (let i = 0; i < facts.length; i += 1)
      if (facts[i] !== this.record.facts[i]) assert.fail(`fact ${i + 1} is not the one that was kept`);
    const live = new Map(liveOf(this.view(), 'reading').map(({ seq, body }) => [seq, body.value]));
    const believed = this.record.liveReadings();
    if (live.size !== believed.size || [...live].some(([seq, value]) => believed.get(seq) !== value))
      assert.deepEqual(live, believed);
    if (this.view().closed === undefined) {
      const { commands, answers } = this.session.expectation();
      assert.ok(commands.length + answers.length > 0, 'something can be said');
    }
  }

  /** At the end of a walk: the same view from any cut, the same memory from the facts, and a way to close. */
  checkEnd(cut: number): void {
    const facts: readonly Fact[] = this.record.facts;
    const whole = foldCase('c1', facts);
    assert.deepEqual(this.view(), whole);
    const at = cut % (facts.length + 1);
    const early = addFacts(emptyLog('c1'), facts.slice(0, at));
    assert.deepEqual(readCase(addFacts(early, facts.slice(at))), whole);
    let log = early;
    for (const fact of facts.slice(at)) log = addFact(log, fact);
    assert.deepEqual(readCase(log), whole);
    const context = this.session.context();
    const idle = { pending: undefined, candidates: undefined, asking: undefined, correcting: undefined };
    const fresh: VisitContext = { ...visitInput(whole, this.protocol, readingDefs), ...idle };
    if (!waits(context)) assert.deepEqual(memoryOf(context), memoryOf(fresh));
    if (this.view().closed === undefined) this.close();
    this.check();
    assert.equal(this.view().visits.length, facts.filter((fact) => isKind(fact, 'visitOpened')).length);
  }
}
