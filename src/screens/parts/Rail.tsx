/** Where one can go, and whether all is kept, can ring, and speaks. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { RimMark } from './Icons.tsx';
import { SaveBadge, SoundTarget, SpeechTarget } from './Status.tsx';
import { Target } from './Target.tsx';

const PLACES: readonly { readonly place: AppModel['place']; readonly label: string }[] = [
  { place: 'cases', label: 'Cases' },
  { place: 'visit', label: 'Visit' },
  { place: 'record', label: 'Record' },
  { place: 'summary', label: 'Summary' },
  { place: 'labSheet', label: 'Lab sheet' },
];

interface RailProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  /** On the visit itself only a few ways lead elsewhere. */
  readonly places: readonly AppModel['place'][];
}

export function Rail({ model, actions, places }: RailProps) {
  return (
    <header className="rail">
      <p className="rail-case">
        <RimMark />
        <span>{model.summary?.caseCode ?? 'Rimwise'}</span>
        {model.summary?.demo === true ? <span className="demo-tag">demo</span> : null}
      </p>
      <nav className="rail-places" aria-label="Places">
        {PLACES.filter(({ place }) => places.includes(place)).map(({ place, label }) => (
          <Target key={place} look="quiet" onPress={() => actions.go(place)}>
            {label}
          </Target>
        ))}
      </nav>
      <div className="rail-state">
        <SaveBadge save={model.save} />
        <SoundTarget sound={model.sound} actions={actions} />
        <SpeechTarget speech={model.speech} actions={actions} />
      </div>
    </header>
  );
}
