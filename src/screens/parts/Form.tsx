/** One entry of a list being written: a few fields, one line of trouble, keep or give up. */
import { useState, type ChangeEvent, type KeyboardEvent } from 'react';
import { Trouble } from './Lines.tsx';
import { Target } from './Target.tsx';

export interface FieldSpec {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  /** One of these, by touch, instead of anything typed. */
  readonly options?: readonly { readonly value: string; readonly label: string }[];
  /** A sentence: takes the whole width. */
  readonly wide?: true;
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

interface OneProps {
  readonly field: FieldSpec;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onEnter: () => void;
}

function Pick({ field, value, onChange }: OneProps) {
  return (
    <div className="field field-wide" role="group" aria-label={field.label}>
      <span aria-hidden="true">{field.label}</span>
      <div className="entry-ends">
        {(field.options ?? []).map((option) => (
          <Target
            key={option.value}
            chosen={option.value === value}
            name={`${field.label}: ${option.label}`}
            onPress={() => onChange(option.value)}
          >
            {option.label}
          </Target>
        ))}
      </div>
    </div>
  );
}

function Typed({ field, value, onChange, onEnter }: OneProps) {
  const { label, hint, wide } = field;
  const shared = {
    value,
    autoComplete: 'off',
    spellCheck: false,
    onChange: (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => onChange(event.target.value),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      onEnter();
    },
  };
  return (
    <label className={wide === true ? 'field field-wide' : 'field'}>
      <span>{label}</span>
      {hint === undefined ? null : <span className="field-hint">{hint}</span>}
      {wide === true ? <textarea rows={3} {...shared} /> : <input type="text" {...shared} />}
    </label>
  );
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
      <p className="entry-form-name" aria-hidden="true">
        {name}
      </p>
      {fields.map((field) => {
        const One = field.options === undefined ? Typed : Pick;
        return (
          <One
            key={field.key}
            field={field}
            value={written[field.key] ?? ''}
            onChange={(value) => setWritten({ ...written, [field.key]: value })}
            onEnter={keep}
          />
        );
      })}
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
