/** The visits of a case in a row: what is done, what runs, what may be opened next. Shape and words carry the state. */
import type { AppActions, AppModel, CaseVisit } from '../../app/model.ts';
import { day } from '../format.ts';
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

/** The next visit, once the one before it is closed. Initials are those of the visit before; signing asks anew. */
export function OpenNext({ model, actions }: CaseLineProps) {
  const next = model.caseLine?.find((visit) => visit.state === 'next');
  if (next === undefined) return null;
  const { clinician = '', assistant = '' } = model.summary ?? {};
  return (
    <Target size="big" onPress={() => actions.openVisit({ visit: next.visit, clinician, assistant })}>
      Open {next.name}
    </Target>
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
