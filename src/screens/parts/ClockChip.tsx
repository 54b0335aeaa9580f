/** One clock as it stands on the strip: what is due or over, in words, shape and time. */
import type { AppActions, RunningClock } from '../../app/model.ts';
import type { PhaseId } from '../../domain/case/facts.ts';
import type { Due } from '../../domain/summary/planned.ts';
import { timeLeft } from '../format.ts';
import { PhaseIcon } from './Icons.tsx';
import { dueWords } from './Planned.tsx';
import { waitsForPouring } from './Taken.tsx';
import { Target } from './Target.tsx';

const OVER: Readonly<Record<PhaseId, string>> = {
  mix: 'mixing time over',
  working: 'working time over',
  inMouth: 'setting time over',
  pourFrom: 'may be poured',
  pourWithin: 'pour time over',
  disinfect: 'bath over',
};

export interface ChipProps {
  readonly due: Due<RunningClock>;
  readonly now: number;
  /** A clock that is over can be ended here. */
  readonly mayEnd: boolean;
  readonly actions: AppActions;
}

/** What has to be done, or what is over, in words. */
export function chipWords(due: Due<RunningClock>, now: number): string {
  return due.state === 'over' ? OVER[due.phase] : dueWords(due, now);
}

/** "1:10" left, or "+0:12" over. */
export function chipTime({ at }: Due, now: number): string {
  const left = timeLeft(at, now);
  return left.over ? `+${left.text}` : left.text;
}

export function ChipTime({ due, now }: Pick<ChipProps, 'due' | 'now'>) {
  return <time className="chip-time">{chipTime(due, now)}</time>;
}

interface ChipRow {
  readonly row: RunningClock;
}

function ChipCase({ row }: ChipRow) {
  return row.case === undefined ? null : <span className="chip-case">{row.case.code}</span>;
}

function ChipLabel({ row }: ChipRow) {
  return (
    <>
      <strong>{row.label}</strong>
      {row.visit === undefined ? null : ` of visit ${row.visit}`}
    </>
  );
}

/** Whose clock it is: the case where it is not the open one, then the label. */
export function ChipName({ row }: ChipRow) {
  return (
    <>
      <ChipCase row={row} /> <ChipLabel row={row} />
    </>
  );
}

/** What ends a clock: taken out of the bath, or poured; a case that is not open is opened first. */
export function ChipEnd({ due, actions }: Pick<ChipProps, 'due' | 'actions'>) {
  const { row, state } = due;
  const { case: other } = row;
  if (other !== undefined) return <Target onPress={() => actions.openCase(other.id)}>Open {other.code}</Target>;
  const intent = row.flow === 'timed' ? 'clockDone' : waitsForPouring(row) ? 'taken' : undefined;
  if (intent === undefined || (row.flow === 'timed' && state !== 'over')) return null;
  const words = intent === 'taken' ? 'Poured' : 'Done';
  return (
    <Target name={`${words}: ${row.label}`} onPress={() => actions.press(`${intent}:${row.clock}`)}>
      {words}
    </Target>
  );
}

const chipClass = ({ phase, state }: Due): string => `chip chip-${phase} ${state === 'coming' ? '' : 'chip-over'}`;

export function ClockChip({ due, now, mayEnd, actions }: ChipProps) {
  return (
    <li className={chipClass(due)}>
      <PhaseIcon phase={due.phase} />
      <p className="chip-phase">{chipWords(due, now)}</p>
      <ChipTime due={due} now={now} />
      <p className="chip-name">
        <ChipName row={due.row} />, {due.row.name}
      </p>
      {mayEnd && due.state === 'over' && due.row.case === undefined ? <ChipEnd due={due} actions={actions} /> : null}
    </li>
  );
}

export function SmallChip({ due, now }: Pick<ChipProps, 'due' | 'now'>) {
  return (
    <li className={`${chipClass(due)} chip-small`}>
      <PhaseIcon phase={due.phase} />
      <p className="chip-head">
        <ChipTime due={due} now={now} /> <ChipCase row={due.row} />
      </p>
      <p className="chip-name">
        <span className="chip-due">{chipWords(due, now)}</span> <ChipLabel row={due.row} />
      </p>
    </li>
  );
}

export const keyOf = ({ row }: Due<RunningClock>): string =>
  `${row.case?.id ?? ''}|${row.visit ?? ''}|${row.startedAt}|${row.id}`;

/** One clock on a line of its own, with all its words and what ends it. */
export function DueRow({ due, now, mayEnd, actions }: ChipProps) {
  const { row, phase, state } = due;
  return (
    <li className={state === 'coming' ? 'due-row' : 'due-row chip-over'}>
      <PhaseIcon phase={phase} />
      <ChipTime due={due} now={now} />
      <p className="due-words">
        <span className="due-what">{chipWords(due, now)}</span>
        <span>
          <ChipName row={row} />, {row.name}
        </span>
      </p>
      {mayEnd || row.case !== undefined ? <ChipEnd due={due} actions={actions} /> : null}
    </li>
  );
}
