/**
 * Clocks as facts: a clock is when it was started and what its material's leaflet says; what is left is computed from
 * the time now, never counted. Impression times run from the start of mixing (ISO 21563: total working time and setting
 * time are counted from the start of mixing).
 */
import type { Fact, PhaseId } from '../case/facts.ts';
import { isKind, visitFacts, type CaseView, type FactOf } from '../case/fold.ts';
import type { Material, VisitProtocol } from '../protocol/types.ts';
import type { ClockPhase, ClockPhaseState, ClockRow } from './types.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;

export const phaseLabel: Readonly<Record<PhaseId, string>> = {
  mix: 'mixing',
  working: 'working time',
  inMouth: 'setting in the mouth',
  pourFrom: 'wait before pouring',
  pourWithin: 'pour within',
  disinfect: 'disinfecting',
};

interface RawClock {
  readonly started: FactOf<'clockStarted'>;
  readonly attempt: number;
  seatedAt?: number;
  outAt?: number;
  takenAt?: number;
}

/**
 * Every clock started in the current visit, oldest first, with what became of it. Taken-back starts are included. With
 * `span`: the clocks started between those two entries, and what became of them at any time since.
 */
function rawClocks(view: CaseView, span?: { readonly from: number; readonly to: number }): RawClock[] {
  const clocks: RawClock[] = [];
  const latest = new Map<string, RawClock>();
  const attempts = new Map<string, number>();
  const live = (fact: Fact) => view.strikes.get(fact.seq)?.why !== 'undone';
  const opening = span?.from ?? view.from;
  for (const fact of span === undefined ? visitFacts(view) : view.log.facts.slice(span.from - 1)) {
    if (isKind(fact, 'clockStarted')) {
      if (span !== undefined && fact.seq >= span.to) {
        // The name is used anew: what is said of it from here on is said of the new one.
        latest.delete(fact.body.clock);
        continue;
      }
      const attempt = (attempts.get(fact.body.clock) ?? 0) + (live(fact) ? 1 : 0);
      attempts.set(fact.body.clock, attempt);
      const clock: RawClock = { started: fact, attempt: Math.max(1, attempt) };
      clocks.push(clock);
      if (live(fact)) latest.set(fact.body.clock, clock);
    }
    if (!live(fact)) continue;
    if (isKind(fact, 'clockSeated')) setOnce(latest.get(fact.body.clock), 'seatedAt', fact.at);
    if (isKind(fact, 'clockOut')) setOnce(latest.get(fact.body.clock), 'outAt', fact.at);
    if (isKind(fact, 'takenOver') && (fact.body.order ?? opening) === opening)
      setOnce(latest.get(fact.body.clock), 'takenAt', fact.at);
  }
  return clocks;
}

function setOnce(clock: RawClock | undefined, key: 'seatedAt' | 'outAt' | 'takenAt', at: number): void {
  if (clock !== undefined && clock[key] === undefined) clock[key] = at;
}

interface Stretch {
  /** Not begun yet when absent. */
  readonly from: number | undefined;
  readonly dueAt: number;
  readonly ended: number | undefined;
}

function phase(id: PhaseId, { from, dueAt, ended }: Stretch, now: number): ClockPhase {
  const open: ClockPhaseState = now >= dueAt ? 'over' : 'running';
  const state: ClockPhaseState = from === undefined ? 'waiting' : ended !== undefined ? 'done' : open;
  const end = ended === undefined ? {} : { endedAt: ended };
  return { id, label: phaseLabel[id], from: from ?? dueAt, dueAt, ...end, state };
}

/** Mixing is over by itself once the working time is. */
function mixEnded(clock: RawClock, { mixS, workingS }: Material, now: number): number | undefined {
  const start = clock.started.at;
  const over = now >= start + workingS * SECOND ? start + mixS * SECOND : undefined;
  return clock.seatedAt ?? clock.outAt ?? over;
}

function pourPhases({ outAt, takenAt }: RawClock, material: Material, now: number): ClockPhase[] {
  const until = (minutes: number): Stretch => ({ from: outAt, dueAt: (outAt ?? 0) + minutes * MINUTE, ended: takenAt });
  const wait = material.pourFromMin > 0 ? [phase('pourFrom', until(material.pourFromMin), now)] : [];
  return [...wait, phase('pourWithin', until(material.pourWithinMin), now)];
}

