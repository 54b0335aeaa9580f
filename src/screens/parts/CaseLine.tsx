/** The visits of a case in a row: what is done, what runs, what may be opened next. Shape and words carry the state. */
import { useState } from 'react';
import type { AppActions, AppModel, CaseVisit } from '../../app/model.ts';
import type { Person } from '../../domain/protocol/types.ts';
import type { BenchSummary } from '../../domain/summary/bench.types.ts';
import { day } from '../format.ts';
import { SignIcon, ToneIcon } from './Icons.tsx';
import { LabDue } from './LabDue.tsx';
import { Trouble } from './Lines.tsx';
import { Target } from './Target.tsx';
import { Who } from './Who.tsx';

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
  readonly people: readonly Person[];
  readonly clinician: string;
  readonly assistant: string;
}

/** Who works at the next visit, when it is not the same two. */
function OtherPeople({ next, actions, people, onClose, ...last }: NextProps & { readonly onClose: () => void }) {
  const [clinician, setClinician] = useState(last.clinician);
  const [assistant, setAssistant] = useState(last.assistant);
  const [trouble, setTrouble] = useState('');
  const begin = () => {
    const who = { clinician: clinician.trim(), assistant: assistant.trim() };
    if (who.clinician === '' || who.assistant === '') {
      setTrouble('The initials of clinician and assistant are wanted.');
      return;
    }
    actions.openVisit({ visit: next.visit, ...who });
    onClose();
  };
  return (
    <form
      className="entry-form who-form"
      aria-label={`People of ${next.name}`}
      onSubmit={(event) => {
        event.preventDefault();
        begin();
      }}
    >
      <Who part="clinician" people={people} value={clinician} onChange={setClinician} />
      <Who part="assistant" people={people} value={assistant} onChange={setAssistant} />
      <Trouble text={trouble} />
      <div className="entry-ends">
        <button type="submit" className="target target-main target-plain">
          <span className="target-words">Open with these</span>
        </button>
        <Target onPress={onClose}>Give up</Target>
      </div>
    </form>
  );
}

/** The next visit, once the one before it is closed: with the same two people, or with others. */
export function OpenNext({ model, actions }: CaseLineProps) {
  const [others, setOthers] = useState(false);
  const next = model.caseLine?.find((visit) => visit.state === 'next');
  if (next === undefined) return null;
  const { clinician = '', assistant = '' } = model.summary ?? {};
  const who = { next, actions, people: model.people ?? [], clinician, assistant };
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

interface LabWordsProps {
  readonly bench: BenchSummary | undefined;
  readonly visit: string;
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What the laboratory has of a visit's order; empty while it wrote nothing. */
export function labWords(bench: BenchSummary | undefined, visit: string): string {
  if (bench === undefined) return '';
  const done = bench.doneOf[visit] ?? 0;
  const open = bench.questions.filter((one) => one.visit === visit && one.answer === undefined).length;
  return [
    ...(done === 0 ? [] : [`${counted(done, 'line', 'lines')} done`]),
    ...(open === 0 ? [] : [`${counted(open, 'question', 'questions')} open`]),
  ].join(', ');
}

function LabWords({ bench, visit }: LabWordsProps) {
  const words = labWords(bench, visit);
  return words === '' ? null : <p className="case-visit-lab">Laboratory: {words}</p>;
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
            {visit.people === undefined ? null : <p>{visit.people}</p>}
            <LabWords bench={model.summary?.bench} visit={visit.name} />
            {visit.lab === undefined ? null : (
              <p className={visit.lab.late ? 'case-visit-lab case-visit-late' : 'case-visit-lab'}>
                {visit.lab.late ? <ToneIcon tone="warn" /> : null}
                {visit.lab.text}
              </p>
            )}
            {visit.otherClinician === true ? <p className="case-visit-other">another clinician</p> : null}
          </li>
        ))}
      </ol>
      <LabDue model={model} actions={actions} />
      <OpenNext model={model} actions={actions} />
    </section>
  );
}
