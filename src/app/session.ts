/**
 * One visit being run: utterance → interpret → machine → facts → view. Synchronous and free of devices, so that the
 * browser, the headless replay and the tests walk the same path.
 */
import { createActor, type Actor } from 'xstate';
import type { Fact, FactBody } from '../domain/case/facts.ts';
import { extendCase, foldCase, lastAct, type CaseView } from '../domain/case/fold.ts';
import { dayOf, printDay } from '../domain/measure/calendar.ts';
import { isExpired, lotText } from '../domain/protocol/lots.ts';
import { onOffer } from '../domain/protocol/on-offer.ts';
import { stepOf } from '../domain/protocol/path.ts';
import { allClocks } from '../domain/summary/clocks.ts';
import { agreedDay } from '../domain/summary/lab-standing.ts';
import { summarise } from '../domain/summary/summarise.ts';
import { interpretAddressed } from '../interpret/address.ts';
import type { Expectation, Utterance } from '../interpret/types.ts';
import { visitMachine } from '../../machines/visit.ts';
import type { VisitContext, VisitEvent } from '../../machines/visit.types.ts';
import { expectationOf, modeOf, type Surroundings } from './expectation.ts';
import { intentOf, touchIntent, type Intent } from './intents.ts';
import { plainFields, plainUtterance, TOO_LONG } from './plain-words.ts';
import { visitInput } from './resume.ts';
import type { Outcome, Session, SessionDeps } from './session.types.ts';
import { describeAct, readingLabel, withUnit, type Names } from './wording.ts';
import { howLongText } from './clock-words.ts';
import { keptAloud, readBack, undoneAloud } from './speech.ts';

export type { Outcome, Session, SessionDeps } from './session.types.ts';

const QUIET: Outcome = { said: '', trouble: '', speak: '', facts: [] };

class VisitSession implements Session {
  private readonly deps: SessionDeps;
  private current: CaseView;
  private actor: Actor<typeof visitMachine>;
  private written: Fact[] = [];
  private readonly choices = new Map<string, string>();

  constructor(deps: SessionDeps, facts: readonly Fact[]) {
    this.deps = deps;
    this.current = foldCase(deps.caseId, facts);
    this.actor = this.start();
  }

  private start(): Actor<typeof visitMachine> {
    const input = visitInput(this.current, this.deps.protocol, this.deps.readings);
    const actor = createActor(visitMachine, { input });
    actor.on('facts', (emitted) => {
      this.write(emitted.facts);
    });
    actor.start();
    return actor;
  }

  private names(): Names {
    return { protocol: this.deps.protocol, readings: this.deps.readings };
  }

  private write(bodies: readonly FactBody[]): void {
    if (bodies.length === 0) return;
    const first = this.current.log.facts.length + 1;
    const at = this.deps.now();
    const { caseId, protocol, appVersion } = this.deps;
    const facts = bodies.map((body, i): Fact => ({
      v: 1,
      caseId,
      seq: first + i,
      at,
      act: first,
      protocol: `${protocol.id}@${protocol.version}`,
      app: appVersion,
      body,
    }));
    this.current = extendCase(this.current, facts);
    this.written.push(...facts);
    this.deps.append(facts);
  }

  private around(): Surroundings {
    const { protocol, readings, practice, language } = this.deps;
    return { view: this.current, context: this.context(), protocol, readings, practice, language };
  }

  view(): CaseView {
    return this.current;
  }

  context(): VisitContext {
    return this.actor.getSnapshot().context;
  }

  expectation(): Expectation {
    return this.withMaterials(expectationOf(this.around()));
  }

  private withMaterials(expectation: Expectation): Expectation {
    const step = stepOf(this.deps.protocol, this.context().step);
    if (expectation.mode !== 'clock' || !expectation.commands.includes('start')) return expectation;
    const offers = onOffer(step, this.deps.practice);
    return { ...expectation, answers: offers.map((m) => ({ id: `material:${m.id}`, words: [m.name.toLowerCase()] })) };
  }

  chosen(): string | undefined {
    const step = stepOf(this.deps.protocol, this.context().step);
    if (step?.kind !== 'clock') return undefined;
    const offers = onOffer(step, this.deps.practice);
    const picked = this.choices.get(step.clock);
    if (picked !== undefined && offers.some((m) => m.id === picked)) return picked;
    return offers.length === 1 ? offers[0]?.id : this.usedBefore(offers.map((m) => m.id));
  }

  private usedBefore(ids: readonly string[]): string | undefined {
    for (const { body } of this.current.log.facts.toReversed()) {
      if (body.kind !== 'clockStarted') continue;
      const id = body.flow === 'impression' ? body.material.id : body.agent.id;
      if (ids.includes(id)) return id;
    }
    return undefined;
  }

