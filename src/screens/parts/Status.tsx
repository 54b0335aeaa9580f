/** Is it kept, can it ring, does it speak. Never only a colour. */
import type { AppActions, AppModel, SaveState } from '../../app/model.ts';
import { SignIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

export function SaveBadge({ save }: { readonly save: SaveState }) {
  if (save.state === 'memory') return null;
  const kept = save.state === 'kept';
  return (
    <p className={`save save-${save.state}`}>
      <SignIcon sign={kept ? 'kept' : 'keeping'} />
      <span>{kept ? 'kept' : 'keeping'}</span>
    </p>
  );
}

/** Storage refused: says so in words across the screen until the entries are safe. */
export function UnsafeBar({ save, actions }: { readonly save: SaveState; readonly actions: AppActions }) {
  if (save.state !== 'memory') return null;
  const entries = save.unsaved === 1 ? '1 entry is' : `${save.unsaved} entries are`;
  return (
    <section className="unsafe" role="alert" aria-label="Not safe yet">
      <SignIcon sign="unsafe" />
      <p>
        <strong>Not safe yet:</strong> {save.why} {entries} only in this window.
      </p>
      <Target look="warn" onPress={actions.saveFile}>
        Save file
      </Target>
    </section>
  );
}

export function SoundBadge({ sound }: { readonly sound: 'armed' | 'unavailable' }) {
  const armed = sound === 'armed';
  return (
    <p className={`sound sound-${sound}`}>
      <SignIcon sign={armed ? 'soundOn' : 'soundOff'} />
      <span>{armed ? 'sound on' : 'no sound, watch the screen'}</span>
    </p>
  );
}

/** Browsers allow a sound only after a touch on this page; until then this stands in the way, on purpose. */
export function SoundTarget({ sound, actions }: Pick<AppModel, 'sound'> & { readonly actions: AppActions }) {
  if (sound !== 'needsTouch') return <SoundBadge sound={sound} />;
  return (
    <Target look="warn" icon={<SignIcon sign="soundOff" />} onPress={actions.armSound}>
      Touch to arm sound
    </Target>
  );
}

export function SpeechTarget({
  speech,
  actions,
}: {
  readonly speech: AppModel['speech'];
  readonly actions: AppActions;
}) {
  if (speech === undefined) return null;
  return (
    <Target chosen={speech} onPress={() => actions.setSpeech(!speech)}>
      {speech ? 'Reads aloud' : 'Silent'}
    </Target>
  );
}
