/** The passphrase in the settings: set one, change it, take it away; when to lock by itself. */
import { useState, type ReactNode } from 'react';
import type { AppActions, PreferencesView } from '../../app/model.ts';
import type { LockView } from '../../app/locking.types.ts';
import { SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { OneOf, Section, type Option } from '../settings/parts.tsx';
import { READABLE } from './LockLine.tsx';
import { newPassphrase, SecretForm, twiceTheSame, type SecretSpec } from './Passphrase.tsx';

interface LockSettingsProps {
  readonly lock: LockView | undefined;
  readonly preferences: PreferencesView;
  readonly actions: AppActions;
}

const AFTER: readonly Option<PreferencesView['lockAfterMin']>[] = [
  { value: 2, label: '2 min' },
  { value: 5, label: '5 min' },
  { value: 15, label: '15 min' },
  { value: 0, label: 'Never' },
];
const NOW: SecretSpec = { key: 'now', label: 'Passphrase as it is now' };

type Wish = 'change' | 'newCode' | 'turnOff';

function SetOne({ actions }: Pick<LockSettingsProps, 'actions'>) {
  const [asking, setAsking] = useState(false);
  if (!asking)
    return (
      <Target size="big" onPress={() => setAsking(true)}>
        Set a passphrase
      </Target>
    );
  return (
    <>
      <p className="setting-note">
        Everything stored here is sealed under it. Whoever forgets it needs the recovery code, which is shown once after
        this. Without either nobody can open the record. Save a file of each case first.
      </p>
      <SecretForm
        name="Set a passphrase"
        fields={newPassphrase}
        give="Seal the record"
        wrong={twiceTheSame}
        onGive={({ new: passphrase = '' }) => actions.askLock({ ask: 'turnOn', passphrase })}
        onClose={() => setAsking(false)}
      />
    </>
  );
}

function WishForm({ wish, actions, onClose }: { wish: Wish; actions: AppActions; onClose: () => void }) {
  if (wish === 'change')
    return (
      <SecretForm
        name="Change the passphrase"
        fields={[NOW, ...newPassphrase]}
        give="Change it"
        wrong={twiceTheSame}
        onGive={({ now: from = '', new: to = '' }) => actions.askLock({ ask: 'change', from, to })}
        onClose={onClose}
      />
    );
  if (wish === 'newCode')
    return (
      <SecretForm
        name="New recovery code"
        fields={[NOW]}
        give="Make a new code"
        onGive={({ now: passphrase = '' }) => actions.askLock({ ask: 'newCode', passphrase })}
        onClose={onClose}
      />
    );
  return (
    <>
      <p className="setting-note">After that, entries on this device can be read by whoever can use this browser.</p>
      <SecretForm
        name="Take the passphrase away"
        fields={[NOW]}
        give="Take it away"
        look="warn"
        onGive={({ now: passphrase = '' }) => actions.askLock({ ask: 'turnOff', passphrase })}
        onClose={onClose}
      />
    </>
  );
}

function Wishes({ actions }: Pick<LockSettingsProps, 'actions'>) {
  const [wish, setWish] = useState<Wish | undefined>();
  if (wish !== undefined) return <WishForm wish={wish} actions={actions} onClose={() => setWish(undefined)} />;
  return (
    <div className="secret-ends">
      <Target onPress={() => setWish('change')}>Change the passphrase</Target>
      <Target onPress={() => setWish('newCode')}>New recovery code</Target>
      <Target onPress={() => setWish('turnOff')}>Take the passphrase away</Target>
    </div>
  );
}

function WhenToLock({ preferences, actions }: Pick<LockSettingsProps, 'preferences' | 'actions'>) {
  const { lockAfterMin, lockOnHide } = preferences;
  return (
    <>
      <p className="setting-now">Locks by itself after</p>
      <OneOf
        name="Locks by itself after"
        options={AFTER}
        chosen={lockAfterMin}
        onChoose={(value) => actions.setPreferences({ lockAfterMin: value })}
      />
      <p className="setting-now">When another page or program comes to the front</p>
      <OneOf
        name="When another page or program comes to the front"
        options={[
          { value: 'lock', label: 'Lock' },
          { value: 'stay', label: 'Stay open' },
        ]}
        chosen={lockOnHide ? 'lock' : 'stay'}
        onChoose={(value) => actions.setPreferences({ lockOnHide: value === 'lock' })}
      />
    </>
  );
}

function Sealed({ lock, preferences, actions }: LockSettingsProps & { readonly lock: LockView }) {
  return (
    <>
      <p className="setting-now">
        {lock.unfinished
          ? 'A passphrase is set. Entries from before are not all in their new form yet.'
          : 'Entries on this device are sealed.'}
      </p>
      <Target look="main" size="big" onPress={() => actions.askLock({ ask: 'lock' })}>
        Lock now
      </Target>
      <p className="setting-note">Said, “lock the screen” does the same at any step of a visit.</p>
      <WhenToLock preferences={preferences} actions={actions} />
      <Wishes actions={actions} />
    </>
  );
}

function inside(props: LockSettingsProps & { readonly lock: LockView }): ReactNode {
  const { lock, actions } = props;
  if (lock.busy !== '') return <p className="setting-now">{lock.busy}</p>;
  if (lock.state === 'open') return <Sealed {...props} />;
  return (
    <>
      <p className="setting-now">{READABLE}</p>
      <SetOne actions={actions} />
    </>
  );
}

export function LockSettings(props: LockSettingsProps) {
  const { lock } = props;
  if (lock === undefined) return null;
  return (
    <Section id="lock" title="Passphrase and lock">
      {inside({ ...props, lock })}
      <SaidLine said={lock.said} trouble={lock.trouble} />
    </Section>
  );
}