  hear(given: Utterance, address = ''): Outcome {
    const utterance = plainUtterance(given);
    if (utterance === undefined) return { ...QUIET, trouble: TOO_LONG };
    const direct = utterance.source === 'touch' ? this.touched(utterance.text) : undefined;
    if (direct !== undefined) return direct;
    const expectation = this.expectation();
    const heard = interpretAddressed(utterance, expectation, address);
    const visit = this.current.visit?.body;
    const initials = { clinician: visit?.clinician ?? '', assistant: visit?.assistant ?? '' };
    const intent = intentOf(heard, { context: this.context(), expectation, utterance, initials });
    return { ...this.act(intent), heard };
  }

  private touched(text: string): Outcome | undefined {
    if (text.startsWith('material:')) return this.act({ kind: 'material', id: text.slice('material:'.length) });
    if (text.startsWith('labDue:')) return this.agreeDue(text.slice('labDue:'.length));
    if (text.startsWith('correct:')) return this.correct(Number(text.slice('correct:'.length)));
    if (text.startsWith('flagKeep:') || text.startsWith('flagAgain:')) return this.answerFlag(text);
    const event = touchIntent(text);
    return event === undefined ? undefined : this.send(event);
  }

  /** Agreed with the laboratory; also once the visit is closed, for it may only answer then. */
  private agreeDue(day: string): Outcome {
    const agreed = agreedDay(this.current, { day, today: this.today() });
    if (!agreed.ok) return { ...QUIET, trouble: agreed.text };
    return { ...this.record(agreed.body), said: describeAct([agreed.body], this.names()) };
  }

  private correct(seq: number): Outcome {
    if (!Number.isSafeInteger(seq) || this.current.log.facts[seq - 1] === undefined) {
      return { ...QUIET, trouble: 'There is no such entry.' };
    }
    const fact = this.current.log.facts[seq - 1];
    if (fact !== undefined && fact.seq < this.current.from) {
      return { ...QUIET, trouble: 'That entry belongs to an earlier visit. Write a note instead.' };
    }
    if (fact?.body.kind !== 'reading' || this.current.strikes.has(seq)) {
      return { ...QUIET, trouble: 'That entry is already struck through and cannot be corrected.' };
    }
    const { reading, value, unit } = fact.body;
    return this.send({ type: 'CORRECT', seq, reading, value, unit });
  }

  /** "flagKeep:ID|reason" or "flagAgain:ID". Only a flag that stands now can be answered. */
  private answerFlag(text: string): Outcome {
    const keep = text.startsWith('flagKeep:');
    const rest = text.slice(text.indexOf(':') + 1);
    const bar = keep ? rest.lastIndexOf('|') : rest.length;
    const id = rest.slice(0, bar < 0 ? rest.length : bar);
    const reason = bar < 0 ? '' : rest.slice(bar + 1).trim();
    const flag = this.summary().flags.find((f) => f.id === id);
    if (flag === undefined) return { ...QUIET, trouble: 'That disagreement no longer stands.' };
    if (keep && reason === '') return { ...QUIET, trouble: 'Keeping it needs a reason.' };
    const answer = keep ? 'keep' : 'measureAgain';
    return this.send({
      type: 'FLAG',
      flag: id,
      answer,
      reason,
      ...(flag.step === undefined ? {} : { step: flag.step }),
    });
  }

  private act(intent: Intent): Outcome {
    switch (intent.kind) {
      case 'event':
        return this.send(intent.event);
      case 'undo':
        return this.undo();
      case 'start':
        return this.startClock();
      case 'material':
        return this.choose(intent.id);
      case 'howLong':
        return { ...QUIET, speak: howLongText(this.clocks(), this.deps) };
      case 'sayAgain':
        return { ...QUIET, ...this.readBack() };
      case 'help':
        return { ...QUIET, said: 'The words that can be said now are at the foot of the screen.' };
      case 'refused':
        return { ...QUIET, trouble: intent.text };
      case 'nothing':
        return QUIET;
    }
  }

  private choose(id: string): Outcome {
    const step = stepOf(this.deps.protocol, this.context().step);
    const offer = onOffer(step, this.deps.practice).find((m) => m.id === id);
    if (step?.kind !== 'clock' || offer === undefined)
      return { ...QUIET, trouble: 'That material is not on offer at this step.' };
    this.choices.set(step.clock, id);
    const late = 'mixS' in offer && isExpired(offer, this.today());
    return { ...QUIET, said: `chosen: ${offer.name}`, trouble: late ? `Out of date: ${lotText(offer)}.` : '' };
  }

