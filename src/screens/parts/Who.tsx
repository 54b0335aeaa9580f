/** Who works at a visit: the practice's people of that role as targets, anybody else by typing. Initials only. */
import type { Person } from '../../domain/protocol/types.ts';
import { Field } from './Field.tsx';
import { Target } from './Target.tsx';

export type Role = Person['role'];

/** Initials of one role, each once, in the practice's order. */
export function initialsOf(people: readonly Person[], role: Role): readonly string[] {
  return [...new Set(people.filter((one) => one.role === role).map((one) => one.initials))];
}

const LABEL: Readonly<Record<Role, string>> = { clinician: 'Clinician', assistant: 'Assistant' };

interface WhoProps {
  readonly part: Role;
  readonly people: readonly Person[];
  readonly value: string;
  readonly onChange: (initials: string) => void;
}

export function Who({ part, people, value, onChange }: WhoProps) {
  const known = initialsOf(people, part);
  return (
    <div className="who" role="group" aria-label={LABEL[part]}>
      {known.length === 0 ? null : (
        <p className="who-role" aria-hidden="true">
          {LABEL[part]}
        </p>
      )}
      {known.map((initials) => (
        <Target
          key={initials}
          size="big"
          name={`${LABEL[part]} ${initials}`}
          chosen={initials === value.trim()}
          onPress={() => onChange(initials)}
        >
          {initials}
        </Target>
      ))}
      <Field
        label={known.length === 0 ? LABEL[part] : `${LABEL[part]}, other initials`}
        hint={known.length === 0 ? 'initials' : ''}
        value={value}
        maxLength={6}
        onChange={onChange}
      />
    </div>
  );
}
