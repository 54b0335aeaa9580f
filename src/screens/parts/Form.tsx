/** One entry of a list being written: a few fields, one line of trouble, keep or give up. */
import { useState } from 'react';
import { Trouble } from './Lines.tsx';
import { Target } from './Target.tsx';

export interface FieldSpec {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
}

export type Written = Readonly<Record<string, string>>;

interface FormProps {
  readonly name: string;
  readonly fields: readonly FieldSpec[];
  /** Empty when the entry was taken, otherwise what is wrong with it. */
  readonly onKeep: (written: Written) => string;
  readonly onClose: () => void;
  readonly keepWord?: string;
}

export function Form({ name, fields, onKeep, onClose, keepWord = 'Keep' }: FormProps) {
  const [written, setWritten] = useState<Written>(() => Object.fromEntries(fields.map((f) => [f.key, f.value])));
  const [trouble, setTrouble] = useState('');
  const keep = () => {
    const why = onKeep(written);
    setTrouble(why);
    if (why === '') onClose();
  };
  return (
    <div className="entry-form" role="group" aria-label={name}>
      {fields.map(({ key, label, hint }) => (
        <label className="field" key={key}>
          <span>{label}</span>
          {hint === undefined ? null : <span className="field-hint">{hint}</span>}
          <input
            type="text"
            value={written[key] ?? ''}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => setWritten({ ...written, [key]: event.target.value })}
            onKeyDown={(event) => {
              if (event.key === 'Enter') keep();
            }}
          />
        </label>
      ))}
      <Trouble text={trouble} />
      <div className="entry-ends">
        <Target look="main" onPress={keep}>
          {keepWord}
        </Target>
        <Target onPress={onClose}>Give up</Target>
      </div>
    </div>
  );
}
