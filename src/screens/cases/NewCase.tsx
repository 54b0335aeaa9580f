/** A case begins with a code and two sets of initials; nothing that names the patient. */
import { useState } from 'react';
import type { AppActions } from '../../app/model.ts';
import type { Person } from '../../domain/protocol/types.ts';
import { Field } from '../parts/Field.tsx';
import { Target } from '../parts/Target.tsx';
import { Who } from '../parts/Who.tsx';

function missing(code: string, clinician: string, assistant: string): string {
  if (code === '') return 'A case code is wanted.';
  if (clinician === '') return 'The initials of the clinician are wanted.';
  return assistant === '' ? 'The initials of the assistant are wanted.' : '';
}

interface NewCaseProps {
  readonly actions: AppActions;
  readonly people: readonly Person[];
  readonly onClose: () => void;
}

export function NewCase({ actions, people, onClose }: NewCaseProps) {
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
      <Who part="clinician" people={people} value={clinician} onChange={setClinician} />
      <Who part="assistant" people={people} value={assistant} onChange={setAssistant} />
      <p className="scope">
        For new complete dentures. Not for relines, copy dentures or immediate dentures: the visits here do not cover
        them.
      </p>
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
