/** Everything that was written, in order. Nothing is ever deleted: what was corrected stays, struck through. */
import { useState } from 'react';
import type { AppActions } from '../../app/model.ts';
import type { AnswerRow, ReadingRow, Summary } from '../../domain/summary/types.ts';
import { timeOfDay, valueWithUnit } from '../format.ts';
import { SignIcon } from '../parts/Icons.tsx';
import { PageHead, SaidLine } from '../parts/Lines.tsx';
import { NotePanel } from '../parts/NotePanel.tsx';
import { Target } from '../parts/Target.tsx';
import type { PlaceProps } from '../cases/CasesScreen.tsx';

const STRUCK: Readonly<Record<NonNullable<ReadingRow['struck']>['why'], string>> = {
  corrected: 'corrected',
  undone: 'undone',
  newAttempt: 'taken again',
};

const KEPT_BY: Readonly<Record<ReadingRow['keptBy'], string>> = {
  yes: 'kept by yes',
  movedOn: 'kept by moving on',
  pause: 'kept after the pause',
};

export function struckText(struck: NonNullable<ReadingRow['struck']>): string {
  return `${STRUCK[struck.why]} at ${timeOfDay(struck.at)}`;
}

function ReadingLine({ row, actions }: { readonly row: ReadingRow; readonly actions: AppActions }) {
  const value = valueWithUnit(row.value, row.unit);
  return (
    <tr className={row.struck === undefined ? '' : 'struck'}>
      <td className="cell-time">{timeOfDay(row.at)}</td>
      <th scope="row">
        {row.label}
        {row.markSet === undefined ? null : <span className="cell-more">{row.markSet}</span>}
      </th>
      <td className="cell-value">{row.struck === undefined ? value : <s>{value}</s>}</td>
      <td>
        {row.source}: “{row.text}”
        <span className="cell-more">
          {KEPT_BY[row.keptBy]}
          {row.outOfTurn ? ', out of turn' : ''}
        </span>
      </td>
      <td>
        {row.struck === undefined ? (
          <Target
            icon={<SignIcon sign="pencil" />}
            name={`Correct ${row.label} ${value}`}
            onPress={() => actions.correct(row.seq)}
          >
            Correct
          </Target>
        ) : (
          struckText(row.struck)
        )}
      </td>
    </tr>
  );
}

function Readings({ summary, actions }: { readonly summary: Summary; readonly actions: AppActions }) {
  return (
    <section aria-labelledby="record-readings">
      <h2 id="record-readings">Readings</h2>
      {summary.readings.length === 0 ? <p className="step-line">None yet.</p> : null}
      {summary.readings.length === 0 ? null : (
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Time</th>
              <th scope="col">Reading</th>
              <th scope="col">Value</th>
              <th scope="col">Heard or typed</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {summary.readings.map((row) => (
              <ReadingLine key={row.seq} row={row} actions={actions} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function AnswerLine({ row }: { readonly row: AnswerRow }) {
  const words = `${row.answer}${row.reason === undefined ? '' : ` (${row.reason})`}`;
  return (
    <tr className={row.struck === undefined ? '' : 'struck'}>
      <td className="cell-time">{timeOfDay(row.at)}</td>
      <th scope="row">{row.question}</th>
      <td>{row.struck === undefined ? words : <s>{words}</s>}</td>
      <td>{row.struck === undefined ? 'stands' : struckText(row.struck)}</td>
    </tr>
  );
}

function Answers({ summary }: { readonly summary: Summary }) {
  if (summary.answers.length === 0) return null;
  return (
    <section aria-labelledby="record-answers">
      <h2 id="record-answers">Answers</h2>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Time</th>
            <th scope="col">Question</th>
            <th scope="col">Answer</th>
            <th scope="col">Now</th>
          </tr>
        </thead>
        <tbody>
          {summary.answers.map((row) => (
            <AnswerLine key={row.seq} row={row} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function NotesAndSkips({ summary }: { readonly summary: Summary }) {
  return (
    <section aria-labelledby="record-notes">
      <h2 id="record-notes">Notes and skipped steps</h2>
      <ul className="plain-list">
        {summary.notes.map((note) => (
          <li key={`${note.at}:${note.text}`}>
            {timeOfDay(note.at)} note ({note.source}): {note.struck ? <s>“{note.text}”</s> : <>“{note.text}”</>}
          </li>
        ))}
        {summary.skips.map((skip) => (
          <li key={`${skip.at}:${skip.title}`}>
            {timeOfDay(skip.at)} skipped: {skip.title} ({skip.reason})
          </li>
        ))}
      </ul>
      {summary.notes.length + summary.skips.length === 0 ? <p className="step-line">None yet.</p> : null}
    </section>
  );
}

export function RecordScreen({ model, actions }: PlaceProps) {
  const [noting, setNoting] = useState(false);
  const { summary } = model;
  return (
    <main className="page record">
      <PageHead title={`Record${summary === undefined ? '' : ` of ${summary.caseCode}`}`}>
        <Target look="main" onPress={() => actions.go('visit')}>
          Back to the visit
        </Target>
        <Target icon={<SignIcon sign="note" />} onPress={() => setNoting(!noting)}>
          Add a note
        </Target>
        <Target onPress={() => actions.go('summary')}>Summary</Target>
      </PageHead>
      <SaidLine said={model.said} trouble={model.trouble} />
      {noting ? <NotePanel actions={actions} onClose={() => setNoting(false)} /> : null}
      {summary === undefined ? (
        <p className="step-line">No case is open.</p>
      ) : (
        <>
          <Readings summary={summary} actions={actions} />
          <Answers summary={summary} />
          <NotesAndSkips summary={summary} />
        </>
      )}
    </main>
  );
}
