/** Speech that would leave this device is asked about first, in words, and never by the way. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { EarIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

interface ConsentPanelProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  readonly onClose: () => void;
}

export function ConsentPanel({ model, actions, onClose }: ConsentPanelProps) {
  const { ear } = model;
  const agree = () => {
    actions.setSpeechMayLeave(true);
    actions.setEar(true);
    onClose();
  };
  return (
    <section className="consent-panel" aria-label="Consent to listening">
      <h2>
        <EarIcon state="consent" /> May speech be sent off this device?
      </h2>
      {ear.state === 'blocked' ? <p className="step-line">{ear.why}</p> : null}
      <p className="step-line">
        The patient may be heard too. Without it everything works by keypad, keys, pedal and touch. The consent can be
        taken back at any time under More.
      </p>
      <div className="flag-ends">
        <Target size="big" onPress={onClose}>
          No, stay on this device
        </Target>
        <Target size="big" onPress={agree}>
          Yes, it may be sent
        </Target>
      </div>
    </section>
  );
}

/** Taking the consent back is one touch. */
export function ConsentTarget({ model, actions }: Omit<ConsentPanelProps, 'onClose'>) {
  if (!model.speechMayLeave) return null;
  return (
    <Target size="big" onPress={() => actions.setSpeechMayLeave(false)}>
      Speech may be sent: take back
    </Target>
  );
}
