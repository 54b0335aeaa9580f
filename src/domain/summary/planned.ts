/** What has to be done with a material on the clock, and when: planned from its leaflet, for one or for several at once. */
import { plannedBack } from '../measure/planned-back.ts';
import type { PhaseId } from '../case/facts.ts';
import type { Disinfectant, Material } from '../protocol/types.ts';
import type { ClockRow } from './types.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/** `load`, `seat` and `pour` are to be done by their time; `out`, `pourFrom` and `bathOut` not before theirs. */
export type ActId = 'load' | 'seat' | 'out' | 'pourFrom' | 'pour' | 'bathOut';

export interface PlannedAct {
  readonly act: ActId;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** True for what is to be done by its time; false for what may be done from then on. */
  readonly by: boolean;
}

const BY: ReadonlySet<ActId> = new Set<ActId>(['load', 'seat', 'pour']);
const act = (id: ActId, at: number): PlannedAct => ({ act: id, at, by: BY.has(id) });

/** Before the tray is in: load, seat, out. Figures that contradict each other are not planned with, only counted. */
function beforeSeating(material: Material, start: number): readonly PlannedAct[] {
  const plan = plannedBack(material);
  const due = (seconds: number) => start + seconds * SECOND;
  const out = act('out', due(material.removeS));
  if (!plan.ok) return [act('seat', due(material.workingS)), out];
  return [act('load', due(plan.value.loadByS)), act('seat', due(plan.value.seatByS)), out];
}

/**
 * All that is still to be done with one clock, in order, each with its time (ms since 1970): load and seat planned back
 * from the end of the working time, everything else by the leaflet. Empty when nothing runs. Sources: leaflet;
 * planned-back for the two margins.
 */
export function actsOf(row: ClockRow): readonly PlannedAct[] {
  if (row.stopped) return [];
  const dueAt = (id: PhaseId): number | undefined => row.phases.find((phase) => phase.id === id)?.dueAt;
  const one = (id: ActId, at: number | undefined) => (at === undefined ? [] : [act(id, at)]);
  if (row.flow === 'timed') return one('bathOut', dueAt('disinfect'));
  if (row.outAt !== undefined) return [...one('pourFrom', dueAt('pourFrom')), ...one('pour', dueAt('pourWithin'))];
  if (row.seatedAt !== undefined || row.material === undefined) return one('out', dueAt('inMouth'));
  return beforeSeating(row.material, row.startedAt);
}

/**
 * The one thing to be done next with a clock at `now` (ms since 1970). The tray is taken to be loaded once its time has
 * passed, and waiting before pouring to be over; seating, removal, pouring and the end of a bath stay due until they are
 * on record. Undefined when nothing runs. Source: as `actsOf`.
 */
export function nextAct(row: ClockRow, now: number): PlannedAct | undefined {
  const passes: ReadonlySet<ActId> = new Set<ActId>(['load', 'pourFrom']);
  return actsOf(row).find(({ act: id, at }) => !passes.has(id) || now < at);
}

export interface Due<Row extends ClockRow = ClockRow> {
  readonly row: Row;
  readonly act: ActId;
  /** `now`: its time has come, and the leaflet leaves a little still. `over`: the leaflet's time has passed. */
  readonly state: 'coming' | 'now' | 'over';
  /** The phase that counts now. */
  readonly phase: PhaseId;
  /** Coming: when the act is due. Now: when the leaflet's time ends. Over: when it ended. Milliseconds since 1970. */
  readonly at: number;
}

/** How a clock stands at `now` (ms since 1970): its next act, or what of it is over. Undefined when nothing runs. Source: as `actsOf`. */
export function dueOf<Row extends ClockRow>(row: Row, now: number): Due<Row> | undefined {
  const next = nextAct(row, now);
  const phase = row.phases.find(({ id }) => id === row.now);
  if (next === undefined || phase === undefined) return undefined;
  const due = { row, act: next.act, phase: phase.id };
  if (phase.state === 'over') return { ...due, state: 'over', at: phase.dueAt };
  return now >= next.at ? { ...due, state: 'now', at: phase.dueAt } : { ...due, state: 'coming', at: next.at };
}

/** How every clock that runs stands, the soonest first and what is over before all else. Source: as `actsOf`. */
export function dueNext<Row extends ClockRow>(rows: readonly Row[], now: number): readonly Due<Row>[] {
  return rows.flatMap((row) => dueOf(row, now) ?? []).toSorted((a, b) => a.at - b.at);
}

/**
 * When each act would be due if this material were mixed, or this bath begun, at `now` (ms since 1970): what is said
 * before the start. Pouring is not among it, for it counts from removal. Source: as `actsOf`.
 */
export function ifStartedNow(item: Material | Disinfectant, now: number): readonly PlannedAct[] {
  return 'minutes' in item ? [act('bathOut', now + item.minutes * MINUTE)] : beforeSeating(item, now);
}
