/** At the list of cases: whether what is stored here can be read by others, and a way to lock. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { Target } from '../parts/Target.tsx';

export const READABLE = 'No passphrase is set: entries on this device can be read by whoever can use this browser.';

interface LockLineProps {
  readonly lock: AppModel['lock'];
  readonly actions: AppActions;
}

export function ReadableLine({ lock, actions }: LockLineProps) {
  if (lock?.state !== 'none') return null;
  return (
    <section className="readable" aria-label="Who can read what is stored here">
      <p className="step-line">{READABLE}</p>
      <Target onPress={() => actions.go('settings')}>Set a passphrase</Target>
    </section>
  );
}

export function LockTarget({ lock, actions, size = 'plain' }: LockLineProps & { readonly size?: 'plain' | 'big' }) {
  if (lock?.state !== 'open') return null;
  return (
    <Target size={size} onPress={() => actions.askLock({ ask: 'lock' })}>
      Lock
    </Target>
  );
}
