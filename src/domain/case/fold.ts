/**
 * Facts → CaseView. The log only grows; what is struck, where the visit stands and which readings count are worked out
 * from it here and nowhere else, so folding a prefix and then the rest gives the same view as folding all at once.
 */
import type { Fact, FactBody, FactKind } from './facts.ts';

export type StrikeWhy = 'corrected' | 'undone' | 'newAttempt';
export interface Strike {
  readonly at: number;
  readonly why: StrikeWhy;
  /** seq of the fact that struck it. */
  readonly by: number;
}

export interface CaseLog {
  readonly caseId: string;
  readonly facts: readonly Fact[];
  /** act → seq of the fact that took it back. */
  readonly undone: ReadonlyMap<number, number>;
}

export type FactOf<K extends FactKind> = Omit<Fact, 'body'> & { readonly body: Extract<FactBody, { kind: K }> };

/** One visit of the case, from its opening to the next one's. Visit 5 may come several times. */
export interface VisitSpan {
  readonly opened: FactOf<'visitOpened'>;
  readonly closed?: FactOf<'visitClosed'>;
  /** Latest live answers of that visit, as it ended. */
  readonly answers: ReadonlyMap<string, FactOf<'answered'>>;
}

/** The case as it stands, seen from its latest visit: step, answers and marks are that visit's alone. */
export interface CaseView {
  readonly log: CaseLog;
  readonly strikes: ReadonlyMap<number, Strike>;
  readonly opened?: FactOf<'caseOpened'>;
  readonly visit?: FactOf<'visitOpened'>;
  readonly closed?: FactOf<'visitClosed'>;
  /** Step the visit stands at; '' before the first move. */
  readonly step: string;
  readonly held: boolean;
  /** Latest live answer of each step. */
  readonly answers: ReadonlyMap<string, FactOf<'answered'>>;
  /** All visits, oldest first; the last one is the current one. */
  readonly visits: readonly VisitSpan[];
  /** seq from which the current visit is written. */
  readonly from: number;
  /** seq of a reading → place of its visit in `visits`. */
  readonly visitOf: ReadonlyMap<number, number>;
  /** seq of a reading → what was in the mouth, where its step asked for that. */
  readonly basesOf: ReadonlyMap<number, string>;
  /** seq of a reading → set of skin marks of its visit that it was read between: 0 before any marks, then 1, 2 … */
  readonly markSetOf: ReadonlyMap<number, number>;
  readonly markSets: number;
  /** Latest answer of each "what is in the mouth" question, also one given up with its attempt. */
  readonly bases: ReadonlyMap<string, string>;
}

/** Which question says what was in the mouth while a height was read. */
export const BASES_STEP: Readonly<Record<string, string>> = {
  'rest-height': 'bases-rest',
  'closed-height': 'bases-closed',
};

/** Step whose answer "made" begins a new set of skin marks. */
export const MARKS_STEP = 'marks';

/** The log of a case before its first fact. */
export function emptyLog(caseId: string): CaseLog {
  return { caseId, facts: [], undone: new Map() };
}

/** The log with one more fact. */
export function addFact(log: CaseLog, fact: Fact): CaseLog {
  const undone = fact.body.kind === 'undone' ? new Map(log.undone).set(fact.body.act, fact.seq) : log.undone;
  return { caseId: log.caseId, facts: [...log.facts, fact], undone };
}

function withUndone(before: CaseLog['undone'], facts: readonly Fact[]): CaseLog['undone'] {
  const undone = new Map(before);
  for (const fact of facts) if (fact.body.kind === 'undone') undone.set(fact.body.act, fact.seq);
  return undone;
}

/** The log with many more facts, copying once. */
export function addFacts(log: CaseLog, facts: readonly Fact[]): CaseLog {
  const undone = facts.some((fact) => fact.body.kind === 'undone') ? withUndone(log.undone, facts) : log.undone;
  return { caseId: log.caseId, facts: [...log.facts, ...facts], undone };
}

/** Narrows a fact to one kind. */
export function isKind<K extends FactKind>(fact: Fact, kind: K): fact is FactOf<K> {
  return fact.body.kind === kind;
}

const NEVER_UNDONE: ReadonlySet<FactKind> = new Set([
  'caseOpened',
  'visitOpened',
  'undone',
  'rang',
  'alarmSeen',
  // A pause is over when it is over; undo reaches past it to what was written.
  'held',
  'carriedOn',
]);

/** Acts that moved nothing and wrote nothing a person would take back. */
export function undoable(fact: Fact): boolean {
  return !NEVER_UNDONE.has(fact.body.kind);
}

const AT_THE_BENCH: ReadonlySet<FactKind> = new Set(['benchDone', 'benchQuestion', 'benchAnswer', 'workReturned']);

/** Written between clinic and laboratory, not by the visit: "undo" at the chair never reaches it. */
export function ofTheBench({ body }: Fact): boolean {
  return AT_THE_BENCH.has(body.kind) || (body.kind === 'takenOver' && body.by !== undefined);
}

