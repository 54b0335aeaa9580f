/** What can be done at every step, in the same place at every step. */
import type { AppActions, AppModel, StepView } from '../../app/model.ts';
import type { VisitUi } from '../useVisitUi.ts';
import { Target } from './Target.tsx';

interface ActionBarProps {
  readonly model: AppModel;
  readonly step: StepView;
  readonly actions: AppActions;
  readonly ui: VisitUi;
}

export function ActionBar({ model, step, actions, ui }: ActionBarProps) {
  const asking = step.mode === 'reason' || step.correcting !== undefined;
  const stands = step.mode === 'held' || step.mode === 'closed';
  return (
    <nav className="actions" aria-label="Step actions">
      <Target refused={stands} onPress={() => actions.press(asking ? 'cancel' : 'back')}>
        {asking ? 'Cancel' : 'Back'}
      </Target>
      <Target onPress={() => actions.press('undo')} refused={step.mode === 'closed'}>
        Undo
      </Target>
      <Target refused={stands} onPress={() => actions.press('hold')}>
        Hold
      </Target>
      <Target refused={stands || asking} onPress={() => actions.press('skip')}>
        Skip
      </Target>
      <Target refused={stands} chosen={model.keypadOpen} onPress={() => actions.openKeypad(!model.keypadOpen)}>
        Keypad
      </Target>
      <Target chosen={ui.panel === 'note'} onPress={() => ui.show(ui.panel === 'note' ? 'none' : 'note')}>
        Note
      </Target>
      <Target look="main" size="giant" refused={!step.canNext || stands} onPress={() => actions.press('next')}>
        Next
        {step.next === undefined ? null : <span className="next-title">{step.next}</span>}
      </Target>
    </nav>
  );
}
