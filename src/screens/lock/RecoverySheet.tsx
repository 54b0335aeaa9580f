/** The recovery code, shown once: on the screen, and on paper. */
import type { AppActions, AppModel } from '../../app/model.ts';
import type { LockView } from '../../app/locking.types.ts';
import { day } from '../format.ts';
import { Target } from '../parts/Target.tsx';

interface RecoverySheetProps {
  readonly model: AppModel;
  readonly lock: LockView;
  readonly actions: AppActions;
}

export function RecoverySheet({ model, lock, actions }: RecoverySheetProps) {
  return (
    <main className="page recovery">
      <header>
        <h1>Recovery sheet</h1>
        <p>Rimwise, {day(model.now)}. Opens the record of this device when the passphrase is lost.</p>
      </header>
      <p className="recovery-code" aria-label="Recovery code">
        {lock.code.split('-').map((group, at) => (
          <span key={`${at}${group}`}>{group}</span>
        ))}
      </p>
      <ul className="recovery-words">
        <li>Keep it where only those who may read the record can reach it, away from this device.</li>
        <li>It is shown this once. Rimwise keeps no copy; nobody can make it again.</li>
        <li>Without passphrase and code the entries on this device cannot be opened by anyone.</li>
        <li>It opens this device only. Saved files have passphrases of their own.</li>
      </ul>
      <p className="recovery-busy" role="status">
        {lock.busy === '' ? lock.said : `${lock.busy} Leave this page open until it is done.`}
      </p>
      <div className="secret-ends no-print">
        <Target look="main" size="big" onPress={actions.print}>
          Print this sheet
        </Target>
        <Target size="big" onPress={() => actions.askLock({ ask: 'codeSeen' })}>
          It is written down
        </Target>
      </div>
    </main>
  );
}
