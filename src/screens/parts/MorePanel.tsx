/** What is not needed at the step itself: other places, the file, reading aloud. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { LockTarget } from '../lock/LockLine.tsx';
import { ConsentTarget } from './ConsentPanel.tsx';
import { SpeechTarget } from './Status.tsx';
import { TakenTargets } from './Taken.tsx';
import { Target } from './Target.tsx';

const PLACES: readonly { readonly place: AppModel['place']; readonly label: string }[] = [
  { place: 'record', label: 'Record, correct' },
  { place: 'summary', label: 'Summary' },
  { place: 'labSheet', label: 'Lab sheet' },
  { place: 'cases', label: 'All cases' },
  { place: 'settings', label: 'Settings' },
];

interface MorePanelProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  readonly onClose: () => void;
}

export function MorePanel({ model, actions, onClose }: MorePanelProps) {
  const go = (place: AppModel['place']) => {
    onClose();
    actions.go(place);
  };
  return (
    <section className="more-panel" aria-label="More">
      <div className="choices choices-many">
        {PLACES.map(({ place, label }) => (
          <Target key={place} size="big" onPress={() => go(place)}>
            {label}
          </Target>
        ))}
        <Target size="big" onPress={actions.saveFile}>
          Save file
        </Target>
        <LockTarget lock={model.lock} actions={actions} size="big" />
        <SpeechTarget speech={model.speech} actions={actions} />
        <ConsentTarget model={model} actions={actions} />
        <TakenTargets clocks={model.clocks} actions={actions} />
      </div>
      <div className="flag-ends">
        <Target look="main" size="big" onPress={onClose}>
          Back to the step
        </Target>
      </div>
    </section>
  );
}
