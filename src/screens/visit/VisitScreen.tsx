/** One step fills the screen; what is not needed now is one move away. */
import { useEffect, useRef } from 'react';
import type { AppActions, AppModel, StepView } from '../../app/model.ts';
import { ActionBar } from '../parts/ActionBar.tsx';
import { EarTarget, SayNow } from '../parts/EarStrip.tsx';
import { FlagBar, FlagsPanel } from '../parts/Flags.tsx';
import { Keypad } from '../parts/Keypad.tsx';
import { CautionLine, SaidLine } from '../parts/Lines.tsx';
import { NotePanel } from '../parts/NotePanel.tsx';
import { Rail } from '../parts/Rail.tsx';
import { Target } from '../parts/Target.tsx';
import type { VisitUi } from '../useVisitUi.ts';
import { StepBody } from './StepBody.tsx';

export interface VisitProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  readonly ui: VisitUi;
}

function StepHead({ step }: { readonly step: StepView }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = `${step.step.id}:${step.mode}`;
  const before = useRef(shown);
  useEffect(() => {
    if (before.current === shown) return;
    before.current = shown;
    // The control that had the focus is gone with its step: let a screen reader go on from the new title.
    if (document.activeElement === document.body) heading.current?.focus({ preventScroll: true });
  }, [shown]);
  const { chapter, chapterCount, place, placeCount } = step;
  return (
    <header className="step-head">
      <p className="step-place">
        Part {chapter.number} of {chapterCount} · {chapter.title}
        {placeCount > 1 ? ` · step ${place} of ${placeCount}` : ''}
      </p>
      <h1 className="step-title" tabIndex={-1} ref={heading}>
        {step.title}
      </h1>
    </header>
  );
}

function Middle({ model, actions, ui, step }: VisitProps & { readonly step: StepView }) {
  if (ui.panel === 'flags') return <FlagsPanel model={model} actions={actions} onClose={() => ui.show('none')} />;
  if (ui.panel === 'note') return <NotePanel actions={actions} onClose={() => ui.show('none')} />;
  if (model.keypadOpen) return <Keypad step={step} ui={ui} />;
  return <StepBody model={model} step={step} actions={actions} ui={ui} />;
}

function NoVisit({ actions }: { readonly actions: AppActions }) {
  return (
    <main className="page">
      <h1>No visit is open</h1>
      <p>Choose a case from the list, or begin a new one.</p>
      <Target look="main" size="big" onPress={() => actions.go('cases')}>
        To the cases
      </Target>
    </main>
  );
}

export function VisitScreen({ model, actions, ui }: VisitProps) {
  const { step } = model;
  if (step === undefined) return <NoVisit actions={actions} />;
  return (
    <div className={`visit visit-${step.mode}`}>
      <Rail model={model} actions={actions} places={['cases', 'record', 'summary']} />
      <main className="step">
        <StepHead step={step} />
        <div className="step-body">
          <Middle model={model} actions={actions} ui={ui} step={step} />
        </div>
        {ui.panel === 'flags' ? null : <FlagBar flags={model.flags} onOpen={() => ui.show('flags')} />}
        <CautionLine cautions={model.cautions} />
        <SaidLine said={model.said} trouble={model.trouble} />
      </main>
      <ActionBar model={model} step={step} actions={actions} />
      <footer className="foot">
        <EarTarget ear={model.ear} actions={actions} />
        <SayNow words={step.words} />
        <Target look="quiet" onPress={() => ui.show(ui.panel === 'note' ? 'none' : 'note')}>
          Note
        </Target>
      </footer>
    </div>
  );
}
