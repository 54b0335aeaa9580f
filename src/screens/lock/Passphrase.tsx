/** Where a passphrase or a code is typed: it can be shown, and nothing of it is remembered by the browser. */
import { useState } from 'react';
import { Target } from '../parts/Target.tsx';

export interface SecretProps {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Printed on paper anyway: shown from the start. */
  readonly plain?: true;
}

export function Secret({ label, hint, value, onChange, plain }: SecretProps) {
  const [shown, setShown] = useState(plain === true);
  return (
    <div className="secret">
      <label className="field">
        <span>{label}</span>
        {hint === undefined ? null : <span className="field-hint">{hint}</span>}
        <input
          type={shown ? 'text' : 'password'}
          value={value}
          maxLength={200}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          onChange={(event) => onChange(event.target.value)}
        />
      </label>
      <Target name={`${shown ? 'Hide' : 'Show'}: ${label}`} chosen={shown} onPress={() => setShown(!shown)}>
        {shown ? 'Hide' : 'Show'}
      </Target>
    </div>
  );
}

export interface SecretSpec {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly plain?: true;
}

interface SecretFormProps {
  readonly name: string;
  readonly fields: readonly SecretSpec[];
  readonly give: string;
  readonly look?: 'main' | 'warn';
  readonly onGive: (written: Readonly<Record<string, string>>) => void;
  readonly onClose?: () => void;
  /** Why it cannot be given yet; empty when it can. */
  readonly wrong?: (written: Readonly<Record<string, string>>) => string;
}

/** Fields that are emptied once they were given. */
export function SecretForm({ name, fields, give, look = 'main', onGive, onClose, wrong }: SecretFormProps) {
  const [written, setWritten] = useState<Readonly<Record<string, string>>>({});
  const [why, setWhy] = useState('');
  const submit = () => {
    const trouble = wrong?.(written) ?? '';
    setWhy(trouble);
    if (trouble !== '') return;
    setWritten({});
    onGive(written);
  };
  return (
    <form
      className="secret-form"
      aria-label={name}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      {fields.map(({ key, ...field }) => (
        <Secret
          key={key}
          {...field}
          value={written[key] ?? ''}
          onChange={(value) => setWritten({ ...written, [key]: value })}
        />
      ))}
      <p className={why === '' ? 'trouble trouble-none' : 'trouble'} role="alert">
        {why}
      </p>
      <div className="secret-ends">
        <button type="submit" className={`target target-${look} target-big`}>
          <span className="target-words">{give}</span>
        </button>
        {onClose === undefined ? null : (
          <Target look="quiet" size="big" onPress={onClose}>
            Give up
          </Target>
        )}
      </div>
    </form>
  );
}

const NEW: readonly SecretSpec[] = [
  { key: 'new', label: 'New passphrase', hint: 'eight letters or more; several words are best' },
  { key: 'again', label: 'The same again' },
];

export const newPassphrase = NEW;

/** Typed twice, so that a slip does not shut the record for good. */
export function twiceTheSame(written: Readonly<Record<string, string>>): string {
  if ((written['new'] ?? '').trim().length < 8) return 'A passphrase has at least 8 letters.';
  return written['new'] === written['again'] ? '' : 'The two are not the same.';
}