  private startClock(): Outcome {
    const step = stepOf(this.deps.protocol, this.context().step);
    const offer = onOffer(step, this.deps.practice).find((m) => m.id === this.chosen());
    if (step?.kind !== 'clock') return { ...QUIET, trouble: 'There is no clock to start at this step.' };
    if (offer === undefined) return { ...QUIET, trouble: 'Choose the material first.' };
    if ('mixS' in offer) return this.send({ type: 'START', material: offer, day: this.today() });
    return this.send({ type: 'START', agent: offer });
  }

  /** Of this visit, and what the visits before have left to be poured. */
  private clocks() {
    return allClocks(this.current, { protocol: this.deps.protocol, now: this.deps.now() });
  }

  private today(): string {
    const now = this.deps.now();
    return this.deps.day?.(now) ?? printDay(dayOf(now));
  }

  /** How many items stand open is known only here; the machine decides what follows from it. */
  private completed(event: VisitEvent): VisitEvent {
    if (event.type !== 'SIGN') return event;
    return { ...event, open: this.summary().open.length };
  }

  private summary() {
    const { protocol, readings, practice } = this.deps;
    return summarise(this.current, { protocol, readings, practice, now: this.deps.now() });
  }

  send(asked: VisitEvent): Outcome {
    this.written = [];
    const plain = plainFields(asked);
    if (plain === undefined) return { ...QUIET, trouble: TOO_LONG };
    const event = this.completed(plain);
    const snapshot = this.actor.getSnapshot();
    if (snapshot.status !== 'active' || !snapshot.can(event)) return { ...QUIET, trouble: this.refusal(event) };
    const waited = snapshot.context.pending;
    this.actor.send(event);
    const { pending } = this.context();
    if (pending !== undefined && pending !== waited) this.deps.waits?.(pending);
    const facts = this.written;
    const said = describeAct(
      facts.map((fact) => fact.body),
      this.names(),
    );
    const proposes = event.type === 'HEARD' || event.type === 'ASKED' || event.type === 'CORRECT';
    const kept = facts.some((fact) => fact.body.kind === 'reading');
    return { ...QUIET, said, facts, ...(proposes ? this.readBack() : kept ? this.aloud(facts, said) : {}) };
  }

  private readBack() {
    return readBack(this.context(), this.names(), this.deps.language);
  }

  private aloud(facts: readonly Fact[], said: string) {
    return keptAloud({ facts: facts.map((fact) => fact.body), said }, this.names(), this.deps.language);
  }

  private refusal(event: VisitEvent): string {
    const mode = modeOf(this.context());
    if (mode === 'closed') return 'The visit is closed. Nothing more can be written into it.';
    if (mode === 'held') return 'The visit is on hold. Carry on first.';
    if (event.type === 'HEARD' || event.type === 'ASKED') return 'No number can be taken just now.';
    if (event.type === 'REASON') return 'No reason is asked for just now.';
    return `That cannot be done at this step (${event.type.toLowerCase().replace('_', ' ')}).`;
  }

  undo(): Outcome {
    const { pending, candidates, asking, correcting } = this.context();
    if (pending !== undefined && candidates === undefined) {
      const outcome = this.send({ type: 'NO' });
      return {
        ...outcome,
        said: `Not kept: ${readingLabel(this.names(), pending.reading)} ${withUnit(pending.value, pending.unit)}`,
      };
    }
    if (candidates !== undefined || asking !== undefined || correcting !== undefined) {
      return { ...this.send({ type: 'NO' }), said: 'Given up. Nothing was written.' };
    }
    const last = lastAct(this.current);
    if (last === undefined) return { ...QUIET, trouble: 'There is nothing to undo.' };
    const what = describeAct(
      last.facts.map((fact) => fact.body),
      this.names(),
    );
    this.written = [];
    this.write([{ kind: 'undone', act: last.act, what }]);
    this.actor.stop();
    this.actor = this.start();
    const said = `Undone: ${what}`;
    const undone = { facts: last.facts.map((fact) => fact.body), said };
    return { ...QUIET, said, facts: this.written, ...undoneAloud(undone, this.names(), this.deps.language) };
  }

  record(body: FactBody): Outcome {
    this.written = [];
    const plain = plainFields(body);
    if (plain === undefined) return { ...QUIET, trouble: TOO_LONG };
    this.write([plain]);
    return { ...QUIET, facts: this.written };
  }
}

/** Starts or resumes a visit from the facts of its case. */
export function createSession(deps: SessionDeps, facts: readonly Fact[]): Session {
  return new VisitSession(deps, facts);
}
