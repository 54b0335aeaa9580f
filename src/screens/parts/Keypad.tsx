/** The app's own keypad: plain text, never a number field, so that no locale can turn 66.5 into 665. */
import type { StepView } from '../../app/model.ts';
import type { VisitUi } from '../useVisitUi.ts';
import { Target } from './Target.tsx';

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '0', '.'] as const;

/** Which quantity the next number is for. */
function subjectOf(step: StepView | undefined): string {
  if (step?.correcting !== undefined) return `${step.correcting.label}, instead of ${step.correcting.digits}`;
  return step?.reading?.label ?? step?.pending?.readingLabel ?? 'number';
}

interface KeypadProps {
  readonly step: StepView | undefined;
  readonly ui: VisitUi;
}

export function Keypad({ step, ui }: KeypadProps) {
  const unit = step?.pending?.unit ?? step?.correcting?.unit ?? step?.reading?.unit ?? '';
  return (
    <section className="keypad" aria-label="Keypad">
      <div className="keypad-display">
        <p className="keypad-subject">{subjectOf(step)}</p>
        <p className={`digits digits-${ui.draft.replace('.', '').length}`} aria-live="polite">
          {ui.draft === '' ? <span className="digits-slot" aria-hidden="true" /> : ui.draft}
          <span className="unit"> {unit}</span>
        </p>
        <p className="keypad-trouble" role="status">
          {ui.draftTrouble}
        </p>
      </div>
      <div className="keypad-keys">
        {KEYS.map((key) => (
          <Target key={key} size="big" name={key === '.' ? 'point' : key} onPress={() => ui.sign(key)}>
            {key}
          </Target>
        ))}
        <Target size="big" name="Rub out the last digit" onPress={ui.rubOut}>
          ⌫
        </Target>
        <Target look="quiet" onPress={ui.closeKeypad}>
          Close
        </Target>
        <Target look="main" size="big" refused={ui.draft === ''} onPress={ui.enter}>
          Enter
        </Target>
      </div>
    </section>
  );
}
