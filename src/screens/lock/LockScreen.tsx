/** Locked: clocks and a place for the passphrase; nothing of any case. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type { LockedAlarm, LockView } from '../../app/locking.types.ts';
import { stretch, timeLeft } from '../format.ts';
import { PhaseIcon, RimMark, SignIcon } from '../parts/Icons.tsx';
import { SaidLine } from '../parts/Lines.tsx';
import { SoundTarget } from '../parts/Status.tsx';
import { Target } from '../parts/Target.tsx';
import { newPassphrase, SecretForm, twiceTheSame } from './Passphrase.tsx';

interface LockScreenProps {
  readonly model: AppModel;
  readonly lock: LockView;
  readonly actions: AppActions;
}

const nameOf = ({ caseId, due }: LockedAlarm): string => `${caseId}|${due}`;

function Ringing({ alarms, now, actions }: { alarms: readonly LockedAlarm[]; now: number; actions: AppActions }) {
  if (alarms.length === 0) return null;
  return (
    <section className="ringing" aria-label="Time is up">
      <SignIcon sign="bell" />
      <ul className="ringing-list">
        {alarms.map((alarm) => (
          <li key={nameOf(alarm)}>
            <span role="alert">
              <strong>{alarm.label}</strong>
            </span>
            <span className="ringing-more"> since {stretch(now - alarm.at)}</span>
          </li>
        ))}
      </ul>
      <Target look="main" size="big" name="Seen: stop ringing" onPress={actions.silence}>
        Seen
      </Target>
    </section>
  );
}

function Waiting({ alarms, now }: { readonly alarms: readonly LockedAlarm[]; readonly now: number }) {
  if (alarms.length === 0) return null;
  return (
    <section className="lock-clocks" aria-label="Running clocks">
      <ul>
        {alarms.map((alarm) => {
          const left = timeLeft(alarm.at, now);
          return (
            <li key={nameOf(alarm)}>
              <PhaseIcon phase={alarm.phase} />
              <span className="lock-clock-name">{alarm.label}</span>
              <time>{left.over ? `${left.text} ago` : `in ${left.text}`}</time>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Doors({ lock, now, actions }: { lock: LockView; now: number; actions: AppActions }) {
  const [lost, setLost] = useState(false);
  if (lock.busy !== '') return <p className="lock-busy">{lock.busy}</p>;
  const wait = Math.ceil((lock.waitUntil - now) / 1000);
  if (wait > 0)
    return (
      <p className="lock-busy" role="status">
        The next try in {wait} s. Nothing is deleted, however often it is wrong.
      </p>
    );
  if (lost)
    return (
      <SecretForm
        name="Recovery code"
        fields={[
          { key: 'code', label: 'Recovery code', hint: 'from the sheet; blanks and dashes do not matter', plain: true },
          ...newPassphrase,
        ]}
        give="Unlock with the code"
        wrong={twiceTheSame}
        onGive={({ code = '', new: passphrase = '' }) => actions.askLock({ ask: 'recover', code, passphrase })}
        onClose={() => setLost(false)}
      />
    );
  return (
    <>
      <SecretForm
        name="Passphrase"
        fields={[{ key: 'passphrase', label: 'Passphrase of the practice' }]}
        give="Unlock"
        onGive={({ passphrase = '' }) => actions.askLock({ ask: 'unlock', passphrase })}
      />
      <div>
        <Target look="quiet" size="big" onPress={() => setLost(true)}>
          Use the recovery code
        </Target>
      </div>
    </>
  );
}

export function LockScreen({ model, lock, actions }: LockScreenProps) {
  const { now, sound } = model;
  const rings = (alarm: LockedAlarm): boolean => alarm.rang !== undefined && alarm.seen !== true;
  return (
    <div className="app app-locked" lang="en">
      <div className="top no-print">
        {sound === 'needsTouch' ? <SoundTarget sound={sound} actions={actions} /> : null}
        <Ringing alarms={lock.alarms.filter(rings)} now={now} actions={actions} />
      </div>
      <main className="page lock">
        <header>
          <h1>
            <RimMark /> Locked
          </h1>
          <p>Nothing can be read or written. Clocks go on and ring.</p>
        </header>
        <SaidLine said={lock.said} trouble={lock.trouble} />
        <Waiting alarms={lock.alarms.filter((alarm) => !rings(alarm))} now={now} />
        <Doors lock={lock} now={now} actions={actions} />
      </main>
    </div>
  );
}