function impressionPhases(clock: RawClock, now: number, poured: boolean): ClockPhase[] {
  const body = clock.started.body;
  if (body.flow !== 'impression') return [];
  const { material } = body;
  const start = clock.started.at;
  const { seatedAt, outAt } = clock;
  const due = (seconds: number) => start + seconds * SECOND;
  const mixed = { from: start, dueAt: due(material.mixS), ended: mixEnded(clock, material, now) };
  const worked = { from: start, dueAt: due(material.workingS), ended: seatedAt ?? outAt };
  const phases = [phase('mix', mixed, now), phase('working', worked, now)];
  // Out without a word of seating: the set time still counts, or a missed press would hide an early removal.
  phases.push(phase('inMouth', { from: seatedAt ?? outAt, dueAt: due(material.removeS), ended: outAt }, now));
  return poured ? [...phases, ...pourPhases(clock, material, now)] : phases;
}

function timedPhases(clock: RawClock, now: number): ClockPhase[] {
  const body = clock.started.body;
  if (body.flow !== 'timed') return [];
  const start = clock.started.at;
  return [phase('disinfect', { from: start, dueAt: start + body.agent.minutes * MINUTE, ended: clock.outAt }, now)];
}

function findings(clock: RawClock, phases: readonly ClockPhase[], now: number): ClockRow['findings'] {
  const found: { id: ClockRow['findings'][number]['id']; byMs: number }[] = [];
  const due = (id: PhaseId) => phases.find((p) => p.id === id)?.dueAt;
  const late = (id: 'seatedLate' | 'pourLate', by: number | undefined) => {
    if (by !== undefined && by > 0) found.push({ id, byMs: by });
  };
  const { seatedAt, outAt } = clock;
  const working = due('working');
  if (outAt !== undefined && seatedAt === undefined && working !== undefined) found.push({ id: 'notSeated', byMs: 0 });
  if (seatedAt !== undefined && working !== undefined) late('seatedLate', seatedAt - working);
  const mouth = due('inMouth');
  if (outAt !== undefined && mouth !== undefined && outAt < mouth)
    found.push({ id: 'removedEarly', byMs: mouth - outAt });
  const bath = due('disinfect');
  if (outAt !== undefined && bath !== undefined && outAt < bath)
    found.push({ id: 'disinfectShort', byMs: bath - outAt });
  const pour = due('pourWithin');
  if (outAt !== undefined && pour !== undefined) late('pourLate', (clock.takenAt ?? now) - pour);
  return found;
}

function phaseNow(phases: readonly ClockPhase[]): PhaseId | undefined {
  const open = phases.filter((p) => p.state === 'running' || p.state === 'over');
  return (open.find((p) => p.state === 'running') ?? open.at(-1))?.id;
}

interface Standing {
  readonly view: CaseView;
  readonly protocol: Pick<VisitProtocol, 'steps'>;
  readonly now: number;
}

function toRow(clock: RawClock, { view, protocol, now }: Standing): ClockRow {
  const { body, seq, at } = clock.started;
  const struck = view.strikes.has(seq);
  const step = protocol.steps.find((s) => s.kind === 'clock' && s.clock === body.clock);
  const poured = step?.kind !== 'clock' || step.poured !== false;
  const phases = body.flow === 'impression' ? impressionPhases(clock, now, poured) : timedPhases(clock, now);
  const stopped = struck || phaseNow(phases) === undefined;
  const current = stopped ? undefined : phaseNow(phases);
  return {
    id: `${body.clock}/${clock.attempt}`,
    clock: body.clock,
    label: step?.kind === 'clock' ? (step.clockLabel ?? step.title) : body.clock.replaceAll('-', ' '),
    attempt: clock.attempt,
    flow: body.flow,
    name: body.flow === 'impression' ? body.material.name : body.agent.name,
    ...(body.flow === 'impression' ? { material: body.material } : {}),
    ...(body.flow === 'timed' && body.of !== undefined ? { of: body.of } : {}),
    startedAt: at,
    ...(body.flow === 'impression' && body.day !== undefined ? { day: body.day } : {}),
    ...(clock.seatedAt === undefined ? {} : { seatedAt: clock.seatedAt }),
    ...(clock.outAt === undefined ? {} : { outAt: clock.outAt }),
    ...(clock.takenAt === undefined ? {} : { takenAt: clock.takenAt }),
    struck,
    stopped,
    phases,
    ...(current === undefined ? {} : { now: current }),
    findings: struck && view.strikes.get(seq)?.why === 'undone' ? [] : findings(clock, phases, struck ? 0 : now),
  };
}

