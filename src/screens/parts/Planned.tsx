/** What has to be done with a material and when, in words: planned back from its leaflet by the domain. */
import type { ActId, Due, PlannedAct } from '../../domain/summary/planned.ts';
import { moment, stretch, timeLeft, timeOfDay, timeToSecond } from '../format.ts';

const DO: Readonly<Record<ActId, string>> = {
  load: 'Load',
  seat: 'Seat',
  out: 'Out',
  pourFrom: 'Pour',
  pour: 'Pour',
  bathOut: 'Out of the bath',
};

/** Short enough for a chip. */
const SHORT: Readonly<Record<ActId, string>> = {
  load: 'load by',
  seat: 'seat by',
  out: 'out from',
  pourFrom: 'pour from',
  pour: 'pour by',
  bathOut: 'bath until',
};

const DAY = 86_400_000;
const EXACT: ReadonlySet<ActId> = new Set<ActId>(['load', 'seat', 'out']);

/** "14:03:20" where seconds count, "14:05" where minutes do, with the date where it is another day. */
function timeOf(act: ActId, at: number, now: number): string {
  if (EXACT.has(act)) return timeToSecond(at);
  return Math.abs(at - now) < DAY / 2 ? timeOfDay(at) : moment(at);
}

/** "load by 14:03:20", "seat now". */
export function dueWords({ act, state, at }: Due, now: number): string {
  return state === 'now' ? `${DO[act].toLowerCase()} now` : `${SHORT[act]} ${timeOf(act, at, now)}`;
}

function inWords({ at, by }: PlannedAct, now: number): string {
  const left = timeLeft(at, now);
  if (!left.over) return `in ${left.text}`;
  return by ? `${stretch(now - at)} ago: now` : 'now';
}

interface PlanProps {
  readonly acts: readonly PlannedAct[];
  readonly now: number;
  /** What stands above: "If you start now". */
  readonly head?: string;
}

/** The acts that are still to come, the first one large. */
export function Plan({ acts, now, head }: PlanProps) {
  if (acts.length === 0) return null;
  return (
    <div className={head === undefined ? 'plan' : 'plan plan-if'}>
      {head === undefined ? null : <p className="plan-head">{head}</p>}
      <ol>
        {acts.map((one) => (
          <li key={one.act}>
            <strong>
              {DO[one.act]}
              {one.act === 'load' ? <span className="plan-object"> the tray</span> : null}
            </strong>{' '}
            {one.by ? 'by' : 'from'} <time>{timeOf(one.act, one.at, now)}</time>{' '}
            {head === undefined ? <span className="plan-in">{inWords(one, now)}</span> : null}
          </li>
        ))}
      </ol>
    </div>
  );
}
