/** A case begins with a code and two sets of initials; nothing that names the patient. */
import { useState } from 'react';
import type { AppActions } from '../../app/model.ts';
import { Target } from '../parts/Target.tsx';

interface FieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly maxLength: number;
  readonly onChange: (value: string) => void;
}

function Field({ label, hint, value, maxLength, onChange }: FieldProps) {
  return (
    <label className="field">
      <span>{label}</span>
      <span className="field-hint">{hint}</span>
      <input
        type="text"
        value={value}
        maxLength={maxLength}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}

function missing(code: string, clinician: string, assistant: string): string {
  if (code === '') return 'A case code is wanted.';
  if (clinician === '') return 'The initials of the clinician are wanted.';
  return assistant === '' ? 'The initials of the assistant are wanted.' : '';
}

export function NewCase({ actions, onClose }: { readonly actions: AppActions; readonly onClose: () => void }) {
  const [code, setCode] = useState('');
  const [clinician, setClinician] = useState('');
  const [assistant, setAssistant] = useState('');
  const [trouble, setTrouble] = useState('');
  const begin = () => {
    const input = { code: code.trim(), clinician: clinician.trim(), assistant: assistant.trim(), demo: false };
    const why = missing(input.code, input.clinician, input.assistant);
    setTrouble(why);
    if (why === '') actions.newCase(input);
  };
  return (
    <form
      className="new-case"
      aria-label="New case"
      onSubmit={(event) => {
        event.preventDefault();
        begin();
      }}
    >
      <Field label="Case code" hint="your own, never a name" value={code} maxLength={24} onChange={setCode} />
      <Field label="Clinician" hint="initials" value={clinician} maxLength={6} onChange={setClinician} />
      <Field label="Assistant" hint="initials" value={assistant} maxLength={6} onChange={setAssistant} />
      <p className={trouble === '' ? 'trouble trouble-none' : 'trouble'} role="alert">
        {trouble}
      </p>
      <div className="flag-ends">
        <Target look="quiet" onPress={onClose}>
          Close
        </Target>
        <button type="submit" className="target target-main target-big">
          <span className="target-words">Begin visit 1</span>
        </button>
      </div>
    </form>
  );
}
