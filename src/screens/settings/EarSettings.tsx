/** Everything about the ear: when it listens, what it answers to, and where speech is turned into words. */
import { useState } from 'react';
import type { AppActions, PreferencesView } from '../../app/model.ts';
import { Target } from '../parts/Target.tsx';
import { languageName } from './languages.ts';
import { OneOf, Section, type Option } from './parts.tsx';

export interface SettingProps {
  readonly preferences: PreferencesView;
  readonly actions: AppActions;
}

const MODES: readonly Option<PreferencesView['earMode']>[] = [
  { value: 'always', label: 'All the time', more: 'while it is switched on' },
  { value: 'readings', label: 'Only at readings', more: 'while a number is asked for or waits for its yes' },
  { value: 'push', label: 'Only while held', more: 'key F8, the key left of 1, or the ear on the screen' },
];

export function EarModeSetting({ preferences, actions }: SettingProps) {
  return (
    <Section id="ear" title="When the ear listens">
      <OneOf
        name="When the ear listens"
        options={MODES}
        chosen={preferences.earMode}
        onChoose={(earMode) => actions.setPreferences({ earMode })}
      />
      <p className="setting-note">It is always shut while Rimwise speaks, and on every screen but the visit’s.</p>
    </Section>
  );
}

export function AddressSetting({ preferences, actions }: SettingProps) {
  const { addressWord } = preferences;
  const [text, setText] = useState(addressWord);
  return (
    <Section id="address" title="Address word">
      <p className="setting-now">
        {addressWord === '' ? 'None: commands are taken as they are said.' : `Commands begin with “${addressWord}”.`}
      </p>
      <form
        className="address-form"
        onSubmit={(event) => {
          event.preventDefault();
          actions.setPreferences({ addressWord: text });
        }}
      >
        <label className="field">
          <span>One short word, or two</span>
          <input
            type="text"
            value={text}
            maxLength={24}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        <button type="submit" className="target target-main">
          <span className="target-words">Use it</span>
        </button>
        <Target
          refused={addressWord === ''}
          onPress={() => {
            setText('');
            actions.setPreferences({ addressWord: '' });
          }}
        >
          No word
        </Target>
      </form>
      <p className="setting-note">
        For rooms with a radio or much talk. Numbers at a reading, and the yes or no after them, need no address.
      </p>
    </Section>
  );
}

export function ConsentSetting({ preferences, actions }: SettingProps) {
  const { mayLeaveDevice } = preferences;
  return (
    <Section id="consent" title="Speech leaving this device">
      <p className="setting-now">
        {mayLeaveDevice ? 'Agreed: speech may be sent away to be turned into words.' : 'Not agreed: no speech is sent.'}
      </p>
      <p>
        Unless the words are on this device, the browser sends what the microphone hears while the ear is open to a
        speech service, over the internet. The patient may be heard too. Rimwise itself keeps no sound. Without this
        consent, keypad, keys, pedal and touch do everything.
      </p>
      {mayLeaveDevice ? (
        <Target size="big" onPress={() => actions.setPreferences({ mayLeaveDevice: false })}>
          Take the consent back
        </Target>
      ) : (
        <Target size="big" onPress={() => actions.setPreferences({ mayLeaveDevice: true })}>
          Agree that speech may be sent
        </Target>
      )}
      <p className="setting-note">Ask those responsible for data protection in your practice first.</p>
    </Section>
  );
}

const ON_DEVICE: Readonly<Record<PreferencesView['onDevice'], (language: string) => string>> = {
  unknown: () => 'Asking the browser …',
  ready: (language) => `${language} is on this device: speech stays here, and no consent is needed.`,
  fetchable: (language) => `The browser can fetch ${language} to this device. Speech then stays here.`,
  fetching: (language) => `The browser is fetching ${language}. This may take some minutes.`,
  unavailable: (language) => `This browser cannot turn ${language} into words by itself.`,
  failed: (language) => `The browser did not fetch ${language}. It needs a connection and room; try again later.`,
};

export function OnDeviceSetting({ preferences, actions }: SettingProps) {
  const { onDevice, language } = preferences;
  const offered = onDevice === 'fetchable' || onDevice === 'failed';
  return (
    <Section id="device" title="Words on this device">
      <p className="setting-now" role="status">
        {ON_DEVICE[onDevice](languageName(language))}
      </p>
      {offered ? (
        <Target size="big" onPress={actions.fetchOnDevice}>
          Fetch {languageName(language)} to this device
        </Target>
      ) : null}
    </Section>
  );
}
