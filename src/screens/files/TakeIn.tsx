/** A case file from another machine, taken in at a touch; a sealed one asks for its passphrase. */
import { useRef, useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import { MOST_FILE_BYTES } from '../../domain/case/fileSize.ts';
import { Trouble } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { Secret } from './Secret.tsx';

interface TakeInProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

const TOO_LARGE = 'This file is larger than 20 MB and was not read: it is no case file.';

function Sealed({ name, actions }: { readonly name: string; readonly actions: AppActions }) {
  const [words, setWords] = useState('');
  const open = () => {
    if (words !== '') actions.askFiles({ ask: 'open', passphrase: words });
  };
  return (
    <form
      className="passphrase"
      aria-label="Sealed file"
      onSubmit={(event) => {
        event.preventDefault();
        open();
      }}
    >
      <p className="step-line">
        <strong>{name}</strong> is under a passphrase.
      </p>
      <Secret label="Passphrase" value={words} onChange={setWords} />
      <div className="flag-ends">
        <Target look="quiet" onPress={() => actions.askFiles({ ask: 'open', passphrase: '' })}>
          Leave it
        </Target>
        <button type="submit" className="target target-main target-big" aria-disabled={words === ''}>
          <span className="target-words">Open the file</span>
        </button>
      </div>
    </form>
  );
}

export function TakeIn({ model, actions }: TakeInProps) {
  const input = useRef<HTMLInputElement>(null);
  const [trouble, setTrouble] = useState('');
  const { files } = model;
  const take = async (file: File | undefined): Promise<void> => {
    if (input.current !== null && file === undefined) return;
    setTrouble(file !== undefined && file.size > MOST_FILE_BYTES ? TOO_LARGE : '');
    if (file !== undefined && file.size <= MOST_FILE_BYTES)
      actions.askFiles({ ask: 'takeIn', name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
    if (input.current !== null) input.current.value = '';
  };
  return (
    <section className="take-in" aria-label="Files from elsewhere">
      <Target size="big" refused={files?.busy === true} onPress={() => input.current?.click()}>
        Take in a file
        <span className="option-more">a case from another device; nothing here is overwritten</span>
      </Target>
      <input
        ref={input}
        type="file"
        accept="application/json,.json"
        aria-label="Case file"
        hidden
        onChange={(event) => void take(event.target.files?.[0])}
      />
      {files?.locked === undefined ? null : (
        <Sealed key={files.locked.name} name={files.locked.name} actions={actions} />
      )}
      <Trouble text={trouble} />
      {files === undefined || files.lines.length === 0 ? null : (
        <ul
          className={files.refused === true ? 'take-in-lines take-in-refused' : 'take-in-lines'}
          aria-label={files.refused === true ? 'Why the file was not taken in' : 'What the file brought'}
        >
          {files.lines.map((line) => (
            <li key={line} className="step-line">
              {line}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
