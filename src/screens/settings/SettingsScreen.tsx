/** What can be set, once and for all visits: language, ear, reading aloud, and how a number is kept. */
import type { AppActions, AppModel, PreferencesView } from '../../app/model.ts';
import { LockSettings } from '../lock/Lazy.tsx';
import { PageHead, Trouble } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { AddressSetting, ConsentSetting, EarModeSetting, OnDeviceSetting, type SettingProps } from './EarSettings.tsx';
import { languageName, LANGUAGES } from './languages.ts';
import { MoreOrLess, OneOf, Section, type Option } from './parts.tsx';

function LanguageSetting({ preferences, actions }: SettingProps) {
  const { language, visitLanguage } = preferences;
  const options = LANGUAGES.map(({ id, own }) => ({ value: id, label: <span lang={id}>{own}</span> }));
  const stays = visitLanguage !== undefined && visitLanguage !== language;
  return (
    <Section id="language" title="Language spoken">
      <OneOf
        name="Language spoken"
        options={options}
        chosen={language}
        onChoose={(next) => actions.setPreferences({ language: next })}
      />
      <p className="setting-note">
        Commands, numbers and numbers read aloud; the screen stays in English.
        {stays ? ` The visit that is open goes on in ${languageName(visitLanguage)}.` : ''}
      </p>
    </Section>
  );
}

interface AloudProps extends SettingProps {
  readonly canSpeak: boolean;
}

function AloudSetting({ preferences, actions, canSpeak }: AloudProps) {
  const { speech, volume, rate } = preferences;
  if (!canSpeak)
    return (
      <Section id="aloud" title="Reading aloud">
        <p className="setting-now">This browser cannot read aloud. Numbers are on the screen.</p>
      </Section>
    );
  return (
    <Section id="aloud" title="Reading aloud">
      <OneOf
        name="Reading aloud"
        options={[
          { value: 'on', label: 'Reads aloud' },
          { value: 'off', label: 'Silent' },
        ]}
        chosen={speech ? 'on' : 'off'}
        onChoose={(value) => actions.setSpeech(value === 'on')}
      />
      <div className="aloud-manner">
        <MoreOrLess
          name="Volume"
          shown={`${Math.round(volume * 100)} %`}
          value={volume}
          step={0.1}
          within={[0.1, 1]}
          onChange={(next) => actions.setPreferences({ volume: next })}
        />
        <MoreOrLess
          name="Pace"
          shown={`${Math.round(rate * 100)} %`}
          value={rate}
          step={0.1}
          within={[0.5, 2]}
          onChange={(next) => actions.setPreferences({ rate: next })}
        />
        <Target refused={!speech} onPress={actions.trySpeech}>
          Try it
        </Target>
      </div>
    </Section>
  );
}

const PAUSES: readonly Option<number>[] = [
  { value: 0, label: 'Off' },
  { value: 2000, label: '2 s' },
  { value: 4000, label: '4 s' },
  { value: 6000, label: '6 s' },
];

function PauseSetting({ preferences, actions }: SettingProps) {
  return (
    <Section id="pause" title="Pause before keeping">
      <OneOf
        name="Pause before keeping"
        options={PAUSES}
        chosen={preferences.keepAfterMs}
        onChoose={(keepAfterMs) => actions.setPreferences({ keepAfterMs })}
      />
      <p className="setting-note">
        After it, a number that nobody objected to keeps itself. One that is doubtful always waits for its yes.
      </p>
    </Section>
  );
}

function PlaceSetting({ preferences, actions }: SettingProps) {
  return (
    <Section id="place" title="Where this device stands">
      <OneOf
        name="Where this device stands"
        options={[
          { value: 'chair', label: 'At the chair', more: 'cases open at their visit' },
          { value: 'lab', label: 'In the laboratory', more: 'cases open at the bench' },
        ]}
        chosen={preferences.standsAt}
        onChoose={(standsAt) => actions.setPreferences({ standsAt })}
      />
    </Section>
  );
}

const REMINDERS: readonly Option<PreferencesView['backupEveryDays']>[] = [
  { value: 1, label: 'After a day' },
  { value: 7, label: 'After 7 days' },
  { value: 30, label: 'After 30 days' },
  { value: 0, label: 'Never' },
];

function BackupSetting({ preferences, actions }: SettingProps) {
  return (
    <Section id="backup" title="Remind of a backup">
      <OneOf
        name="Remind of a backup"
        options={REMINDERS}
        chosen={preferences.backupEveryDays}
        onChoose={(backupEveryDays) => actions.setPreferences({ backupEveryDays })}
      />
      <p className="setting-note">At the list of cases, when the last one is that old and something has changed.</p>
    </Section>
  );
}

interface SettingsScreenProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

export function SettingsScreen({ model, actions }: SettingsScreenProps) {
  const { preferences, step, trouble, speech } = model;
  const inVisit = step !== undefined;
  return (
    <main className="page settings">
      <PageHead title="Settings">
        <Target onPress={() => actions.go('practice')}>The practice</Target>
        <Target look="main" onPress={() => actions.go(inVisit ? 'visit' : 'cases')}>
          {inVisit ? 'Back to the visit' : 'Back to the cases'}
        </Target>
      </PageHead>
      {preferences === undefined ? null : (
        <div className="settings-all">
          <LanguageSetting preferences={preferences} actions={actions} />
          <EarModeSetting preferences={preferences} actions={actions} />
          <ConsentSetting preferences={preferences} actions={actions} />
          <OnDeviceSetting preferences={preferences} actions={actions} />
          <AddressSetting preferences={preferences} actions={actions} />
          <AloudSetting preferences={preferences} actions={actions} canSpeak={speech !== undefined} />
          <PauseSetting preferences={preferences} actions={actions} />
          <LockSettings lock={model.lock} preferences={preferences} actions={actions} />
          <BackupSetting preferences={preferences} actions={actions} />
          <PlaceSetting preferences={preferences} actions={actions} />
        </div>
      )}
      <Trouble text={trouble} />
    </main>
  );
}
