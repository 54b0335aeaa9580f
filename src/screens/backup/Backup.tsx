/** A backup of everything on this device, and one taken back: the whole of it on the list of cases. */
import { useRef, useState } from 'react';
import type { BackupRequest, BackupView, FoundBackup } from '../../app/backup.types.ts';
import type { AppActions } from '../../app/model.ts';
import { MOST_BACKUP_BYTES } from '../../domain/case/fileSize.ts';
import { passphraseTrouble } from '../files/SaveCase.tsx';
import { Secret } from '../files/Secret.tsx';
import { Trouble } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';

interface Props {
  readonly backup: BackupView;
  readonly actions: AppActions;
}

const DAY = 86_400_000;

/** "Last backup: 9 days ago, 3 cases changed since." */
export function backupLine({ lastAt, changed }: Pick<BackupView, 'lastAt' | 'changed'>, now: number): string {
  const since = `${changed} ${changed === 1 ? 'case' : 'cases'} changed since`;
  const alone = `${changed} ${changed === 1 ? 'case' : 'cases'} in no other place`;
  if (lastAt === undefined) return changed === 0 ? 'No backup yet.' : `No backup yet: ${alone}.`;
  const days = Math.floor(Math.max(0, now - lastAt) / DAY);
  const when = days === 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;
  return `Last backup: ${when}, ${changed === 0 ? 'nothing changed since' : since}.`;
}

const asking = (actions: AppActions) => (backup: BackupRequest) => actions.askFiles({ ask: 'backup', backup });

function Make({ backup, actions, onClose }: Props & { readonly onClose: () => void }) {
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const [trouble, setTrouble] = useState('');
  const ask = asking(actions);
  const seal = () => {
    const why = passphraseTrouble(first, second);
    setTrouble(why);
    if (why !== '') return;
    ask({ do: 'make', passphrase: first });
    onClose();
  };
  const plain = () => {
    ask({ do: 'make' });
    onClose();
  };
  return (
    <form
      className="passphrase"
      aria-label="Make a backup"
      onSubmit={(event) => {
        event.preventDefault();
        seal();
      }}
    >
      <p className="step-line">
        One file with all cases, settings and visits of this device. Keep it on another device. The passphrase is kept
        nowhere: without it nobody opens the file.
      </p>
      <Secret label="Passphrase of the backup" hint="at least 8 letters" value={first} onChange={setFirst} />
      <Secret label="The same again" value={second} onChange={setSecond} />
      <Trouble text={trouble} />
      <div className="flag-ends">
        <Target look="quiet" onPress={onClose}>
          Close
        </Target>
        {backup.mustSeal ? null : (
          <Target size="big" onPress={plain}>
            Without a passphrase
          </Target>
        )}
        <button type="submit" className="target target-main target-big">
          <span className="target-words">Under the passphrase</span>
        </button>
      </div>
    </form>
  );
}

function Locked({ name, actions }: { readonly name: string; readonly actions: AppActions }) {
  const [words, setWords] = useState('');
  const ask = asking(actions);
  return (
    <form
      className="passphrase"
      aria-label="Sealed backup"
      onSubmit={(event) => {
        event.preventDefault();
        if (words !== '') ask({ do: 'open', passphrase: words });
      }}
    >
      <p className="step-line">
        <strong>{name}</strong> is under a passphrase.
      </p>
      <Secret label="Passphrase" value={words} onChange={setWords} />
      <div className="flag-ends">
        <Target look="quiet" onPress={() => ask({ do: 'leave' })}>
          Leave it
        </Target>
        <button type="submit" className="target target-main target-big" aria-disabled={words === ''}>
          <span className="target-words">Open the backup</span>
        </button>
      </div>
    </form>
  );
}

const Sentences = ({ name, lines }: { readonly name: string; readonly lines: readonly string[] }) =>
  lines.length === 0 ? null : (
    <ul className="take-in-lines" aria-label={name}>
      {lines.map((line) => (
        <li key={line} className="step-line">
          {line}
        </li>
      ))}
    </ul>
  );

/** What was found is said first; only then something is taken. */
function Found({ found, actions }: { readonly found: FoundBackup; readonly actions: AppActions }) {
  const ask = asking(actions);
  const cases = found.cases === 1 ? 'the case' : `the ${found.cases} cases`;
  return (
    <section className="passphrase" aria-label="What the backup holds">
      <p className="step-line">
        <strong>{found.name}</strong>
      </p>
      <Sentences name="What it holds" lines={[...found.lines, ...found.faults]} />
      <p className="step-line">Only what is not here yet is added; nothing that is here is overwritten.</p>
      {found.settings.length === 0 ? null : <Sentences name="What its settings would change" lines={found.settings} />}
      <div className="flag-ends">
        <Target look="quiet" onPress={() => ask({ do: 'leave' })}>
          Leave it
        </Target>
        <Target
          look="main"
          size="big"
          refused={found.cases === 0}
          onPress={() => ask({ do: 'restore', settings: false })}
        >
          Add {cases}
        </Target>
        {found.settings.length === 0 ? null : (
          <Target size="big" onPress={() => ask({ do: 'restore', settings: true })}>
            Add {cases} and take the settings
          </Target>
        )}
      </div>
    </section>
  );
}

const TOO_LARGE = 'This file is larger than 250 MB and was not read: it is no backup.';

function Choose({ busy, actions }: { readonly busy: boolean; readonly actions: AppActions }) {
  const input = useRef<HTMLInputElement>(null);
  const [trouble, setTrouble] = useState('');
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const fits = file.size <= MOST_BACKUP_BYTES;
    setTrouble(fits ? '' : TOO_LARGE);
    if (fits) asking(actions)({ do: 'read', name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
    if (input.current !== null) input.current.value = '';
  };
  return (
    <>
      <Target size="big" refused={busy} onPress={() => input.current?.click()}>
        Take back a backup
      </Target>
      <input
        ref={input}
        type="file"
        accept="application/json,.json"
        aria-label="Backup file"
        hidden
        onChange={(event) => void take(event.target.files?.[0])}
      />
      <Trouble text={trouble} />
    </>
  );
}

export function Backup({ backup, actions, now }: Props & { readonly now: number }) {
  const [making, setMaking] = useState(false);
  const busy = backup.busy !== '';
  return (
    <section className="take-in backup" aria-label="Backup">
      <p className={backup.due ? 'step-line backup-due' : 'step-line'}>{backupLine(backup, now)}</p>
      {making ? <Make backup={backup} actions={actions} onClose={() => setMaking(false)} /> : null}
      {backup.locked === undefined ? null : (
        <Locked key={backup.locked.name} name={backup.locked.name} actions={actions} />
      )}
      {backup.found === undefined ? null : <Found found={backup.found} actions={actions} />}
      {making || backup.locked !== undefined || backup.found !== undefined ? null : (
        <div className="flag-ends">
          <Target size="big" look={backup.due ? 'main' : 'plain'} refused={busy} onPress={() => setMaking(true)}>
            Make a backup
          </Target>
          <Choose busy={busy} actions={actions} />
        </div>
      )}
      {busy ? (
        <p className="step-line" role="status">
          {backup.busy}
        </p>
      ) : null}
      <Sentences name="What the backup brought" lines={backup.lines} />
    </section>
  );
}
