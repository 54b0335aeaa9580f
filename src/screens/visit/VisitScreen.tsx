/** One step fills the screen; what is not needed now is one move away. */
import { useEffect, useRef } from 'react';
import type { AppActions, AppModel, StepView } from '../../app/model.ts';
import { ActionBar } from '../parts/ActionBar.tsx';
import { ConsentPanel } from '../parts/ConsentPanel.tsx';
import { EarTarget, SayNow } from '../parts/EarStrip.tsx';
import { FlagBar, FlagsPanel } from '../parts/Flags.tsx';
import { Keypad } from '../parts/Keypad.tsx';
import { CautionHeads, Said, Trouble } from '../parts/Lines.tsx';
import { MorePanel } from '../parts/MorePanel.tsx';
import { NotePanel } from '../parts/NotePanel.tsx';
import { SaveBadge, SoundBadge } from '../parts/Status.tsx';
import { Target } from '../parts/Target.tsx';
import { addressedWords } from '../settings/addressed.ts';
import { TalkTarget } from '../settings/TalkTarget.tsx';
import { unseenWords } from '../choices.ts';
import { LabAtStart } from '../bench/FromLab.tsx';
import type { VisitUi } from '../useVisitUi.ts';
import { StepBody } from './StepBody.tsx';

/** Nothing else stands beside these, not even an open flag. */
const ALONE: readonly StepView['mode'][] = ['confirm', 'choose', 'reason', 'signoff', 'held', 'closed'];

export interface VisitProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  readonly ui: VisitUi;
}

interface HeadProps {
  readonly model: AppModel;
  readonly step: StepView;
  /** A panel needs the room: the title stays, smaller. */
  readonly compact: boolean;
}

function StepHead({ model, step, compact }: HeadProps) {
  const { summary, save, sound } = model;
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
    <header className={compact ? 'step-head step-compact' : 'step-head'}>
      <div className="step-place">
        <p>
          {summary === undefined ? null : <strong>{summary.caseCode} · </strong>}
          Part {chapter.number} of {chapterCount}
          {placeCount > 1 ? <span className="step-count">{`, step ${place} of ${placeCount}`}</span> : null} ·{' '}
          {chapter.title}
        </p>
        <div className="step-state">
          <SaveBadge save={save} />
          {sound === 'needsTouch' ? null : <SoundBadge sound={sound} />}
        </div>
      </div>
      <h1 className="step-title" tabIndex={-1} ref={heading}>
        {step.title}
      </h1>
    </header>
  );
}

function Middle({ model, actions, ui, step }: VisitProps & { readonly step: StepView }) {
  if (ui.panel === 'flags') return <FlagsPanel model={model} actions={actions} onClose={() => ui.show('none')} />;
  if (ui.panel === 'consent') return <ConsentPanel model={model} actions={actions} onClose={() => ui.show('none')} />;
  if (ui.panel === 'more') return <MorePanel model={model} actions={actions} onClose={() => ui.show('none')} />;
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
  const panel = ui.panel !== 'none' || model.keypadOpen;
  const Ear = model.preferences?.earMode === 'push' ? TalkTarget : EarTarget;
  const alone = ALONE.includes(step.mode);
  return (
    <div className={`visit visit-${step.mode}`}>
      <main className="step">
        <StepHead model={model} step={step} compact={ui.panel !== 'none'} />
        <div className="step-body">
          <Middle model={model} actions={actions} ui={ui} step={step} />
        </div>
        <Trouble text={model.trouble} />
        {panel || alone ? null : <LabAtStart model={model} actions={actions} />}
        {panel || alone ? null : <FlagBar flags={model.flags} onOpen={() => ui.show('flags')} />}
        <div className="step-foot">
          <CautionHeads cautions={model.cautions} />
          <Said text={model.said} />
        </div>
      </main>
      <ActionBar model={model} step={step} actions={actions} ui={ui} />
      <footer className="foot">
        <Ear ear={model.ear} actions={actions} onConsent={() => ui.show('consent')} />
        <SayNow words={addressedWords(unseenWords(step), step.mode, model.preferences?.addressWord ?? '')} />
        <Target
          look="quiet"
          chosen={ui.panel === 'more'}
          onPress={() => ui.show(ui.panel === 'more' ? 'none' : 'more')}
        >
          More
        </Target>
      </footer>
    </div>
  );
}
