/** The first thing seen: cases on this device, a demo to try, a new case to begin. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import { Backup } from '../backup/Backup.tsx';
import { LockTarget, ReadableLine } from '../lock/LockLine.tsx';
import { RimMark, ToneIcon } from '../parts/Icons.tsx';
import { SaidLine } from '../parts/Lines.tsx';
import { SaveBadge, SoundTarget, SpeechTarget } from '../parts/Status.tsx';
import { Target } from '../parts/Target.tsx';
import { CaseList } from './CaseList.tsx';
import { SafetyLine, UpdateBar } from './Device.tsx';
import { TakeIn } from '../files/TakeIn.tsx';
import { NewCase } from './NewCase.tsx';

export interface PlaceProps {
  readonly model: AppModel;
  readonly actions: AppActions;
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
      <CaseList model={model} actions={actions} />
      <TakeIn model={model} actions={actions} />
      {model.files?.backup === undefined ? null : (
        <Backup backup={model.files.backup} actions={actions} now={model.now} />
      )}
      <SafetyLine safety={model.safety} />
      <ReadableLine lock={model.lock} actions={actions} />
      <BeforeYouStart />
    </main>
  );
}
