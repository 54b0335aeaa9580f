/** The whole of what is seen: one place at a time, with the running clocks above every one of them. */
import type { AppActions, AppModel } from '../app/model.ts';
import { lazy, Suspense } from 'react';
import { CasesScreen } from './cases/CasesScreen.tsx';
import { LabSheetScreen } from './labsheet/LabSheetScreen.tsx';
import { LockScreen, RecoverySheet } from './lock/Lazy.tsx';
import { ClockStrip, RingingBar } from './parts/Clocks.tsx';
import { ElsewhereBar } from './parts/Elsewhere.tsx';
import { SoundTarget, UnsafeBar } from './parts/Status.tsx';
import { PracticePlace } from './practice/Lazy.tsx';
import { RecordScreen } from './record/RecordScreen.tsx';
import { SettingsScreen } from './settings/SettingsScreen.tsx';
import { useTalkKey } from './settings/useTalkKey.ts';
import { SummaryScreen } from './summary/SummaryScreen.tsx';
import { useVisitUi, type VisitUi } from './useVisitUi.ts';
import { VisitScreen } from './visit/VisitScreen.tsx';
import './styles/index.css';

/** Fetched when a case is first opened at the bench: at the chair it is never wanted. */
const BenchScreen = lazy(() => import('./bench/BenchScreen.tsx').then((part) => ({ default: part.BenchScreen })));

export interface AppProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

function Place({ model, actions, ui }: AppProps & { readonly ui: VisitUi }) {
  switch (model.place) {
    case 'cases':
      return <CasesScreen model={model} actions={actions} />;
    case 'visit':
      return <VisitScreen model={model} actions={actions} ui={ui} />;
    case 'summary':
      return <SummaryScreen model={model} actions={actions} ui={ui} />;
    case 'labSheet':
      return <LabSheetScreen model={model} actions={actions} />;
    case 'record':
      return <RecordScreen model={model} actions={actions} />;
    case 'practice':
    case 'protocol':
      return <PracticePlace model={model} actions={actions} />;
    case 'bench':
      return (
        <Suspense fallback={<p className="step-line">The bench is being set up …</p>}>
          <BenchScreen model={model} actions={actions} />
        </Suspense>
      );
    case 'settings':
      return <SettingsScreen model={model} actions={actions} />;
  }
}

/** Locked, nothing else is there: no screen of a case, no key that does anything. */
export function App({ model, actions }: AppProps) {
  if (model.lock?.state === 'locked') return <LockScreen model={model} lock={model.lock} actions={actions} />;
  return <Unlocked model={model} actions={actions} />;
}

function Unlocked({ model, actions }: AppProps) {
  const ui = useVisitUi(model, actions);
  useTalkKey(model, actions);
  return (
    <div className={`app app-${model.place}`} lang="en">
      <div className="top no-print">
        <UnsafeBar save={model.save} actions={actions} />
        <ElsewhereBar model={model} actions={actions} />
        {model.sound === 'needsTouch' ? <SoundTarget sound={model.sound} actions={actions} /> : null}
        <RingingBar model={model} actions={actions} />
        <ClockStrip model={model} actions={actions} />
      </div>
      {model.lock === undefined || model.lock.code === '' ? (
        <Place model={model} actions={actions} ui={ui} />
      ) : (
        <RecoverySheet model={model} lock={model.lock} actions={actions} />
      )}
    </div>
  );
}