function strikesOf(log: CaseLog): Map<number, Strike> {
  const strikes = new Map<number, Strike>();
  const atOf = (seq: number) => log.facts[seq - 1]?.at ?? 0;
  for (const fact of log.facts) {
    const by = log.undone.get(fact.act);
    if (by !== undefined && undoable(fact)) strikes.set(fact.seq, { at: atOf(by), why: 'undone', by });
  }
  for (const fact of log.facts) {
    if (strikes.get(fact.seq)?.why === 'undone') continue;
    if (isKind(fact, 'reading') && fact.body.corrects !== undefined && !strikes.has(fact.body.corrects)) {
      strikes.set(fact.body.corrects, { at: fact.at, why: 'corrected', by: fact.seq });
    }
    if (isKind(fact, 'attemptStarted')) strikeAttempt(log, fact, strikes);
  }
  return strikes;
}

function strikeAttempt(log: CaseLog, started: FactOf<'attemptStarted'>, strikes: Map<number, Strike>): void {
  const steps = new Set(started.body.steps);
  // Step ids recur in later visits: a new attempt gives up only what its own visit wrote.
  const from = log.facts.findLastIndex((fact) => fact.seq < started.seq && isKind(fact, 'visitOpened'));
  for (const fact of log.facts.slice(Math.max(0, from), started.seq - 1)) {
    const body = fact.body;
    const step = 'step' in body ? body.step : '';
    const belongs = steps.has(step);
    const kinds =
      body.kind === 'reading' || body.kind === 'answered' || body.kind === 'clockStarted' || body.kind === 'skipped';
    if (belongs && kinds && !strikes.has(fact.seq)) {
      strikes.set(fact.seq, { at: started.at, why: 'newAttempt', by: started.seq });
    }
  }
}

interface Pass {
  opened?: FactOf<'caseOpened'>;
  visit?: FactOf<'visitOpened'>;
  closed?: FactOf<'visitClosed'>;
  step: string;
  held: boolean;
  answers: Map<string, FactOf<'answered'>>;
  readonly visits: {
    opened: FactOf<'visitOpened'>;
    closed?: FactOf<'visitClosed'>;
    answers: Map<string, FactOf<'answered'>>;
  }[];
  from: number;
  readonly visitOf: Map<number, number>;
  readonly markSetOf: Map<number, number>;
  readonly basesOf: Map<number, string>;
  /** Latest answer of each "what is in the mouth" question, also one given up with its attempt. */
  readonly bases: Map<string, string>;
  markSets: number;
}

function newPass(): Pass {
  return {
    step: '',
    held: false,
    answers: new Map(),
    visits: [],
    from: 1,
    visitOf: new Map(),
    markSetOf: new Map(),
    basesOf: new Map(),
    bases: new Map(),
    markSets: 0,
  };
}

/** A correction is the same measurement read rightly: it stays with the marks, bases and visit of its original. */
function passReading(fact: FactOf<'reading'>, pass: Pass): void {
  const { corrects, reading } = fact.body;
  const from = corrects ?? fact.seq;
  const basesStep = BASES_STEP[reading];
  const bases = pass.basesOf.get(from) ?? (basesStep === undefined ? undefined : pass.bases.get(basesStep));
  pass.markSetOf.set(fact.seq, pass.markSetOf.get(from) ?? pass.markSets);
  pass.visitOf.set(fact.seq, pass.visitOf.get(from) ?? Math.max(0, pass.visits.length - 1));
  if (bases !== undefined) pass.basesOf.set(fact.seq, bases);
}

function passVisit(fact: FactOf<'visitOpened'>, pass: Pass): void {
  pass.visit = fact;
  delete pass.closed;
  pass.step = '';
  pass.held = false;
  pass.answers = new Map();
  pass.bases.clear();
  pass.markSets = 0;
  pass.from = fact.seq;
  pass.visits.push({ opened: fact, answers: pass.answers });
}

function passClosed(fact: FactOf<'visitClosed'>, pass: Pass): void {
  pass.closed = fact;
  const span = pass.visits.at(-1);
  if (span !== undefined) span.closed = fact;
}

function passLive(fact: Fact, pass: Pass): void {
  if (isKind(fact, 'caseOpened')) pass.opened = fact;
  else if (isKind(fact, 'visitOpened')) passVisit(fact, pass);
  else if (isKind(fact, 'visitClosed')) passClosed(fact, pass);
  else if (isKind(fact, 'moved')) pass.step = fact.body.to;
  else if (isKind(fact, 'held')) pass.held = true;
  else if (isKind(fact, 'carriedOn')) pass.held = false;
  else if (isKind(fact, 'answered')) pass.answers.set(fact.body.step, fact);
  else if (isKind(fact, 'skipped')) pass.answers.delete(fact.body.step);
}

