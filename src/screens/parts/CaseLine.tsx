/** The visits of a case in a row: what is done, what runs, what may be opened next. Shape and words carry the state. */
import { useState } from 'react';
import type { AppActions, AppModel, CaseVisit } from '../../app/model.ts';
import { day } from '../format.ts';
import { Form, type Written } from './Form.tsx';
import { SignIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

function stateWords(visit: CaseVisit): string {
  if (visit.state === 'done') return visit.closedAt === undefined ? 'closed' : `closed ${day(visit.closedAt)}`;
  if (visit.state === 'now') return visit.openedAt === undefined ? 'open now' : `open since ${day(visit.openedAt)}`;
  return visit.state === 'next' ? 'may be opened' : 'later';
}

interface CaseLineProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

interface NextProps {
  readonly next: CaseVisit;
  readonly actions: AppActions;
  readonly clinician: string;
  readonly assistant: string;
}

/** Who works at the next visit, when it is not the same two. */
function OtherPeople({ next, actions, clinician, assistant, onClose }: NextProps & { readonly onClose: () => void }) {
  const begin = (written: Written): string => {
    const who = { clinician: (written['clinician'] ?? '').trim(), assistant: (written['assistant'] ?? '').trim() };
    if (who.clinician === '' || who.assistant === '') return 'The initials of clinician and assistant are wanted.';
    actions.openVisit({ visit: next.visit, ...who });
    return '';
  };
  const fields = [
    { key: 'clinician', label: 'Clinician', hint: 'initials', value: clinician },
    { key: 'assistant', label: 'Assistant', hint: 'initials', value: assistant },
  ];
  return (
    <Form name={`People of ${next.name}`} fields={fields} onKeep={begin} onClose={onClose} keepWord="Open with these" />
  );
}

/** The next visit, once the one before it is closed: with the same two people, or with others. */
export function OpenNext({ model, actions }: CaseLineProps) {
  const [others, setOthers] = useState(false);
  const next = model.caseLine?.find((visit) => visit.state === 'next');
  if (next === undefined) return null;
  const { clinician = '', assistant = '' } = model.summary ?? {};
  const who = { next, actions, clinician, assistant };
  if (others) return <OtherPeople {...who} onClose={() => setOthers(false)} />;
  return (
    <div className="entry-ends">
      <Target size="big" onPress={() => actions.openVisit({ visit: next.visit, clinician, assistant })}>
        Open {next.name}
        <span className="option-more">
          {clinician}, {assistant}
        </span>
      </Target>
      <Target size="big" onPress={() => setOthers(true)}>
        Other initials
      </Target>
    </div>
  );
}

export function CaseLine({ model, actions }: CaseLineProps) {
  const { caseLine = [] } = model;
  if (caseLine.length === 0) return null;
  return (
    <section className="case-line" aria-label="Visits of this case">
      <ol>
        {caseLine.map((visit) => (
          <li key={visit.name} className={`case-visit case-visit-${visit.state}`}>
            <p className="case-visit-name">
              {visit.state === 'done' ? <SignIcon sign="kept" /> : null} {visit.name}
            </p>
            <p>{visit.title}</p>
            <p className="case-visit-state">{stateWords(visit)}</p>
          </li>
        ))}
      </ol>
      <OpenNext model={model} actions={actions} />
    </section>
  );
}
