/** The open case as a file for another machine, plain or under a passphrase. */
import { useState } from 'react';
import type { AppActions } from '../../app/model.ts';
import { Trouble } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { Secret } from './Secret.tsx';

const LEAST = 8;

/** Why a passphrase cannot be used; empty when it can. Compared as it is later: composed letters, no blanks at the ends. */
export function passphraseTrouble(first: string, second: string): string {
  const meant = (text: string) => text.normalize('NFC').trim();
  if ([...meant(first)].length < LEAST) return `A passphrase has at least ${LEAST} letters.`;
  return meant(first) === meant(second) ? '' : 'The two are not the same.';
}

interface SaveCaseProps {
  readonly actions: AppActions;
  /** "Case file for the clinic" */
  readonly title: string;
  readonly onClose: () => void;
}

export function SaveCase({ actions, title, onClose }: SaveCaseProps) {
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const [trouble, setTrouble] = useState('');
  const plain = () => {
    actions.askFiles({ ask: 'caseFile' });
    onClose();
  };
  const sealed = () => {
    const why = passphraseTrouble(first, second);
    setTrouble(why);
    if (why !== '') return;
    actions.askFiles({ ask: 'caseFile', passphrase: first });
    onClose();
  };
  return (
    <section className="save-case no-print" aria-label={title}>
      <div className="save-case-plain">
        <h2>{title}</h2>
        <p className="step-line">
          It holds the whole record of the case under its code, nothing that names the patient.
        </p>
        <div className="flag-ends">
          <Target look="quiet" onPress={onClose}>
            Close
          </Target>
          <Target size="big" onPress={plain}>
            Save without a passphrase
          </Target>
        </div>
      </div>
      <form
        className="passphrase"
        aria-label="Under a passphrase"
        onSubmit={(event) => {
          event.preventDefault();
          sealed();
        }}
      >
        <p className="step-line">
          <strong>Under a passphrase</strong> nobody can read it without the same words. They are kept nowhere: if they
          are lost, this file cannot be opened again, by anybody.
        </p>
        <Secret label="Passphrase" hint="at least 8 letters" value={first} onChange={setFirst} />
        <Secret label="The same again" value={second} onChange={setSecond} />
        <Trouble text={trouble} />
        <div className="flag-ends">
          <button type="submit" className="target target-main target-big">
            <span className="target-words">Save under the passphrase</span>
          </button>
        </div>
      </form>
    </section>
  );
}