/** All clocks of the current visit as they stand at `now` (ms since 1970), oldest first; struck ones stay in the list. */
export function clockRows(view: CaseView, protocol: VisitProtocol, now: number): readonly ClockRow[] {
  return rawClocks(view).map((clock) => toRow(clock, { view, protocol, now }));
}

/** Names of clocks that this visit uses itself: an earlier one of the same name could no longer be told from it. */
function namesUsed(view: CaseView): ReadonlySet<string> {
  return new Set(visitFacts(view).flatMap((fact) => (isKind(fact, 'clockStarted') ? [fact.body.clock] : [])));
}

const waits = (row: ClockRow) => !row.stopped && (row.now === 'pourFrom' || row.now === 'pourWithin');

/**
 * Impressions of earlier visits that nobody has said to be poured or taken over, as they stand at `now` (ms since 1970),
 * oldest first, each with the number of its visit. Their labels come from the protocols given; without its protocol, an
 * impression goes by the name of its clock. Baths and what was never out of the mouth end with their visit.
 */
export function carriedClocks(view: CaseView, protocols: readonly VisitProtocol[], now: number): readonly ClockRow[] {
  const used = namesUsed(view);
  return view.visits.slice(0, -1).flatMap((span, place) => {
    const { visit, protocol: id, version } = span.opened.body;
    const protocol = protocols.find((one) => one.id === id && one.version === version) ?? { steps: [] };
    const to = view.visits[place + 1]?.opened.seq ?? view.from;
    return rawClocks(view, { from: span.opened.seq, to })
      .map((clock): ClockRow => ({ ...toRow(clock, { view, protocol, now }), visit }))
      .filter((row) => waits(row) && !used.has(row.clock));
  });
}

/** Clocks of this visit, and before them the impressions of earlier visits that still wait to be poured. */
export function allClocks(
  view: CaseView,
  around: {
    readonly protocol: VisitProtocol;
    readonly earlierProtocols?: readonly VisitProtocol[];
    readonly now: number;
  },
): readonly ClockRow[] {
  const { protocol, earlierProtocols = [], now } = around;
  return [...carriedClocks(view, earlierProtocols, now), ...clockRows(view, protocol, now)];
}

export interface Deadline {
  /** `${ClockRow.id}:${PhaseId}` */
  readonly id: string;
  readonly at: number;
  readonly label: string;
  readonly clock: string;
  readonly phase: PhaseId;
}

/** What has to ring, and when: every phase that is still open on a clock that counts. */
export function deadlines(rows: readonly ClockRow[]): readonly Deadline[] {
  return rows
    .filter((row) => !row.stopped)
    .flatMap((row) =>
      row.phases
        .filter((p) => p.state === 'running' || p.state === 'over')
        .map((p) => ({
          id: `${row.id}:${p.id}`,
          at: p.dueAt,
          label: `${row.label}: ${p.label} over`,
          clock: row.id,
          phase: p.id,
        })),
    );
}

export interface Ringing {
  readonly clock: string;
  readonly label: string;
  readonly phase: PhaseId;
  readonly lateMs: number;
}

/**
 * Whether an entry of this kind stands for a phase of a clock. Names of clocks come again in later visits: only what was
 * written since the clock was started is said of it.
 */
export function saidOf(view: CaseView, kind: 'rang' | 'alarmSeen'): (row: ClockRow, phase: PhaseId) => boolean {
  const said = view.log.facts.filter((fact) => isKind(fact, kind));
  return (row, id) => said.some(({ at, body }) => body.clock === row.id && body.phase === id && at >= row.startedAt);
}

/** Phases that are over and that nobody has ended or acknowledged yet; the longest over comes first. */
export function ringingNow(view: CaseView, rows: readonly ClockRow[], now: number): readonly Ringing[] {
  const seen = saidOf(view, 'alarmSeen');
  return rows
    .filter((row) => !row.stopped)
    .flatMap((row) =>
      row.phases
        .filter((p) => p.state === 'over' && !seen(row, p.id))
        .map((p) => ({ clock: row.id, label: row.label, phase: p.id, lateMs: now - p.dueAt })),
    )
    .toSorted((a, b) => b.lateMs - a.lateMs);
}
