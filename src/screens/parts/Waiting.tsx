/** What has left the mouth and is not done with: on summary and lab sheet until it is said to be poured or taken over. */
import type { AppActions, AppModel, RunningClock } from '../../app/model.ts';
import { dueNext } from '../../domain/summary/planned.ts';
import { chipTime, chipWords, DueRow, keyOf } from './ClockChip.tsx';
import { PhaseIcon } from './Icons.tsx';
import { waitsForPouring } from './Taken.tsx';

const outOfTheMouth = (row: RunningClock) => waitsForPouring(row) || row.flow === 'timed';

interface WaitingProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

export function Waiting({ model, actions }: WaitingProps) {
  const { clocks, now } = model;
  const due = dueNext(
    clocks.filter((row) => row.case === undefined && outOfTheMouth(row)),
    now,
  );
  if (due.length === 0) return null;
  return (
    <section className="waiting no-print" aria-labelledby="waiting-head">
      <h2 id="waiting-head">Out of the mouth, not yet done with</h2>
      <ul className="due-rows">
        {due.map((one) => (
          <DueRow key={keyOf(one)} due={one} now={now} mayEnd actions={actions} />
        ))}
      </ul>
    </section>
  );
}

/** On the list of cases: what of a case still runs, whether or not it is open or closed. */
export function CaseClocks({ model, caseId }: { readonly model: AppModel; readonly caseId: string }) {
  const { clocks, now } = model;
  const due = dueNext(
    clocks.filter((row) => (row.case?.id ?? model.caseId) === caseId),
    now,
  );
  return due.map((one) => (
    <span key={keyOf(one)} className={one.state === 'coming' ? 'case-clock' : 'case-clock chip-over'}>
      <PhaseIcon phase={one.phase} /> {one.row.label}: {chipWords(one, now)} <strong>{chipTime(one, now)}</strong>
    </span>
  ));
}