/** Answers that hold although their attempt was given up: marks made are made, and what was in the mouth was in it. */
function passAnswered(fact: FactOf<'answered'>, pass: Pass): void {
  const { step, answer } = fact.body;
  if (step === MARKS_STEP && answer === 'made') pass.markSets += 1;
  if (Object.values(BASES_STEP).includes(step)) pass.bases.set(step, answer);
}

function passFact(fact: Fact, strike: Strike | undefined, pass: Pass): void {
  if (isKind(fact, 'answered') && strike?.why !== 'undone') passAnswered(fact, pass);
  if (isKind(fact, 'reading')) passReading(fact, pass);
  if (strike === undefined) passLive(fact, pass);
}

/**
 * Length of the log up to which the maps of a view have grown. They are shared by all views of one log, and only the
 * newest of them may let them grow: whoever goes on from an older one starts from scratch.
 */
const grownTo = new WeakMap<ReadonlyMap<number, number>, number>();

function viewOf(log: CaseLog, strikes: CaseView['strikes'], pass: Pass): CaseView {
  grownTo.set(pass.markSetOf, log.facts.length);
  return { log, strikes, ...pass };
}

/** Works the whole view out from the log. One pass after the strikes; linear in the number of facts. */
export function readCase(log: CaseLog): CaseView {
  const strikes = strikesOf(log);
  const pass = newPass();
  for (const fact of log.facts) passFact(fact, strikes.get(fact.seq), pass);
  return viewOf(log, strikes, pass);
}

/** Changes what was written before it, and with that how everything after it is read. */
function reachesBack({ body, act }: Fact, { undone }: CaseLog): boolean {
  const corrects = body.kind === 'reading' && body.corrects !== undefined;
  return body.kind === 'undone' || body.kind === 'attemptStarted' || corrects || undone.has(act);
}

/** The pass as it stood at the end of a view; what may still change is copied, what only grows is shared. */
function passAfter({ log: _log, strikes: _strikes, ...view }: CaseView): Pass {
  const answers = new Map(view.answers);
  const last = view.visits.at(-1);
  return {
    ...view,
    answers,
    visits: last === undefined ? [] : [...view.visits.slice(0, -1), { ...last, answers }],
    visitOf: view.visitOf as Map<number, number>,
    markSetOf: view.markSetOf as Map<number, number>,
    basesOf: view.basesOf as Map<number, string>,
    bases: new Map(view.bases),
  } as Pass;
}

/**
 * The view with a few more facts at its end, the same as from scratch: only what is new is read, unless it changes what
 * was written before.
 */
export function extendCase(view: CaseView, facts: readonly Fact[]): CaseView {
  const log = addFacts(view.log, facts);
  const newest = grownTo.get(view.markSetOf) === view.log.facts.length;
  if (!newest || facts.some((fact) => reachesBack(fact, log))) return readCase(log);
  const pass = passAfter(view);
  for (const fact of facts) passFact(fact, view.strikes.get(fact.seq), pass);
  return viewOf(log, view.strikes, pass);
}

/** From scratch: all facts of one case, in order, to its view. */
export function foldCase(caseId: string, facts: readonly Fact[]): CaseView {
  return readCase(addFacts(emptyLog(caseId), facts));
}

/** Live facts of one kind in the current visit, oldest first. */
export function liveOf<K extends FactKind>(view: CaseView, kind: K): readonly FactOf<K>[] {
  const out: FactOf<K>[] = [];
  const { facts } = view.log;
  for (let i = view.from - 1; i < facts.length; i += 1) {
    const fact = facts[i]!;
    if (isKind(fact, kind) && !view.strikes.has(fact.seq)) out.push(fact);
  }
  return out;
}

/** Live readings of the current visit, oldest first; the same as `liveOf`, without looking at what is no reading. */
export function liveReadings(view: CaseView): readonly FactOf<'reading'>[] {
  const out: FactOf<'reading'>[] = [];
  const { facts } = view.log;
  for (const seq of view.visitOf.keys()) {
    const fact = seq < view.from ? undefined : facts[seq - 1];
    if (fact !== undefined && isKind(fact, 'reading') && !view.strikes.has(seq)) out.push(fact);
  }
  return out;
}

/** All facts of the current visit, struck ones included. `seq` counts from 1 without gaps, so this is a cut. */
export function visitFacts(view: CaseView): readonly Fact[] {
  return view.from === 1 ? view.log.facts : view.log.facts.slice(view.from - 1);
}

/** The act that "undo" would take back now: the latest one that wrote something undoable in this visit and still stands. */
export function lastAct(view: CaseView): { readonly act: number; readonly facts: readonly Fact[] } | undefined {
  const { facts, undone } = view.log;
  for (let i = facts.length - 1; i >= 0; i -= 1) {
    const fact = facts[i]!;
    if (fact.seq < view.from) return undefined;
    if (!undoable(fact) || ofTheBench(fact) || undone.has(fact.act)) continue;
    return { act: fact.act, facts: facts.filter((f) => f.act === fact.act && undoable(f)) };
  }
  return undefined;
}
