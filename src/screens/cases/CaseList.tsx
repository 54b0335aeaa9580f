/** The cases on this device, the newest first: twenty at a time, and any of the others by its code. */
import { useState } from 'react';
import type { AppActions, AppModel, CaseListRow } from '../../app/model.ts';
import { shortDay } from '../../domain/measure/calendar.ts';
import { day, dayKey, timeOfDay } from '../format.ts';
import { Field } from '../parts/Field.tsx';
import { Target } from '../parts/Target.tsx';
import { CaseClocks } from '../parts/Waiting.tsx';

/** As many as are drawn at once; a list of thousands is neither drawn nor scrolled through. */
export const AT_A_TIME = 20;

interface ListProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

interface RowProps {
  readonly row: CaseListRow;
  /** "2026-12-03" */
  readonly today: string;
}

/** What is waited for between visits. */
function Stands({ row: { stands }, today }: RowProps) {
  if (stands === undefined) return null;
  const { text, due } = stands;
  const late = due !== undefined && due < today;
  return (
    <span className={late ? 'case-stands case-stands-late' : 'case-stands'}>
      {text}
      {due === undefined ? '' : `, ${late ? 'was due' : 'due'} ${shortDay(due)}`}
    </span>
  );
}

function CaseRow({ row, today, model, actions }: RowProps & ListProps) {
  return (
    <li>
      <Target size="big" onPress={() => actions.openCase(row.id)}>
        <span className="case-code">
          {row.code} {row.demo ? <span className="demo-tag">demo</span> : null}
        </span>
        <span className="case-at">
          Visit {row.visit}: {row.closed ? 'closed' : row.at}
        </span>
        <span className="case-when">
          opened {day(row.openedAt)}, {timeOfDay(row.openedAt)}
        </span>
        <Stands row={row} today={today} />
        <CaseClocks model={model} caseId={row.id} />
      </Target>
    </li>
  );
}

/** Capitals, blanks and dashes do not matter when a code is looked for. */
const bare = (code: string) => code.toLowerCase().replaceAll(/[\s-]+/g, '');

/** The newest rows whose code holds what was typed. */
export function found(rows: readonly CaseListRow[], typed: string): readonly CaseListRow[] {
  const wanted = bare(typed);
  return wanted === '' ? rows : rows.filter((row) => bare(row.code).includes(wanted));
}

export function CaseList({ model, actions }: ListProps) {
  const [typed, setTyped] = useState('');
  const [shown, setShown] = useState(AT_A_TIME);
  const rows = found(model.cases, typed);
  const rest = rows.length - shown;
  const today = dayKey(model.now);
  const find = (text: string) => {
    setTyped(text);
    setShown(AT_A_TIME);
  };
  return (
    <section className="case-list" aria-labelledby="case-list-head">
      <h2 id="case-list-head">Cases on this device</h2>
      {model.cases.length === 0 ? <p className="step-line">{model.reading ? 'Being read …' : 'None yet.'}</p> : null}
      {model.cases.length <= AT_A_TIME ? null : (
        <Field
          label="Find by code"
          hint={`among ${model.cases.length} cases`}
          value={typed}
          maxLength={24}
          onChange={find}
        />
      )}
      {rows.length === 0 && typed !== '' ? <p className="step-line">No case has this in its code.</p> : null}
      <ul>
        {rows.slice(0, shown).map((row) => (
          <CaseRow key={row.id} row={row} today={today} model={model} actions={actions} />
        ))}
      </ul>
      {rest <= 0 ? null : (
        <Target size="big" onPress={() => setShown(shown + AT_A_TIME)}>
          {Math.min(rest, AT_A_TIME)} more of {rest}
        </Target>
      )}
    </section>
  );
}
