/** The first thing seen: cases on this device, a demo to try, a new case to begin. */
import { useState } from 'react';
import type { AppActions, AppModel, CaseListRow } from '../../app/model.ts';
import { shortDay } from '../../domain/measure/calendar.ts';
import { day, dayKey, timeOfDay } from '../format.ts';
import { LockTarget, ReadableLine } from '../lock/LockLine.tsx';
import { RimMark, ToneIcon } from '../parts/Icons.tsx';
import { SaidLine } from '../parts/Lines.tsx';
import { SaveBadge, SoundTarget, SpeechTarget } from '../parts/Status.tsx';
import { Target } from '../parts/Target.tsx';
import { CaseClocks } from '../parts/Waiting.tsx';
import { SafetyLine, UpdateBar } from './Device.tsx';
import { TakeIn } from '../files/TakeIn.tsx';
import { NewCase } from './NewCase.tsx';

export interface PlaceProps {
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

function CaseRow({ row, today, model, actions }: RowProps & PlaceProps) {
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

function BeforeYouStart() {
  return (
    <section className="before" aria-labelledby="before-head">
      <h2 id="before-head">
        <ToneIcon tone="warn" /> Before you start
      </h2>
      <ul>
        <li>
          Rimwise keeps the list, the numbers and the time. It does not diagnose, and it never says that a finding is
          harmless.
        </li>
        <li>Your local protocols, the material’s instructions for use and your licensed judgement come first.</li>
        <li>Use a case code, never a name. All entries stay in this browser until you save a file.</li>
      </ul>
    </section>
  );
}

function Begin({ model, actions }: PlaceProps) {
  const [asking, setAsking] = useState(false);
  const demo = () => actions.newCase({ code: 'DEMO-01', clinician: 'CL', assistant: 'AS', demo: true });
  if (asking) return <NewCase actions={actions} people={model.people ?? []} onClose={() => setAsking(false)} />;
  return (
    <div className="begin">
      <Target look="main" size="giant" onPress={demo}>
        Try the demo case
        <span className="material-times">an invented patient, nothing to set up</span>
      </Target>
      <Target size="giant" onPress={() => setAsking(true)}>
        New case
      </Target>
    </div>
  );
}

export function CasesScreen({ model, actions }: PlaceProps) {
  return (
    <main className="page cases">
      <header className="cases-head">
        <h1>
          <RimMark /> Rimwise
        </h1>
        <p>Complete dentures at the chair, step by step, by voice, key, pedal or touch.</p>
        <div className="cases-state">
          {model.save.state === 'keeping' ? <SaveBadge save={model.save} /> : null}
          {model.sound === 'needsTouch' ? null : <SoundTarget sound={model.sound} actions={actions} />}
          <SpeechTarget speech={model.speech} actions={actions} />
          <LockTarget lock={model.lock} actions={actions} />
          <Target onPress={() => actions.go('settings')}>Settings</Target>
        </div>
      </header>
      <SaidLine said={model.said} trouble={model.trouble} />
      <UpdateBar update={model.update} actions={actions} />
      <Begin model={model} actions={actions} />
      <section className="case-list" aria-labelledby="case-list-head">
        <h2 id="case-list-head">Cases on this device</h2>
        {model.cases.length === 0 ? <p className="step-line">{model.reading ? 'Being read …' : 'None yet.'}</p> : null}
        <ul>
          {model.cases.map((row) => (
            <CaseRow key={row.id} row={row} today={dayKey(model.now)} model={model} actions={actions} />
          ))}
        </ul>
      </section>
      <TakeIn model={model} actions={actions} />
      <SafetyLine safety={model.safety} />
      <ReadableLine lock={model.lock} actions={actions} />
      <BeforeYouStart />
    </main>
  );
}
